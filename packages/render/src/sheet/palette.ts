/**
 * The colours of a sheet, taken from the bench: paper, ink, leather, oxblood, brass, indigo thread, slate. Those that
 * carry meaning differ in lightness too, so that they stay apart in grey and to the colour-blind; and each has a
 * pattern of its own.
 */
export const PAPER = '#ffffff';
export const INK = '#211c17';
export const INK_SOFT = '#5a5148';
export const RULE = '#a59b8f';

/** Bare hide, and a piece on it. */
export const BARE_HIDE = '#faf6ee';
export const PIECE = '#f0dfc2';

/** Never here. */
export const OXBLOOD = '#6d1a12';
/** Only where hidden. */
export const BRASS = '#b98216';
/** Weak: nothing that bears load. */
export const INDIGO = '#2d6fa3';
/** What is left and worth keeping. */
export const SLATE = '#8c948f';

/** An edge that is not known for sure glows like this, on both sides of the hide's outline. */
export const UNSURE_GLOW = { colour: '#e0b65c', widthMm: 1.7 } as const;

/** The colours that carry meaning, for whoever checks that they can be told apart. */
export const MEANING_COLOURS = { never: OXBLOOD, hidden: BRASS, weak: INDIGO, offcut: SLATE } as const;

/** Line widths in mm, from the boldest to the finest. */
export const FREEING_CUT_MM = 0.6;
export const HIDE_EDGE_MM = 0.5;
export const CUT_LINE_MM = 0.35;
export const ROUGH_CUT_MM = 0.4;
export const MARK_LINE_MM = 0.25;
export const FINE_LINE_MM = 0.18;
export const HAIRLINE_MM = 0.13;
