import { slowLight } from './slow-light.js';

/** Pixels of three colours row by row, 8 bits each. */
interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}

/** Lightness around which the faint leather lies: lines and letters in ink stand out on it, and it stands out on paper. */
const MIDDLE_LEVEL = 226;

/** Share of the leather's own mean colour that is left, so that brown stays warm and black stays cool. */
const TINT_SHARE = 0.28;

/** Grain and scars are brought to this spread (standard deviation of levels), whether the leather is light or dark. */
const WANTED_SPREAD = 19;

/** A calm leather is not blown up until its noise looks like flaws, a lively one is calmed at most so far. */
const GAIN_RANGE = { least: 0.5, most: 5 } as const;

/** No mark goes farther than this from the middle: the darkest scar stays lighter than any line that is drawn. */
const DEEPEST_LEVELS = 120;
const HIGHEST_LEVELS = 28;

/**
 * Leather made light for drawing on: the light of the room, which changes slowly over the hide, is taken off, and what
 * is left (grain, scars, stains, brands) lies around one light level, equally strong on light and on dark leather.
 * Pixels beyond the leather become white.
 * @param mask width × height, 1 where leather is
 * @param slowPx changes over more pixels than this are taken for light
 */
export function faintPixels({ width, height, rgb }: Pixels, mask: Uint8Array, slowPx: number): Pixels {
  const light = slowLight(rgb, mask, { width, height }, slowPx);
  const details = new Float32Array(rgb.length);
  const means = [0, 0, 0];
  let [squares, count] = [0, 0];
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (mask[i] === 0) continue;
      let grey = 0;
      for (let channel = 0; channel < 3; channel++) {
        const level = rgb[3 * i + channel]!;
        const detail = level - light.at(channel, x, y);
        details[3 * i + channel] = detail;
        means[channel]! += level;
        grey += detail / 3;
      }
      squares += grey * grey;
      count += 1;
    }
  }
  const pixels = Math.max(1, count);
  const ground = groundLevels(means.map((sum) => sum / pixels));
  return { width, height, rgb: onGround(details, mask, ground, gainFor(Math.sqrt(squares / pixels))) };
}

/** @param spread standard deviation of the leather's levels */
function gainFor(spread: number): number {
  return Math.max(GAIN_RANGE.least, Math.min(GAIN_RANGE.most, WANTED_SPREAD / Math.max(spread, 1e-6)));
}

/** The light level of each colour: mostly the same for all, tinted by the leather's mean. */
function groundLevels(means: readonly number[]): readonly number[] {
  const grey = (means[0]! + means[1]! + means[2]!) / 3;
  return means.map((mean) => Math.min(255, MIDDLE_LEVEL + TINT_SHARE * (mean - grey)));
}

function onGround(
  details: Float32Array,
  mask: Uint8Array,
  ground: readonly number[],
  gain: number,
): Uint8Array {
  const faint = new Uint8Array(details.length).fill(255);
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] === 0) continue;
    for (let channel = 0; channel < 3; channel++) {
      const detail = Math.max(-DEEPEST_LEVELS, Math.min(HIGHEST_LEVELS, gain * details[3 * i + channel]!));
      faint[3 * i + channel] = Math.max(0, Math.min(255, Math.round(ground[channel]! + detail)));
    }
  }
  return faint;
}
