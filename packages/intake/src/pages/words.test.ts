import { expect, it } from 'vitest';
import { PAGES_FINDINGS } from './words.js';

it('when pages are left out, the sentence has the number of its subject', () => {
  const sentence = PAGES_FINDINGS['pages-left-out'];
  expect(sentence({ count: 1, pages: '1', reason: 'unlinked' })).toBe(
    '1 page is left out, since nothing links it to the others (1).',
  );
  expect(sentence({ count: 2, pages: '1-2', reason: 'unlinked' })).toBe(
    '2 pages are left out, since nothing links them to the others (1-2).',
  );
});

it('when pages make several wholes, the sentence says what joins them', () => {
  expect(PAGES_FINDINGS['pages-in-groups']({ groups: 2 })).toMatch(
    /^The pages make 2 wholes.*state the grid/,
  );
});
