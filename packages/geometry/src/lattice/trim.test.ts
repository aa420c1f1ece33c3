import { describe, expect, it } from 'vitest';
import { points, rectangle, solid } from '../../test-support/shapes.js';
import { roundPoint } from '../point.js';
import { ringArea } from '../shape/ring.js';
import type { Box, Ring } from '../types/shape.js';
import { patternRotations } from './pattern-rotations.js';
import type { Repeat } from './repeat.js';
import { repeatsOf } from './repeats-of.js';
import { fitsInBox } from './test-fits-in-box.js';
import { brokenRules, FREE, laidRing, regular } from './test-shapes.js';
import { trimBestRepeat, trimToContainer } from './trim.js';
import type { TrimmedRepeat, TrimOptions } from './trim.js';

const SHEET: Box = { minX: 0, minY: 0, maxX: 1000, maxY: 1000 };

function optionsFor(
  ring: Ring,
  box: Box,
  change: Partial<TrimOptions> = {},
): (repeat: Repeat) => TrimOptions {
  return (repeat) => ({
    rotationsDeg: patternRotations(repeat, { rule: FREE, sidesDeg: [0, 90] }),
    box,
    useFrom: { x: 1, y: 0 },
    count: Infinity,
    ring,
    fits: fitsInBox(ring, box),
    ...change,
  });
}

function trimmed(
  repeats: readonly Repeat[],
  ring: Ring,
  box: Box,
  change: Partial<TrimOptions> = {},
): TrimmedRepeat {
  return trimBestRepeat(repeats, optionsFor(ring, box, change))!;
}

function sheetRing({ minX, minY, maxX, maxY }: Box): Ring {
  return rectangle(minX, minY, maxX - minX, maxY - minY);
}

const SQUARE = points([0, 0], [40, 0], [40, 40], [0, 40]);
const PENTAGON = regular(5, 20).map(roundPoint);

const SQUARES = repeatsOf(solid(SQUARE), { gap: 0, mayHalfTurn: true, most: 3 });
const SQUARES_APART = repeatsOf(solid(SQUARE), { gap: 2, mayHalfTurn: true, most: 3 });
const PENTAGONS = repeatsOf(solid(PENTAGON), { gap: 0, mayHalfTurn: true, most: 1 });

describe('a repeat laid on a sheet', () => {
  // (5 - sqrt 5)/3: Hales & Kusner 2016. Pieces counted by their middles, in a window well within the sheet.
  it('when pentagons of 40 mm fill a square metre, the inner density is that of the lattice', () => {
    const repeat = PENTAGONS[0]!;
    const { pieces } = trimToContainer(repeat, optionsFor(PENTAGON, SHEET)(repeat))!;
    const [from, to] = [80, 920];
    const inner = pieces.filter(({ x, y }) => x > from && x < to && y > from && y < to);
    const density = (inner.length * ringArea(PENTAGON)) / (to - from) ** 2;
    expect(repeat.density).toBeCloseTo((5 - Math.sqrt(5)) / 3, 4);
    // Middles within a window: off by a row at most.
    expect(Math.abs(density / repeat.density - 1)).toBeLessThan(0.03);
    expect(brokenRules(PENTAGON, pieces, { gap: 0, sheet: sheetRing(SHEET) })).toEqual([]);
    expect((pieces.length * ringArea(PENTAGON)) / 1e6).toBeGreaterThan(0.86);
  });

  it('when squares just fit a whole number of times, the sheet is full', () => {
    const { pieces, reachMm } = trimmed(SQUARES, SQUARE, SHEET);
    expect(pieces).toHaveLength(625);
    expect(reachMm).toBeCloseTo(1000, 2);
    expect(brokenRules(SQUARE, pieces, { gap: 0, sheet: sheetRing(SHEET) })).toEqual([]);
  });

  it('when a strip holds a whole number of rows with their gaps, it is used to its sides', () => {
    const strip: Box = { minX: 0, minY: 0, maxX: 2000, maxY: 5 * 42 - 2 };
    const { pieces, reachMm } = trimmed(SQUARES_APART, SQUARE, strip, { count: 50 });
    expect(pieces).toHaveLength(50);
    expect(reachMm).toBeLessThan(10 * 42 - 2 + 0.01);
    expect(brokenRules(SQUARE, pieces, { gap: 2, sheet: sheetRing(strip) })).toEqual([]);
  });

  it('when fewer are wanted than fit, they lie at the end that is used up first, sorted', () => {
    const useFrom = { x: 0, y: -1 };
    const { pieces, reachMm } = trimmed(PENTAGONS, PENTAGON, SHEET, { count: 60, useFrom });
    expect(pieces).toHaveLength(60);
    const reaches = pieces.map((piece) => Math.max(...laidRing(PENTAGON, piece).map(({ y }) => -y)));
    for (let i = 1; i < reaches.length; i++)
      expect(reaches[i]!).toBeGreaterThanOrEqual(reaches[i - 1]! - 0.001);
    expect(reachMm).toBeCloseTo(reaches[59]!, 2);
    // 60 pieces of 951 mm² on a metre's width: three rows
    expect(reachMm + 1000).toBeLessThan(115);
  });

  it('when part of the sheet is taken, nothing lies there and the rest is used', () => {
    const inBox = fitsInBox(SQUARE, SHEET);
    // The origin is a corner of the square; turned, the square lies to another side of it.
    const isClear = (x: number, y: number, deg: number): boolean =>
      laidRing(SQUARE, { x, y, rotationDeg: deg }).every((p) => p.x <= 400.001 || p.y <= 600.001) ||
      laidRing(SQUARE, { x, y, rotationDeg: deg }).every((p) => p.x >= 799.999);
    const { pieces } = trimmed(SQUARES, SQUARE, SHEET, {
      fits: (x, y, deg) => inBox(x, y, deg) && isClear(x, y, deg),
    });
    expect(pieces.length).toBeGreaterThan(450);
    for (const { x, y, rotationDeg } of pieces) expect(isClear(x, y, rotationDeg)).toBe(true);
    expect(brokenRules(SQUARE, pieces, { gap: 0, sheet: sheetRing(SHEET) })).toEqual([]);
  });

  it('when work is limited, fits is called about so often, and some layout is found all the same', () => {
    let calls = 0;
    const inBox = fitsInBox(SQUARE, SHEET);
    const repeat = SQUARES[0]!;
    const options = optionsFor(SQUARE, SHEET, {
      work: 20_000,
      rotationsDeg: [0],
      fits: (x, y, deg) => {
        calls++;
        return inBox(x, y, deg);
      },
    });
    expect(trimToContainer(repeat, options(repeat))!.pieces.length).toBeGreaterThan(500);
    expect(calls).toBeLessThan(100_000);
  });

  it('when no piece fits, there is no layout', () => {
    const repeat = SQUARES[0]!;
    const small: Box = { minX: 0, minY: 0, maxX: 39, maxY: 200 };
    expect(trimToContainer(repeat, optionsFor(SQUARE, small)(repeat))).toBeUndefined();
  });

  it('when it is asked again, the answer is the same to the last digit', () => {
    expect(trimmed(PENTAGONS, PENTAGON, SHEET, { count: 30 })).toEqual(
      trimmed(PENTAGONS, PENTAGON, SHEET, { count: 30 }),
    );
  });
});
