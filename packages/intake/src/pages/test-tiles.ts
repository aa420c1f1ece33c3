import {
  arcsToCubics,
  circleCurve,
  curveBox,
  curveFromPolyline,
  flattenCurve,
  polylineNearest,
  roundCurve,
  transformCurveToGrid,
  translation,
} from '@hidebound/geometry';
import type { Curve, CurveSegment, Point, Random } from '@hidebound/geometry';
import type { DrawnLine, DrawnText } from '../drawing/drawn-line.js';
import { clipBoxed } from '../lines/clip-to-box.js';
import { dropStandstill } from '../lines/tidy.js';
import type { PatternPage } from './page.js';

/** How a drawing is cut into pages, for tests. Lengths in mm. */
export interface Tiling {
  readonly columns: number;
  readonly rows: number;
  /** Of the window through which the drawing is seen on a page. */
  readonly width: number;
  readonly height: number;
  /** Of neighbours' windows. */
  readonly overlap: number;
  /** Paper around the window. */
  readonly margin: number;
  /** How far each page's drawing is moved on its paper, with the window. */
  readonly noise?: (page: number) => Point;
}

const source = { name: '<path>', labels: { given: [], classes: [], data: {} }, groups: [] };

export function drawnLine(curve: Curve, more: Partial<DrawnLine> = {}): DrawnLine {
  return { curve, source, stroke: '#000000', widthMm: 0.5, isDashed: false, isHole: false, ...more };
}

export function drawnText(text: string, at: Point): DrawnText {
  return { text, at, source };
}

/** The pages of a tiling, row by row; the drawing's origin is the top left corner of the first window. */
export function tilesOf(
  lines: readonly DrawnLine[],
  texts: readonly DrawnText[],
  tiling: Tiling,
): PatternPage[] {
  const { columns, rows, width, height, overlap, margin, noise } = tiling;
  const boxes = lines.map(({ curve }) => curveBox(curve));
  return Array.from({ length: columns * rows }, (_, k) => {
    const x = (k % columns) * (width - overlap);
    const y = Math.floor(k / columns) * (height - overlap);
    const window = { minX: x, minY: y, maxX: x + width, maxY: y + height };
    const moved = noise?.(k) ?? { x: 0, y: 0 };
    const by = { x: margin - x + moved.x, y: margin - y + moved.y };
    const toPage = translation(by.x, by.y);
    return {
      number: k + 1,
      widthMm: width + 2 * margin,
      heightMm: height + 2 * margin,
      lines: lines.flatMap((line, i) =>
        clipBoxed(line.curve, boxes[i]!, window).flatMap((part) => {
          const curve = dropStandstill(transformCurveToGrid(toPage, part));
          return curve === undefined ? [] : [{ ...line, curve }];
        }),
      ),
      texts: texts
        .filter(
          ({ at }) =>
            at.x >= window.minX && at.x <= window.maxX && at.y >= window.minY && at.y <= window.maxY,
        )
        .map((text) => ({ ...text, at: { x: text.at.x + by.x, y: text.at.y + by.y } })),
    };
  });
}

/** A closed outline round a place: straight lines and cubics by turns, as a pattern piece has. */
export function blob(random: Random, centre: Point, radius: number): Curve {
  const count = 5 + random.integer(5);
  const at = Array.from({ length: count }, (_, i) => {
    const turn = ((i + random.between(-0.25, 0.25)) / count) * 2 * Math.PI;
    const r = radius * random.between(0.7, 1);
    return { x: centre.x + r * Math.cos(turn), y: centre.y + r * Math.sin(turn) };
  });
  const segments = at.map((from, i): CurveSegment => {
    const to = at[(i + 1) % count]!;
    if (random.next() < 0.4) return { kind: 'line', to };
    const bulge = random.between(0.05, 0.35);
    const off = (p: Point, share: number): Point => ({
      x: p.x + (to.x - from.x) * share + (to.y - from.y) * bulge,
      y: p.y + (to.y - from.y) * share - (to.x - from.x) * bulge,
    });
    return { kind: 'cubic', handle1: off(from, 0.3), handle2: off(from, 0.7), to };
  });
  return roundCurve({ start: at[0]!, segments, closed: true });
}

