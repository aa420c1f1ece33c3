import type { Mat, Vision } from './vision.js';

/** Pixels of three colours row by row, as photos and straightened pictures hold them. */
interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** A copy of the pixels as a matrix of three channels; the caller lets go of it. */
export function rgbMat({ width, height, rgb }: Pixels, vision: Vision): Mat {
  const mat = new vision.Mat(height, width, vision.CV_8UC3);
  mat.data.set(rgb);
  return mat;
}

/** A copy of the pixels in grey; the caller lets go of it. */
export function greyMat(pixels: Pixels, vision: Vision): Mat {
  const colour = rgbMat(pixels, vision);
  const grey = new vision.Mat();
  vision.cvtColor(colour, grey, vision.COLOR_RGB2GRAY);
  colour.delete();
  return grey;
}
