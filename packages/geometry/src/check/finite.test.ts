import { describe, expect, it } from 'vitest';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import { checkAnswer } from './index.js';
import { copy, makeItem, makeJob, makeQuality, makeSheet, place, polygon, rectangle } from './test-jobs.js';

const square = makeItem('square', rectangle(-50, -50, 50, 50));
const { problem, answer } = makeJob({
  items: [square],
  placements: [place('square', 200, 200), place('square', 400, 200, 0, { copy: 2 })],
});

function told(change: Partial<NestProblem>, changed: Partial<NestAnswer> = {}): readonly unknown[] {
  return checkAnswer({ ...problem, ...change }, { ...answer, ...changed }).map(({ rule, at, other }) => ({
    rule,
    at,
    other,
  }));
}

describe('when an answer holds numbers that mean nothing', () => {
  const second = { copy: 2 };
  it.each([
    ['NaN', { x: NaN }],
    ['infinite', { y: Infinity }],
    ['absurdly large', { x: 1e12 }],
    ['no angle', { rotationDeg: NaN }],
  ])('fails a placement that is %s, and goes on with the others', (_, change) => {
    const placements = [answer.placements[0]!, place('square', 400, 200, 0, { ...second, ...change })];
    expect(told({}, { placements })).toContainEqual({
      rule: 'finite',
      at: copy('square', 1, 2),
      other: undefined,
    });
  });

  it.each([
    ['item', { item: 'nobody' }],
    ['sheet', { sheet: 'nowhere' }],
    ['set', { set: 0 }],
    ['copy', { copy: 1.5 }],
  ])('fails an unknown %s', (_, change) => {
    const placements = [...answer.placements, place('square', 600, 400, 0, change)];
    const { item, set, copy: number } = placements[2]!;
    expect(told({}, { placements })).toEqual([
      { rule: 'finite', at: { item, set, copy: number }, other: undefined },
    ]);
  });

  it('fails a lane and a rough cut', () => {
    const nowhere = { x: NaN, y: 0 };
    const lane = { id: 'lane', sheet: 'hide', from: nowhere, to: nowhere, openAt: 'from' as const };
    const cut = { id: 'cut', sheet: 'hide', group: 'g', outline: [nowhere], marginMm: 0, members: [] };
    expect(told({}, { lanes: [{ ...lane, kerfMm: 0, rows: [] }], roughCuts: [cut] })).toEqual([
      { rule: 'finite', at: undefined, other: 'lane' },
      { rule: 'finite', at: undefined, other: 'cut' },
    ]);
  });
});

describe('when a problem holds numbers that mean nothing', () => {
  const nothing = polygon([0, 0], [10, 0], [20, 0]);
  it.each([
    ['an item without area', { items: [{ ...square, region: nothing }] }, 'square'],
    ['an item that mirrors nobody', { items: [{ ...square, mirrorOf: 'nobody' }] }, 'square'],
    ['an item told twice', { items: [square, square] }, 'square'],
    [
      'a sheet with an endless outline',
      { sheets: [makeSheet({ region: rectangle(0, 0, Infinity, 9) })] },
      'hide',
    ],
    [
      'a flaw of uncertain uncertainty',
      {
        sheets: [makeSheet({ qualities: [makeQuality('q', rectangle(0, 0, 1, 1), { uncertaintyMm: NaN })] })],
      },
      'hide',
    ],
    ['a negative gap', { distances: { gap: -1, edge: 0, void: 0 } }, 'distances'],
    ['endless sets', { setKinds: [{ ...problem.setKinds[0]!, sets: 1e9 }] }, 'goods'],
    [
      'an angle rule without angles',
      { items: [{ ...square, angleRule: { ...square.angleRule, frame: 'sheet' as const } }] },
      'square',
    ],
    ['half a set', { setKinds: [{ ...problem.setKinds[0]!, sets: 0.5 }] }, 'goods'],
  ])('proves nothing of %s', (_, change, other) => {
    expect(told(change)).toEqual([{ rule: 'finite', at: undefined, other }]);
  });
});
