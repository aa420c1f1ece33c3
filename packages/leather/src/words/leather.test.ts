import { describe, expect, test } from 'vitest';
import { sentenceFor } from './catalogue.js';
import { LAYOUT_SENTENCES } from './leather.js';
import { nameHint, nearestParams, nearestWord } from './nearest.js';

describe('the sentences of order, hides and layout', () => {
  const params = {
    article: 'bag',
    piece: 'front',
    hide: 'side-7',
    what: 'front 1 of bag',
    file: 'side-7.hide.json',
    leather: 'straps',
    useFrom: 'tail',
    guesses: 'backbone and cut',
    figure: 'edgeMm2',
    says: 1,
    is: 2,
    count: 3,
    angleDeg: 0,
    measured: 1,
    required: 2,
  };
  for (const code of Object.keys(LAYOUT_SENTENCES)) {
    test(`when ${code} is told, it is one sentence with all its values`, () => {
      const sentence = sentenceFor({ code, params });
      expect(sentence).toMatch(/^\S.*\.$/s);
      expect(sentence).not.toMatch(/undefined|NaN|\[object/);
      expect(sentence).not.toContain(code);
    });
  }
});

test('when a long axis is told, its angle is told no finer than one can draw it', () => {
  const params = { article: 'bag', piece: 'front', angleDeg: 356.63352 };
  expect(sentenceFor({ code: 'arrow-guessed', params })).toContain('(356.6°');
});

describe('a name that is not there', () => {
  test('when one is like it, that one is suggested, and all are listed', () => {
    expect(nameHint(nearestParams('gussett', ['front', 'gusset']))).toBe(
      ' (did you mean "gusset"?); it has "front", "gusset".',
    );
  });

  test('when none is like it, none is suggested', () => {
    expect(nearestWord('zipper', ['front', 'gusset'])).toBeUndefined();
    expect(nameHint(nearestParams('zipper', []))).toBe('; it has none.');
  });
});
