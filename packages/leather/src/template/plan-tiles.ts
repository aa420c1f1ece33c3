import { boxUnion, regionBox, ringBox } from '@hidebound/geometry';
import type { Box, Point } from '@hidebound/geometry';
import { leatherError } from '../words/refuse.js';
import { bridgeCells } from './bridge-cells.js';
import { findOrigin } from './find-origin.js';
import type { GridChoice } from './find-origin.js';
import { MOST_JOINS } from './join-code.js';
import { joinMarks } from './join-marks.js';
import type { CellGrid, CellMap } from './occupied-cells.js';
import { pageName } from './page-name.js';
import { refuseUnprintable, sheetFrame } from './sheet-frame.js';
import type { PageSettings, SheetFrame } from './sheet-frame.js';
import type { GridPlace, PageJoin, PageSide, TileContent, TilePage, TilePlan } from './tile-plan.js';

/** Nobody tapes more together, and each of their joins still gets a row of marks of its own. */
export const MOST_PAGES = 600;

/** A roll's page is so much longer than what it shows. */
const ROLL_SPARE_MM = 4;

export interface TileRequest extends PageSettings {
  readonly content: TileContent;
  /** Number of the first join: joins of one file are numbered on. Default: 1. */
  readonly firstJoin?: number;
  /** A whole number from 0: with another one, joins of the same number have other rows of marks. Default: 0. */
  readonly seed?: number;
  /** Put before each page's name, where a file holds several such plans. */
  readonly namePrefix?: string;
  /** Pages that are still allowed. */
  readonly mostPages?: number;
}

/**
 * Divides the content among pages: upright or lying, whichever takes fewer, with the grid of pages where it takes the
 * fewest and cuts the fewest shapes apart (`findOrigin`). Pages on which nothing lies are left out, but for those that
 * keep all hanging together. Equal input gives an equal plan.
 *
 * Throws `template-margin`, `template-sheet-too-small`, `template-overlap`, `template-nothing`, `template-too-many-pages`.
 */
export function planTiles(request: TileRequest): TilePlan {
  refuseUnprintable(request);
  const box = contentBox(request.content);
  refuseTooMany(request, box);
  const [best, ...others] = choicesFor(request, box);
  const chosen = others.reduce((a, b) => (isBetter(b, a) ? b : a), best!);
  const plan = toPlan(request, chosen);
  refusePages(request, plan.pages.length);
  return plan;
}

interface Choice extends GridChoice {
  readonly frame: SheetFrame;
}

function choicesFor(request: TileRequest, box: Box): Choice[] {
  return framesFor(request, box).map((frame) => ({ ...findOrigin(request.content, box, frame), frame }));
}

function framesFor(request: TileRequest, box: Box): SheetFrame[] {
  const size = {
    widthMm: box.maxX - box.minX + ROLL_SPARE_MM,
    heightMm: box.maxY - box.minY + ROLL_SPARE_MM,
  };
  return (['upright', 'lying'] as const).flatMap((each) => sheetFrame(request, each, size) ?? []);
}

/** Fewest pages, fewest shapes cut apart, least paper. */
function isBetter(a: Choice, b: Choice): boolean {
  if (a.pages !== b.pages) return a.pages < b.pages;
  if (a.shapesCutApart !== b.shapesCutApart) return a.shapesCutApart < b.shapesCutApart;
  return paperArea(a) < paperArea(b);
}

function paperArea({ frame, pages }: Choice): number {
  return frame.widthMm * frame.heightMm * pages;
}

function contentBox({ shapes, edges }: TileContent): Box {
  const boxes = [...shapes.map(regionBox), ...edges.map(ringBox)];
  if (boxes.length === 0) throw leatherError('template-nothing', { what: 'no piece and no edge was given' });
  return boxes.reduce(boxUnion);
}

/** Before any search: content so large that its outline alone takes too many pages. */
function refuseTooMany(request: TileRequest, box: Box): void {
  const least = framesFor(request, box).map(({ cell }) => {
    const across = (box.maxX - box.minX) / (cell.maxX - cell.minX);
    const down = (box.maxY - box.minY) / (cell.maxY - cell.minY);
    return Math.ceil(across) + Math.ceil(down) - 1;
  });
  refusePages(request, Math.min(...least));
}

