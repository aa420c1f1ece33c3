import { describe, expect, it } from 'vitest';
import { DE } from './de/index.js';
import { EN } from './en/index.js';
import type { WordTable } from './words.js';
import { wordsFor } from './words.js';

/** Words of the engine and its developers, which nobody at a bench says. */
const NOT_ON_SCREEN =
  /\b(seed|effort|void|nest(ing|ed)?|algorithm|iteration|polygon|vertex|JSON|YAML|undefined|null)\b/i;

/** What a file's name ends in is a name, not a word. */
const FILE_ENDINGS = /(\.(hide|job|layout|article)\.(json|yaml)|\bworkshop\.yaml)\b/g;

function texts(table: WordTable): (readonly [string, string])[] {
  return Object.entries(table).flatMap(([key, text]) =>
    typeof text === 'string'
      ? [[key, text] as const]
      : [[key, text.one] as const, [key, text.other] as const],
  );
}

function paramsOf(text: string): string[] {
  return [...new Set([...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name!))].sort();
}

describe('the texts of the app', () => {
  it('when two languages are compared, they have the same keys and parameters', () => {
    expect(Object.keys(DE).sort()).toEqual(Object.keys(EN).sort());
    for (const [key, text] of Object.entries(EN as WordTable)) {
      const other = DE[key as keyof WordTable];
      const forms = (value: typeof text) => (typeof value === 'string' ? [value] : [value.other]);
      expect([key, ...forms(other).flatMap(paramsOf)]).toEqual([key, ...forms(text).flatMap(paramsOf)]);
    }
  });

  it('when a text is shown, it has words, and none of the engine', () => {
    for (const [key, text] of [...texts(EN), ...texts(DE)]) {
      expect([key, text.trim() === text && text !== '']).toEqual([key, true]);
      expect([key, NOT_ON_SCREEN.exec(text.replace(FILE_ENDINGS, ''))?.[0]]).toEqual([key, undefined]);
    }
  });

  it('when a parameter is a number, it is written as the locale writes it', () => {
    const table = { ...EN, 'shell.undoStep': 'Undo: {step}' } as WordTable;
    expect(wordsFor(table, 'de-DE', 'shell.undoStep', { step: 1234.5 })).toBe('Undo: 1.234,5');
    expect(wordsFor(table, 'en', 'shell.undoStep')).toBe('Undo: {step}');
  });

  it('when a text goes by count, the locale’s own form is taken', () => {
    const table = { ...EN, 'shell.saved': { one: '{n} piece', other: '{n} pieces' } } as unknown as WordTable;
    expect([0, 1, 2].map((n) => wordsFor(table, 'en', 'shell.saved', { n }))).toEqual([
      '0 pieces',
      '1 piece',
      '2 pieces',
    ]);
  });
});
