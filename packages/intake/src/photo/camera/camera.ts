import type { Point } from '@hidebound/geometry';

/**
 * How one photo sees the floor. A place on the floor (mm) goes through the homography to where a lens without distortion
 * would show it; then it moves along the ray from the axis: d · (1 + k1 · r² + k2 · r⁴), where d is its way from `axis`
 * and r the length of d over `radiusPx`. This is OpenCV's radial model with half of the picture's diagonal in the place
 * of the focal length.
 */
export interface Camera {
  readonly width: number;
  readonly height: number;
  /** Row by row, nine numbers, the last one 1: floor mm to photo px. */
  readonly homography: readonly number[];
  readonly axis: Point;
  /** Half of the picture's diagonal, px. */
  readonly radiusPx: number;
  readonly k1: number;
  readonly k2: number;
}
