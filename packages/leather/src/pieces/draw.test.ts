import { curveArea, curveBox, curveCorners } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { StrapEnd, StrapNumbers } from '../model/order.js';
import { drawDisc, drawRectangle, drawStrap } from './draw.js';

const MM_PER_INCH = 25.4;
const MM2_PER_FT2 = 92_903.04;

const strap = (end: StrapEnd, more: Partial<StrapNumbers> = {}): StrapNumbers => ({
  widthMm: 40,
  lengthMm: 400,
  holeEnd: end,
  buckleEnd: end,
  ...more,
});

describe('a strap by numbers', () => {
  test('when a belt is 1.5 x 46 in, it takes 0.48 square feet', () => {
    // Arithmetic: 1.5 x 46 / 144 = 0.479 square feet (international foot, exact).
    const belt = drawStrap('belt', {
      widthMm: 1.5 * MM_PER_INCH,
      lengthMm: 46 * MM_PER_INCH,
      holeEnd: 'square',
      buckleEnd: 'square',
    });
    expect(curveArea(belt.cut) / MM2_PER_FT2).toBeCloseTo((1.5 * 46) / 144, 9);
    expect((curveArea(belt.cut) / MM2_PER_FT2).toFixed(2)).toBe('0.48');
  });

  // Areas by hand, w = 40, l = 400: what each end leaves of the rectangle.
  const square = 40 * 400;
  const areas: readonly (readonly [StrapEnd, number])[] = [
    ['square', square],
    ['round', square - 2 * (40 * 20 - (Math.PI * 20 * 20) / 2)],
    ['oval', square - 2 * (40 * 40 - (Math.PI * 40 * 20) / 2)],
    ['pointed', square - 2 * (20 * 20)],
    ['clipped', square - 2 * (10 * 10)],
  ];
  for (const [end, area] of areas) {
    test(`when its ends are ${end}, its area is what the hand says`, () => {
      // The oval's cubics are off by up to 0.03 % of the ellipse.
      expect(curveArea(drawStrap('s', strap(end)).cut) / area).toBeCloseTo(1, 4);
    });
  }

  for (const end of ['square', 'round', 'oval', 'pointed', 'arched point', 'clipped'] as const) {
    test(`when its ends are ${end}, it is as long and wide as its numbers, tips included`, () => {
      const box = curveBox(drawStrap('s', strap(end)).cut);
      expect(box.minX).toBeCloseTo(-200, 9);
      expect(box.maxX).toBeCloseTo(200, 9);
      expect(box.minY).toBeCloseTo(-20, 9);
      expect(box.maxY).toBeCloseTo(20, 9);
    });
  }

  test('when its ends are arched points, two arcs meet on the axis and leave the sides without a corner', () => {
    const { cut } = drawStrap('s', strap('arched point'));
    const arcs = cut.segments.filter((segment) => segment.kind === 'arc');
    expect(arcs).toHaveLength(4);
    // Tangent to the side, through the tip: radius (40 x 40 + 20 x 20) / 40 = 50; its middle lies 50 from the centre.
    const [first] = arcs;
    expect(first!.to).toEqual({ x: 200, y: 0 });
    expect(Math.hypot(first!.via.x - 160, first!.via.y - 30)).toBeCloseTo(50, 9);
  });

  test('when it has holes, they sit on the axis from the tip of the hole end backwards', () => {
    const holes = { count: 5, spacingMm: 25, diameterMm: 4, fromEndMm: 100 };
    const { punches } = drawStrap('s', strap('pointed', { holes }));
    expect(punches.map(({ at }) => at.x)).toEqual([100, 75, 50, 25, 0]);
    expect(punches.every(({ at, diameterMm }) => at.y === 0 && diameterMm === 4)).toBe(true);
  });

  test('when it has a slot, it is a cut-out with round ends about its place', () => {
    const slot = { widthMm: 5, lengthMm: 25, fromEndMm: 60 };
    const { cutOuts } = drawStrap('s', strap('square', { slot }));
    const box = curveBox(cutOuts[0]!);
    expect([box.minX, box.maxX, box.minY, box.maxY]).toEqual([-152.5, -127.5, -2.5, 2.5]);
    expect(curveArea(cutOuts[0]!)).toBeCloseTo(20 * 5 + Math.PI * 2.5 * 2.5, 9);
  });

  test('when its arrow is read, it points to the hole end', () => {
    const { direction } = drawStrap('s', strap('round'));
    expect(direction!.to.x).toBeGreaterThan(direction!.from.x);
  });

  test('when its ends are longer than it is, the sentence names the piece', () => {
    expect(() => drawStrap('collar', strap('round', { lengthMm: 30 }))).toThrow(
      /"collar" can't be drawn: its two ends are longer than its length of 30 mm/,
    );
  });

  test('when its holes reach over its end, that is refused', () => {
    const holes = { count: 20, spacingMm: 25, diameterMm: 4, fromEndMm: 50 };
    expect(() => drawStrap('s', strap('square', { holes }))).toThrow(/20 holes does not lie within/);
  });

  test('when its width is nought, that is refused', () => {
    expect(() => drawStrap('s', strap('square', { widthMm: 0 }))).toThrow(/width must be more than 0/);
  });
});

describe('a rectangle by numbers', () => {
  test('when its corners are round, each loses a quarter of (4 - pi) r squared', () => {
    const { cut } = drawRectangle('r', { widthMm: 60, lengthMm: 100, cornerRadiusMm: 10 });
    expect(curveArea(cut)).toBeCloseTo(6000 - (4 - Math.PI) * 100, 9);
  });

  test('when its corners are sharp, it has four', () => {
    const { cut } = drawRectangle('r', { widthMm: 60, lengthMm: 100, cornerRadiusMm: 0 });
    expect(new Set(curveCorners(cut).map(({ x, y }) => `${x} ${y}`))).toEqual(
      new Set(['-50 -30', '50 -30', '50 30', '-50 30']),
    );
  });

  test('when its corners use up its whole width, it has no side of length nought', () => {
    const { cut } = drawRectangle('r', { widthMm: 60, lengthMm: 100, cornerRadiusMm: 30 });
    expect(cut.segments.map(({ kind }) => kind)).toEqual(['line', 'arc', 'arc', 'line', 'arc', 'arc']);
  });

  test('when the radius is too large, that is refused', () => {
    expect(() => drawRectangle('r', { widthMm: 60, lengthMm: 100, cornerRadiusMm: 31 })).toThrow(
      /corner radius of 31 mm does not fit/,
    );
  });
});

test('when a disc is drawn, its area is that of the circle', () => {
  expect(curveArea(drawDisc('d', { diameterMm: 50 }).cut)).toBeCloseTo(Math.PI * 625, 9);
});
