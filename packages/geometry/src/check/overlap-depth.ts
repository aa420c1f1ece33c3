import type { Point } from '../types/shape.js';
import { areBoxesNear } from './area.js';
import type { Area } from './area.js';
import { distanceToBoundary } from './boundary-distance.js';
import { deepPoints } from './deep-points.js';
import { farStretches } from './far-stretches.js';
import { isStrictlyInside } from './point-in-area.js';

/**
 * A place where one area reaches into another, or out of it, and how deep it was found to be there (mm):
 * at least that; the deepest place may lie elsewhere.
 */
export interface Depth {
  readonly depth: number;
  readonly place: Point;
}

/** Where a stretch is sampled for the depth that is reported. */
const SAMPLES = 16;

/**
 * Tells whether two areas overlap deeper than `forgiven` (mm), and where.
 *
 * The depth of an overlap is the greatest distance from a point that lies in both areas to the boundary of
 * one of them: a corner, an edge or a sliver that is pushed in by d has depth d, and of two areas whose true
 * shapes only touch, each moved by rounding, none is deeper in the other than the two roundings together.
 * The deep part of an area (farther than `forgiven` from its boundary) is either met by the other's boundary,
 * or swallowed whole, or left alone. So it suffices to look along both boundaries, exactly, and then at one
 * point of each deep part: that finds areas laid on top of each other, whose boundaries coincide.
 */
export function overlapDeeperThan(one: Area, other: Area, forgiven: number): Depth | undefined {
  if (!areBoxesNear(one.box, other.box, -forgiven)) return undefined;
  const along = deepest([
    reachAlongBoundary(one, other, forgiven, 'into'),
    reachAlongBoundary(other, one, forgiven, 'into'),
  ]);
  return along ?? deepPointWithin(one, other) ?? deepPointWithin(other, one);
}

/**
 * Tells whether an area lies outside of a container, or over one of its openings, deeper than `forgiven`
 * (mm), and where; by the same reasoning, with the outside in the place of the second area.
 */
export function outsideDeeperThan(inner: Area, container: Area, forgiven: number): Depth | undefined {
  const along = deepest([
    reachAlongBoundary(inner, container, forgiven, 'out of'),
    reachAlongBoundary(container, inner, forgiven, 'into'),
  ]);
  if (along !== undefined) return along;
  for (const point of deepPoints(inner)) {
    if (isStrictlyInside(container, point.x, point.y)) continue;
    return { depth: distanceToBoundary(inner, point.x, point.y), place: point };
  }
  return undefined;
}

/** The deepest place found along the boundary of `mover` that lies deeper than `forgiven` in (or outside) `host`. */
export function reachAlongBoundary(
  mover: Area,
  host: Area,
  forgiven: number,
  sense: 'into' | 'out of',
): Depth | undefined {
  let found: Depth | undefined;
  let continues = false;
  let wasInside = false;
  for (let i = 0; i < mover.count; i++) {
    const px = mover.ax[i]!;
    const py = mover.ay[i]!;
    const qx = mover.bx[i]!;
    const qy = mover.by[i]!;
    if (sense === 'into' && isBeside(px, py, qx, qy, host)) {
      continues = false;
      continue;
    }
    const stretches = farStretches(px, py, qx, qy, [host], forgiven);
    for (const stretch of stretches) {
      const [from, to] = stretch;
      // An edge that goes on, far from the boundary, from one that ended so is on the same side.
      const isSame = continues && from === 0 && mover.ringStart.indexOf(i) < 0;
      const middle = (from + to) / 2;
      if (!isSame) wasInside = isStrictlyInside(host, px + middle * (qx - px), py + middle * (qy - py));
      if (wasInside === (sense === 'into')) {
        found = deepest([found, deepestOnStretch(px, py, qx, qy, stretch, host)]);
      }
      continues = to === 1;
    }
    if (stretches.length === 0 || stretches[stretches.length - 1]![1] < 1) continues = false;
  }
  return found;
}

function deepPointWithin(one: Area, other: Area): Depth | undefined {
  for (const point of deepPoints(one)) {
    if (!isStrictlyInside(other, point.x, point.y)) continue;
    return { depth: distanceToBoundary(one, point.x, point.y), place: point };
  }
  return undefined;
}

function deepestOnStretch(
  px: number,
  py: number,
  qx: number,
  qy: number,
  [from, to]: readonly [number, number],
  host: Area,
): Depth {
  let depth = -1;
  let place: Point = { x: px, y: py };
  for (let k = 0; k <= SAMPLES; k++) {
    const t = from + (k / SAMPLES) * (to - from);
    const x = px + t * (qx - px);
    const y = py + t * (qy - py);
    const here = distanceToBoundary(host, x, y);
    if (here <= depth) continue;
    depth = here;
    place = { x, y };
  }
  return { depth, place };
}

function isBeside(px: number, py: number, qx: number, qy: number, { box }: Area): boolean {
  return (
    Math.max(px, qx) < box.minX ||
    Math.min(px, qx) > box.maxX ||
    Math.max(py, qy) < box.minY ||
    Math.min(py, qy) > box.maxY
  );
}

function deepest(found: readonly (Depth | undefined)[]): Depth | undefined {
  let best: Depth | undefined;
  for (const one of found)
    if (one !== undefined && (best === undefined || one.depth > best.depth)) best = one;
  return best;
}