function refusePages(request: TileRequest, pages: number): void {
  const most = request.mostPages ?? MOST_PAGES;
  if (pages > most) {
    throw leatherError('template-too-many-pages', { paper: request.paper.name, pages, most: MOST_PAGES });
  }
}

function toPlan(request: TileRequest, { grid, frame, needed, shapesCutApart }: Choice): TilePlan {
  const bridges = bridgeCells(grid, needed);
  const kept = needed.map((isIn, cell) => (isIn === 1 || bridges[cell] === 1 ? 1 : 0));
  const places = placesOf(grid, kept);
  const isKept = ({ column, row }: GridPlace): boolean =>
    column >= 0 &&
    row >= 0 &&
    column < grid.columns &&
    row < grid.rows &&
    kept[row * grid.columns + column] === 1;
  const pages = places.map((place) =>
    toPage(request, { grid, frame }, place, isKept, bridges[place.row * grid.columns + place.column] === 1),
  );
  const joins = joinsOf(request, pages, places);
  return { frame, columns: grid.columns, rows: grid.rows, pages, joins, shapesCutApart };
}

function placesOf(grid: CellGrid, kept: CellMap): GridPlace[] {
  const places: GridPlace[] = [];
  for (let row = 0; row < grid.rows; row++) {
    for (let column = 0; column < grid.columns; column++) {
      if (kept[row * grid.columns + column] === 1) places.push({ column, row });
    }
  }
  return places;
}

const BESIDE: Readonly<Record<PageSide, GridPlace>> = {
  left: { column: -1, row: 0 },
  right: { column: 1, row: 0 },
  above: { column: 0, row: -1 },
  below: { column: 0, row: 1 },
};

function toPage(
  { namePrefix = '' }: TileRequest,
  { grid, frame }: Pick<Choice, 'grid' | 'frame'>,
  place: GridPlace,
  isKept: (place: GridPlace) => boolean,
  isBridge: boolean,
): TilePage {
  const cell = {
    minX: grid.originX + place.column * grid.cellWidth,
    minY: grid.originY + place.row * grid.cellHeight,
    maxX: grid.originX + (place.column + 1) * grid.cellWidth,
    maxY: grid.originY + (place.row + 1) * grid.cellHeight,
  };
  const half = frame.overlapMm / 2;
  const neighbours: Partial<Record<PageSide, string>> = {};
  for (const [side, step] of Object.entries(BESIDE) as [PageSide, GridPlace][]) {
    const beside = { column: place.column + step.column, row: place.row + step.row };
    if (isKept(beside)) neighbours[side] = namePrefix + pageName(beside);
  }
  return {
    ...place,
    name: namePrefix + pageName(place),
    cell,
    window: {
      minX: cell.minX - half,
      minY: cell.minY - half,
      maxX: cell.maxX + half,
      maxY: cell.maxY + half,
    },
    toSheet: { dx: frame.cell.minX - cell.minX, dy: frame.cell.minY - cell.minY },
    neighbours,
    isBridge,
  };
}

function joinsOf(request: TileRequest, pages: readonly TilePage[], places: readonly GridPlace[]): PageJoin[] {
  const first = request.firstJoin ?? 1;
  const joins: PageJoin[] = [];
  const add = (page: TilePage, other: string | undefined, from: Point, to: Point): void => {
    if (other === undefined) return;
    const number = first + joins.length;
    if (number > MOST_JOINS) refusePages({ ...request, mostPages: 0 }, places.length);
    joins.push({
      number,
      pages: [page.name, other],
      from,
      to,
      marks: joinMarks(request.content, from, to, { number, seed: request.seed ?? 0 }),
    });
  };
  for (const page of pages) {
    const { minX, minY, maxX, maxY } = page.cell;
    add(page, page.neighbours.right, { x: maxX, y: minY }, { x: maxX, y: maxY });
    add(page, page.neighbours.below, { x: minX, y: maxY }, { x: maxX, y: maxY });
  }
  return joins;
}
