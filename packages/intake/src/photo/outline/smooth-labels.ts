import type { GridSize } from './grid.js';

/** How strongly neighbours of the same colour agree, in logarithms of odds, and over how many rounds word gets about. */
export interface Smoothing {
  readonly pull: number;
  readonly rounds: number;
}

/** Neighbours whose colours differ by more than this are taken to be parted by an edge (units of lightness and colour). */
const EDGE_DIFFERENCE = 12;

/**
 * Lets each pixel listen to its neighbours: mean-field rounds on a grid with four neighbours, in which neighbours count
 * the less, the more their colours differ. Takes and gives logarithms of odds of leather.
 */
export function smoothLabels(
  grid: GridSize,
  odds: Float32Array,
  features: Float32Array,
  numbers: number,
  smoothing: Smoothing,
): Float32Array {
  const { width, height } = grid;
  const right = linkStrengths(grid, features, numbers, 1);
  const down = linkStrengths(grid, features, numbers, width);
  const opinion = odds.map((log) => Math.tanh(log / 2));
  const result = Float32Array.from(odds);
  // In place, there and back by turns: word then travels a long way in few rounds.
  for (let round = 0; round < smoothing.rounds; round++) {
    const forth = round % 2 === 0;
    for (let k = 0; k < opinion.length; k++) {
      const i = forth ? k : opinion.length - 1 - k;
      const x = i % width;
      let heard = 0;
      if (x > 0) heard += right[i - 1]! * opinion[i - 1]!;
      if (x + 1 < width) heard += right[i]! * opinion[i + 1]!;
      if (i >= width) heard += down[i - width]! * opinion[i - width]!;
      if (i + width < width * height) heard += down[i]! * opinion[i + width]!;
      const log = odds[i]! + smoothing.pull * heard;
      result[i] = log;
      opinion[i] = Math.tanh(log / 2);
    }
  }
  return result;
}

function linkStrengths(
  { width, height }: GridSize,
  features: Float32Array,
  numbers: number,
  step: number,
): Float32Array {
  const strengths = new Float32Array(width * height);
  for (let i = 0; i + step < strengths.length; i++) {
    if (step === 1 && i % width === width - 1) continue;
    let away = 0;
    for (let n = 0; n < 3; n++)
      away += (features[i * numbers + n]! - features[(i + step) * numbers + n]!) ** 2;
    strengths[i] = Math.exp(-away / (2 * EDGE_DIFFERENCE ** 2));
  }
  return strengths;
}
