import { pointInRegion } from '@hidebound/geometry';
import type { Box, Point, Region, Ring } from '@hidebound/geometry';

/** A grid of equal cells: cell (0, 0) begins at the origin. */
export interface CellGrid {
  readonly originX: number;
  readonly originY: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  readonly columns: number;
  readonly rows: number;
}

/** The middle of a cell. */
function cellMiddle(grid: CellGrid, column: number, row: number): Point {
  return {
    x: grid.originX + (column + 0.5) * grid.cellWidth,
    y: grid.originY + (row + 0.5) * grid.cellHeight,
  };
}

/** One byte a cell, row by row; 1 where something is. */
export type CellMap = Uint8Array;

export function emptyCells(grid: CellGrid): CellMap {
  return new Uint8Array(grid.columns * grid.rows);
}

/** Marks the cells that a closed line runs through. */
export function markRing(grid: CellGrid, ring: Ring, cells: CellMap): void {
  let from = ring[ring.length - 1]!;
  for (const to of ring) {
    markSegment(grid, from, to, cells);
    from = to;
  }
}

/** Marks the cells that a region shares a point with: along its edges, and those that lie wholly inside. */
export function markRegion(grid: CellGrid, region: Region, box: Box, cells: CellMap): void {
  const own = emptyCells(grid);
  markRing(grid, region.outer, own);
  for (const opening of region.openings) markRing(grid, opening, own);
  const [firstColumn, lastColumn] = columnsBetween(grid, box.minX, box.maxX);
  const [firstRow, lastRow] = rowsBetween(grid, box.minY, box.maxY);
  for (let row = firstRow; row <= lastRow; row++) {
    for (let column = firstColumn; column <= lastColumn; column++) {
      const at = row * grid.columns + column;
      // A cell without an edge in it is all inside or all outside.
      if (own[at] === 1 || pointInRegion(cellMiddle(grid, column, row), region) === 'inside') cells[at] = 1;
    }
  }
}

function markSegment(grid: CellGrid, a: Point, b: Point, cells: CellMap): void {
  const [from, to] = a.x <= b.x ? [a, b] : [b, a];
  const [firstColumn, lastColumn] = columnsBetween(grid, from.x, to.x);
  for (let column = firstColumn; column <= lastColumn; column++) {
    const left = Math.max(from.x, grid.originX + column * grid.cellWidth);
    const right = Math.min(to.x, grid.originX + (column + 1) * grid.cellWidth);
    const y1 = heightAt(from, to, left);
    const y2 = firstColumn === lastColumn ? to.y : heightAt(from, to, right);
    const [firstRow, lastRow] = rowsBetween(grid, Math.min(y1, y2), Math.max(y1, y2));
    for (let row = firstRow; row <= lastRow; row++) cells[row * grid.columns + column] = 1;
  }
}

/** Height of a line from left to right at x; its beginning if it is upright. */
function heightAt(from: Point, to: Point, x: number): number {
  if (to.x === from.x || x <= from.x) return from.y;
  return x >= to.x ? to.y : from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x);
}

function columnsBetween(grid: CellGrid, minX: number, maxX: number): readonly [number, number] {
  const at = (x: number): number => clamp(Math.floor((x - grid.originX) / grid.cellWidth), grid.columns);
  return [at(minX), at(maxX)];
}

function rowsBetween(grid: CellGrid, minY: number, maxY: number): readonly [number, number] {
  const at = (y: number): number => clamp(Math.floor((y - grid.originY) / grid.cellHeight), grid.rows);
  return [at(minY), at(maxY)];
}

function clamp(index: number, count: number): number {
  return Math.max(0, Math.min(count - 1, index));
}
