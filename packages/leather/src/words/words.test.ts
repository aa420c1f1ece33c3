import { describe, expect, test } from 'vitest';
import { RULE_NAMES, UNPLACED_REASONS } from '../files/schema/layout-schema.js';
import { SENTENCES, placeWords, sentenceFor } from './catalogue.js';
import { nearestWord } from './nearest.js';
import { leatherError } from './refuse.js';
import { groupDigits, listWords, quoteValue } from './sentence.js';

describe('the catalogue', () => {
  test('when a piece was not laid or a rule is broken, each reason has its sentence', () => {
    const params = { piece: 'front', article: 'saddlebag', what: '"front"' };
    for (const code of [
      ...UNPLACED_REASONS.map((reason) => `unplaced-${reason}`),
      ...RULE_NAMES.map((rule) => `broken-${rule}`),
    ]) {
      const sentence = sentenceFor({ code, params });
      expect(sentence, code).not.toContain(code);
      expect(sentence, code).toMatch(/front.*\.$/);
    }
  });

  test('when any sentence is written, it starts with a capital or a quoted value and ends with a stop', () => {
    const fake: Record<string, string> = new Proxy({}, { get: () => '"x"' });
    for (const [code, write] of Object.entries(SENTENCES)) {
      const sentence = (write as (params: unknown) => string)(fake);
      expect(sentence, code).toMatch(/^["A-Z]/);
      expect(sentence, code).toMatch(/[.?]$/);
      expect(sentence, code).not.toContain('undefined');
    }
  });

  test('when a broken rule has figures, the sentence shows what was measured and what was asked', () => {
    const params = { what: '"front" of saddlebag', other: '"gusset"', measured: 2.1, required: 3 };
    expect(sentenceFor({ code: 'broken-gap', params })).toBe(
      '"front" of saddlebag lies too near to "gusset" (2.1 mm where 3 mm is asked); move them apart.',
    );
  });

  test('when another package hands in its table, its sentences are found', () => {
    const table = { 'svg-odd': (p: { element: string }) => `Element ${p.element} is odd.` };
    const diagnostic = { code: 'svg-odd', params: { element: 'path7' }, place: { file: 'bag.svg', line: 4 } };
    expect(sentenceFor(diagnostic, [table])).toBe('bag.svg, line 4: Element path7 is odd.');
  });

  test('when no table knows a code, code and parameters are shown', () => {
    expect(sentenceFor({ code: 'mystery', params: { depth: 3 } })).toBe('mystery (depth 3).');
    expect(sentenceFor({ code: 'toString', params: {} })).toBe('toString.');
  });

  test('when a place is known, its parts come in order', () => {
    const place = { file: 'a.json', line: 2, at: 'flaws[0]', point: { x: 1.26, y: -3 } };
    expect(placeWords(place)).toBe('a.json, line 2, flaws[0], at (1.3, -3) mm');
    expect(leatherError('seam-target', { found: '"x"' }, place).message).toMatch(/^a\.json, line 2/);
  });
});

describe('words', () => {
  test.each([
    ['flwas', 'flaws'],
    ['Looks', 'looks'],
    ['backbones', 'backbone'],
    ['zoens', 'zones'],
    ['hologram', undefined],
  ])('when %s is typed, %s is near', (typed, near) => {
    expect(nearestWord(typed, ['flaws', 'looks', 'backbone', 'zones'])).toBe(near);
  });

  test('when a value is quoted, it stays on one line and short', () => {
    expect(quoteValue('a\nb')).toBe('"a b"');
    expect(quoteValue('x'.repeat(500)).length).toBeLessThan(64);
    expect(quoteValue([1])).toBe('a list of one entry');
    expect(quoteValue(null)).toBe('empty');
  });

  test('when words are listed, the last one is joined by a word', () => {
    expect(listWords(['a', 'b', 'c'])).toBe('a, b or c');
    expect(listWords(['a', 'b'], 'and')).toBe('a and b');
    expect(listWords([])).toBe('');
    expect(groupDigits(1234567)).toBe('1,234,567');
  });
});
