import type { Point } from '../types/shape.js';
import { areBoxesNear } from './area.js';
import type { Area } from './area.js';
import { distanceToBoundary } from './boundary-distance.js';
import { deepPoints } from './deep-points.js';
import { farStretches } from './far-stretches.js';
import type { Stretch } from './far-stretches.js';
import { isStrictlyInside } from './point-in-area.js';

/** A place where one area reaches into another, or out of it, and how deep (mm). */
export interface Depth {
  readonly depth: number;
  readonly place: Point;
}

/** A stretch is sampled so finely, and so often where it proves deeper, for the depth that is reported. */
const SAMPLES = 8;
const ROUNDS = 20;

/** A depth that is reported is true to this (mm). */
const FINE_MM = 1e-6;

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

/** The deepest place along the boundary of `mover` that lies deeper than `forgiven` in (or outside) `host`. */
export function reachAlongBoundary(
  mover: Area,
  host: Area,
  forgiven: number,
  sense: 'into' | 'out of',
): Depth | undefined {
  let found: Depth | undefined;
  let continues = false;
  let isInside = false;
  for (let i = 0; i < mover.count; i++) {
    const edge = edgeOf(mover, i);
    if (sense === 'into' && isBeside(edge, host)) {
      continues = false;
      continue;
    }
    const stretches = farStretches(edge.px, edge.py, edge.qx, edge.qy, [host], found?.depth ?? forgiven);
    for (const stretch of stretches) {
      // A stretch that goes on, never near the boundary, from the edge before is on the same side as that.
      const goesOn = continues && stretch[0] === 0 && !mover.ringStart.includes(i);
      if (!goesOn) isInside = isStretchInside(edge, stretch, host);
      if (isInside === (sense === 'into')) found = deepestOnStretch(edge, stretch, host, found);
      continues = stretch[1] === 1;
    }
    if (stretches.length === 0) continues = false;
  }
  return found;
}

interface Edge {
  readonly px: number;
  readonly py: number;
  readonly qx: number;
  readonly qy: number;
}

function edgeOf(area: Area, i: number): Edge {
  return { px: area.ax[i]!, py: area.ay[i]!, qx: area.bx[i]!, qy: area.by[i]! };
}

function pointOf({ px, py, qx, qy }: Edge, t: number): Point {
  return { x: px + t * (qx - px), y: py + t * (qy - py) };
}

function isStretchInside(edge: Edge, [from, to]: Stretch, host: Area): boolean {
  const middle = pointOf(edge, (from + to) / 2);
  return isStrictlyInside(host, middle.x, middle.y);
}

function deepPointWithin(one: Area, other: Area): Depth | undefined {
  for (const point of deepPoints(one)) {
    if (!isStrictlyInside(other, point.x, point.y)) continue;
    return { depth: distanceToBoundary(one, point.x, point.y), place: point };
  }
  return undefined;
}

/**
 * The deepest place of a stretch, unless `before` is deeper: sampled, then sampled again where it is deeper than
 * that. All of the stretch lies on one side of the boundary.
 */
function deepestOnStretch(edge: Edge, stretch: Stretch, host: Area, before: Depth | undefined): Depth {
  let best = before;
  let open: readonly Stretch[] = [stretch];
  for (let round = 0; round < ROUNDS && open.length > 0; round++) {
    for (const [from, to] of open) {
      for (let k = 0; k <= SAMPLES; k++) {
        const place = pointOf(edge, from + (k / SAMPLES) * (to - from));
        const depth = distanceToBoundary(host, place.x, place.y);
        if (best === undefined || depth > best.depth) best = { depth, place };
      }
    }
    open = deeperStretches(edge, stretch, host, best!.depth + FINE_MM);
  }
  return best!;
}

function deeperStretches(edge: Edge, [low, high]: Stretch, host: Area, reach: number): readonly Stretch[] {
  return farStretches(edge.px, edge.py, edge.qx, edge.qy, [host], reach)
    .map(([from, to]): Stretch => [Math.max(from, low), Math.min(to, high)])
    .filter(([from, to]) => from < to);
}

function isBeside({ px, py, qx, qy }: Edge, { box }: Area): boolean {
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
