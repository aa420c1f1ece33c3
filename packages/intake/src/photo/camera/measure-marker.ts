import type { Point } from '@hidebound/geometry';
import { MARKER_FIELDS } from '@hidebound/leather';
import type { Photo } from '../photo.js';
import { fitLine, meetLines } from './line-fit.js';
import { measureSide } from './measure-side.js';
import type { MeasuredSide } from './measure-side.js';
import type { SeenMarker } from './seen-references.js';

type Corners = SeenMarker['corners'];

/** Measured a second time from where the first time found the sides, so that the detector's misses don't matter. */
const ROUNDS = 2;
/** A corner that moves farther than this many fields belongs to something else. */
const FARTHEST_MOVE_FIELDS = 1;

/** The marker with its corners measured from its sides, or undefined where its sides can't be found: no real one. */
export function measureMarker(photo: Photo, id: number, found: Corners): SeenMarker | undefined {
  let corners = found;
  let sides: readonly MeasuredSide[] | undefined;
  for (let round = 0; round < ROUNDS; round++) {
    sides = measureSides(photo, corners);
    const met = sides === undefined ? undefined : cornersOfSides(sides);
    if (sides === undefined || met === undefined || isFarOff(found, met)) return undefined;
    corners = met;
  }
  const measured = sides!;
  const mean = (value: (side: MeasuredSide) => number): number =>
    measured.reduce((sum, side) => sum + value(side) / measured.length, 0);
  return {
    id,
    corners,
    sides: measured.map(({ points, scatterPx }) => ({ points, scatterPx })) as unknown as SeenMarker['sides'],
    blurPx: mean(({ blurPx }) => blurPx),
    white: mean(({ white }) => white),
    black: mean(({ black }) => black),
  };
}

function measureSides(photo: Photo, corners: Corners): MeasuredSide[] | undefined {
  const sides: MeasuredSide[] = [];
  for (let i = 0; i < 4; i++) {
    const from = corners[i]!;
    const to = corners[(i + 1) % 4]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    // Corners run clockwise as seen (y down), so outwards is to the left of the way.
    const outward = { x: (to.y - from.y) / length, y: -(to.x - from.x) / length };
    const side = measureSide(photo, from, to, outward, widthAcross(corners, i) / MARKER_FIELDS);
    if (side === undefined) return undefined;
    sides.push(side);
  }
  return sides;
}

/** How far the opposite side lies away. */
function widthAcross(corners: Corners, side: number): number {
  const [a, b, c, d] = [0, 1, 2, 3].map((i) => corners[(side + i) % 4]!) as [Point, Point, Point, Point];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const distance = (p: Point): number =>
    Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length;
  return Math.min(distance(c), distance(d));
}

/** The corners where neighbouring sides meet; sides as top, right, bottom, left. */
export function cornersOfSides(sides: readonly { readonly points: readonly Point[] }[]): Corners | undefined {
  const lines = sides.map(({ points }) => fitLine(points));
  const corners: Point[] = [];
  for (let i = 0; i < 4; i++) {
    const before = lines[(i + 3) % 4];
    const after = lines[i];
    const corner = before === undefined || after === undefined ? undefined : meetLines(before, after);
    if (corner === undefined) return undefined;
    corners.push(corner);
  }
  return corners as unknown as Corners;
}

function isFarOff(found: Corners, corners: Corners): boolean {
  const side = Math.hypot(found[2].x - found[0].x, found[2].y - found[0].y) / Math.SQRT2;
  const limit = Math.max(2, (FARTHEST_MOVE_FIELDS * side) / MARKER_FIELDS);
  return corners.some((corner, i) => Math.hypot(corner.x - found[i]!.x, corner.y - found[i]!.y) > limit);
}
