import { DEFAULT_WORKSHOP } from '@hidebound/leather';
import { describe, expect, it } from 'vitest';
import { DE } from './de/index.js';
import { TRADE_TERMS, elementWords, tradeId, tradeWord } from './trade.js';
import { wordsFor } from './words.js';
import type { WordKey, WordParams } from './words.js';

const german = { say: (key: WordKey, params?: WordParams) => wordsFor(DE, 'de-DE', key, params) };

describe('names of the workshop’s tables', () => {
  it('when the built-in tables are gone through, each of their rows has a word of its own', () => {
    expect([...TRADE_TERMS.goods].sort()).toEqual(DEFAULT_WORKSHOP.goods.map(({ goods }) => goods).sort());
    expect([...TRADE_TERMS.method].sort()).toEqual(
      DEFAULT_WORKSHOP.cuttingMethods.map(({ method }) => method).sort(),
    );
  });

  it('when a word is read back, it is the row that it was made of', () => {
    for (const table of ['goods', 'method'] as const) {
      const words = TRADE_TERMS[table].map((id) => tradeWord(german, table, id));
      expect(new Set(words.map((word) => word.toLowerCase())).size).toBe(words.length);
      expect(words.map((word) => tradeId(german, table, word))).toEqual(TRADE_TERMS[table]);
    }
    expect(tradeId(german, 'goods', ' satteltasche ')).toBe('saddlebag');
  });

  it('when a name is somebody’s own, it stays as it is written', () => {
    expect(tradeWord(german, 'goods', 'toString')).toBe('toString');
    expect(tradeId(german, 'method', 'Skalpell')).toBe('Skalpell');
  });

  it('when an element is named by its line, only the line is put into words', () => {
    expect(elementWords(german, '<path> in line 12')).toBe('<path> in Zeile 12');
    expect(elementWords(german, '#flap')).toBe('#flap');
  });
});
