import { expect, it } from 'vitest';
import { createRandom } from '../number/random.js';
import { distanceGrid } from './distance-grid.js';

const COLUMNS = 17;
const ROWS = 11;

/** Marks at random, with a border of points outside as every lattice of a sheet has. */
function randomMarks(seed: number): boolean[] {
  const random = createRandom(seed);
  return Array.from({ length: COLUMNS * ROWS }, (_, i) => {
    const isBorder =
      i % COLUMNS === 0 || i % COLUMNS === COLUMNS - 1 || i < COLUMNS || i >= (ROWS - 1) * COLUMNS;
    return !isBorder && random.next() < 0.8;
  });
}

it('when points are marked at random, depths are those of looking at every pair of points', () => {
  for (let seed = 1; seed <= 20; seed++) {
    const marks = randomMarks(seed);
    const runs = marks.flatMap((isIn, i) => {
      const column = i % COLUMNS;
      return isIn ? [(i - column) / COLUMNS, column, column] : [];
    });
    const depth = distanceGrid(runs, { minX: 0, minY: 0, pitch: 3, columns: COLUMNS, rows: ROWS });
    // The source of truth: the nearest point of the other kind, by brute force, less half a pitch.
    marks.forEach((isIn, i) => {
      let nearest = Infinity;
      marks.forEach((other, j) => {
        const across = (i % COLUMNS) - (j % COLUMNS);
        const down = Math.floor(i / COLUMNS) - Math.floor(j / COLUMNS);
        if (other !== isIn) nearest = Math.min(nearest, Math.hypot(across, down));
      });
      expect(depth[i]).toBeCloseTo((isIn ? 1 : -1) * (nearest - 0.5) * 3, 9);
    });
  }
});
