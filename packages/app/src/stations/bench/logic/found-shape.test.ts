import { flattenCurve } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { drawnShape, goesAround, nextSizeMm, sizedShape, touchedSpot } from './found-shape.js';

const circle = (from: number, to: number, radius = 50) =>
  Array.from({ length: 60 }, (_, i) => {
    const angle = ((from + ((to - from) * i) / 59) * Math.PI) / 180;
    return { x: 100 + radius * Math.cos(angle), y: 100 + radius * Math.sin(angle) };
  });

describe('a flaw that is found while cutting', () => {
  it('when one draws along it, it is a stroke of the width in hand', () => {
    const scratch = Array.from({ length: 20 }, (_, i) => ({ x: 10 + 5 * i, y: 20 + (i % 2) * 0.1 }));
    expect(drawnShape(scratch, 1, 5)).toMatchObject({ kind: 'line', widthMm: 5 });
    // Half a circle's ends lie 2r apart on a way of πr: 64 % of it, far from around.
    expect(goesAround(circle(0, 180))).toBe(false);
  });

  it('when one draws around it and comes nearly back, it is all that lies within', () => {
    const shape = drawnShape(circle(0, 350), 1, 5);
    expect(shape?.kind).toBe('area');
    if (shape?.kind !== 'area') return;
    const ring = flattenCurve(shape.outline, 0.01);
    const area = ring.reduce((sum, a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      return sum + (a.x * b.y - b.x * a.y) / 2;
    }, 0);
    // πr² of a circle with a radius of 50 mm, less the sliver of the last ten degrees.
    expect(Math.abs(area)).toBeGreaterThan(0.98 * Math.PI * 2500);
    expect(Math.abs(area)).toBeLessThan(Math.PI * 2500);
  });

  it('when it is only touched, it is a spot, and a dab is no stroke', () => {
    expect(touchedSpot({ x: 1, y: 2 }, 20)).toEqual({ kind: 'point', at: { x: 1, y: 2 }, radiusMm: 10 });
    expect(
      drawnShape(
        [
          { x: 1, y: 1 },
          { x: 1.2, y: 1 },
        ],
        1,
        5,
      ),
    ).toBeUndefined();
  });

  it('when it is made larger and smaller, it goes through the sizes and stops at their ends', () => {
    const spot = touchedSpot({ x: 0, y: 0 }, 20);
    expect(nextSizeMm(spot, 1)).toBe(40);
    expect(sizedShape(spot, 40)).toMatchObject({ radiusMm: 20 });
    expect(nextSizeMm(touchedSpot({ x: 0, y: 0 }, 160), 1)).toBeUndefined();
    expect(nextSizeMm(touchedSpot({ x: 0, y: 0 }, 2), -1)).toBeUndefined();
    expect(nextSizeMm(drawnShape(circle(0, 350), 1, 5), 1)).toBeUndefined();
  });
});
