import { createRandom } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import {
  SCALES,
  fitted,
  pinched,
  seenFrom,
  shifted,
  toPlace,
  toScreen,
  viewMatrix,
  zoomedAt,
} from './view.js';
import type { View } from './view.js';

const random = createRandom(11);
const between = (from: number, to: number): number => from + (to - from) * random.next();
const someView = (): View => ({
  scale: between(0.05, 20),
  turnDeg: between(0, 360),
  x: between(-2000, 2000),
  y: between(-2000, 2000),
});
const somePoint = () => ({ x: between(-3000, 3000), y: between(-3000, 3000) });

describe('a view of the drawing', () => {
  it('when a place is brought to the screen and back, it is the same place', () => {
    for (let i = 0; i < 200; i++) {
      const [view, place] = [someView(), somePoint()];
      const back = toPlace(view, toScreen(view, place));
      expect(back.x).toBeCloseTo(place.x, 6);
      expect(back.y).toBeCloseTo(place.y, 6);
    }
  });

  it('when a drawing made for one view is moved to be seen as in another, every place lies where that view has it', () => {
    for (let i = 0; i < 100; i++) {
      const [drawn, now, place] = [someView(), someView(), somePoint()];
      const moved = toScreen(seenFrom(drawn, now), toScreen(drawn, place));
      expect(moved.x).toBeCloseTo(toScreen(now, place).x, 5);
      expect(moved.y).toBeCloseTo(toScreen(now, place).y, 5);
    }
  });

  // Source: SVG 2, "The transform property": matrix(a b c d e f) takes (x, y) to (ax + cy + e, bx + dy + f).
  it('when it is written as a matrix, the matrix takes places where the view shows them', () => {
    for (let i = 0; i < 100; i++) {
      const [view, { x, y }] = [someView(), somePoint()];
      const [a, b, c, d, e, f] = viewMatrix(view);
      const seen = toScreen(view, { x, y });
      expect(a * x + c * y + e).toBeCloseTo(seen.x, 6);
      expect(b * x + d * y + f).toBeCloseTo(seen.y, 6);
    }
  });

  it('when it is zoomed or turned at a point, what is there stays there', () => {
    for (let i = 0; i < 100; i++) {
      const [view, at] = [someView(), somePoint()];
      const place = toPlace(view, at);
      const seen = toScreen(zoomedAt(view, at, between(0.2, 5), between(-180, 180)), place);
      expect(seen.x).toBeCloseTo(at.x, 5);
      expect(seen.y).toBeCloseTo(at.y, 5);
    }
  });

  it('when it is zoomed without end, it stops at what is of use', () => {
    const view = someView();
    expect(zoomedAt(view, { x: 0, y: 0 }, 1e9).scale).toBe(SCALES.most);
    expect(zoomedAt(view, { x: 0, y: 0 }, 1e-9).scale).toBe(SCALES.least);
  });

  it('when two fingers move, each keeps the place that it touches', () => {
    const view: View = { scale: 2, turnDeg: 30, x: 100, y: 50 };
    const before = [
      { x: 200, y: 300 },
      { x: 400, y: 320 },
    ] as const;
    const now = [
      { x: 180, y: 350 },
      { x: 390, y: 500 },
    ] as const;
    const after = pinched(view, before, now);
    for (const i of [0, 1] as const) {
      const seen = toScreen(after, toPlace(view, before[i]));
      expect(seen.x).toBeCloseTo(now[i].x, 6);
      expect(seen.y).toBeCloseTo(now[i].y, 6);
    }
  });

  it('when two fingers lie on one spot, the view is only shifted', () => {
    const view = someView();
    const spot = { x: 10, y: 10 };
    const after = pinched(view, [spot, spot], [spot, { x: 30, y: 50 }]);
    expect(after).toEqual(shifted(view, 10, 20));
  });

  it('when a box is fitted, however the view is turned, its corners are seen and it fills the drawing one way', () => {
    const box = { minX: -100, minY: 40, maxX: 1400, maxY: 900 };
    const size = { width: 640, height: 480 };
    for (const turnDeg of [0, 33, 90, 217]) {
      const view = fitted({ scale: 1, turnDeg, x: 0, y: 0 }, box, size, 24);
      const corners = [
        [box.minX, box.minY],
        [box.maxX, box.minY],
        [box.maxX, box.maxY],
        [box.minX, box.maxY],
      ].map(([x, y]) => toScreen(view, { x: x!, y: y! }));
      const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
      const spans = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
      expect(Math.min(...xs)).toBeGreaterThanOrEqual(24 - 1e-6);
      expect(Math.max(...xs)).toBeLessThanOrEqual(size.width - 24 + 1e-6);
      expect(Math.min(...ys)).toBeGreaterThanOrEqual(24 - 1e-6);
      expect(Math.max(...ys)).toBeLessThanOrEqual(size.height - 24 + 1e-6);
      expect(Math.max(spans[0]! / (size.width - 48), spans[1]! / (size.height - 48))).toBeCloseTo(1, 9);
    }
  });
});
