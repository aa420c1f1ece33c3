import { angleBetweenDeg, atan2Deg, curveEndPoints, distanceBetween, pointToRing } from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import type { Notch, Punch } from '@hidebound/leather';
import { NOTCH_REACH_MM } from '../limits.js';
import { exactNumber } from '../lines/finished.js';
import type { RoleLine } from '../lines/role-line.js';

/** A stated number that lies farther than this from what is drawn is of another drawing: someone changed the line since. */
const CHANGED_MM = 0.005;
const DEGREES_PER_RADIAN = 180 / Math.PI;

/** The punch that is drawn, with its diameter as it is stated if that is the drawn one up to rounding. */
export function exactPunch({ source }: RoleLine, drawn: Punch): Punch {
  const stated = exactNumber(source, 'diameter');
  if (stated === undefined || Math.abs(stated - drawn.diameterMm) > CHANGED_MM) return drawn;
  return { at: drawn.at, diameterMm: stated };
}

/** The notch as it is stated beside a straight mark from the edge inwards; nothing if the mark says something else. */
export function exactNotch({ source, curve }: RoleLine, cut: Ring): Notch | undefined {
  const angleDeg = exactNumber(source, 'angle');
  const depthMm = exactNumber(source, 'depth');
  if (angleDeg === undefined || depthMm === undefined || curve.segments.length !== 1) return undefined;
  const { start, end } = curveEndPoints(curve);
  const drawn = distanceBetween(start, end);
  if (Math.abs(drawn - depthMm) > CHANGED_MM || pointToRing(start, cut) > NOTCH_REACH_MM) return undefined;
  const off = angleBetweenDeg(angleDeg, atan2Deg(end.y - start.y, end.x - start.x));
  if ((Math.abs(off) / DEGREES_PER_RADIAN) * drawn > CHANGED_MM) return undefined;
  return { at: start, angleDeg, depthMm };
}
