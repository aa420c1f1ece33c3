import { pointInRing, ringBox } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import { placesInside } from './places-inside.js';

/** A line through a place, its angle in radians. */
export interface Axis {
  readonly at: Point;
  readonly angle: number;
}

/** Cells of the grid along the outline's longer side. */
const CELLS = 56;

/** Points of an even grid that lie in the leather. */
export function gridInside(outline: Ring, openings: readonly Ring[]): Point[] {
  const { minX, minY, maxX, maxY } = ringBox(outline);
  return placesInside({ outer: outline, openings }, Math.max(maxX - minX, maxY - minY) / CELLS);
}

/** Ends of the axis are drawn in by this much, so that they lie within the outline. */
const DRAWN_IN_MM = 1;

/** The longest stretch of the axis within the ring, by the crossings furthest apart; nothing if it meets none. */
export function axisEnds(ring: Ring, { at, angle }: Axis): readonly [Point, Point] | undefined {
  const along = { x: Math.cos(angle), y: Math.sin(angle) };
  const crossings: number[] = [];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const sideA = along.x * (a.y - at.y) - along.y * (a.x - at.x);
    const sideB = along.x * (b.y - at.y) - along.y * (b.x - at.x);
    if (sideA <= 0 === sideB <= 0) return;
    const share = sideA / (sideA - sideB);
    crossings.push(
      (a.x + share * (b.x - a.x) - at.x) * along.x + (a.y + share * (b.y - a.y) - at.y) * along.y,
    );
  });
  if (crossings.length < 2) return undefined;
  const place = (t: number): Point => ({ x: at.x + t * along.x, y: at.y + t * along.y });
  const ends = [
    place(Math.min(...crossings) + DRAWN_IN_MM),
    place(Math.max(...crossings) - DRAWN_IN_MM),
  ] as const;
  return ends.every((end) => pointInRing(end, ring) === 'inside') ? ends : undefined;
}

/** Share of the length, at either end, in which widths are compared. */
const END_SHARE = 0.22;

/** How much leather lies near the start and near the end of a stretch of the axis, in grid points. */
export function acrossAxis(
  points: readonly Point[],
  { angle }: Axis,
  a: Point,
  b: Point,
): { readonly start: number; readonly end: number } {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  let start = 0;
  let end = 0;
  for (const p of points) {
    const along = ((p.x - a.x) * Math.cos(angle) + (p.y - a.y) * Math.sin(angle)) / length;
    if (along < END_SHARE) start += 1;
    else if (along > 1 - END_SHARE) end += 1;
  }
  return { start, end };
}
