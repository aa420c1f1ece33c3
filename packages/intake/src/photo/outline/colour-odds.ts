import { COLOUR_NUMBERS, lightOf, redOf, yellowOf } from './colour.js';
import type { Learned } from './learn.js';
import type { Level } from './level.js';
import { lightAt } from './light.js';
import { logDensity, withFewerNumbers } from './mixture.js';

/** How finely colours are told apart when their odds are looked up: as the least spread of a bell. */
const BIN = 2;
/** From where the three numbers of a colour are told apart, and into how many bins; what lies beyond counts as the last one. */
const LOW = [-98, -50, -50] as const;
const BINS = [72, 64, 72] as const;

/** The logarithm of the odds of leather by colour alone, for every pixel of the level; at most `most` either way. */
export function colourOdds(level: Level, { hide, floor, light }: Learned, most: number): Float32Array {
  const plainHide = withFewerNumbers(hide, COLOUR_NUMBERS);
  const plainFloor = withFewerNumbers(floor, COLOUR_NUMBERS);
  const table = new Float32Array(BINS[0] * BINS[1] * BINS[2]).fill(NaN);
  const colour = new Float32Array(COLOUR_NUMBERS);
  const lookUp = (i: number, j: number, k: number): number => {
    const bin = (i * BINS[1] + j) * BINS[2] + k;
    const known = table[bin]!;
    if (!Number.isNaN(known)) return known;
    colour[0] = LOW[0] + i * BIN;
    colour[1] = LOW[1] + j * BIN;
    colour[2] = LOW[2] + k * BIN;
    const said = logDensity(plainHide, colour, 0) - logDensity(plainFloor, colour, 0);
    return (table[bin] = Math.max(-most, Math.min(most, said)));
  };
  const { width, height, lab } = level;
  const odds = new Float32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const pixel = y * width + x;
      if (level.seen[pixel] === 0) continue;
      odds[pixel] = lookUp(
        binOf(lightOf(lab, pixel) - lightAt(light, x / width, y / height), 0),
        binOf(redOf(lab, pixel), 1),
        binOf(yellowOf(lab, pixel), 2),
      );
    }
  return odds;
}

function binOf(value: number, n: 0 | 1 | 2): number {
  const bin = Math.round((value - LOW[n]) / BIN);
  return bin < 0 ? 0 : bin >= BINS[n] ? BINS[n] - 1 : bin;
}
