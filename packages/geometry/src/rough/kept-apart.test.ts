import { describe, expect, it } from 'vitest';
import { rectangle, testItem, testProblem } from '../nest/test-problems.js';
import type { Region } from '../types/shape.js';
import { ROUGH_ROOM_MM } from './constants.js';
import { keptApart, keptFromOutline, roughShape } from './kept-apart.js';

const SQUARE = rectangle(0, 0, 40, 40);
const dyed = testItem('dyed', SQUARE, { group: 'dyed', roughMargin: 10 });
const waxed = testItem('waxed', SQUARE, { group: 'waxed', roughMargin: 6 });
const bare = testItem('bare', SQUARE, { group: 'dyed' });
const plain = testItem('plain', SQUARE);
const problem = testProblem({ distances: { gap: 2, edge: 5, void: 1, betweenGroups: 3 } });

describe('distances that rough cuts ask for', () => {
  it.each([
    ['two of one group share a block, the gap is enough', dyed, dyed, 2],
    ['two of different groups have margins, both are kept', dyed, waxed, 16 + 2 * ROUGH_ROOM_MM],
    ['one of another group has no margin, the margin of the first is kept', plain, dyed, 10 + ROUGH_ROOM_MM],
    ['one of the same group has no margin, the margin of the other is kept', dyed, bare, 10 + ROUGH_ROOM_MM],
    ['neither has a margin and groups differ, the distance between groups is kept', plain, bare, 3],
    ['neither has a margin nor a group, the gap is enough', plain, plain, 2],
  ])('when %s', (_, one, other, distance) => {
    const apart = keptApart(problem);
    expect(apart(one, other)).toBeCloseTo(distance, 12);
    expect(apart(other, one)).toBeCloseTo(distance, 12);
  });

  it('when each is to have a block of its own, margins are kept within a group too', () => {
    const apart = keptApart(problem, { blocks: 'own' });
    expect(apart(dyed, dyed)).toBeCloseTo(20 + 2 * ROUGH_ROOM_MM, 12);
    expect(apart(plain, plain)).toBe(2);
  });

  it('when a margin is less than a distance, the distance is kept', () => {
    const apart = keptApart(testProblem({ distances: { gap: 2, edge: 5, void: 1, betweenGroups: 50 } }));
    expect(apart(dyed, waxed)).toBe(50);
  });

  it('when an item has a margin, it is kept from the outline, else the edge distance alone', () => {
    const fromOutline = keptFromOutline(problem);
    expect([dyed, bare].map(fromOutline)).toEqual([10 + ROUGH_ROOM_MM, 5]);
  });
});

describe('the shape of an item with a rough cut', () => {
  const frame: Region = { ...SQUARE, openings: [[...rectangle(10, 10, 30, 30).outer].reverse()] };
  /** A square ring, 10 mm wide, whose mouth of 6 mm the margin closes and one of 60 mm it does not. */
  const hook = (mouth: number): Region => ({
    outer: [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 50 - mouth / 2 },
      { x: 90, y: 50 - mouth / 2 },
      { x: 90, y: 10 },
      { x: 10, y: 10 },
      { x: 10, y: 90 },
      { x: 90, y: 90 },
      { x: 90, y: 50 + mouth / 2 },
      { x: 100, y: 50 + mouth / 2 },
      { x: 100, y: 100 },
      { x: 0, y: 100 },
    ],
    openings: [],
  });

  it('when it has openings, they are closed; without a margin they stay', () => {
    expect(roughShape({ region: frame, roughMargin: 5 })).toEqual({ outer: frame.outer, openings: [] });
    expect(roughShape({ region: frame })).toBe(frame);
  });

  it('when the margin closes the mouth of a bay, the bay is closed, else it stays open', () => {
    expect(roughShape({ region: hook(60), roughMargin: 5 })).toEqual(hook(60));
    const closed = roughShape({ region: hook(6), roughMargin: 5 });
    expect(closed.openings).toEqual([]);
    expect(
      Math.min(...closed.outer.map(({ x, y }) => Math.max(Math.abs(x - 50), Math.abs(y - 50)))),
    ).toBeGreaterThan(44);
  });
});
