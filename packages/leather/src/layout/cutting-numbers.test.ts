import { expect, test } from 'vitest';
import type { PieceCopy, PiecePlacement } from '../model/layout.js';
import { pieceCopyKey } from '../order/item-id.js';
import { compareNumbers, cuttingNumbers } from './cutting-numbers.js';

const copy = (piece: string, number = 1): PieceCopy => ({
  article: 'bag',
  piece,
  set: 1,
  copy: number,
  mirrored: false,
});

test('when a step holds one piece, the piece bears its number; when it holds several, they are counted', () => {
  const placements = [copy('front'), copy('strap'), copy('tie'), copy('late')] as PiecePlacement[];
  const numbers = cuttingNumbers({
    placements,
    cuttingOrder: [
      { number: 1, kind: 'straight edge', hide: 'side', of: 'L1', pieces: [] },
      { number: 2, kind: 'lane', hide: 'side', of: 'L1', pieces: [copy('strap'), copy('tie')] },
      { number: 3, kind: 'piece', hide: 'side', pieces: [copy('front')] },
      { number: 4, kind: 'piece', hide: 'side', pieces: [copy('strap')] },
    ],
  });
  // A piece that is named twice keeps its first number; one that no step names comes last.
  const told = placements.map((each) => numbers.get(pieceCopyKey(each)));
  expect(told).toEqual(['3', '2.1', '2.2', '5']);
});

test('when numbers are sorted, 2 comes before 10 and 3.2 before 3.10', () => {
  expect(['3.10', '10', '2', '3.2'].sort(compareNumbers)).toEqual(['2', '3.2', '3.10', '10']);
});
