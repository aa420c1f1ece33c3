import type { GridSize } from './grid.js';
import type { Links } from './smooth-labels.js';

/**
 * How strongly a bell follows those that it passes into, beside its own place in the picture: the strongest that leaves
 * some of both grounds is taken. A shine or a soft shadow can make leather pass into floor.
 */
export const KINSHIPS: readonly number[] = [7, 3, 1, 0];
const ROUNDS = 30;

/**
 * The odds of leather for each bell, from where its pixels lie (`placeOdds`, one a pixel) and from which bells it passes
 * into without an edge: a leg that lies in the dark at the picture's border belongs to what it grows out of.
 * `bells` has -1 where a pixel is of none.
 */
export function bellOdds(
  grid: GridSize,
  bells: Int32Array,
  count: number,
  placeOdds: Float32Array,
  links: Links,
  kinship: number,
): Float64Array {
  const place = halved(meanOfBells(bells, count, placeOdds));
  const kin = softBorders(grid, bells, count, links);
  const odds = place.slice();
  for (let round = 0; round < ROUNDS; round++)
    for (let j = 0; j < count; j++) {
      let heard = 0;
      for (let k = 0; k < count; k++) heard += kin[j * count + k]! * Math.tanh(odds[k]! / 2);
      odds[j] = place[j]! + kinship * heard;
    }
  return odds;
}

function meanOfBells(bells: Int32Array, count: number, values: Float32Array): Float64Array {
  const sums = new Float64Array(count);
  const totals = new Float64Array(count);
  bells.forEach((bell, i) => {
    if (bell < 0) return;
    sums[bell]! += values[i]!;
    totals[bell]! += 1;
  });
  return sums.map((sum, bell) => sum / Math.max(1, totals[bell]!));
}

/** Some ground is leather and some is floor, so the middle between the likeliest and the least likely bell parts them. */
function halved(odds: Float64Array): Float64Array {
  const most = odds.reduce((a, b) => Math.max(a, b), -Infinity);
  const least = odds.reduce((a, b) => Math.min(a, b), Infinity);
  return odds.map((log) => 2 * (log - (most + least) / 2));
}

/** For each bell the share of its borders with each other bell, as far as they are soft; 0 with itself. */
function softBorders({ width }: GridSize, bells: Int32Array, count: number, links: Links): Float64Array {
  const soft = new Float64Array(count * count);
  const borders = new Float64Array(count);
  const add = (i: number, j: number, link: number): void => {
    const a = bells[i]!;
    const b = bells[j] ?? -1;
    if (a < 0 || b < 0 || a === b) return;
    soft[a * count + b]! += link;
    soft[b * count + a]! += link;
    borders[a]! += 1;
    borders[b]! += 1;
  };
  for (let i = 0; i < bells.length; i++) {
    add(i, i + 1, links.right[i]!);
    add(i, i + width, links.down[i]!);
  }
  return soft.map((sum, i) => sum / Math.max(1, borders[Math.floor(i / count)]!));
}
