import {
  createRandom,
  findSelfCrossing,
  pointInRing,
  pointToRing,
  ringArea,
  sampleHide,
} from '@hidebound/geometry';
import type { Ring } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { BEYOND_MM, simplifyWithin } from './simplify-within.js';

/** A hide's ring with a point each millimetre, and as much noise as a traced edge has. */
function tracedRing(seed: number, lengthMm: number): Ring {
  const random = createRandom(seed);
  const { outer } = sampleHide(seed, { cut: 'hide', lengthMm, halfWidthMm: 0.4 * lengthMm, flaws: 0 }).region;
  return outer.flatMap((a, i) => {
    const b = outer[(i + 1) % outer.length]!;
    const steps = Math.max(1, Math.round(Math.hypot(b.x - a.x, b.y - a.y)));
    return Array.from({ length: steps }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / steps + 0.04 * random.normal(),
      y: a.y + ((b.y - a.y) * k) / steps + 0.04 * random.normal(),
    }));
  });
}

test.each([1, 2, 3])('when hide %i is simplified, it keeps to its limits on both sides', (seed) => {
  const ring = tracedRing(seed, 2000);
  const simple = simplifyWithin(ring);
  expect(simple.length).toBeLessThan(2000);
  expect(simple.length).toBeGreaterThan(100);
  expect(findSelfCrossing(simple)).toBeUndefined();
  // Along the new lines, not at their ends alone.
  let beyond = 0;
  let within = 0;
  simple.forEach((a, i) => {
    const b = simple[(i + 1) % simple.length]!;
    for (const share of [0.25, 0.5, 0.75]) {
      const p = { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
      const away = pointToRing(p, ring);
      if (pointInRing(p, ring) === 'outside') beyond = Math.max(beyond, away);
      else within = Math.max(within, away);
    }
  });
  expect(beyond).toBeLessThanOrEqual(BEYOND_MM + 1e-9);
  expect(within).toBeLessThanOrEqual(0.5 + 1e-9);
  const loss = 1 - ringArea(simple) / ringArea(ring);
  expect(loss).toBeLessThan(0.001);
  expect(loss).toBeGreaterThan(-1e-4);
});

test('when an opening is simplified, it grows rather than shrinks', () => {
  const circle = (way: number): Ring =>
    Array.from({ length: 800 }, (_, i) => ({
      x: 40 * Math.cos((way * i * Math.PI) / 400),
      y: 40 * Math.sin((way * i * Math.PI) / 400),
    }));
  const opening = simplifyWithin(circle(-1));
  expect(opening.length).toBeLessThan(100);
  expect(ringArea(opening)).toBeLessThan(0);
  // A chord of a circle lies inside it: for the opening that is over the leather's hole, so it may be 0.03 mm only.
  const shortfall = (ring: Ring): number => Math.PI * 1600 - Math.abs(ringArea(ring));
  expect(shortfall(opening)).toBeLessThan(2 * Math.PI * 40 * 0.03);
});

test('when a small piece is simplified, it loses less than a thousandth of its area too', () => {
  const ring = tracedRing(4, 120);
  expect(1 - ringArea(simplifyWithin(ring)) / ringArea(ring)).toBeLessThan(0.001);
});
