/**
 * A camera's pixels are square, so a homography from a plane can't be just any: its first two columns, seen from the lens'
 * axis and divided by the focal length, are square to each other and equally long (Zhang 2000, "A flexible new technique
 * for camera calibration", section 2.3). With a focal length that is roughly known this tells a steep view from a sheet that
 * is not flat, where there is only one sheet.
 */

/** Slots of the condition: eight of the homography, axis x and y, and the logarithm of the focal length over the usual. */
export const CONDITION_SLOTS = 11;
/** Pixels are square and photos uncropped by this much, as a share (deviation). */
export const CONDITION_DEVIATION = 0.003;
/** Focal lengths of phones in half diagonals: 26 mm on the 35 mm film's half diagonal of 21.6 mm is the usual one. */
export const USUAL_FOCAL = 1.2;

/** Both conditions; 0 where they hold. */
export function squareness(v: Float64Array, out: Float64Array): void {
  const focal = USUAL_FOCAL * Math.exp(v[10]!);
  const ax = (v[0]! - v[8]! * v[6]!) / focal;
  const ay = (v[3]! - v[9]! * v[6]!) / focal;
  const bx = (v[1]! - v[8]! * v[7]!) / focal;
  const by = (v[4]! - v[9]! * v[7]!) / focal;
  const aSq = ax * ax + ay * ay + v[6]! * v[6]!;
  const bSq = bx * bx + by * by + v[7]! * v[7]!;
  out[0] = (ax * bx + ay * by + v[6]! * v[7]!) / Math.sqrt(aSq * bSq);
  out[1] = Math.log(aSq / bSq) / 2;
}