/** Bulges reach beyond a piece's radius. */
const EDGE_MM = 12;

/** Pieces in rows, each row moved along by half a pitch, each with a stitch line and a punch; pieces do not touch each other. */
export function randomDrawing(random: Random, width: number, height: number, pitch: number): DrawnLine[] {
  const lines: DrawnLine[] = [];
  const radius = 0.46 * pitch;
  const first = {
    x: EDGE_MM + random.between(0, 0.4) * pitch,
    y: EDGE_MM + radius + random.between(0, 0.3) * pitch,
  };
  for (let row = 0, y = first.y; y < height - radius - EDGE_MM; row++, y = first.y + row * pitch) {
    for (let x = radius + first.x + (row % 2) * pitch * 0.43; x < width - radius - EDGE_MM; x += pitch)
      lines.push(
        ...randomPiece(random, { x: x + random.between(-2, 2), y: y + random.between(-2, 2) }, radius),
      );
  }
  return lines;
}

function randomPiece(random: Random, centre: Point, radius: number): DrawnLine[] {
  const p = (share: number, turn: number): Point => ({
    x: centre.x + radius * share * Math.cos(turn),
    y: centre.y + radius * share * Math.sin(turn),
  });
  const turn = random.between(0, 6);
  const stitch = roundCurve(curveFromPolyline([p(0.4, turn), p(0.4, turn + 2), p(0.4, turn + 4)], false));
  const hole = arcsToCubics(circleCurve(p(0.2, turn), random.between(1, 3)));
  return [
    drawnLine(blob(random, centre, radius)),
    drawnLine(stitch, { isDashed: true, stroke: '#0000ff' }),
    drawnLine(roundCurve(hole)),
  ];
}

/** A cross of two lines in a ring. */
export function cross(at: Point, arm: number): DrawnLine[] {
  const bar = (dx: number, dy: number) =>
    drawnLine(
      curveFromPolyline(
        [
          { x: at.x - dx, y: at.y - dy },
          { x: at.x + dx, y: at.y + dy },
        ],
        false,
      ),
      { widthMm: 0.2 },
    );
  return [bar(arm, 0), bar(0, arm), drawnLine(circleCurve(at, arm / 2), { widthMm: 0.2 })];
}

export function diamond(at: Point, reach: number): DrawnLine {
  const corners = [
    { x: at.x - reach, y: at.y },
    { x: at.x, y: at.y - reach },
    { x: at.x + reach, y: at.y },
    { x: at.x, y: at.y + reach },
  ];
  return drawnLine(curveFromPolyline(corners, true), { widthMm: 0.2 });
}

/** How far the lines that were read lie from those that were drawn (moved by `by`), at the worst, mm; infinity for another number or kind of lines. */
export function farthestMiss(drawn: readonly DrawnLine[], read: readonly DrawnLine[], by: Point): number {
  if (drawn.length !== read.length) return Infinity;
  const flat = read.map(({ curve }) => flattenCurve(curve, 0.005));
  const boxes = read.map(({ curve }) => curveBox(curve));
  const isTaken = read.map(() => false);
  return Math.max(
    0,
    ...drawn.map(({ curve, isDashed }) => {
      const moved = transformCurveToGrid(translation(by.x, by.y), curve);
      const own = flattenCurve(moved, 0.005);
      const box = curveBox(moved);
      let best = Infinity;
      let which = -1;
      flat.forEach((other, i) => {
        if (isTaken[i] || read[i]!.isDashed !== isDashed || read[i]!.curve.closed !== curve.closed) return;
        if (Math.abs(boxes[i]!.minX - box.minX) > 5 || Math.abs(boxes[i]!.minY - box.minY) > 5) return;
        const miss = Math.max(farthestFrom(own, other), farthestFrom(other, own));
        if (miss >= best) return;
        best = miss;
        which = i;
      });
      if (which >= 0) isTaken[which] = true;
      return best;
    }),
  );
}

function farthestFrom(points: readonly Point[], line: readonly Point[]): number {
  return Math.max(...points.map((p) => polylineNearest(line, p).distance));
}
