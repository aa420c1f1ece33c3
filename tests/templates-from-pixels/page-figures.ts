/** What docs/templates.md ("A page in figures") says of a page; all in mm. */
export interface PageFigures {
  /** Where the level bar begins and the upright bar has its 0. */
  readonly levelBarX: number;
  readonly uprightBarZeroY: number;
  /** The cell within the sheet, and how far the window reaches beyond it. */
  readonly cellX: number;
  readonly cellY: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  readonly halfOverlap: number;
}

const LEFT_BAND = 16;
const BOTTOM_BAND = 33;

export function pageFigures(width: number, height: number, margin = 10, overlap = 10): PageFigures {
  return {
    levelBarX: margin + 3.5,
    uprightBarZeroY: height - margin - 36.5,
    cellX: margin + LEFT_BAND + overlap / 2,
    cellY: margin + overlap / 2,
    cellWidth: width - 2 * margin - LEFT_BAND - overlap,
    cellHeight: height - 2 * margin - BOTTOM_BAND - overlap,
    halfOverlap: overlap / 2,
  };
}
