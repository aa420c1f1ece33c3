import type { QualityRegion, Sheet } from '../types/problem.js';

/** Room that something takes up which is no piece (a lane, its empty stretches included): pieces keep out of it. */
export interface TakenRegion extends QualityRegion {
  readonly isVoid: true;
  /** What the search after the first layout keeps off it, in mm; the first layout keeps off as it does from a void. */
  readonly searchClearMm: number;
}

export function isTaken(quality: QualityRegion): quality is TakenRegion {
  return 'searchClearMm' in quality;
}

/** The sheet as it was given; itself if nothing is taken of it. */
export function withoutTaken(sheet: Sheet): Sheet {
  if (!sheet.qualities.some(isTaken)) return sheet;
  return { ...sheet, qualities: sheet.qualities.filter((quality) => !isTaken(quality)) };
}
