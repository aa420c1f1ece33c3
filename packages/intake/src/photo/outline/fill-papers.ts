import type { GridSize } from './grid.js';
import { GROUND } from './known-ground.js';

/** Rounds there and back: enough for word to cross half a sheet. */
const ROUNDS = 40;

/**
 * Under a sheet nothing is seen, so the odds there are drawn like a skin between those around it (Laplace's equation):
 * an edge that goes under the sheet on one side comes out on the other by a smooth line.
 */
export function fillPapers({ width, height }: GridSize, ground: Uint8Array, odds: Float32Array): void {
  const pixels: number[] = [];
  for (let i = 0; i < ground.length; i++) if (ground[i] === GROUND.paper) pixels.push(i);
  if (pixels.length === 0) return;
  const value = odds.map((log) => Math.tanh(log));
  for (const i of pixels) value[i] = 0;
  const seen = (i: number): boolean => ground[i] !== GROUND.unseen;
  const relax = (i: number): void => {
    const x = i % width;
    let sum = 0;
    let count = 0;
    const hear = (j: number): void => {
      if (!seen(j)) return;
      sum += value[j]!;
      count += 1;
    };
    if (x > 0) hear(i - 1);
    if (x + 1 < width) hear(i + 1);
    if (i >= width) hear(i - width);
    if (i + width < width * height) hear(i + width);
    if (count > 0) value[i] = sum / count;
  };
  for (let round = 0; round < ROUNDS; round++) {
    for (const i of pixels) relax(i);
    for (let k = pixels.length - 1; k >= 0; k--) relax(pixels[k]!);
  }
  for (const i of pixels) odds[i] = 4 * value[i]!;
}
