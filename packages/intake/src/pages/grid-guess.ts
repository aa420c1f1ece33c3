import type { Point } from '@hidebound/geometry';
import { agreementOf, correctionOf, linkOf } from './agreement.js';
import type { PageLink, Wanted } from './agreement.js';
import { besideShift, scoreOf } from './arrangement.js';
import type { Arrangement } from './arrangement.js';
import type { PageFacts } from './page-facts.js';
import type { Axis } from './overlaps.js';
import type { PageOrder } from '@hidebound/leather';
import { plus } from './vectors.js';

/** Pages in the usual order: row by row or column by column. */
export interface Grid {
  /** Page numbers (from 0) in order. */
  readonly pages: readonly number[];
  readonly columns: number;
  readonly order: PageOrder;
  /** Pages run from right to left, or from below upwards, or both: those of turned pages do. */
  readonly flip?: Flip;
}

/** Ways in which the order of pages runs against reading. */
export const FLIPS = ['across', 'down', 'both'] as const;
export type Flip = (typeof FLIPS)[number];

/** Column and row of the k-th page. */
export function gridCell({ pages, columns, order, flip }: Grid, k: number): { column: number; row: number } {
  const rows = Math.ceil(pages.length / columns);
  const [column, row] =
    order === 'rows' ? [k % columns, Math.floor(k / columns)] : [Math.floor(k / rows), k % rows];
  return {
    column: flip === 'across' || flip === 'both' ? columns - 1 - column : column,
    row: flip === 'down' || flip === 'both' ? rows - 1 - row : row,
  };
}

/** The pairs of neighbours in a grid, with the axis along which they lie. */
export function gridNeighbours(grid: Grid): { a: number; b: number; axis: Axis }[] {
  const at = new Map<string, number>();
  grid.pages.forEach((page, k) => {
    const { column, row } = gridCell(grid, k);
    at.set(`${column},${row}`, page);
  });
  return grid.pages.flatMap((a, k) => {
    const { column, row } = gridCell(grid, k);
    const right = at.get(`${column + 1},${row}`);
    const below = at.get(`${column},${row + 1}`);
    return [
      ...(right === undefined ? [] : [{ a, b: right, axis: 'x' as const }]),
      ...(below === undefined ? [] : [{ a, b: below, axis: 'y' as const }]),
    ];
  });
}

/** Links that were tested once, by pair, axis and overlap. */
export type LinkBook = (a: number, b: number, axis: Axis, overlap: number) => GridLink;

export interface GridLink extends PageLink {
  readonly axis: Axis;
}

export function linkBook(facts: readonly PageFacts[], wanted: Wanted): LinkBook {
  const book = new Map<string, GridLink>();
  return (a, b, axis, overlap) => {
    const key = `${a},${b},${axis},${overlap}`;
    const known = book.get(key);
    if (known !== undefined) return known;
    const shift = besideShift(facts[a]!, facts[b]!, axis, overlap);
    const link = { ...linkOf(facts, a, b, shift, wanted), axis };
    book.set(key, link);
    return link;
  };
}

/** More columns than this are not tried: pages in a single row are, whatever their number. */
const MOST_COLUMNS = 40;

/** The grid in the order of pages for which the most speaks; nothing if nothing speaks for any. */
export function bestGrid(
  facts: readonly PageFacts[],
  sequences: readonly (readonly number[])[],
  overlaps: Readonly<Record<Axis, readonly number[]>>,
  links: LinkBook,
  wanted: Wanted,
  order?: PageOrder,
  flips: readonly (Flip | undefined)[] = [undefined],
): (Arrangement & { readonly grid: Grid; readonly overlap: readonly [number, number] }) | undefined {
  let best: ReturnType<typeof bestGrid>;
  for (const pages of sequences) {
    for (const grid of gridsOf(pages, order, flips)) {
      const neighbours = gridNeighbours(grid);
      // What speaks for an overlap across says nothing of the one down, so each is the best by itself.
      const x = bestOverlap(neighbours, 'x', overlaps.x, links);
      const y = bestOverlap(neighbours, 'y', overlaps.y, links);
      const score = x.score + y.score;
      if (score <= (best?.score ?? 0)) continue;
      best = { groups: [], links: [...x.tested, ...y.tested], score, grid, overlap: [x.overlap, y.overlap] };
    }
  }
  if (best === undefined) return undefined;
  const refined = refinedOverlap(facts, best.grid, best.overlap, wanted);
  return { ...best, groups: [placesInGrid(facts, best.grid, refined)], overlap: refined };
}

