import type { Point } from '@hidebound/geometry';
import type { StatedReference } from '@hidebound/leather';
import type { Photo } from '../photo.js';
import { lightAt } from './light.js';
import { fitLine, meetLines } from './line-fit.js';
import type { FittedLine } from './line-fit.js';
import { CLICKED_PX } from './stated-bodies.js';

/** A stated reference with its corners moved onto the edges nearby, and how exactly each is known, px. */
export interface MeasuredStated {
  readonly stated: StatedReference;
  readonly deviationPx: readonly number[];
}

/** An edge is looked for this far to both sides of the clicked side, px: farther off lies something else. */
const REACH_PX = 5;
const STEP_PX = 0.5;
/** A side is measured between these shares of its length: a card's corners are round. */
const FROM_SHARE = 0.15;
const TO_SHARE = 0.85;
const PROFILES = 64;
/** Light changes by this much across an edge, as a share of the brightest. */
const LEAST_CHANGE = 0.02;
/** So many of the profiles must show the edge, this near to one line, px. */
const LEAST_FOUND_SHARE = 0.7;
const MOST_SCATTER_PX = 0.7;
/** A corner between two measured edges, px (deviation); what it is taken from may be rounded or worn. */
const MEASURED_PX = 0.4;

/**
 * Moves the clicked corners of a rectangle or card to where the edges beside its sides meet. A side without a clear edge
 * leaves its corners as they were clicked. Readings on rules stay as they are.
 */
export function measureStated(photo: Photo, stated: StatedReference): MeasuredStated {
  if (stated.kind === 'rules') return { stated, deviationPx: [] };
  const sides = stated.corners.map((corner, i) => edgeBeside(photo, corner, stated.corners[(i + 1) % 4]!));
  const deviationPx: number[] = [];
  const corners = stated.corners.map((corner, i) => {
    const [before, after] = [sides[(i + 3) % 4], sides[i]];
    const met = before === undefined || after === undefined ? undefined : meetLines(before, after);
    const isNear = met !== undefined && Math.hypot(met.x - corner.x, met.y - corner.y) < 2 * REACH_PX;
    deviationPx.push(isNear ? MEASURED_PX : CLICKED_PX);
    return isNear ? met : corner;
  }) as unknown as readonly [Point, Point, Point, Point];
  return { stated: { ...stated, corners }, deviationPx };
}

/** The straight edge beside the line between two clicked corners. */
function edgeBeside(photo: Photo, from: Point, to: Point): FittedLine | undefined {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const across = { x: -(to.y - from.y) / length, y: (to.x - from.x) / length };
  const found: Point[] = [];
  for (let i = 0; i < PROFILES; i++) {
    const share = FROM_SHARE + ((TO_SHARE - FROM_SHARE) * i) / (PROFILES - 1);
    const at = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
    const move = steepestAt(photo, at, across);
    if (move !== undefined) found.push({ x: at.x + across.x * move, y: at.y + across.y * move });
  }
  const line = found.length < LEAST_FOUND_SHARE * PROFILES ? undefined : fitLine(found);
  if (line === undefined) return undefined;
  const near = found.filter(
    ({ x, y }) => Math.abs(x * line.normal.x + y * line.normal.y - line.offset) < 2 * MOST_SCATTER_PX,
  );
  return near.length >= LEAST_FOUND_SHARE * PROFILES && line.scatter < MOST_SCATTER_PX ? line : undefined;
}

/** Where light changes most across, px from the middle, between steps by a parabola. */
function steepestAt(photo: Photo, at: Point, across: Point): number | undefined {
  const half = Math.round(REACH_PX / STEP_PX);
  const change: number[] = [];
  for (let i = -half; i <= half; i++) {
    const [near, far] = [i - 1, i + 1].map((step) =>
      lightAt(photo, at.x + across.x * step * STEP_PX, at.y + across.y * step * STEP_PX),
    );
    change.push(Math.abs(far! - near!));
  }
  let best = 1;
  for (let i = 1; i < change.length - 1; i++) if (change[i]! > change[best]!) best = i;
  const [before, peak, after] = [change[best - 1]!, change[best]!, change[best + 1]!];
  if (!(peak > LEAST_CHANGE)) return undefined;
  const bend = before - 2 * peak + after;
  const part = bend < 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
  return (best - half + part) * STEP_PX;
}
