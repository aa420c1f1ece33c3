import type { StraightPicture } from '../straight/straight-picture.js';
import type { Colour } from './colour.js';
import { lengthOf, less, median } from './colour.js';
import { BORDER_SHARE, GROUND_SIGMAS, LEAST_CONTRAST } from './limits.js';

/** The colour of the plain ground that cards lie on, even where its light changes over the picture. */
export interface Ground {
  /** Of each channel, factors of 1, x, y, x², xy, y²; x and y from -1 to 1 over the picture. */
  readonly channels: readonly (readonly number[])[];
  readonly width: number;
  readonly height: number;
  /** How far a pixel of the ground differs from its colour by chance. */
  readonly sigma: number;
}

/** The ground's colour at a pixel; of a picture at another scale, at the same share of its width and height. */
export function groundAt({ channels, width, height }: Ground, x: number, y: number): Colour {
  const u = (2 * (x + 0.5)) / width - 1;
  const v = (2 * (y + 0.5)) / height - 1;
  const at = (c: readonly number[]) =>
    c[0]! + c[1]! * u + c[2]! * v + c[3]! * u * u + c[4]! * u * v + c[5]! * v * v;
  return [at(channels[0]!), at(channels[1]!), at(channels[2]!)];
}

/** The same ground for a picture of another scale. */
export function groundFor(
  ground: Ground,
  { width, height }: Pick<StraightPicture, 'width' | 'height'>,
): Ground {
  return { ...ground, width, height };
}

interface Sample {
  readonly u: number;
  readonly v: number;
  readonly colour: Colour;
}

/** Pixels that are looked at for the light over the ground. */
const SAMPLES = 20_000;

/** What is taken for ground at first: its commonest colour give or take this; wider would take in pale card. */
const FIRST_REACH = 45;

/** Terms of the surface in each round: first one colour, then a slope, then a bowl. */
const ROUNDS = [1, 3, 6, 6, 6] as const;

/** Finds the ground from what is commonest along the border, then follows its light over the picture. */
export function findGround(picture: StraightPicture): Ground {
  const start = commonestOfBorder(picture);
  const samples = sampled(picture);
  let ground: Ground = {
    channels: start.map((value) => [value, 0, 0, 0, 0, 0]),
    width: picture.width,
    height: picture.height,
    sigma: FIRST_REACH / GROUND_SIGMAS,
  };
  for (const terms of ROUNDS) {
    const reach = terms === 1 ? FIRST_REACH : Math.max(LEAST_CONTRAST, GROUND_SIGMAS * ground.sigma);
    const near = samples.filter((one) => offGround(ground, one) <= reach);
    if (near.length < 10 * terms) break;
    const channels = [0, 1, 2].map((channel) => fitSurface(near, channel as 0 | 1 | 2, terms));
    const next = { ...ground, channels };
    const offs = near.map((one) => offGround(next, one));
    // The middle of the length of three normal numbers is 1.54 of their deviation.
    ground = { ...next, sigma: Math.max(1, median(offs) / 1.54) };
  }
  return ground;
}

function offGround(ground: Ground, { u, v, colour }: Sample): number {
  const x = ((u + 1) * ground.width) / 2 - 0.5;
  const y = ((v + 1) * ground.height) / 2 - 0.5;
  return lengthOf(less(colour, groundAt(ground, x, y)));
}

function sampled({ width, height, rgb, seen }: StraightPicture): Sample[] {
  const step = Math.max(1, Math.floor(Math.sqrt((width * height) / SAMPLES)));
  const samples: Sample[] = [];
  for (let y = step >> 1; y < height; y += step) {
    for (let x = step >> 1; x < width; x += step) {
      const i = y * width + x;
      if (seen[i] === 0) continue;
      const colour: Colour = [rgb[3 * i]!, rgb[3 * i + 1]!, rgb[3 * i + 2]!];
      samples.push({ u: (2 * (x + 0.5)) / width - 1, v: (2 * (y + 0.5)) / height - 1, colour });
    }
  }
  return samples;
}

/** Colours are counted in steps of this much; neighbours count together. */
const BIN = 16;

function commonestOfBorder({ width, height, rgb, seen }: StraightPicture): Colour {
  const edge = Math.max(2, Math.round(BORDER_SHARE * Math.min(width, height)));
  const counts = new Map<number, { count: number; sum: [number, number, number] }>();
  for (let y = 0; y < height; y++) {
    const isWhole = y < edge || y >= height - edge;
    for (let x = 0; x < width; x++) {
      if (!isWhole && x === edge) x = width - edge;
      const i = y * width + x;
      if (seen[i] === 0) continue;
      addTo(counts, [rgb[3 * i]!, rgb[3 * i + 1]!, rgb[3 * i + 2]!]);
    }
  }
  const best = [...counts].reduce<[number, number]>(
    (most, [key]) => {
      const sum = aroundBin(counts, key);
      return sum > most[1] ? [key, sum] : most;
    },
    [0, 0],
  );
  const found = counts.get(best[0]);
  if (found === undefined) return [255, 255, 255];
  return [found.sum[0] / found.count, found.sum[1] / found.count, found.sum[2] / found.count];
}

function addTo(counts: Map<number, { count: number; sum: [number, number, number] }>, c: Colour): void {
  const key = ((c[0] / BIN) | 0) * 10000 + ((c[1] / BIN) | 0) * 100 + ((c[2] / BIN) | 0);
  const bin = counts.get(key) ?? { count: 0, sum: [0, 0, 0] };
  bin.count++;
  for (let k = 0; k < 3; k++) bin.sum[k]! += c[k]!;
  counts.set(key, bin);
}

function aroundBin(counts: ReadonlyMap<number, { readonly count: number }>, key: number): number {
  let sum = 0;
  for (const r of [-10000, 0, 10000]) {
    for (const g of [-100, 0, 100]) {
      for (const b of [-1, 0, 1]) sum += counts.get(key + r + g + b)?.count ?? 0;
    }
  }
  return sum;
}

/** Least squares of a surface with so many terms. */
function fitSurface(samples: readonly Sample[], channel: 0 | 1 | 2, terms: number): number[] {
  const matrix = Array.from({ length: terms }, () => new Array<number>(terms + 1).fill(0));
  for (const { u, v, colour } of samples) {
    const basis = [1, u, v, u * u, u * v, v * v];
    for (let a = 0; a < terms; a++) {
      for (let b = 0; b < terms; b++) matrix[a]![b]! += basis[a]! * basis[b]!;
      matrix[a]![terms]! += basis[a]! * colour[channel];
    }
  }
  const solved = eliminate(matrix);
  return [0, 1, 2, 3, 4, 5].map((k) => solved[k] ?? 0);
}

/** Gauss's way, with the largest pivot; a term that nothing tells of is 0. */
function eliminate(matrix: number[][]): number[] {
  const n = matrix.length;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(matrix[i]![k]!) > Math.abs(matrix[pivot]![k]!)) pivot = i;
    [matrix[k], matrix[pivot]] = [matrix[pivot]!, matrix[k]!];
    const head = matrix[k]![k]!;
    if (Math.abs(head) < 1e-9) continue;
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const factor = matrix[i]![k]! / head;
      for (let j = k; j <= n; j++) matrix[i]![j]! -= factor * matrix[k]![j]!;
    }
  }
  return matrix.map((row, k) => (Math.abs(row[k]!) < 1e-9 ? 0 : row[n]! / row[k]!));
}
