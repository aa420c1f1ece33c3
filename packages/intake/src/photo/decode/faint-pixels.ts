import { slowLight } from './slow-light.js';
import type { SlowLight } from './slow-light.js';

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

/** Grain is brought to this spread of levels, and scars with it, whether the leather is light or dark. */
const WANTED_SPREAD = 17;

/** So many pixels lie within the spread: as many as lie within one standard deviation of a bell curve. */
const SHARE_WITHIN_SPREAD = 0.683;

/** A pixel so many spreads off the light around it is no grain: chalk, a brand, a hole that was not cut out. */
const OUTLIER_SPREADS = 4;

/** Steps of one level that the spread is found to. */
const GREY_STEPS = 8;

/** Differences of colour alone are shown by so much: cameras store them coarsely, which would show as blotches. */
const COLOUR_SHARE = 0.4;

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
export function faintPixels(picture: Pixels, mask: Uint8Array, slowPx: number): Pixels {
  const { width, height, rgb } = picture;
  const rough = slowLight(rgb, mask, picture, slowPx);
  const roughGrey = greyDetails(picture, mask, rough);
  // A stroke of chalk or a brand would pull the light around it to itself, and calm the grain of the whole hide.
  const calm = withoutOutliers(roughGrey, mask, OUTLIER_SPREADS * spreadOf(roughGrey, mask));
  const light = orElse(slowLight(rgb, calm, picture, slowPx), rough, width);
  const gain = gainFor(spreadOf(greyDetails(picture, calm, light), calm));
  return { width, height, rgb: onGround(picture, mask, light, gain) };
}

/** Where the first light tells nothing, the other one does. */
function orElse(light: SlowLight, other: SlowLight, width: number): SlowLight {
  const others = new Float64Array(3 * width);
  return {
    readRow: (y, of, levels) => {
      light.readRow(y, of, levels);
      let isOtherRead = false;
      for (let x = 0; x < width; x++) {
        if (of[y * width + x] === 0 || Number.isFinite(levels[3 * x]!)) continue;
        if (!isOtherRead) other.readRow(y, of, others);
        isOtherRead = true;
        for (let i = 3 * x; i < 3 * x + 3; i++) levels[i] = others[i]!;
      }
    },
  };
}

/** How much lighter each pixel of the mask is than the light around it. */
function greyDetails({ width, height, rgb }: Pixels, mask: Uint8Array, light: SlowLight): Float32Array {
  const grey = new Float32Array(mask.length);
  const levels = new Float64Array(3 * width);
  for (let y = 0, i = 0; y < height; y++) {
    light.readRow(y, mask, levels);
    for (let x = 0; x < width; x++, i++) {
      if (mask[i] === 0) continue;
      const slow = levels[3 * x]! + levels[3 * x + 1]! + levels[3 * x + 2]!;
      grey[i] = (rgb[3 * i]! + rgb[3 * i + 1]! + rgb[3 * i + 2]! - slow) / 3;
    }
  }
  return grey;
}

function withoutOutliers(grey: Float32Array, mask: Uint8Array, most: number): Uint8Array {
  return mask.map((isLeather, i) => (isLeather === 1 && Math.abs(grey[i]!) <= most ? 1 : 0));
}

/** The distance from the middle that most levels keep to. */
function spreadOf(grey: Float32Array, mask: Uint8Array): number {
  const histogram = new Uint32Array(GREY_STEPS * 256);
  let count = 0;
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] === 0) continue;
    histogram[Math.min(histogram.length - 1, Math.floor(Math.abs(grey[i]!) * GREY_STEPS))]! += 1;
    count += 1;
  }
  let within = 0;
  const step = histogram.findIndex((pixels) => (within += pixels) >= SHARE_WITHIN_SPREAD * count);
  return (step + 0.5) / GREY_STEPS;
}

/** @param spread of the leather's levels */
function gainFor(spread: number): number {
  return Math.max(GAIN_RANGE.least, Math.min(GAIN_RANGE.most, WANTED_SPREAD / spread));
}

function onGround(
  { width, height, rgb }: Pixels,
  mask: Uint8Array,
  light: SlowLight,
  gain: number,
): Uint8Array {
  const ground = groundLevels(rgb, mask);
  const faint = new Uint8Array(rgb.length).fill(255);
  const levels = new Float64Array(3 * width);
  for (let y = 0, i = 0; y < height; y++) {
    light.readRow(y, mask, levels);
    for (let x = 0; x < width; x++, i++) {
      if (mask[i] === 0) continue;
      const red = rgb[3 * i]! - levels[3 * x]!;
      const green = rgb[3 * i + 1]! - levels[3 * x + 1]!;
      const blue = rgb[3 * i + 2]! - levels[3 * x + 2]!;
      const grey = (red + green + blue) / 3;
      faint[3 * i] = levelOf(ground[0]!, gain * (grey + COLOUR_SHARE * (red - grey)));
      faint[3 * i + 1] = levelOf(ground[1]!, gain * (grey + COLOUR_SHARE * (green - grey)));
      faint[3 * i + 2] = levelOf(ground[2]!, gain * (grey + COLOUR_SHARE * (blue - grey)));
    }
  }
  return faint;
}

function levelOf(ground: number, detail: number): number {
  const held = Math.max(-DEEPEST_LEVELS, Math.min(HIGHEST_LEVELS, detail));
  return Math.max(0, Math.min(255, Math.round(ground + held)));
}

/** The light level of each colour: mostly the same for all, tinted by the leather's mean. */
function groundLevels(rgb: Uint8Array, mask: Uint8Array): readonly number[] {
  const sums = [0, 0, 0];
  let count = 0;
  for (let i = 0; i < mask.length; i++) {
    if (mask[i] === 0) continue;
    for (let channel = 0; channel < 3; channel++) sums[channel]! += rgb[3 * i + channel]!;
    count += 1;
  }
  const means = sums.map((sum) => sum / Math.max(1, count));
  const grey = (means[0]! + means[1]! + means[2]!) / 3;
  return means.map((mean) => Math.min(255, MIDDLE_LEVEL + TINT_SHARE * (mean - grey)));
}
