import { describe, expect, test } from 'vitest';
import { LeatherError } from '../leather-error.js';
import type { CuttingStep, Layout, PieceCopy, PiecePlacement } from '../model/layout.js';
import { chooseCopies } from './choose-copies.js';
import { currentCopies } from './current-copies.js';

function copy(article: string, piece: string, set: number, number = 1, mirrored = false): PieceCopy {
  return { article, piece, set, copy: number, mirrored };
}

const COPIES: readonly PieceCopy[] = [
  copy('bag', 'front', 1),
  copy('bag', 'front', 2),
  copy('bag', 'gusset', 1),
  copy('bag', 'gusset', 1, 1, true),
  copy('bag', 'strap', 1, 1),
  copy('bag', 'strap', 1, 2),
  copy('roll', 'front', 1),
];

/** A lane of both straps as step 1, then the pieces on their own: 2 to 6. */
const STEPS: readonly CuttingStep[] = [
  { number: 1, kind: 'lane', hide: 'side', of: 'L1', pieces: [COPIES[4]!, COPIES[5]!] },
  ...[0, 1, 2, 3, 6].map((index, i): CuttingStep => ({
    number: i + 2,
    kind: 'piece',
    hide: 'side',
    pieces: [COPIES[index]!],
  })),
];

const LAYOUT: Pick<Layout, 'placements' | 'cuttingOrder'> = {
  placements: COPIES.map((one): PiecePlacement => ({
    ...one,
    hide: 'side',
    x: 0,
    y: 0,
    rotationDeg: 0,
    locked: false,
    accepted: [],
    state: 'planned',
  })),
  cuttingOrder: STEPS,
};

function numbersOf(text: string): string[][] {
  return chooseCopies(text, currentCopies(LAYOUT)).map(({ copies }) => copies.map(({ number }) => number));
}

function codeOf(text: string): string | undefined {
  try {
    numbersOf(text);
  } catch (error) {
    return error instanceof LeatherError ? error.code : String(error);
  }
  return undefined;
}

describe('pieces as they stand on sheets', () => {
  test.each([
    ['2', [['2']]],
    ['1', [['1.1', '1.2']]],
    ['1.2, 6', [['1.2'], ['6']]],
    ['1-3', [['2', '3', '1.1', '1.2']]],
    ['1.2 to 2', [['2', '1.2']]],
  ])('when numbers %s are named, they mean these pieces', (text, numbers) => {
    expect(numbersOf(text)).toEqual(numbers);
  });

  test.each([
    ['bag: front 2/1', [['3']]],
    ['roll: front', [['6']]],
    ['gusset 1/1', [['4']]],
    ['gusset 1/1 mirrored', [['5']]],
    ['Gusset', [['4', '5']]],
    ['strap 1', [['1.1', '1.2']]],
    ['strap 1/2', [['1.2']]],
  ])('when "%s" is named, it means these pieces', (text, numbers) => {
    expect(numbersOf(text)).toEqual(numbers);
  });

  test('when a name is of several articles, or of none, or a number is not there, it is refused', () => {
    expect(codeOf('front 1/1')).toBe('tick-piece-of-several');
    expect(codeOf('bag: front 3/1')).toBe('tick-no-such-piece');
    expect(codeOf('7')).toBe('tick-no-such-number');
    expect(codeOf('1.3')).toBe('tick-no-such-number');
    expect(codeOf('3-9')).toBe('tick-no-such-number');
    expect(codeOf('3-2')).toBe('tick-range-backwards');
    expect(codeOf(',')).toBe('tick-bad-words');
  });

  test('when a copy was spoiled and laid again, its number means the one that counts', () => {
    const spoiled = { ...LAYOUT.placements[0]!, state: 'spoiled', x: 5 } as const;
    const both = { ...LAYOUT, placements: [spoiled, ...LAYOUT.placements] };
    const [first] = chooseCopies('2', currentCopies(both));
    expect(first!.copies.map(({ placement }) => placement.state)).toEqual(['planned']);
  });
});