/** The overlap for which the most speaks among neighbours along an axis; of equals the first. */
function bestOverlap(
  neighbours: ReturnType<typeof gridNeighbours>,
  axis: Axis,
  overlaps: readonly number[],
  links: LinkBook,
): { readonly overlap: number; readonly score: number; readonly tested: readonly GridLink[] } {
  const along = neighbours.filter((pair) => pair.axis === axis);
  const scored = overlaps.map((overlap) => {
    const tested = along.map(({ a, b }) => links(a, b, axis, overlap));
    return { overlap, tested, score: tested.reduce((sum, link) => sum + scoreOf(link), 0) };
  });
  return scored.reduce((best, one) => (one.score > best.score ? one : best));
}

/** Rounds of mending the common overlap. */
const ROUNDS = 3;

/**
 * The overlap mended for all neighbours of an axis together: lines over one edge may all run one way and say little, those
 * over all edges hardly ever do. Where nothing is shared along one axis, it has the overlap of the other.
 */
export function refinedOverlap(
  facts: readonly PageFacts[],
  grid: Grid,
  overlap: readonly [number, number],
  wanted: Wanted,
): readonly [number, number] {
  const neighbours = gridNeighbours(grid);
  const refined = (axis: Axis, first: number): number | undefined => {
    const along = neighbours.filter((pair) => pair.axis === axis);
    let now = first;
    for (let round = 0; round < ROUNDS; round++) {
      const ties = along.flatMap(({ a, b }) => {
        const shift = besideShift(facts[a]!, facts[b]!, axis, now);
        return agreementOf(facts[a]!, facts[b]!, shift, wanted).ties;
      });
      if (ties.length === 0) return undefined;
      now -= correctionOf(ties)[axis];
    }
    return now;
  };
  const x = refined('x', overlap[0]);
  const y = refined('y', overlap[1]);
  return [x ?? y ?? overlap[0], y ?? x ?? overlap[1]];
}

function gridsOf(
  pages: readonly number[],
  order: PageOrder | undefined,
  flips: readonly (Flip | undefined)[],
): Grid[] {
  const counts = Array.from({ length: pages.length }, (_, i) => i + 1).filter(
    (columns) => columns <= MOST_COLUMNS || columns === pages.length,
  );
  return counts.flatMap((columns) => {
    const isLine = columns === 1 || columns === pages.length;
    const orders: PageOrder[] = order !== undefined ? [order] : isLine ? ['rows'] : ['rows', 'columns'];
    return orders.flatMap((one) =>
      flips.map((flip) => ({ pages, columns, order: one, ...(flip === undefined ? {} : { flip }) })),
    );
  });
}

/** Places of all pages of a grid; windows of one row lie at one height, those of one column below each other. */
export function placesInGrid(
  facts: readonly PageFacts[],
  grid: Grid,
  overlap: readonly [number, number],
): Map<number, Point> {
  const places = new Map<number, Point>();
  const byCell = new Map<string, number>();
  grid.pages.forEach((page, k) => {
    const { column, row } = gridCell(grid, k);
    byCell.set(`${column},${row}`, page);
  });
  const cells = [...byCell].map(([key, page]) => {
    const [column, row] = key.split(',').map(Number);
    return { column: column!, row: row!, page };
  });
  cells.sort((p, q) => p.row - q.row || p.column - q.column);
  for (const { column, row, page } of cells) {
    const left = byCell.get(`${column - 1},${row}`);
    const above = byCell.get(`${column},${row - 1}`);
    const before = left ?? above;
    if (before === undefined) {
      places.set(page, { x: 0, y: 0 });
      continue;
    }
    const axis = left === undefined ? 'y' : 'x';
    const shift = besideShift(facts[before]!, facts[page]!, axis, overlap[axis === 'x' ? 0 : 1]);
    places.set(page, plus(places.get(before)!, shift));
  }
  return places;
}
