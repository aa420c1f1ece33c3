import type { CellGrid, CellMap } from './occupied-cells.js';

const UNSEEN = -1;

/**
 * Pages that hold nothing but are needed so that all pages hang together by whole edges: without them, nobody could tell
 * where an island of pages lies. Joins the nearest island to the first page's, until one is left.
 */
export function bridgeCells(grid: CellGrid, needed: CellMap): CellMap {
  const kept = Uint8Array.from(needed);
  const bridges = new Uint8Array(needed.length);
  for (;;) {
    const path = pathToNextIsland(grid, kept);
    if (path.length === 0) return bridges;
    for (const cell of path) {
      kept[cell] = 1;
      bridges[cell] = 1;
    }
  }
}

/** Empty cells on the shortest way from the first island to another one; none if there is only one island. */
function pathToNextIsland(grid: CellGrid, kept: CellMap): number[] {
  const first = kept.indexOf(1);
  if (first < 0) return [];
  const cameFrom = new Int32Array(kept.length).fill(UNSEEN);
  const island = flood(grid, first, (cell) => kept[cell] === 1);
  const isOfIsland = new Set(island);
  const queue = [...island];
  for (const cell of island) cameFrom[cell] = cell;
  for (const cell of queue) {
    for (const next of besides(grid, cell)) {
      if (cameFrom[next] !== UNSEEN) continue;
      cameFrom[next] = cell;
      if (kept[next] === 1) return walkBack(cameFrom, cell, isOfIsland);
      queue.push(next);
    }
  }
  return [];
}

function walkBack(cameFrom: Int32Array, from: number, island: ReadonlySet<number>): number[] {
  const path: number[] = [];
  for (let cell = from; !island.has(cell); cell = cameFrom[cell]!) path.push(cell);
  return path;
}

function flood(grid: CellGrid, first: number, isIn: (cell: number) => boolean): number[] {
  const seen = new Set([first]);
  // A set is walked on while it grows.
  for (const cell of seen) for (const next of besides(grid, cell)) if (isIn(next)) seen.add(next);
  return [...seen];
}

function besides({ columns, rows }: CellGrid, cell: number): number[] {
  const column = cell % columns;
  const row = (cell - column) / columns;
  return [
    ...(column > 0 ? [cell - 1] : []),
    ...(column < columns - 1 ? [cell + 1] : []),
    ...(row > 0 ? [cell - columns] : []),
    ...(row < rows - 1 ? [cell + columns] : []),
  ];
}
