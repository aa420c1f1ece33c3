import { expect, it } from 'vitest';
import { createRandom } from '../number/random.js';
import { interiorRuns } from '../nest/raster.js';
import { buildSoup } from '../nest/soup.js';
import { distanceGrid } from './distance-grid.js';

const LATTICE = { minX: -4, minY: -4, pitch: 3, columns: 40, rows: 30 };

/** A slab with a hole that no lattice point lies in, a slit, and a large hole, at random places. */
function randomRings(seed: number): Float64Array[] {
  const random = createRandom(seed);
  const box = (x: number, y: number, w: number, h: number): Float64Array =>
    Float64Array.of(x, y, x + w, y, x + w, y + h, x, y + h);
  return [
    box(1, 1, 105, 75),
    box(10 + 20 * random.next(), 10 + 50 * random.next(), 1.2, 0.9),
    Float64Array.of(45, 10 + 10 * random.next(), 70, 40 + 10 * random.next(), 70.3, 40),
    box(80, 20 + 10 * random.next(), 15, 12),
  ];
}

/** The source of truth: every edge, looked at from every point. */
function distanceByHand(rings: readonly Float64Array[], x: number, y: number): number {
  let least = Infinity;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const [ax, ay] = [ring[i]!, ring[i + 1]!];
      const [bx, by] = [ring[(i + 2) % ring.length]!, ring[(i + 3) % ring.length]!];
      const along = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2);
      const t = Math.min(1, Math.max(0, along));
      least = Math.min(least, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
    }
  }
  return least;
}

it('when rings are smaller than the pitch, depths still are the distances to every edge', () => {
  for (let seed = 1; seed <= 20; seed++) {
    const rings = randomRings(seed);
    const soup = buildSoup(rings);
    const runs = interiorRuns(soup, LATTICE);
    const depth = distanceGrid(runs, soup, LATTICE);
    const inside = new Set<number>();
    for (let i = 0; i < runs.length; i += 3) {
      for (let c = runs[i + 1]!; c <= runs[i + 2]!; c++) inside.add(runs[i]! * LATTICE.columns + c);
    }
    depth.forEach((value, i) => {
      const column = i % LATTICE.columns;
      const row = (i - column) / LATTICE.columns;
      const truth = distanceByHand(rings, LATTICE.minX + 3 * column, LATTICE.minY + 3 * row);
      const error = Math.abs(Math.abs(value) - truth);
      expect(error).toBeLessThanOrEqual(truth <= 0.75 * 3 ? 1e-9 : 0.75 * 3);
      expect(value >= 0).toBe(inside.has(i) || value === 0);
    });
  }
});
