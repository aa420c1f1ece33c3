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

/** Three passes of a running mean are near enough to a bell curve. */
const BLUR_PASSES = 3;

/**
 * Leather made light for drawing on: the light of the room, which changes slowly over the hide, is taken off, and what
 * is left (grain, scars, stains, brands) lies around one light level, equally strong on light and on dark leather.
 * Pixels beyond the leather become white.
 * @param mask width × height, 1 where leather is
 * @param slowPx changes over more pixels than this are taken for light
 */
export function faintPixels({ width, height, rgb }: Pixels, mask: Uint8Array, slowPx: number): Pixels {
  const radius = Math.max(1, Math.round(slowPx / BLUR_PASSES));
  const weights = blurred(Float32Array.from(mask), width, height, radius);
  const details = [0, 1, 2].map((channel) => {
    const masked = new Float32Array(mask.length);
    mask.forEach((isLeather, i) => (masked[i] = isLeather === 0 ? 0 : rgb[3 * i + channel]!));
    const slow = blurred(masked.slice(), width, height, radius);
    mask.forEach((isLeather, i) => (masked[i] = isLeather === 0 ? 0 : masked[i]! - slow[i]! / weights[i]!));
    return masked;
  });
  const gain = gainFor(details, mask);
  const ground = groundLevels(rgb, mask);
  const faint = new Uint8Array(rgb.length).fill(255);
  mask.forEach((isLeather, i) => {
    if (isLeather === 0) return;
    for (let channel = 0; channel < 3; channel++) {
      const detail = Math.max(-DEEPEST_LEVELS, Math.min(HIGHEST_LEVELS, gain * details[channel]![i]!));
      faint[3 * i + channel] = Math.max(0, Math.min(255, Math.round(ground[channel]! + detail)));
    }
  });
  return { width, height, rgb: faint };
}

function gainFor(details: readonly Float32Array[], mask: Uint8Array): number {
  let [sum, count] = [0, 0];
  mask.forEach((isLeather, i) => {
    if (isLeather === 0) return;
    sum += ((details[0]![i]! + details[1]![i]! + details[2]![i]!) / 3) ** 2;
    count += 1;
  });
  const spread = Math.sqrt(sum / Math.max(1, count));
  return Math.max(GAIN_RANGE.least, Math.min(GAIN_RANGE.most, WANTED_SPREAD / Math.max(spread, 1e-6)));
}

/** The light level of each colour: mostly the same for all, tinted by the leather's mean. */
function groundLevels(rgb: Uint8Array, mask: Uint8Array): readonly number[] {
  const sums = [0, 0, 0];
  let count = 0;
  mask.forEach((isLeather, i) => {
    if (isLeather === 0) return;
    for (let channel = 0; channel < 3; channel++) sums[channel]! += rgb[3 * i + channel]!;
    count += 1;
  });
  const means = sums.map((sum) => sum / Math.max(1, count));
  const grey = (means[0]! + means[1]! + means[2]!) / 3;
  return means.map((mean) => Math.min(255, MIDDLE_LEVEL + TINT_SHARE * (mean - grey)));
}

/** A bell-shaped blur, in place; beyond the edges is 0. */
function blurred(values: Float32Array, width: number, height: number, radius: number): Float32Array {
  for (let pass = 0; pass < BLUR_PASSES; pass++) {
    for (let y = 0; y < height; y++) runningMean(values, { start: y * width, step: 1, count: width }, radius);
    for (let x = 0; x < width; x++) runningMean(values, { start: x, step: width, count: height }, radius);
  }
  return values;
}

interface Run {
  readonly start: number;
  readonly step: number;
  readonly count: number;
}

function runningMean(values: Float32Array, { start, step, count }: Run, radius: number): void {
  const line = new Float32Array(count);
  for (let i = 0; i < count; i++) line[i] = values[start + i * step]!;
  const share = 1 / (2 * radius + 1);
  let sum = 0;
  for (let i = 0; i < Math.min(radius, count); i++) sum += line[i]!;
  for (let i = 0; i < count; i++) {
    if (i + radius < count) sum += line[i + radius]!;
    if (i - radius - 1 >= 0) sum -= line[i - radius - 1]!;
    values[start + i * step] = sum * share;
  }
}
