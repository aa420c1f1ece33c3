import { describe, expect, test } from 'vitest';
import { SUIT_REMARKS } from '../../suit/suit-model.js';
import { SENTENCES, sentenceFor } from '../catalogue.js';
import { reasonsText } from '../suit.js';
import { germanLanguage, germanSentences } from './german.js';
import { germanFor } from './say.js';

type Write = (params: unknown) => string;
const ENGLISH = Object.entries(SENTENCES) as readonly (readonly [string, Write])[];
const GERMAN = germanSentences('de-DE') as Readonly<Record<string, Write>>;
const language = germanLanguage('de-DE');

/** Every parameter comes as its own name in marks; reasons are data and have a test of their own. */
const MARKED = new Proxy({}, { get: (_, name) => (name === 'reasons' ? undefined : `⟦${String(name)}⟧`) });
/** What decides on a sentence's form is a number. */
const DECIDING = ['count', 'faults', 'isLater', 'last', 'required', 'angleDeg'];
const numbered = ({ value, measured = value }: { value: number; measured?: number }): object =>
  new Proxy(MARKED, {
    get: (marked, name) =>
      name === 'measured'
        ? measured
        : DECIDING.includes(String(name))
          ? value
          : (Reflect.get(marked, name) as unknown),
  });
const marksIn = (text: string): string[] => [...new Set(text.match(/⟦\w+⟧/g) ?? [])].sort();

/** What one language says and the other need not. */
const SAID_IN_ONE: Readonly<Record<string, readonly string[]>> = {
  // Told in English as "was" or "were" by what it holds; the German sentence needs the figure once more.
  'layout-hide-missing': ['⟦file⟧'],
  'layout-hide-changed': ['⟦file⟧'],
  'not-yaml': ['⟦problem⟧'],
};

/** Names of keys that are written just so in a file. */
const AS_WRITTEN = /„[^“]*“|workshop\.yaml|hidebound \w+|\bgap, edge, void und kerf\b/g;
const ENGLISH_WORDS = /\b(the|and|with|of|is|are|this|that|not|or|to|from|for|it|no|at|by|its)\b/i;
const ENGINE_WORDS = /\b(seed|effort|void|nest(ing|ed)?|algorithm|iteration|polygon|vertex)\b/i;

const bare = (text: string): string => text.replace(/⟦\w+⟧/g, '').replace(AS_WRITTEN, '');

describe('the German sentences', () => {
  test.each(ENGLISH)('when %s is told in both languages, both name the same values', (code, write) => {
    const english = marksIn(write(MARKED));
    const german = marksIn(GERMAN[code]!(MARKED));
    const extra = SAID_IN_ONE[code] ?? [];
    expect(german.filter((mark) => !extra.includes(mark))).toEqual(
      english.filter((mark) => !extra.includes(mark)),
    );
  });

  test.each(Object.entries(GERMAN))('when %s is told in German, it is one German sentence', (_, write) => {
    for (const params of [
      numbered({ value: 1 }),
      numbered({ value: 2 }),
      numbered({ value: 2, measured: -2 }),
    ]) {
      const text = write(params);
      expect(text).toMatch(/^[„⟦A-ZÄÖÜ0-9]/);
      expect(text).toMatch(/[.?⟧]$/);
      expect(text).not.toMatch(/undefined|NaN|\[object/);
      expect(bare(text)).not.toMatch(ENGLISH_WORDS);
      expect(bare(text)).not.toMatch(ENGINE_WORDS);
    }
  });

  test('when English and German are counted, they are the same codes', () => {
    expect(Object.keys(GERMAN).sort()).toEqual(Object.keys(SENTENCES).sort());
  });
});

describe('values within German sentences', () => {
  // Source: Unicode CLDR, number formats of de and de-CH.
  test('when figures are told, they are written as the locale writes them', () => {
    const params = { what: '"front" of bag', other: '"gusset"', measured: 2.1, required: 3 };
    const german = (locale: string): string =>
      sentenceFor({ code: 'broken-gap', params }, [], germanLanguage(locale));
    expect(german('de-DE')).toBe(
      '„front“ of bag liegt zu nah an „gusset“ (2,1 mm, verlangt sind 3 mm); auseinanderrücken.',
    );
    expect(german('de-CH')).toContain('(2.1 mm, verlangt sind 3 mm)');
    const { figures } = germanFor('de-DE');
    expect(figures('2.2–2.9 mm')).toBe('2,2–2,9 mm');
    expect(figures('1,250.50 EUR')).toBe('1.250,50 EUR');
  });

  test('when a place is known, its parts come in order, in German', () => {
    const place = { file: 'a.json', line: 2, at: 'flaws[0]', point: { x: 1.26, y: -3 } };
    expect(language.place(place)).toBe('a.json, Zeile 2, flaws[0], bei (1,3; -3) mm');
  });

  test('when a code has no German sentence, it is told in English', () => {
    const table = { 'svg-odd': (p: { element: string }) => `Element ${p.element} is odd.` };
    const finding = { code: 'svg-odd', params: { element: 'path7' }, place: { file: 'bag.svg', line: 4 } };
    expect(sentenceFor(finding, [table], language)).toBe('bag.svg, Zeile 4: Element path7 is odd.');
  });

  test('when a copy is named in words, they are German around the names', () => {
    const what = '"tab and loop" of bag of tools (set 2, copy 3, mirrored)';
    expect(sentenceFor({ code: 'tick-not-ticked', params: { what, asked: 'number 12' } }, [], language)).toBe(
      '„tab and loop“ von bag of tools (Satz 2, Stück 3, gespiegelt) (Nummer 12) hat keinen Haken, der sich zurücknehmen ließe; es ist noch zu schneiden.',
    );
  });

  test.each(SUIT_REMARKS)('when a hide does not fit (%s), the reason is German', (code) => {
    const params = {
      minMm: 1.2,
      maxMm: 1.4,
      wantedMinMm: 2,
      wantedMaxMm: 2.4,
      share: 0.25,
      toleranceMm: 0.2,
      found: /soft|hard|stiff/.test(code) ? 'soft' : /tannage/.test(code) ? 'chrome' : 'braun',
      asked: /soft|hard|stiff/.test(code)
        ? 'medium or firm'
        : /tannage/.test(code)
          ? 'vegetable or oil'
          : 'rot',
      need: 'turned edges',
      tannage: 'chrome',
      zones: 'shoulder or belly',
      isLoad: 1,
    };
    const reasons = reasonsText([{ hide: 'side-7', remark: { code, params } }]);
    const finding = {
      code: 'suit-no-hide',
      params: { piece: 'front', article: 'tasche', leather: 'body', why: 'side-7 is odd', reasons },
    };
    const text = sentenceFor(finding, [], language);
    expect(text).toMatch(
      /^Keine vorhandene Haut passt für „front“ von tasche \(Leder „body“\): side-7: .*\.$/,
    );
    expect(bare(text)).not.toMatch(ENGLISH_WORDS);
    expect(text).not.toMatch(/undefined|NaN|vegetable|chrome|shoulder|soft|firm/);
  });
});
