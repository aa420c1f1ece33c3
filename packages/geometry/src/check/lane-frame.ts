import type { Lane } from '../types/problem.js';
import type { Point, Ring } from '../types/shape.js';
import type { Area } from './area.js';

/** A lane's own frame: `along` from the start of its first cut, `across` to the right of it (mm). */
export interface LaneFrame {
  readonly length: number;
  /** All rows and the kerfs between them. */
  readonly width: number;
  /** Where each row begins, across. */
  readonly rowStart: readonly number[];
  readonly unit: Point;
  readonly from: Point;
}

export function laneFrame(lane: Lane): LaneFrame {
  const dx = lane.to.x - lane.from.x;
  const dy = lane.to.y - lane.from.y;
  const length = Math.hypot(dx, dy);
  const rowStart: number[] = [];
  let width = 0;
  for (const [row, { widthMm }] of lane.rows.entries()) {
    if (row > 0) width += lane.kerfMm;
    rowStart.push(width);
    width += widthMm;
  }
  return { length, width, rowStart, unit: { x: dx / length, y: dy / length }, from: lane.from };
}

/** A place of the sheet in the lane's frame. The right of a heading (x, y) is (-y, x), as y grows downwards. */
export function toLane(
  frame: LaneFrame,
  x: number,
  y: number,
): { readonly along: number; readonly across: number } {
  const dx = x - frame.from.x;
  const dy = y - frame.from.y;
  return {
    along: dx * frame.unit.x + dy * frame.unit.y,
    across: dy * frame.unit.x - dx * frame.unit.y,
  };
}

/** A place of the lane's frame on the sheet. */
export function fromLane(frame: LaneFrame, along: number, across: number): Point {
  return {
    x: frame.from.x + along * frame.unit.x - across * frame.unit.y,
    y: frame.from.y + along * frame.unit.y + across * frame.unit.x,
  };
}

/** The rectangle of the whole lane on the sheet, clockwise as seen. */
export function laneCorridor(frame: LaneFrame): Ring {
  return [
    fromLane(frame, 0, 0),
    fromLane(frame, frame.length, 0),
    fromLane(frame, frame.length, frame.width),
    fromLane(frame, 0, frame.width),
  ];
}

/** How far an area reaches along and across the lane. */
export interface LaneExtent {
  readonly minAlong: number;
  readonly maxAlong: number;
  readonly minAcross: number;
  readonly maxAcross: number;
}

export function laneExtent(frame: LaneFrame, area: Area): LaneExtent {
  const extent = { minAlong: Infinity, maxAlong: -Infinity, minAcross: Infinity, maxAcross: -Infinity };
  for (let i = 0; i < area.count; i++) {
    const { along, across } = toLane(frame, area.ax[i]!, area.ay[i]!);
    extent.minAlong = Math.min(extent.minAlong, along);
    extent.maxAlong = Math.max(extent.maxAlong, along);
    extent.minAcross = Math.min(extent.minAcross, across);
    extent.maxAcross = Math.max(extent.maxAcross, across);
  }
  return extent;
}
