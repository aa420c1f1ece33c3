import { expect, test } from 'vitest';
import { intakeGerman } from './sentences-de.js';
import { INTAKE_SENTENCES } from './sentences.js';
import type { Sentence } from './sentence.js';

const ENGLISH = INTAKE_SENTENCES;
const GERMAN: Readonly<Record<string, Sentence>> = intakeGerman('de-DE');
const CODES = Object.keys(ENGLISH);

const mark = (name: string | symbol): string => `⟦${String(name)}⟧`;
const MARKED = new Proxy({}, { get: (_, name) => mark(name) });
/** What decides on a sentence's form, or is reckoned with, is a number. */
const DECIDING = [
  'count',
  'rows',
  'from',
  'to',
  'pages',
  'missed',
  'lines',
  'dashes',
  'holes',
  'names',
  'crosses',
  'joints',
  'frames',
  'marks',
  'texts',
  'signs',
  'width',
  'height',
  'megapixels',
  'difference',
];
const numbered = (value: number): Record<string, string | number> =>
  new Proxy({}, { get: (_, name) => (DECIDING.includes(String(name)) ? value : mark(name)) });

const marksIn = (text: string): string[] => [...new Set(text.match(/⟦\w+⟧/g) ?? [])].sort();

/** What one language says and the other need not. */
const SAID_IN_ONE: Readonly<Record<string, readonly string[]>> = {
  // What the reader of XML says has no German.
  'not-well-formed': ['⟦what⟧'],
};

/** Names that are written just so: in files, on the command line. */
const AS_WRITTEN = /„[^“]*“|hidebound \w+|--\w+|data-cut|\bviewBox\b/g;
const ENGLISH_WORDS = /\b(the|and|with|of|is|are|this|that|not|or|to|from|for|it|no|at|by|its)\b/i;
const ENGINE_WORDS = /\b(seed|effort|void|nest(ing|ed)?|algorithm|iteration|polygon|vertex)\b/i;
const bare = (text: string): string => text.replace(/⟦\w+⟧/g, '').replace(AS_WRITTEN, '');

test('when English and German are counted, they are the same codes', () => {
  expect(Object.keys(GERMAN).sort()).toEqual(CODES.slice().sort());
});

test.each(CODES)('when %s is told in both languages, both name the same values', (code) => {
  const extra = SAID_IN_ONE[code] ?? [];
  const marks = (table: Readonly<Record<string, Sentence>>): string[] =>
    marksIn(table[code]!(MARKED)).filter((each) => !extra.includes(each));
  expect(marks(GERMAN)).toEqual(marks(ENGLISH));
});

test.each(CODES)('when %s is told in German, it is one German sentence', (code) => {
  for (const value of [1, 2, 1234]) {
    const text = GERMAN[code]!(numbered(value));
    expect(text).toMatch(/^[„⟦A-ZÄÖÜ0-9]/);
    expect(text).toMatch(/\.$/);
    expect(text).not.toMatch(/undefined|NaN|\[object/);
    expect(bare(text)).not.toMatch(ENGLISH_WORDS);
    expect(bare(text)).not.toMatch(ENGINE_WORDS);
  }
});

// Source of the forms: Unicode CLDR, number formats of de.
test.each([
  ['open-cut-line', { gap: 2.4 }, 'Die Schnittlinie ist offen: Ihre Enden liegen 2,4 mm auseinander;'],
  [
    'role-guessed',
    { role: 'stitch', count: 3, pieces: 'front, back and 2 more' },
    '3 Linien ohne Rolle gelten als Nahtlinien (front, back und 2 weitere);',
  ],
  [
    'left-out',
    { reason: 'image', count: 1, elements: '<image> in line 12' },
    'Weggelassen, ein Bild hat keine Linien: 1 Element (<image> in Zeile 12).',
  ],
  ['binary-file', { what: 'a PNG picture' }, 'Das ist ein PNG-Bild, keine Zeichnung,'],
  [
    'sheet-size-differs',
    { name: 'sheet 3 (or sheet 4 the other way)', percent: 1.5, direction: 'larger' },
    'Die Größe von Blatt 3 (oder Blatt 4 umgekehrt) scheint um 1,5 % größer zu sein,',
  ],
  [
    'area-differs',
    { invoiced: '2.050 m2 (22.07 ft2)', measured: '1.900 m2 (20.45 ft2)', difference: '-7.3', error: '0.7' },
    'Verkauft ist die Haut als 2,050 m2 (22,07 ft2), das Foto zeigt 1,900 m2 (20,45 ft2): 7,3 % weniger,',
  ],
] as const)('when %s is told, terms and numbers are German', (code, params, beginning) => {
  expect(GERMAN[code]!(params).slice(0, beginning.length)).toBe(beginning);
});
