import { curveEndPoints, distanceBetween, flattenCurve } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
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

/** The axis about which a closed cut line is a half: one of its straight stretches lies on the mirror line. */
export function axisOnEdge(cut: Curve, mirror: Stretch): Axis | undefined {
  const axes = straightStretches(cut)
    .map((stretch) => ({
      axis: commonAxis(stretch, mirror),
      length: distanceBetween(stretch.from, stretch.to),
    }))
    .filter(({ axis }) => axis !== undefined);
  return axes.reduce<(typeof axes)[number] | undefined>(
    (best, next) => (best === undefined || next.length > best.length ? next : best),
    undefined,
  )?.axis;
}
