import { describe, expect, it } from 'vitest';
import { emptyOrder } from './articles.js';
import { changeReading, readingOf, scaledReading } from './readings.js';

const FILE = 'patterns/gusset.svg';
const order = emptyOrder({ name: 'a', date: '2026-01-01', method: 'hand knife', leathers: [] });

describe('how a pattern is read', () => {
  it('when there is no order yet, it is remembered as the order will have it', () => {
    const patch = scaledReading(readingOf(order, FILE), 1.25);
    expect(changeReading({ patterns: [] }, FILE, patch).patterns).toEqual(
      changeReading(order, FILE, patch).patterns,
    );
  });

  // Arithmetic: 1.25 × 0.8 = 1.
  it('when a size is taken back by the opposite factor, the file is read as it stands again', () => {
    const larger = changeReading(order, FILE, scaledReading(readingOf(order, FILE), 1.25));
    expect(readingOf(larger, FILE).scale).toBe(1.25);
    expect(changeReading(larger, FILE, scaledReading(readingOf(larger, FILE), 0.8)).patterns).toEqual([]);
  });
});
