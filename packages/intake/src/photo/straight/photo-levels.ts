import type { Photo } from '../photo.js';
import type { Keep } from '../vision/mats.js';
import { rgbMat } from '../vision/picture-mats.js';
import type { Mat, Vision } from '../vision/vision.js';

/** A photo in its own size and halved again and again: what shrinks is read from a smaller one, so that nothing flickers. */
export type PhotoLevels = readonly Mat[];

const LEVELS = 3;

/** The matrices are kept by the caller. */
export function photoLevels(photo: Photo, vision: Vision, keep: Keep): PhotoLevels {
  const levels: Mat[] = [keep(rgbMat(photo, vision))];
  while (levels.length < LEVELS) {
    const larger = levels[levels.length - 1]!;
    const half = keep(new vision.Mat());
    const size = new vision.Size(Math.ceil(larger.cols / 2), Math.ceil(larger.rows / 2));
    vision.resize(larger, half, size, 0, 0, vision.INTER_AREA);
    levels.push(half);
  }
  return levels;
}

/** The level for a place where so many photo px fall on one px of the picture. */
export function levelFor(shrink: number): number {
  let level = 0;
  while (level < LEVELS - 1 && shrink > NEXT_LEVEL_FROM * 2 ** level) level += 1;
  return level;
}

/** Up to here cubic interpolation of the larger level shows no steps. */
const NEXT_LEVEL_FROM = 1.6;
