import { curveArea } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { parseHide, writeHide } from '../files/hide-file.js';
import { hideRegion } from '../hide/hide-region.js';
import type { Flaw, Hide } from '../model/hide.js';
import { plainHide, polygonCurve, rectangleCorners, rectangleCurve } from '../testing/plain.js';
import { leftoverOf } from '../yield/freeing-cut.js';
import { offcutsOf } from './offcuts-of.js';

const flaw = (id: string, minX: number, maxX: number, down = 0): Flaw => ({
  id,
  kind: 'hole',
  side: 'grain',
  shape: { kind: 'area', outline: rectangleCurve(minX, 300 + down, maxX, 350 + down) },
});

/** A slot from the right parts it: 200 mm above, 280 mm below. */
const OUTLINE = polygonCurve([
  [0, 0],
  [1000, 0],
  [1000, 200],
  [350, 200],
  [350, 220],
  [1000, 220],
  [1000, 500],
  [0, 500],
]);

const HIDE: Hide = plainHide('side-7', OUTLINE, {
  backbone: [
    { x: 0, y: 0 },
    { x: 1000, y: 0 },
  ],
  flaws: [
    flaw('left', 100, 150),
    flaw('astride', 380, 420),
    flaw('right', 900, 950),
    flaw('above', 900, 950, -250),
  ],
  zones: [{ id: 'z', kind: 'belly', outline: rectangleCurve(0, 400, 300, 500) }],
  leather: {
    tannage: 'vegetable',
    readings: [
      { at: { x: 100, y: 100 }, mm: 3 },
      { at: { x: 800, y: 100 }, mm: 3.2 },
      { at: { x: 800, y: 400 }, mm: 3.3 },
    ],
  },
  price: { amount: '200.00', currency: 'EUR', per: 'hide', of: 'measured' },
  lot: 'spring',
});

function offcuts(hide: Hide, keepMm: readonly [number, number]): Hide[] {
  const region = hideRegion(hide);
  const taken = [{ outer: rectangleCorners(10, 10, 400, 400), openings: [] }];
  const leftover = leftoverOf({ hide: region, taken, useFrom: { x: 1, y: 0 }, keepMm });
  return offcutsOf({ hide, region, pieces: taken, taken, leftover, keepMm });
}

describe('offcuts', () => {
  const [larger, smaller, ...rest] = offcuts(HIDE, [80, 80]);

  test('when a slot parts the leftover, each part is an offcut, the larger first', () => {
    expect([larger!.id, smaller!.id, rest.length]).toEqual(['side-7a', 'side-7b', 0]);
    expect(curveArea(larger!.outline)).toBeCloseTo(600 * 280, 3);
    expect(curveArea(smaller!.outline)).toBeCloseTo(600 * 200, 3);
  });

  test('when a flaw reaches into it, it is kept whole; others are not', () => {
    expect(larger!.flaws).toEqual([HIDE.flaws[1], HIDE.flaws[2]]);
    expect(smaller!.flaws).toEqual([HIDE.flaws[3]]);
    expect(larger!.zones).toEqual([]);
  });

  test('when it is read, it keeps the frame, backbone, leather and lot of its parent', () => {
    expect(larger).toMatchObject({ parent: 'side-7', cut: 'offcut', lot: 'spring', state: 'on hand' });
    expect(larger!.backbone).toEqual(HIDE.backbone);
    expect(smaller!.leather).toEqual({ tannage: 'vegetable', readings: [HIDE.leather.readings[1]] });
  });

  test('when the price is one for the whole hide, the offcut bears its share of the area', () => {
    // 168,000 of 500,000 - 650 x 20 mm2: 200 x 0.344969.
    expect(larger!.price).toEqual({ amount: '68.9938', currency: 'EUR', per: 'hide', of: 'measured' });
    const perArea = { amount: '9.90', currency: 'EUR', per: 'ft2', of: 'measured' } as const;
    expect(offcuts({ ...HIDE, price: perArea }, [80, 80])[0]!.price).toEqual(perArea);
  });

  test('when it is too small to keep, it is none', () => {
    expect(offcuts(HIDE, [210, 210]).map(({ id }) => id)).toEqual(['side-7a']);
  });

  test('when it is written to a file, the file can be read', () => {
    const file = 'offcut.hide.json';
    expect(parseHide(writeHide(larger!), { file }).id).toBe('side-7a');
  });
});
