import type { Box } from '@hidebound/geometry';
import { DUPLICATE_MM } from '../limits.js';

/** Weights of the sides of a box in one number; no two drawings of a workshop are likely to make them add up alike. */
const WEIGHTS = [1, 0.7548776662, 0.569840291, 0.430159709] as const;
const WINDOW_MM = DUPLICATE_MM * WEIGHTS.reduce((sum, weight) => sum + weight, 0);

/**
 * For each box the earlier ones whose sides all lie within 0.01 mm of its own, in their order. Boxes are sorted by one
 * number made of their four sides, so that a drawing full of long lines that cross each other costs no more than any.
 */
export function earlierTwins(boxes: readonly Box[]): ReadonlyMap<number, readonly number[]> {
  const sums = Float64Array.from(boxes, weighted);
  const order = boxes.map((_, i) => i).sort((a, b) => sums[a]! - sums[b]! || a - b);
  const twins = new Map<number, number[]>();
  order.forEach((a, at) => {
    for (let k = at + 1; k < order.length && sums[order[k]!]! - sums[a]! <= WINDOW_MM; k++) {
      const b = order[k]!;
      if (!sameBox(boxes[a]!, boxes[b]!)) continue;
      const [earlier, later] = a < b ? [a, b] : [b, a];
      const list = twins.get(later);
      if (list === undefined) twins.set(later, [earlier]);
      else list.push(earlier);
    }
  });
  for (const list of twins.values()) list.sort((a, b) => a - b);
  return twins;
}

function weighted({ minX, minY, maxX, maxY }: Box): number {
  return minX * WEIGHTS[0] + minY * WEIGHTS[1] + maxX * WEIGHTS[2] + maxY * WEIGHTS[3];
}

function sameBox(a: Box, b: Box): boolean {
  return (
    Math.abs(a.minX - b.minX) <= DUPLICATE_MM &&
    Math.abs(a.minY - b.minY) <= DUPLICATE_MM &&
    Math.abs(a.maxX - b.maxX) <= DUPLICATE_MM &&
    Math.abs(a.maxY - b.maxY) <= DUPLICATE_MM
  );
}
