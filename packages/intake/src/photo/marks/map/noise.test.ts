import { createRandom } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { nthSmallest } from './noise.js';

// Against the language's own sorting.
test('when numbers come in any order and some are alike, each is found at its place in the sorted row', () => {
  const random = createRandom(3);
  for (const count of [1, 2, 3, 10, 257]) {
    for (const kinds of [3, 1000]) {
      const values = Float32Array.from({ length: count + 5 }, () => random.integer(kinds) / 7);
      const sorted = values.slice(0, count).sort();
      for (let index = 0; index < count; index++)
        expect(nthSmallest(values.slice(), count, index)).toBe(sorted[index]);
    }
  }
});
