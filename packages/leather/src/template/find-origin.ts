import { regionBox } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import { emptyCells, markRegion, markRing } from './occupied-cells.js';
import type { CellGrid, CellMap } from './occupied-cells.js';
import type { SheetFrame } from './sheet-frame.js';
import type { TileContent } from './tile-plan.js';

/** Where the grid of pages lies, which of its cells are needed, and what that comes to. */
export interface GridChoice {
  readonly grid: CellGrid;
  readonly needed: CellMap;
  readonly pages: number;
  readonly shapesCutApart: number;
  /** Pages on which a part of a shape lies, over the one that each shape takes at least. */
  readonly extraParts: number;
}

/** Places tried along each axis, first all over, then where a shape's edge comes to lie at a window's edge. */
const TRIES_PER_AXIS = 12;
const MOST_EDGE_TRIES = 40;

/** So much stays free between a shape and the window's edge where the one is put beside the other. */
const BESIDE_EDGE_MM = 1;

/**
 * The place of the grid that takes the fewest pages and, of these, cuts the fewest shapes apart, into the fewest parts.
 * Tries a fixed number of places: the best one on an even grid of them, then, along either axis in turn, those at which
 * a shape just fits into a page's window. Of equal places the one nearest to the middle of the content is taken.
 */
export function findOrigin(content: TileContent, box: Box, frame: SheetFrame): GridChoice {
  const boxes = content.shapes.map(regionBox);
  const cellWidth = frame.cell.maxX - frame.cell.minX;
  const cellHeight = frame.cell.maxY - frame.cell.minY;
  const middleX = middleOffset(box.maxX - box.minX, cellWidth);
  const middleY = middleOffset(box.maxY - box.minY, cellHeight);
  const at = (offsetX: number, offsetY: number): GridChoice =>
    judge(content, boxes, frame, gridAt(box, cellWidth, cellHeight, offsetX, offsetY));
  let best = { x: middleX, y: middleY, choice: at(middleX, middleY) };
  const offer = (x: number, y: number): void => {
    const choice = at(x, y);
    if (isBetter(choice, best.choice)) best = { x, y, choice };
  };
  for (const x of evenly(cellWidth, middleX)) for (const y of evenly(cellHeight, middleY)) offer(x, y);
  const half = frame.overlapMm / 2;
  const xs = besideEdges(
    boxes.map((each) => [each.minX, each.maxX]),
    box.minX,
    cellWidth,
    half,
  );
  const ys = besideEdges(
    boxes.map((each) => [each.minY, each.maxY]),
    box.minY,
    cellHeight,
    half,
  );
  for (let round = 0; round < 2; round++) {
    for (const x of xs) offer(x, best.y);
    for (const y of ys) offer(best.x, y);
  }
  return best.choice;
}

function isBetter(a: GridChoice, b: GridChoice): boolean {
  if (a.pages !== b.pages) return a.pages < b.pages;
  if (a.shapesCutApart !== b.shapesCutApart) return a.shapesCutApart < b.shapesCutApart;
  return a.extraParts < b.extraParts;
}

/** How far the grid begins before content of this length so that as much is free at its end. */
function middleOffset(length: number, cell: number): number {
  return (Math.max(1, Math.ceil(length / cell)) * cell - length) / 2;
}

/** Offsets all over a cell, nearest to the wanted one first. */
function evenly(cell: number, near: number): number[] {
  const offsets = Array.from({ length: TRIES_PER_AXIS }, (_, i) => near + (cell * i) / TRIES_PER_AXIS);
  return offsets.map((offset) => offset % cell).sort((a, b) => Math.abs(a - near) - Math.abs(b - near));
}

/** Offsets at which a shape begins or ends at the edge of a page's window; a fixed number of them, spread evenly. */
function besideEdges(
  spans: readonly (readonly [number, number])[],
  start: number,
  cell: number,
  half: number,
): number[] {
  const offsets = spans.flatMap(([min, max]) => [
    wrap(start - min - half + BESIDE_EDGE_MM, cell),
    wrap(start - max + half - BESIDE_EDGE_MM, cell),
  ]);
  const sorted = [...new Set(offsets)].sort((a, b) => a - b);
  const step = Math.max(1, sorted.length / MOST_EDGE_TRIES);
  const count = Math.min(sorted.length, MOST_EDGE_TRIES);
  return Array.from({ length: count }, (_, i) => sorted[Math.floor(i * step)]!);
}

function wrap(value: number, period: number): number {
  return ((value % period) + period) % period;
}

function gridAt(box: Box, cellWidth: number, cellHeight: number, offsetX: number, offsetY: number): CellGrid {
  const count = (length: number, offset: number, cell: number): number =>
    Math.max(1, Math.ceil((length + offset) / cell - 1e-9));
  return {
    originX: box.minX - offsetX,
    originY: box.minY - offsetY,
    cellWidth,
    cellHeight,
    columns: count(box.maxX - box.minX, offsetX, cellWidth),
    rows: count(box.maxY - box.minY, offsetY, cellHeight),
  };
}

function judge(content: TileContent, boxes: readonly Box[], frame: SheetFrame, grid: CellGrid): GridChoice {
  const needed = emptyCells(grid);
  for (const edge of content.edges) markRing(grid, edge, needed);
  let shapesCutApart = 0;
  let extraParts = 0;
  content.shapes.forEach((shape, i) => {
    const own = emptyCells(grid);
    markRegion(grid, shape, boxes[i]!, own);
    let parts = 0;
    own.forEach((isIn, cell) => {
      if (isIn === 0) return;
      parts++;
      needed[cell] = 1;
    });
    if (parts <= 1 || isWholeSomewhere(grid, boxes[i]!, frame.overlapMm / 2)) return;
    shapesCutApart++;
    extraParts += parts - 1;
  });
  const pages = needed.reduce((sum, isIn) => sum + isIn, 0);
  return { grid, needed, pages, shapesCutApart, extraParts };
}

/** True if one page's window, which reaches over its cell by half the overlap, holds the box. */
function isWholeSomewhere(grid: CellGrid, box: Box, half: number): boolean {
  return (
    fitsOne(box.minX - grid.originX, box.maxX - grid.originX, grid.cellWidth, half) &&
    fitsOne(box.minY - grid.originY, box.maxY - grid.originY, grid.cellHeight, half)
  );
}

function fitsOne(from: number, to: number, cell: number, half: number): boolean {
  const last = Math.floor((from + half) / cell);
  return to <= (last + 1) * cell + half;
}
