import {
  createSpatialIndex,
  curveEndPoints,
  distanceBetween,
  flattenCurve,
  growBox,
} from '@hidebound/geometry';
import type { Box, Curve, SpatialIndex } from '@hidebound/geometry';
import { FLATTEN_MM, JOIN_MM } from '../limits.js';
import { axisThrough, offAxis, overlapAlong, straightStretches } from './axis.js';
import type { Axis, Stretch } from './axis.js';

/** A mirror line as the stretch that it is; nothing if it is closed, bent or without length. */
export function stretchOfMirror(curve: Curve): Stretch | undefined {
  if (curve.closed) return undefined;
  const { start, end } = curveEndPoints(curve);
  const stretch = { from: start, to: end };
  const axis = axisThrough(stretch);
  if (axis === undefined) return undefined;
  const isStraight = flattenCurve(curve, FLATTEN_MM).every((p) => Math.abs(offAxis(axis, p)) <= JOIN_MM);
  return isStraight ? stretch : undefined;
}

/** Of two stretches that run side by side, the shorter one must lie beside the longer one with this share at least. */
const SHARE_SIDE_BY_SIDE = 0.5;

/**
 * The axis that two stretches have in common: the line through the longer one, from which the shorter one's ends are at
 * most 0.1 mm off. Nothing if they don't coincide.
 */
export function commonAxis(a: Stretch, b: Stretch): Axis | undefined {
  const [lengthA, lengthB] = [distanceBetween(a.from, a.to), distanceBetween(b.from, b.to)];
  const [long, short] = lengthA >= lengthB ? [a, b] : [b, a];
  const axis = axisThrough(long);
  if (axis === undefined) return undefined;
  if (Math.abs(offAxis(axis, short.from)) > JOIN_MM || Math.abs(offAxis(axis, short.to)) > JOIN_MM) {
    return undefined;
  }
  const overlap = overlapAlong(axis, long, short);
  return overlap > 0 && overlap >= SHARE_SIDE_BY_SIDE * Math.min(lengthA, lengthB) ? axis : undefined;
}

/** The straight stretches of an outline, to be found by where they lie. */
export interface Edges {
  readonly stretches: readonly Stretch[];
  readonly index: SpatialIndex;
}

export function edgesOf(outline: Curve): Edges {
  const stretches = straightStretches(outline);
  return { stretches, index: createSpatialIndex(stretches.map(boxOf)) };
}

export function boxOf({ from, to }: Stretch): Box {
  return {
    minX: Math.min(from.x, to.x),
    minY: Math.min(from.y, to.y),
    maxX: Math.max(from.x, to.x),
    maxY: Math.max(from.y, to.y),
  };
}

/** The axis about which an outline is a half: the longest of its straight stretches that lie on the mirror line. */
export function axisOnEdge({ stretches, index }: Edges, mirror: Stretch): Axis | undefined {
  let best: { readonly axis: Axis; readonly length: number; readonly i: number } | undefined;
  index.query(growBox(boxOf(mirror), JOIN_MM), (i) => {
    const stretch = stretches[i]!;
    const length = distanceBetween(stretch.from, stretch.to);
    if (best !== undefined && (length < best.length || (length === best.length && i > best.i))) return;
    const axis = commonAxis(stretch, mirror);
    if (axis !== undefined) best = { axis, length, i };
  });
  return best?.axis;
}
