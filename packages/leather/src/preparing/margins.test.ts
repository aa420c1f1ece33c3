import { expect, test } from 'vitest';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import type { PreparedBlock } from './blocks.js';
import { leastMargin, marginNeed } from './margins.js';

/** Common practice, no source: 10 mm for small pieces, 15 to 25 mm for large or moulded ones, or 3 %, the larger. */

test.each([
  ['small', 120, false, 10],
  ['small and tooled', 120, true, 15],
  ['large', 320, false, 15],
  ['so long that 3 % are more', 800, false, 24],
  ['just as long as counts as large', 300, false, 15],
  ['just shorter than that', 299, false, 10],
])('when a piece is %s (%d mm), its margin is at least as common practice has it', (_, long, worked, mm) => {
  expect(leastMargin(long, worked, DEFAULT_WORKSHOP)).toBeCloseTo(mm, 9);
});

function block(id: string, longestMm: number, marginMm: number): PreparedBlock {
  return {
    id,
    hide: 'h',
    leather: 'body',
    roughCut: id,
    areaMm2: 1,
    piecesMm2: 1,
    marginMm,
    pieces: [],
    longestMm,
    takesOut: false,
  };
}

test('when a rough cut has less margin than its pieces ask for, it is named with both figures', () => {
  const need = marginNeed([block('a', 100, 8), block('b', 100, 10)], false, DEFAULT_WORKSHOP);
  expect(need.tooSmall).toEqual([{ id: 'a', hasMm: 8, needMm: 10 }]);
  expect(need.hasMm).toBe(8);
});

// 1 to 3 % of 200 mm.
test('when leather is wetted and dried, a piece of 200 mm gets 2 to 6 mm shorter', () => {
  const { shrinkageMm } = marginNeed([block('a', 200, 10)], false, DEFAULT_WORKSHOP);
  expect(shrinkageMm.min).toBeCloseTo(2, 9);
  expect(shrinkageMm.max).toBeCloseTo(6, 9);
});
