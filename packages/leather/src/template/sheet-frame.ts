import type { Box } from '@hidebound/geometry';
import { leatherError } from '../words/refuse.js';
import type { Paper } from './paper.js';

/** How a sheet is divided; all in mm from its top left corner. */
export interface SheetFrame {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marginMm: number;
  readonly overlapMm: number;
  /** What the printer reaches: the sheet without its margins. Nothing is printed outside. */
  readonly live: Box;
  /** What is shown of the layout. */
  readonly window: Box;
  /** What the page adds to the whole once it is trimmed: the window less half the overlap all round. */
  readonly cell: Box;
  /** For the upright check bar, left of the window. */
  readonly leftBand: Box;
  /** For the level check bar and all that a page says, below the window, over the whole live width. */
  readonly bottomBand: Box;
}

/** How pages are to be made. */
export interface PageSettings {
  readonly paper: Paper;
  /** Width of the strip that two neighbours both show. */
  readonly overlapMm: number;
  /** Blank all round. */
  readonly marginMm: number;
}

/** Printers leave up to so much blank at an edge. */
export const LEAST_MARGIN_MM = 10;
export const USUAL_OVERLAP_MM = 10;

/**
 * The two bands hold the check bars. They are reserved on every page, so that nothing is ever printed over a cut line,
 * and lie left and below: these are the flaps on which the neighbours' trimmed edges come to lie.
 */
const LEFT_BAND_MM = 16;
const BOTTOM_BAND_MM = 33;

/** A bar of 100 mm, and beyond it the places where 100 mm lies on wrongly scaled pages. */
const LEAST_LIVE_WIDTH_MM = 170;
const LEAST_WINDOW_HEIGHT_MM = 150;

/** Half the overlap holds half a matching mark of 3.5 mm and some air. */
const LEAST_OVERLAP_MM = 8;
const MOST_OVERLAP_MM = 50;

/** A row of matching marks with names, and the corner crosses at its ends. */
const LEAST_CELL_MM = 120;

/** PDF measures up to 14400 units of 1/72 in (ISO 32000-1, annex C), that is 5080 mm. */
const LONGEST_PAGE_MM = 5000;

/** Whether the sheet stands on its short side or lies on its long one; a roll runs down or across. */
export type Orientation = 'upright' | 'lying';

/**
 * The sheet in one orientation; undefined if it is too small in this one, or its pages could not overlap so far. A roll
 * is cut off so that `contentMm` fits in its length.
 */
export function sheetFrame(
  settings: PageSettings,
  orientation: Orientation,
  contentMm: { readonly widthMm: number; readonly heightMm: number },
): SheetFrame | undefined {
  const { overlapMm, marginMm } = settings;
  const { widthMm, heightMm } = sheetSize(settings, orientation, contentMm);
  const live = { minX: marginMm, minY: marginMm, maxX: widthMm - marginMm, maxY: heightMm - marginMm };
  const window = { ...live, minX: live.minX + LEFT_BAND_MM, maxY: live.maxY - BOTTOM_BAND_MM };
  const half = overlapMm / 2;
  const cell = {
    minX: window.minX + half,
    minY: window.minY + half,
    maxX: window.maxX - half,
    maxY: window.maxY - half,
  };
  const isTooSmall =
    live.maxX - live.minX < LEAST_LIVE_WIDTH_MM || window.maxY - window.minY < LEAST_WINDOW_HEIGHT_MM;
  if (isTooSmall || Math.min(cell.maxX - cell.minX, cell.maxY - cell.minY) < LEAST_CELL_MM) return undefined;
  return {
    widthMm,
    heightMm,
    marginMm,
    overlapMm,
    live,
    window,
    cell,
    leftBand: { ...live, maxX: window.minX, maxY: window.maxY },
    bottomBand: { ...live, minY: window.maxY },
  };
}

function sheetSize(
  { paper, overlapMm, marginMm }: PageSettings,
  orientation: Orientation,
  contentMm: { readonly widthMm: number; readonly heightMm: number },
): { readonly widthMm: number; readonly heightMm: number } {
  if (paper.kind === 'sheet') {
    const { widthMm, heightMm } = paper;
    return orientation === 'upright' ? { widthMm, heightMm } : { widthMm: heightMm, heightMm: widthMm };
  }
  const length = (content: number, band: number): number =>
    Math.min(
      LONGEST_PAGE_MM,
      Math.ceil(Math.max(content, LEAST_LIVE_WIDTH_MM) + overlapMm + band + 2 * marginMm),
    );
  return orientation === 'upright'
    ? { widthMm: paper.widthMm, heightMm: length(contentMm.heightMm, BOTTOM_BAND_MM) }
    : { widthMm: length(contentMm.widthMm, LEFT_BAND_MM), heightMm: paper.widthMm };
}

/**
 * Refuses settings with which no page can be made: `template-margin` (a printer would cut off what is printed),
 * `template-sheet-too-small`, `template-overlap`.
 */
export function refuseUnprintable(settings: PageSettings): void {
  const { paper, overlapMm, marginMm } = settings;
  if (!(marginMm >= LEAST_MARGIN_MM)) {
    throw leatherError('template-margin', { marginMm, leastMm: LEAST_MARGIN_MM });
  }
  const most = mostOverlap(settings);
  if (most < LEAST_OVERLAP_MM) {
    throw leatherError('template-sheet-too-small', {
      paper: paper.kind === 'roll' ? `A${paper.name.slice(1)}` : paper.name,
      marginMm,
      widthMm: LEAST_LIVE_WIDTH_MM + 2 * marginMm,
      heightMm: LEAST_WINDOW_HEIGHT_MM + BOTTOM_BAND_MM + 2 * marginMm,
    });
  }
  if (!(overlapMm >= LEAST_OVERLAP_MM && overlapMm <= most)) {
    throw leatherError('template-overlap', {
      paper: paper.name,
      overlapMm,
      leastMm: LEAST_OVERLAP_MM,
      mostMm: most,
    });
  }
}

/** The largest whole overlap in mm with which one of the orientations works; 0 if none does. */
function mostOverlap(settings: PageSettings): number {
  const content = { widthMm: 0, heightMm: 0 };
  for (let overlapMm = MOST_OVERLAP_MM; overlapMm >= LEAST_OVERLAP_MM; overlapMm--) {
    const tried = { ...settings, overlapMm };
    const fits = (['upright', 'lying'] as const).some((each) => sheetFrame(tried, each, content));
    if (fits) return overlapMm;
  }
  return 0;
}
