import type { GridPlace } from './grid-places.js';
import { rowKey } from './match-rows.js';
import type { PageReading } from './read-page.js';

/**
 * Looks at pages that lie as somebody has laid them (place by number of the reading), and names those that must be
 * moved until every join that is left has the same row on both pages: most faulty joins first.
 */
export function misplacedPages(
  readings: readonly PageReading[],
  places: ReadonlyMap<number, GridPlace>,
): number[] {
  let faulty = faultyJoins(readings, places);
  const misplaced: number[] = [];
  while (faulty.length > 0) {
    const counts = new Map<number, number>();
    for (const page of faulty.flat()) counts.set(page, (counts.get(page) ?? 0) + 1);
    const [worst] = [...counts].sort((a, b) => b[1] - a[1])[0]!;
    misplaced.push(worst);
    faulty = faulty.filter((join) => !join.includes(worst));
  }
  return misplaced;
}

function faultyJoins(
  readings: readonly PageReading[],
  places: ReadonlyMap<number, GridPlace>,
): (readonly [number, number])[] {
  const at = new Map([...places].map(([page, { column, row }]) => [`${column} ${row}`, page]));
  const faulty: (readonly [number, number])[] = [];
  for (const [page, { column, row }] of places) {
    const right = at.get(`${column + 1} ${row}`);
    const below = at.get(`${column} ${row + 1}`);
    const fits = (other: number, mine: 'right' | 'bottom', its: 'left' | 'top'): boolean =>
      rowKey(readings[page]!, mine) === rowKey(readings[other]!, its);
    if (right !== undefined && !fits(right, 'right', 'left')) faulty.push([page, right]);
    if (below !== undefined && !fits(below, 'bottom', 'top')) faulty.push([page, below]);
  }
  return faulty;
}
