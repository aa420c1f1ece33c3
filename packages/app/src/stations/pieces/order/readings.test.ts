import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseOrder, writeOrder } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { emptyOrder } from './articles.js';
import { changePages, changeReading, readingOf, scaledReading, togglePage } from './readings.js';

const DEMO = join(import.meta.dirname, '../../../../../../fixtures/demo/bicycle-goods.order.yaml');
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

describe('the pages of a pattern', () => {
  const all = [1, 2, 3, 4];

  it('when pages are tapped, they go out and in again, and all of them need no word', () => {
    expect(togglePage(undefined, all, 1, true)).toEqual([2, 3, 4]);
    expect(togglePage([2, 4], all, 3, true)).toEqual([2, 3, 4]);
    expect(togglePage([2, 3, 4], all, 1, true)).toBeUndefined();
    // Where the file may have more pages, all that are known are named.
    expect(togglePage([2, 3, 4], all, 1, false)).toEqual(all);
    // As they fill a grid from right to left (docs/patterns.md).
    expect(togglePage([4, 1, 2], all, 3, true)).toEqual([4, 1, 2, 3]);
  });

  it('when they are no grid any more, what belongs to a grid is gone; and where nothing is said, nothing is written', () => {
    const grid = { take: [2, 3], join: 'grid', columns: 2, overlapMm: [10, 12] } as const;
    expect(changePages(grid, { columns: 3 })).toEqual({ ...grid, columns: 3 });
    expect(changePages(grid, { join: 'lines' })).toEqual({ take: [2, 3], join: 'lines' });
    expect(changePages(changePages(grid, { join: undefined }), { take: undefined })).toBeUndefined();
  });

  it('when it goes into an order file, it is read again as it was', () => {
    const pages = {
      take: [3, 4, 5],
      join: 'grid',
      columns: 2,
      order: 'columns',
      overlapMm: [10, 12],
    } as const;
    const demo = parseOrder(readFileSync(DEMO, 'utf8'), { file: 'demo' });
    const changed = changeReading(demo, FILE, { pages });
    const read = parseOrder(writeOrder(changed), { file: 'a.order.yaml' });
    expect(readingOf(read, FILE).pages).toEqual(pages);
  });
});
