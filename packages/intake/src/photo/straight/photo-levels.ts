import type { Photo } from '../photo.js';
import type { Keep } from '../vision/mats.js';
import { rgbMat } from '../vision/picture-mats.js';
import type { Mat, Vision } from '../vision/vision.js';

/**
 * A photo in its own size (level 0) and halved again and again, each made when it is first asked for: what shrinks is read
 * from a smaller one, so that nothing flickers.
 */
export type PhotoLevels = (level: number) => Mat;

const LEVELS = 3;

/** The matrices are kept by the caller. */
export function photoLevels(photo: Photo, vision: Vision, keep: Keep): PhotoLevels {
  const levels: Mat[] = [];
  return (level) => {
    if (levels.length === 0) levels.push(keep(rgbMat(photo, vision)));
    while (levels.length <= level) levels.push(keep(halved(levels[levels.length - 1]!, vision)));
    return levels[level]!;
  };
}

/** An odd last row or column is lost, so that every pixel is the mean of four. */
function halved(larger: Mat, vision: Vision): Mat {
  const size = new vision.Size(Math.floor(larger.cols / 2), Math.floor(larger.rows / 2));
  const whole = larger.roi(new vision.Rect(0, 0, 2 * size.width, 2 * size.height));
  const half = new vision.Mat();
  vision.resize(whole, half, size, 0, 0, vision.INTER_AREA);
  whole.delete();
  return half;
}

/** The level for a place where so many photo px fall on one px of the picture. */
export function levelFor(shrink: number): number {
  let level = 0;
  while (level < LEVELS - 1 && shrink > NEXT_LEVEL_FROM * 2 ** level) level += 1;
  return level;
}

/** Up to here cubic interpolation of the larger level shows no steps. */
const NEXT_LEVEL_FROM = 1.6;
