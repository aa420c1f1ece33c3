import { curveFromPolyline } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { arrowToward, snapTo } from './snap.js';

const square = curveFromPolyline(
  [
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 100, y: 60 },
    { x: 0, y: 60 },
  ],
  true,
);

describe('what lies under a tap', () => {
  it('when a corner is near, it is taken; else the whole straight side; beside all, nothing', () => {
    expect(snapTo([square], { x: 98, y: 3 }, 5)).toEqual({ kind: 'corner', at: { x: 100, y: 0 } });
    expect(snapTo([square], { x: 50, y: 2 }, 5)).toEqual({
      kind: 'side',
      from: { x: 0, y: 0 },
      to: { x: 100, y: 0 },
    });
    expect(snapTo([square], { x: 50, y: 30 }, 5)).toBeUndefined();
  });

  it('when the arrow is turned near a multiple of 15°, it goes there, and with Shift it stays free', () => {
    const middle = { x: 10, y: 10 };
    const at = (deg: number) => ({
      x: 10 + Math.cos((deg * Math.PI) / 180),
      y: 10 + Math.sin((deg * Math.PI) / 180),
    });
    // Clockwise as seen: y grows downwards.
    expect(arrowToward(middle, { x: 10, y: 20 }, false)).toBe(90);
    expect(arrowToward(middle, at(47.2), false)).toBe(45);
    expect(arrowToward(middle, at(47.2), true)).toBe(47.2);
    expect(arrowToward(middle, at(-1), false)).toBe(0);
    expect(arrowToward(middle, at(200.5), false)).toBe(200.5);
  });
});
