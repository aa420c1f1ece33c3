import type { Point, Ring } from '@hidebound/geometry';

/** A part of the floor in even cells: the middle of cell (i, j) lies at x + (i + 0.5) · stepX, y + (j + 0.5) · stepY mm. */
export interface Grid {
  readonly width: number;
  readonly height: number;
  readonly x: number;
  readonly y: number;
  readonly stepX: number;
  readonly stepY: number;
}

/** The floor's place of a place on the grid, where cell middles are whole numbers; mm. */
export function gridToFloor(grid: Grid, x: number, y: number): Point {
  return { x: grid.x + (x + 0.5) * grid.stepX, y: grid.y + (y + 0.5) * grid.stepY };
}

/** Rings of the floor in cells from the grid's corner, as `fillRings` wants them. */
export function ringsOnGrid(grid: Grid, rings: readonly Ring[]): Ring[] {
  return rings.map((ring) =>
    ring.map(({ x, y }) => ({ x: (x - grid.x) / grid.stepX, y: (y - grid.y) / grid.stepY })),
  );
}
