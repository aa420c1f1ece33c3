/** How large signs, letters and patterns are on a picture. */
export interface PictureStyle {
  /** Size of the smallest letters, mm of em. Capitals are 0.73 of it. */
  readonly smallMm: number;
  /** Size of a piece's name where there is room. */
  readonly nameMm: number;
  /** Line widths are multiplied by this. */
  readonly pen: number;
  /** Spacing of patterns, size of arrows and signs are multiplied by this. */
  readonly grow: number;
  /** Stitch, fold, skive and cement lines, punches and notches are drawn too. */
  readonly detail: 'outlines' | 'every line';
  /** What stands on a piece: number, name, set and copy (so if absent), or the number, large, and its name. */
  readonly labels?: 'whole' | 'number and name';
}

/** Capitals of 1.83 mm: legible at arm's length on a bench, and the least that a sheet may use. */
export const SMALLEST_TEXT_MM = 2.5;

/** For pages that are read in the hand or on the wall. */
export const PAGE_STYLE: PictureStyle = {
  smallMm: SMALLEST_TEXT_MM,
  nameMm: 3.1,
  pen: 1,
  grow: 1,
  detail: 'outlines',
};

/** For larger pages, which hang farther off. */
export const LARGE_PAGE_STYLE: PictureStyle = {
  smallMm: 2.9,
  nameMm: 3.8,
  pen: 1.15,
  grow: 1.2,
  detail: 'outlines',
};

/** For true scale: lines stay fine, signs grow with the leather. */
export const TRUE_SCALE_STYLE: PictureStyle = {
  smallMm: 8,
  nameMm: 11,
  pen: 1,
  grow: 4,
  detail: 'every line',
};

/** For setting out: read from across the table, so that numbers are large and nothing else stands beside them. */
export const SETTING_OUT_STYLE: PictureStyle = {
  smallMm: 3,
  nameMm: 4,
  pen: 1.15,
  grow: 1.1,
  detail: 'outlines',
  labels: 'number and name',
};

/** The same for larger pages. */
export const LARGE_SETTING_OUT_STYLE: PictureStyle = {
  ...SETTING_OUT_STYLE,
  smallMm: 3.8,
  nameMm: 5.4,
  pen: 1.4,
  grow: 1.4,
};
