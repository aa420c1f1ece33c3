import { applyAffine, invertAffine } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import type { PhotoSize } from './assemble.js';
import { halfDiagonal } from './assemble.js';
import type { Camera } from './camera.js';
import { applyHomography, composeHomographies, invertHomography, normalizeHomography } from './homography.js';
import { withoutLens } from './lens.js';
import { FLOOR_UNIT_MM } from './unknowns.js';

/** Numbers of one camera: eight of the homography, six of the lens. */
export const CAMERA_NUMBERS = 14;

/**
 * The floor's frame told by the first photo: its origin is what the middle of the photo shows, and a step to the right there
 * is x. Gives the way from it (mm) to the frame in which the unknowns hold.
 */
export function innerFrame(first: ArrayLike<number>): Affine {
  const lens = { axis: { x: first[12]!, y: first[13]! }, radiusPx: 1, ...lensNumbers(first) };
  const back = invertHomography([...Array.from(first).slice(0, 8), 1]);
  const floorAt = (px: Point): Point => applyHomography(back, withoutLens(lens, px));
  const origin = floorAt({ x: 0, y: 0 });
  const right = floorAt({ x: RIGHT_STEP, y: 0 });
  const length = Math.hypot(right.x - origin.x, right.y - origin.y);
  const cos = (right.x - origin.x) / length / FLOOR_UNIT_MM;
  const sin = (right.y - origin.y) / length / FLOOR_UNIT_MM;
  return { a: cos, b: sin, c: -sin, d: cos, e: origin.x, f: origin.y };
}

/** A step to the right on the photo, in half diagonals. */
const RIGHT_STEP = 1e-3;

function lensNumbers(values: ArrayLike<number>): Pick<Camera, 'k1' | 'k2' | 'p1' | 'p2'> {
  return { k1: values[8]!, k2: values[9]!, p1: values[10]!, p2: values[11]! };
}

/** The camera in px and floor mm from its numbers. */
export function cameraOf(values: ArrayLike<number>, { width, height }: PhotoSize, inner: Affine): Camera {
  const radiusPx = halfDiagonal({ width, height });
  const middle = { x: (width - 1) / 2, y: (height - 1) / 2 };
  const toPx = [radiusPx, 0, middle.x, 0, radiusPx, middle.y, 0, 0, 1];
  const toInner = [inner.a, inner.c, inner.e, inner.b, inner.d, inner.f, 0, 0, 1];
  const unit = [...Array.from(values).slice(0, 8), 1];
  return {
    width,
    height,
    homography: normalizeHomography(composeHomographies(toPx, composeHomographies(unit, toInner))),
    axis: { x: middle.x + radiusPx * values[12]!, y: middle.y + radiusPx * values[13]! },
    radiusPx,
    ...lensNumbers(values),
  };
}

/** A place in the unknowns' frame, on the floor in mm. */
export function toFloorMm(inner: Affine, point: Point): Point {
  return applyAffine(invertAffine(inner), point);
}
