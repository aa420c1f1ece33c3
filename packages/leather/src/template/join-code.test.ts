import { expect, test } from 'vitest';
import { MOST_JOINS, joinCode } from './join-code.js';

const WORDS = Array.from({ length: MOST_JOINS }, (_, i) =>
  joinCode(i + 1).reduce((word, isFilled, place) => (isFilled ? word | (1 << place) : word), 0),
);

function filledIn(word: number): number {
  return [...word.toString(2)].filter((digit) => digit === '1').length;
}

test('when rows are read well, the rule of the code holds in each', () => {
  // As docs/templates.md puts it: an even number is filled, and their places add up to nothing by exclusive or.
  for (let number = 1; number <= MOST_JOINS; number++) {
    const filled = joinCode(number).flatMap((isFilled, place) => (isFilled ? [place] : []));
    expect(filled.length % 2).toBe(0);
    expect(filled.reduce((sum, place) => sum ^ place, 0)).toBe(0);
    expect(filled.length).toBeGreaterThan(0);
  }
});

test('when the seed is another one, every number has another row, and all rows still differ', () => {
  for (const seed of [1, 2, 1000, 2 * 0xffffff + 1]) {
    const rows = new Set<string>();
    for (let number = 1; number <= MOST_JOINS; number++) {
      const row = JSON.stringify(joinCode(number, seed));
      expect(row === JSON.stringify(joinCode(number))).toBe(seed % MOST_JOINS === 0);
      rows.add(row);
    }
    expect(rows.size).toBe(MOST_JOINS);
  }
});

test('when two joins differ, their rows differ in at least four squares', () => {
  let least = 16;
  for (let i = 0; i < WORDS.length; i++) {
    for (let k = i + 1; k < WORDS.length; k += 1 + (i % 7)) {
      least = Math.min(least, filledIn(WORDS[i]! ^ WORDS[k]!));
    }
  }
  // Extended Hamming code of 16 digits: distance 4 (Hamming 1950).
  expect(least).toBe(4);
});

test('when the next join is numbered, its row looks quite different', () => {
  const steps = WORDS.slice(1).map((word, i) => filledIn(word ^ WORDS[i]!));
  const mean = steps.reduce((sum, n) => sum + n, 0) / steps.length;
  expect(mean).toBeGreaterThan(6);
});
