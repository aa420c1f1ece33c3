import type { Layout } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { isWorse } from './worse.js';

const layout = (pieces: number, usedUpMm2: number) =>
  ({ placements: Array.from({ length: pieces }), yield: { total: { usedUpMm2 } } }) as unknown as Layout;
const before = { wish: 'anew', isBeforeGood: true, beforeMm2: 3_000_000, beforeLaid: 110 } as const;

describe('whether a new layout takes the place of the one before', () => {
  it('when as many pieces take more leather, or fewer pieces lie, the one before stays', () => {
    expect(isWorse(before, layout(110, 3_100_000))).toBe(true);
    expect(isWorse(before, layout(109, 2_000_000))).toBe(true);
  });

  it('when it is as good or better, the new one is taken', () => {
    expect(isWorse(before, layout(110, 3_000_000))).toBe(false);
    expect(isWorse(before, layout(110, 2_900_000))).toBe(false);
    expect(isWorse(before, layout(111, 3_500_000))).toBe(false);
  });

  it('when the one before was not proven or of another order, or was only to be filled up, the new one is taken', () => {
    expect(isWorse({ ...before, isBeforeGood: false }, layout(100, 9_000_000))).toBe(false);
    expect(isWorse({ ...before, wish: 'missing' }, layout(110, 3_100_000))).toBe(false);
  });
});
