import { describe, expect, it } from 'vitest';
import type { Item, QualityRegion, Sheet } from '../types/problem.js';
import { runNest } from './run.js';
import { rectangle, testItem, testKind, testProblem, testSheet } from './test-problems.js';

function reasonOf(item: Item, sheet: Partial<Sheet> = {}): string | undefined {
  const problem = testProblem({
    items: [item],
    setKinds: [testKind({ [item.id]: 1 })],
    sheets: [testSheet('sheet', rectangle(0, 0, 100, 100), sheet)],
  });
  return runNest(problem).unplaced[0]?.reason;
}

const patch = rectangle(0, 0, 30, 20);
const poor: QualityRegion = {
  id: 'belly',
  areas: [rectangle(0, 0, 100, 100)],
  grade: 2,
  weak: true,
  isVoid: false,
  uncertaintyMm: 0,
};

describe('why a piece is not laid', () => {
  it('when it may lie on no sheet, that is told', () => {
    expect(reasonOf(testItem('a', patch, { sheets: [] }))).toBe('no-sheet-allowed');
  });

  it('when it is larger than the sheet, that is told', () => {
    expect(reasonOf(testItem('a', rectangle(0, 0, 110, 20)))).toBeUndefined();
    expect(reasonOf(testItem('a', rectangle(0, 0, 150, 20)))).toBe('larger-than-every-sheet');
  });

  it('when the leather is too poor, that is told', () => {
    expect(reasonOf(testItem('a', patch), { qualities: [poor] })).toBe('no-leather-good-enough');
  });

  it('when the direction is unknown, that is told', () => {
    const angleRule = { frame: 'local', arrowDeg: 0, targetsDeg: [0], toleranceDeg: 5, modulo: 180 } as const;
    expect(reasonOf(testItem('a', patch, { angleRule }))).toBe('direction-unknown');
  });

  it('when the leather is too thin, that is told', () => {
    const item = testItem('a', patch, { thickness: { minMm: 3, maxMm: 4, tooThick: 'skive' } });
    expect(reasonOf(item, { thickness: { rangeMm: [1, 2], readings: [] } })).toBe('thickness');
  });
});
