import { describe, expect, test } from 'vitest';
import type { Region } from '@hidebound/geometry';
import { hideErrors } from './known-errors.js';

/** A metre square. */
const SQUARE: Region = {
  outer: [
    { x: 0, y: 0 },
    { x: 1000, y: 0 },
    { x: 1000, y: 1000 },
    { x: 0, y: 1000 },
  ],
  openings: [],
};
const FLOOR = {
  scaleShare: 0.001,
  areaShare: 0.002,
  at: [
    { at: { x: 500, y: 500 }, mm: 0.3 },
    { at: { x: 900, y: 900 }, mm: 0.4 },
    { at: { x: 2500, y: 900 }, mm: 9 },
  ],
};

describe('errors of a traced hide', () => {
  test('when the edge is off by 1 mm all around, a metre square is off by 0.4 % beside what the floor gives', () => {
    const { areaShare, scaleShare } = hideErrors(SQUARE, FLOOR, { offByMm: 1, unsure: [] });
    expect(areaShare).toBeCloseTo(Math.hypot(0.002, 0.004), 9);
    expect(scaleShare).toBe(0.001);
  });

  test('when a stretch of 500 mm is unsure by 8 mm, half of that strip is added', () => {
    const unsure = [
      {
        line: [
          { x: 0, y: 0 },
          { x: 500, y: 0 },
        ],
        offByMm: 8,
      },
    ];
    const { areaShare } = hideErrors(SQUARE, FLOOR, { offByMm: 0, unsure });
    expect(areaShare).toBeCloseTo(Math.hypot(0.002, 0.002), 9);
  });

  test('when places lie off the hide, they do not count', () => {
    const { leastMm, mostMm, at } = hideErrors(SQUARE, FLOOR, { offByMm: 0, unsure: [] });
    expect(at).toHaveLength(2);
    expect([leastMm, mostMm]).toEqual([0.3, 0.4]);
  });

  test('when no place lies on the hide, the nearest one counts', () => {
    const small = {
      outer: SQUARE.outer.map(({ x, y }) => ({ x: 2000 + x / 100, y: y / 100 })),
      openings: [],
    };
    expect(hideErrors(small, FLOOR, { offByMm: 0, unsure: [] }).mostMm).toBe(9);
  });
});
