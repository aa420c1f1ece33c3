import { describe, expect, it } from 'vitest';
import { readPageNumbers, writePageNumbers } from './page-numbers.js';

describe('page numbers', () => {
  it('when spans and single pages are written, they come out one by one in that order', () => {
    expect(readPageNumbers('2-4, 9,7')).toEqual([2, 3, 4, 9, 7]);
    expect(readPageNumbers(3)).toEqual([3]);
  });

  it('when they are written again, runs become spans', () => {
    expect(writePageNumbers([2, 3, 4, 9, 7])).toBe('2-4, 9, 7');
  });

  it.each(['', '0', '5-3', 'all', '1,,2', '1-9999', '2, 2', '1.5'])(
    'when %j is written, it is refused',
    (text) => {
      expect(() => readPageNumbers(text)).toThrow(expect.objectContaining({ code: 'bad-page-numbers' }));
    },
  );
});
