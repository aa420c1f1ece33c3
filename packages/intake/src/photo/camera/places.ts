import type { Point } from '@hidebound/geometry';
import type { Camera } from './camera.js';
import { applyHomography, invertHomography } from './homography.js';
import { throughLens, withoutLens } from './lens.js';

/** Where a photo shows a place of the floor (mm): px, the middle of the first pixel being (0, 0). */
export function toPhotoPx(camera: Camera, floor: Point): Point {
  return throughLens(camera, applyHomography(camera.homography, floor));
}

/** The place of the floor (mm) that a photo shows at a place (px). The inverse of `toPhotoPx`. */
export function toFloorPoint(camera: Camera, px: Point): Point {
  return applyHomography(invertHomography(camera.homography), withoutLens(camera, px));
}

/** False beyond the horizon, where the formula still gives a place but the photo can't show it. */
export function isBeforeCamera(camera: Camera, { x, y }: Point): boolean {
  return camera.homography[6]! * x + camera.homography[7]! * y + camera.homography[8]! > 0;
}

/** True where the photo shows the place of the floor. */
export function isInPhoto(camera: Camera, floor: Point): boolean {
  if (!isBeforeCamera(camera, floor)) return false;
  const { x, y } = toPhotoPx(camera, floor);
  return x >= -0.5 && y >= -0.5 && x <= camera.width - 0.5 && y <= camera.height - 0.5;
}

/** Pixels that the photo has for a mm of the floor there, in the direction in which it has fewest. */
export function pxPerMmAt(camera: Camera, floor: Point): number {
  const at = toPhotoPx(camera, floor);
  const right = toPhotoPx(camera, { x: floor.x + 1, y: floor.y });
  const down = toPhotoPx(camera, { x: floor.x, y: floor.y + 1 });
  return leastStretch(right.x - at.x, down.x - at.x, right.y - at.y, down.y - at.y);
}

/** The smaller singular value of the matrix (a b; c d). */
function leastStretch(a: number, b: number, c: number, d: number): number {
  const half = (a * a + b * b + c * c + d * d) / 2;
  const determinant = Math.abs(a * d - b * c);
  const larger = Math.sqrt(half + Math.sqrt(Math.max(0, half * half - determinant * determinant)));
  return larger === 0 ? 0 : determinant / larger;
}
