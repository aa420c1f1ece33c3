import type { PagesReading } from '@hidebound/leather';
import { IntakeError } from '../error.js';
import { gridNeighbours, linkBook, placesInGrid, refinedOverlap } from './grid-guess.js';
import type { Grid } from './grid-guess.js';
import { scoreOf } from './arrangement.js';
import type { Places } from './arrangement.js';
import type { PageFacts } from './page-facts.js';
import { listPages } from './page-words.js';
import { likelyOverlaps, meetingOverlap } from './overlaps.js';
import type { Axis, Pairs } from './overlaps.js';

/** Places in a stated grid, with what was found out of it. */
export interface StatedGrid {
  readonly places: Places;
  /** Of paper, across and down, mm, where it was not stated; `unknown` if nothing tells it. */
  readonly found?: readonly [number, number] | 'unknown';
}

/** The pages in the grid that is stated; an overlap that isn't is found from the lines. Throws `grid-without-columns`, `grid-too-wide`, `grid-does-not-fit`. */
export function statedGrid(facts: readonly PageFacts[], reading: PagesReading, file: string): StatedGrid {
  if (reading.columns === undefined) throw new IntakeError('grid-without-columns', {}, { file });
  if (reading.columns > facts.length)
    throw new IntakeError('grid-too-wide', { columns: reading.columns, pages: facts.length }, { file });
  const grid: Grid = {
    pages: facts.map((_, i) => i),
    columns: reading.columns,
    order: reading.order ?? 'rows',
  };
  if (reading.overlapMm === undefined) return gridWithFoundOverlap(facts, grid, file);
  // As stated: the paper's edges count, not the windows.
  const paper = facts.map(withPaperWindow);
  const places = placesInGrid(paper, grid, reading.overlapMm);
  return { places };
}

function withPaperWindow(facts: PageFacts): PageFacts {
  const { widthMm, heightMm } = facts.page;
  return { ...facts, window: { minX: 0, minY: 0, maxX: widthMm, maxY: heightMm } };
}

function gridWithFoundOverlap(facts: readonly PageFacts[], grid: Grid, file: string): StatedGrid {
  const wanted = { marks: true, lines: true };
  const neighbours = gridNeighbours(grid);
  const links = linkBook(facts, wanted);
  const likeliest = (axis: Axis) => {
    const along = neighbours.filter((pair) => pair.axis === axis);
    const pairs: Pairs = along.map(({ a, b }) => [a, b]);
    const scored = [meetingOverlap(facts, axis), ...likelyOverlaps(facts, pairs, axis, wanted)].map(
      (overlap) => {
        const tested = along.map(({ a, b }) => links(a, b, axis, overlap));
        const score = tested.reduce((sum, link) => sum + scoreOf(link), 0);
        const missed = tested.reduce((sum, link) => sum + link.contradictions, 0);
        return { overlap, score, missed, fits: tested.reduce((sum, link) => sum + link.fits, 0) };
      },
    );
    return scored.reduce((best, one) => (one.score > best.score ? one : best));
  };
  const x = likeliest('x');
  const y = likeliest('y');
  const missed = x.missed + y.missed;
  if (missed > x.fits + y.fits) {
    const pages = facts.map(({ page }) => page.number);
    throw new IntakeError('grid-does-not-fit', { missed, pages: listPages(pages) }, { file });
  }
  const likely: readonly [number, number] = [
    x.fits > 0 ? x.overlap : y.overlap,
    y.fits > 0 ? y.overlap : x.overlap,
  ];
  const overlap = refinedOverlap(facts, grid, likely, wanted);
  const places = placesInGrid(facts, grid, overlap);
  const { window, page } = facts[0]!;
  const paper = [
    overlap[0] + window.minX + page.widthMm - window.maxX,
    overlap[1] + window.minY + page.heightMm - window.maxY,
  ] as const;
  return { places, found: x.fits + y.fits > 0 ? paper : 'unknown' };
}
