import {
  createRandom,
  curveFromPolyline,
  distanceBetween,
  pointInRing,
  pointToRing,
  sampleHide,
} from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { hideRegion } from '../hide/hide-region.js';
import type { Hide } from '../model/hide.js';
import { plainHide, polygonCurve, rectangleCurve } from '../testing/plain.js';
import { baseLineOf } from './base-line.js';
import type { BaseLine } from './model.js';

/** Points of the line from end to end, the ends left out. */
function along({ start, end }: BaseLine): Point[] {
  return Array.from({ length: 99 }, (_, i) => {
    const share = (i + 1) / 100;
    return {
      x: start.at.x + share * (end.at.x - start.at.x),
      y: start.at.y + share * (end.at.y - start.at.y),
    };
  });
}

/** How far the line leaves the leather. */
function offLeather(hide: Hide, line: BaseLine): number {
  const { outer } = hideRegion(hide);
  return Math.max(
    ...along(line).map((p) => (pointInRing(p, outer) === 'outside' ? pointToRing(p, outer) : 0)),
  );
}

test('when a panel has no backbone, the line runs along a long side, from corner to corner', () => {
  const line = baseLineOf(plainHide('panel', rectangleCurve(0, 0, 1200, 600)), 'head');
  expect(line.kind).toBe('straight edge');
  expect(line.lengthMm).toBeCloseTo(1200, 6);
  expect(line.start).toMatchObject({ fromCornerMm: 0, corner: { kind: 'corner' } });
  expect(line.end.fromCornerMm).toBe(0);
  // Into the leather, whichever side the line lies on.
  const { origin, axis, out } = line.frame;
  const inside = { x: origin.x + 10 * axis.x + 10 * out.x, y: origin.y + 10 * axis.y + 10 * out.y };
  expect(inside.x > 0 && inside.x < 1200 && inside.y > 0 && inside.y < 600).toBe(true);
});

const BACKBONE = [
  { x: 0, y: 4 },
  { x: 2000, y: 4 },
] as const;

test('when the back edge of a side bulges outwards, the line runs from one of its corners to the other', () => {
  const bulged = polygonCurve([
    [0, 0],
    [1000, -12],
    [2000, 0],
    [2000, 900],
    [0, 900],
  ]);
  const line = baseLineOf(plainHide('side', bulged, { backbone: BACKBONE }), 'head');
  expect(line.kind).toBe('back edge');
  expect([line.start.at, line.end.at]).toEqual([
    { x: 0, y: 0 },
    { x: 2000, y: 0 },
  ]);
});

test('when the back edge of a side is hollow, the line touches the hollow and keeps to the leather', () => {
  const hollow = polygonCurve([
    [0, 0],
    [900, 9],
    [2000, 0],
    [2000, 900],
    [0, 900],
  ]);
  const hide = plainHide('side', hollow, { backbone: BACKBONE });
  const line = baseLineOf(hide, 'head');
  expect(line.kind).toBe('back edge');
  expect(offLeather(hide, line)).toBe(0);
  const nearest = Math.min(...along(line).map((p) => pointToRing(p, hideRegion(hide).outer)));
  expect(nearest).toBeLessThan(1);
});

test('when the hide is used from the tail, zero is at the tail', () => {
  const hide = plainHide('side', rectangleCurve(0, 0, 2000, 900), { backbone: BACKBONE });
  expect(baseLineOf(hide, 'tail').start.at.x).toBeCloseTo(2000, 6);
  expect(baseLineOf(hide, 'head').start.at.x).toBeCloseTo(0, 6);
});

test('when the backbone runs down the middle, so does the line, and its ends are told from corners to its side', () => {
  const hide = plainHide('whole', rectangleCurve(0, 0, 2000, 1800), {
    cut: 'whole hide',
    backbone: [
      { x: 30, y: 905 },
      { x: 1980, y: 905 },
    ],
  });
  const line = baseLineOf(hide, 'head');
  expect(line.kind).toBe('backbone');
  expect(line.start.at.x).toBeCloseTo(0, 6);
  expect(line.end.at.x).toBeCloseTo(2000, 6);
  expect(line.start.fromCornerMm).toBe(895);
  // Out is to the right as seen from the start: downwards on a hide with its head at the left.
  expect(line.frame.out.y).toBeCloseTo(1, 6);
});

test('when a hide has neither backbone nor straight edge nor corner, the line runs down its middle', () => {
  const round = curveFromPolyline(
    Array.from({ length: 72 }, (_, i) => ({
      x: 600 * Math.cos((i * Math.PI) / 36),
      y: 380 * Math.sin((i * Math.PI) / 36),
    })),
    true,
  );
  const line = baseLineOf(plainHide('belly', round), 'head');
  expect(line.kind).toBe('long axis');
  expect(line.lengthMm).toBeGreaterThan(1150);
  expect(line.start.corner.kind).toBe('outermost point');
});

describe.each(['side', 'hide', 'bend', 'shoulder', 'belly'] as const)(
  'when a %s is made by chance',
  (cut) => {
    const hides = [1, 2, 3, 4, 5, 6].map((seed) => {
      const sheet = sampleHide(seed, { cut, flaws: 0, zones: false });
      const random = createRandom(seed);
      const wobble = random.next() * 4;
      return plainHide(`hide-${seed}`, curveFromPolyline(sheet.region.outer, true), {
        backbone: [
          { x: 20, y: wobble },
          { x: 2150, y: wobble },
        ],
      });
    });

    test('its line lies on the leather but for half a millimetre', () => {
      for (const hide of hides) expect(offLeather(hide, baseLineOf(hide, 'head'))).toBeLessThanOrEqual(0.5);
    });

    test('its ends lie on the outline, exactly so far from their corners', () => {
      for (const hide of hides) {
        const line = baseLineOf(hide, 'tail');
        for (const { at, corner, fromCornerMm } of [line.start, line.end]) {
          expect(pointToRing(at, hideRegion(hide).outer)).toBeLessThan(0.35);
          expect(Math.abs(distanceBetween(at, corner.at) - fromCornerMm)).toBeLessThan(0.3);
          expect(Number.isInteger(fromCornerMm * 2)).toBe(true);
        }
      }
    });
  },
);
