import type { Point } from '@hidebound/geometry';

/**
 * How a lens moves what it shows: a place at d from `axis`, in units of `radiusPx`, comes to lie at
 * d · (1 + k1 · r² + k2 · r⁴) + (2 p1 dx dy + p2 (r² + 2 dx²), p1 (r² + 2 dy²) + 2 p2 dx dy), r being the length of d.
 * This is the model of OpenCV's documentation ("Camera Calibration and 3D Reconstruction") with half of the picture's
 * diagonal in the place of the focal length, so that k1 is comparable between cameras.
 */
export interface Lens {
  readonly axis: Point;
  /** Half of the picture's diagonal, px. */
  readonly radiusPx: number;
  readonly k1: number;
  readonly k2: number;
  /** The lens' parts lie off one axis; 0 where not known. */
  readonly p1: number;
  readonly p2: number;
}

/**
 * How one photo sees the floor. A place on the floor (mm) goes through the homography to where a lens without distortion
 * would show it; then the lens moves it.
 */
export interface Camera extends Lens {
  readonly width: number;
  readonly height: number;
  /** Row by row, nine numbers, the last one 1: floor mm to photo px. */
  readonly homography: readonly number[];
}
