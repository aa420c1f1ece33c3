import type { Join } from './match-rows.js';
import type { Side } from './read-page.js';

/** Column and row of a page, from 0. */
export interface GridPlace {
  readonly column: number;
  readonly row: number;
}

export const STEP: Readonly<Record<Side, GridPlace>> = {
  left: { column: -1, row: 0 },
  right: { column: 1, row: 0 },
  top: { column: 0, row: -1 },
  bottom: { column: 0, row: 1 },
};

/** Walks over the joins from page to page and gives the largest connected part its places. */
export function gridPlaces(pages: readonly number[], joins: readonly Join[]): ReadonlyMap<number, GridPlace> {
  let largest = new Map<number, GridPlace>();
  const seen = new Set<number>();
  for (const page of pages) {
    if (seen.has(page)) continue;
    const part = walk(page, joins);
    for (const reached of part.keys()) seen.add(reached);
    if (part.size > largest.size) largest = part;
  }
  const left = Math.min(...[...largest.values()].map((place) => place.column));
  const top = Math.min(...[...largest.values()].map((place) => place.row));
  return new Map(
    [...largest].map(([page, { column, row }]) => [page, { column: column - left, row: row - top }]),
  );
}

function walk(start: number, joins: readonly Join[]): Map<number, GridPlace> {
  const places = new Map<number, GridPlace>([[start, { column: 0, row: 0 }]]);
  const waiting = [start];
  for (let page = waiting.pop(); page !== undefined; page = waiting.pop()) {
    const { column, row } = places.get(page)!;
    for (const { first, second, isLevelNeighbour } of joins) {
      if (first !== page && second !== page) continue;
      const other = first === page ? second : first;
      const sign = first === page ? 1 : -1;
      if (places.has(other)) continue;
      places.set(other, isLevelNeighbour ? { column: column + sign, row } : { column, row: row + sign });
      waiting.push(other);
    }
  }
  return places;
}

/** Columns A, B, C … from the left, rows 1, 2, 3 … from the top. */
export function placeName({ column, row }: GridPlace): string {
  const letters =
    column < 26 ? String.fromCharCode(65 + column) : `A${String.fromCharCode(65 + column - 26)}`;
  return `${letters}${row + 1}`;
}
