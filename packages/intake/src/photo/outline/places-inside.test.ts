import { createRandom, pointInRegion } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { placesInside } from './places-inside.js';

// Against the exact test of one point at a time, whose signs are proven elsewhere.
test('when a region has openings, the places are those that an exact look at each finds inside', () => {
  const random = createRandom(5);
  const ring = (x: number, y: number, size: number) =>
    Array.from({ length: 40 }, (_, i) => {
      const t = (i / 20) * Math.PI;
      const r = size * random.between(0.6, 1);
      return { x: x + r * Math.cos(t), y: y + r * Math.sin(t) };
    });
  const opening = ring(310, -120, 30).reverse();
  const region = { outer: ring(300, -100, 180), openings: [opening, ring(200, -100, 9).reverse()] };
  const minX = Math.min(...region.outer.map(({ x }) => x));
  const maxX = Math.max(...region.outer.map(({ x }) => x));
  const minY = Math.min(...region.outer.map(({ y }) => y));
  const maxY = Math.max(...region.outer.map(({ y }) => y));
  const wanted: { x: number; y: number }[] = [];
  for (let j = 0; minY + 7 * (j + 0.5) < maxY; j++)
    for (let i = 0; minX + 7 * (i + 0.5) < maxX; i++) {
      const place = { x: minX + 7 * (i + 0.5), y: minY + 7 * (j + 0.5) };
      if (pointInRegion(place, region) === 'inside') wanted.push(place);
    }
  const found = placesInside(region, 7);
  expect(found.length).toBe(wanted.length);
  expect(found.length).toBeGreaterThan(500);
  found.forEach((place, i) => {
    expect(Math.hypot(place.x - wanted[i]!.x, place.y - wanted[i]!.y)).toBeLessThan(1e-9);
  });
});
