import { describe, expect, it } from 'vitest';
import { rectangle, testSheet } from '../nest/test-problems.js';
import { holdsRectangle } from './holds-rectangle.js';
import { usedUpArea } from './used-up.js';

const piece = rectangle(10, 10, 40, 30).outer;

describe('what a sheet loses', () => {
  it('when no piece lies on it, nothing is used up and the sheet is left whole', () => {
    const sheet = testSheet('sheet', rectangle(0, 0, 100, 50));
    expect(usedUpArea(sheet, [], [10, 10])).toEqual({ areaMm2: 0, leftovers: [sheet.region] });
  });

  it('when pieces lie on it, the cut is at their farthest corner', () => {
    const sheet = testSheet('sheet', rectangle(0, 0, 100, 50));
    const used = usedUpArea(sheet, [piece], [20, 20]);
    expect(used.cutAtMm).toBe(40);
    expect(used.areaMm2).toBeCloseTo(40 * 50, 6);
    expect(used.leftovers).toHaveLength(1);
  });

  it('when it is used from the other end, the cut counts from there', () => {
    const sheet = testSheet('sheet', rectangle(0, 0, 100, 50), { useFrom: { x: -1, y: 0 } });
    expect(usedUpArea(sheet, [piece], [8, 20]).areaMm2).toBeCloseTo(90 * 50, 6);
  });

  it('when what is left is too small to keep either way round, it is used up too', () => {
    const sheet = testSheet('sheet', rectangle(0, 0, 100, 50));
    expect(usedUpArea(sheet, [piece], [59, 49]).areaMm2).toBeCloseTo(2000, 6);
    expect(usedUpArea(sheet, [piece], [49, 59]).areaMm2).toBeCloseTo(2000, 6);
    expect(usedUpArea(sheet, [piece], [61, 49]).areaMm2).toBeCloseTo(5000, 6);
  });

  it('when the sheet has an opening, its area never counts', () => {
    const region = {
      ...rectangle(0, 0, 100, 50),
      openings: [[...rectangle(30, 10, 50, 20).outer].reverse()],
    };
    const used = usedUpArea(testSheet('sheet', region), [piece], [20, 20]);
    expect(used.areaMm2).toBeCloseTo(2000 - 100, 6);
  });

  it('when it is used along a slant, the area is that of the slanted part', () => {
    const sheet = testSheet('sheet', rectangle(0, 0, 100, 100), { useFrom: { x: 0.6, y: 0.8 } });
    // The corner (0, 50) lies 40 mm along; the triangle before the cut has legs 40 / 0.6 and 40 / 0.8.
    const corner = [
      { x: 0, y: 50 },
      { x: 0, y: 0 },
      { x: 1, y: 0 },
    ];
    expect(usedUpArea(sheet, [corner], [20, 20]).areaMm2).toBeCloseTo(((40 / 0.6) * (40 / 0.8)) / 2, 1);
  });
});

describe('room for a rectangle', () => {
  it('when a region is L-shaped, only a rectangle within one arm fits', () => {
    const l = {
      outer: [
        { x: 0, y: 0 },
        { x: 100, y: 0 },
        { x: 100, y: 30 },
        { x: 30, y: 30 },
        { x: 30, y: 100 },
        { x: 0, y: 100 },
      ],
      openings: [],
    };
    expect(holdsRectangle(l, { x: 1, y: 0 }, 98, 29)).toBe(true);
    expect(holdsRectangle(l, { x: 1, y: 0 }, 29, 98)).toBe(true);
    expect(holdsRectangle(l, { x: 1, y: 0 }, 40, 40)).toBe(false);
  });
});
