import { boxUnion, curveBox, transformCurveToGrid, translation } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import type { DrawnLine, DrawnText } from '../drawing/drawn-line.js';

/** Lines and texts of one piece by their numbers: from, to (without). */
export interface PieceSpan {
  readonly lines: readonly [number, number];
  readonly texts: readonly [number, number];
}

/** Free room between pieces that are set apart, mm; whole, so that all stays on the 1 µm grid. */
const ROOM_MM = 10;

/**
 * Pattern programs write each piece about its own origin, so that pieces and sizes lie one over the other. Where they
 * do, all are put side by side in rows, in their order; changes both lists. True if anything was moved.
 */
export function setApart(lines: DrawnLine[], texts: DrawnText[], spans: readonly PieceSpan[]): boolean {
  const boxes = spans.map(({ lines: [from, to] }) => boxOf(lines, from, to));
  if (!someOverlap(boxes.filter((box): box is Box => box !== undefined))) return false;
  const rowWidth = widthOfRows(boxes);
  let [x, y, rowHeight] = [0, 0, 0];
  spans.forEach((span, i) => {
    const box = boxes[i];
    if (box === undefined) return;
    const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
    if (x > 0 && x + width > rowWidth) [x, y, rowHeight] = [0, y + rowHeight + ROOM_MM, 0];
    move(lines, texts, span, Math.ceil(x - box.minX), Math.ceil(y - box.minY));
    x = Math.ceil(x + width + ROOM_MM);
    rowHeight = Math.max(rowHeight, Math.ceil(height));
  });
  return true;
}

function boxOf(lines: readonly DrawnLine[], from: number, to: number): Box | undefined {
  let box: Box | undefined;
  for (let i = from; i < to; i++) {
    const own = curveBox(lines[i]!.curve);
    box = box === undefined ? own : boxUnion(box, own);
  }
  return box;
}

/** By a sweep over their left edges. */
function someOverlap(boxes: readonly Box[]): boolean {
  const order = [...boxes].sort((a, b) => a.minX - b.minX);
  return order.some((a, i) => {
    for (let k = i + 1; k < order.length && order[k]!.minX < a.maxX; k++) {
      if (order[k]!.minY < a.maxY && a.minY < order[k]!.maxY) return true;
    }
    return false;
  });
}

/** About a square of all of them, and no less than the widest. */
function widthOfRows(boxes: readonly (Box | undefined)[]): number {
  let [area, widest] = [0, 0];
  for (const box of boxes) {
    if (box === undefined) continue;
    const width = box.maxX - box.minX;
    area += (width + ROOM_MM) * (box.maxY - box.minY + ROOM_MM);
    widest = Math.max(widest, width);
  }
  return Math.max(widest, Math.sqrt(area));
}

function move(lines: DrawnLine[], texts: DrawnText[], span: PieceSpan, dx: number, dy: number): void {
  const matrix = translation(dx, dy);
  for (let i = span.lines[0]; i < span.lines[1]; i++) {
    lines[i] = { ...lines[i]!, curve: transformCurveToGrid(matrix, lines[i]!.curve) };
  }
  for (let i = span.texts[0]; i < span.texts[1]; i++) {
    const text = texts[i]!;
    texts[i] = { ...text, at: { x: text.at.x + dx, y: text.at.y + dy } };
  }
}
