import type { Vision } from '../../vision/vision.js';
import { withMats } from '../../vision/mats.js';

/** One number a cell, row by row. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

/** The mean of 2 × 2 cells and so on, or bilinear between cells, whichever way the size goes. */
export function resized(plane: Plane, width: number, height: number, vision: Vision): Plane {
  return withMats((keep) => {
    const from = keep(new vision.Mat(plane.height, plane.width, vision.CV_32FC1));
    from.data32F.set(plane.values);
    const to = keep(new vision.Mat());
    const shrinks = width < plane.width;
    const size = new vision.Size(width, height);
    vision.resize(from, to, size, 0, 0, shrinks ? vision.INTER_AREA : vision.INTER_LINEAR);
    return { width, height, values: to.data32F.slice() };
  });
}

/**
 * Smoothed as by a bell of this deviation, in cells. Two means over squares, one after the other, are near enough to it
 * and take a third of the time.
 */
export function smoothed(plane: Plane, sigma: number, vision: Vision): Plane {
  return withMats((keep) => {
    const mat = keep(new vision.Mat(plane.height, plane.width, vision.CV_32FC1));
    mat.data32F.set(plane.values);
    const once = keep(new vision.Mat());
    const twice = keep(new vision.Mat());
    // Two means over n cells each have a variance of 2 · (n² - 1) / 12.
    const side = Math.max(3, 2 * Math.round((Math.sqrt(6 * sigma * sigma + 1) - 1) / 2) + 1);
    const size = new vision.Size(side, side);
    vision.blur(mat, once, size);
    vision.blur(once, twice, size);
    return { ...plane, values: twice.data32F.slice() };
  });
}

/** Each cell of both, put together by a rule. */
export function combined(a: Plane, b: Plane, rule: (a: number, b: number) => number): Plane {
  const values = new Float32Array(a.values.length);
  for (let i = 0; i < values.length; i++) values[i] = rule(a.values[i]!, b.values[i]!);
  return { ...a, values };
}
