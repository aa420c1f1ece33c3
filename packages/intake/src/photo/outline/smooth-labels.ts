import type { GridSize } from './grid.js';

/** How strongly neighbours of the same colour agree, in logarithms of odds, and over how many rounds word gets about. */
export interface Smoothing {
  readonly pull: number;
  readonly rounds: number;
}

/** How alike neighbours are, 0 to 1: each pixel to the next on its right, and to the one below. */
export interface Links {
  readonly right: Float32Array;
  readonly down: Float32Array;
}

/**
 * Lets each pixel listen to its neighbours: mean-field rounds on a grid with four neighbours, in which neighbours count
 * the less, the more their colours differ. Takes and gives logarithms of odds of leather.
 */
export function smoothLabels(
  { width, height }: GridSize,
  odds: Float32Array,
  { right, down }: Links,
  { pull, rounds }: Smoothing,
): Float32Array {
  const count = width * height;
  const opinion = new Float32Array(count);
  for (let i = 0; i < count; i++) opinion[i] = opinionOf(odds[i]!);
  const result = Float32Array.from(odds);
  const listen = (i: number): void => {
    // Links over the ends of rows are 0, so what lies there does not matter.
    const left = i > 0 ? right[i - 1]! * opinion[i - 1]! : 0;
    const above = i >= width ? down[i - width]! * opinion[i - width]! : 0;
    const next = i + 1 < count ? right[i]! * opinion[i + 1]! : 0;
    const below = i + width < count ? down[i]! * opinion[i + width]! : 0;
    const log = odds[i]! + pull * (left + above + next + below);
    result[i] = log;
    opinion[i] = opinionOf(log);
  };
  // In place, there and back by turns: word then travels a long way in few rounds.
  for (let round = 0; round < rounds; round++)
    if (round % 2 === 0) for (let i = 0; i < count; i++) listen(i);
    else for (let i = count - 1; i >= 0; i--) listen(i);
  return result;
}

/** From -1 to 1 as odds go from nothing to all; close to tanh of half of them, and quicker. */
function opinionOf(log: number): number {
  return log / Math.sqrt(4 + log * log);
}

/** Colours (three numbers of every `numbers`) that differ by `edge` are as good as parted. */
export function linksBetween(grid: GridSize, features: Float32Array, numbers: number, edge: number): Links {
  return {
    right: linkStrengths(grid, features, numbers, edge, 1),
    down: linkStrengths(grid, features, numbers, edge, grid.width),
  };
}

function linkStrengths(
  { width, height }: GridSize,
  features: Float32Array,
  numbers: number,
  edge: number,
  step: number,
): Float32Array {
  const strengths = new Float32Array(width * height);
  for (let i = 0; i + step < strengths.length; i++) {
    if (step === 1 && i % width === width - 1) continue;
    const a = i * numbers;
    const b = (i + step) * numbers;
    const away =
      (features[a]! - features[b]!) ** 2 +
      (features[a + 1]! - features[b + 1]!) ** 2 +
      (features[a + 2]! - features[b + 2]!) ** 2;
    strengths[i] = Math.exp(-away / (2 * edge * edge));
  }
  return strengths;
}
