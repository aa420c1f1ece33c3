import type { Point } from '../types/shape.js';
import { areBoxesNear, ringOfEdge } from './area.js';
import type { Area } from './area.js';
import { nearestBoundaries, nearestEdge } from './boundary-distance.js';
import type { Nearest } from './boundary-distance.js';
import { FORGIVEN_MM, forgivenOverlap } from './forgiven.js';
import { outsideDeeperThan, overlapDeeperThan } from './overlap-depth.js';
import { isStrictlyInside } from './point-in-area.js';

/** A distance that was not kept. */
export interface Shortfall {
  /** The distance in mm; negative: how deep the one reaches into the other. */
  readonly measured: number;
  readonly place: Point;
  /** The ring of the container that is too near, 0 for its outline. */
  readonly ring?: number;
}

/**
 * Two areas must keep `required` mm between them; either may lie in an opening of the other. Where less is
 * required than is forgiven, they may touch, and overlap by what is forgiven.
 */
export function findTooNear(one: Area, other: Area, required: number): Shortfall | undefined {
  if (!areBoxesNear(one.box, other.box, Math.max(required, 0))) return undefined;
  const forgiven = forgivenOverlap(required);
  if (required <= FORGIVEN_MM) return asShortfall(overlapDeeperThan(one, other, forgiven));
  const nearest = nearestBoundaries(one, other, required - FORGIVEN_MM);
  if (nearest === undefined && !isFirstCornerInside(one, other) && !isFirstCornerInside(other, one)) {
    return undefined;
  }
  return asShortfall(overlapDeeperThan(one, other, forgiven)) ?? shortfallOf(nearest);
}

/**
 * An area must lie within a container, and keep `required` mm to its outline and its openings. Where less is
 * required than is forgiven, it may touch them, and reach out by what is forgiven.
 */
export function findTooNearEdge(inner: Area, container: Area, required: number): Shortfall | undefined {
  const forgiven = forgivenOverlap(required);
  if (required <= FORGIVEN_MM) {
    const outside = outsideDeeperThan(inner, container, forgiven);
    return outside === undefined ? undefined : outsideShortfall(container, outside);
  }
  const nearest = nearestBoundaries(inner, container, required - FORGIVEN_MM);
  if (nearest === undefined && isWhollyWithin(inner, container)) return undefined;
  const outside = outsideDeeperThan(inner, container, forgiven);
  if (outside !== undefined) return outsideShortfall(container, outside);
  const shortfall = shortfallOf(nearest);
  if (shortfall === undefined || nearest === undefined) return undefined;
  return { ...shortfall, ring: ringOfEdge(container, nearest.edge) };
}

/** For boundaries that keep apart: one corner tells for the whole outer ring. */
function isFirstCornerInside(one: Area, other: Area): boolean {
  return isStrictlyInside(other, one.ax[0]!, one.ay[0]!);
}

/** For boundaries that keep apart: the outer ring lies within, and no opening of the container lies in the area. */
function isWhollyWithin(inner: Area, container: Area): boolean {
  if (!isFirstCornerInside(inner, container)) return false;
  return container.ringStart
    .slice(1, -1)
    .every(
      (edge) => edge >= container.count || !isStrictlyInside(inner, container.ax[edge]!, container.ay[edge]!),
    );
}

function outsideShortfall(
  container: Area,
  outside: { readonly depth: number; readonly place: Point },
): Shortfall {
  const edge = nearestEdge(container, outside.place.x, outside.place.y);
  return { measured: -outside.depth, place: outside.place, ring: ringOfEdge(container, edge) };
}

function shortfallOf(nearest: Nearest | undefined): Shortfall | undefined {
  return nearest === undefined ? undefined : { measured: nearest.distance, place: nearest.place };
}

function asShortfall(
  depth: { readonly depth: number; readonly place: Point } | undefined,
): Shortfall | undefined {
  return depth === undefined ? undefined : { measured: -depth.depth, place: depth.place };
}
