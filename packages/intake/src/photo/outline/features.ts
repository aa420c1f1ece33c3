import { COLOUR_NUMBERS, lightOf, redOf, yellowOf } from './colour.js';
import type { Level } from './level.js';
import type { Light } from './light.js';
import { lightAt } from './light.js';

/** Three numbers of colour, and how rough a place is. */
export const FEATURE_NUMBERS = COLOUR_NUMBERS + 1;

/**
 * The least spread that any colour is given: uneven light and drift move lightness most, the noise of a JPEG's colours
 * moves the others, and roughness is measured within small blocks.
 */
export const LEAST_SPREAD: readonly number[] = [3.5, 2, 2, 4];

/** Stretches small roughness: 0 for an even block, about 20 for grey that varies by 7 of 255. */
const ROUGHNESS_SCALE = 10;

/** The features of every pixel of a level with roughness, the light upon it taken out. */
export function featuresOf(level: Level, light: Light): Float32Array {
  const { width, height, lab, roughness } = level;
  const features = new Float32Array(width * height * FEATURE_NUMBERS);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const pixel = y * width + x;
      const at = pixel * FEATURE_NUMBERS;
      features[at] = lightOf(lab, pixel) - lightAt(light, x / width, y / height);
      features[at + 1] = redOf(lab, pixel);
      features[at + 2] = yellowOf(lab, pixel);
      features[at + 3] = ROUGHNESS_SCALE * Math.log1p(roughness[pixel]!);
    }
  return features;
}
