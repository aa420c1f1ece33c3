/** Magic numbers of reading what is drawn on cards, each with its trade-off. Lengths in mm, colours in steps of 0 to 255. */

/** Nearer to the edge of the card or of a hole than this, blur and shadow look like ink. */
export const EDGE_RIM_MM = 0.6;

/** Ink differs from the card around it by this much at least, and by so many times the card's own unevenness. */
export const LEAST_INK = 14;
export const INK_SIGMAS = 5;

/** Of a drawn line, some of it is darker than the threshold by this factor; smudges are not. */
export const STRONG_INK = 1.5;

/** The card's own colour is the mean over this way around; broader than any line, narrower than most shading. */
export const AROUND_MM = 4;

/** Smaller specks are dirt. */
export const LEAST_INK_MM2 = 0.12;

/** Dots are no larger; nor is the width of a line. */
export const DOT_MM = 2.2;
export const WIDEST_LINE_MM = 2.5;

/** A dash is no longer; shorter solid lines are strokes of letters. */
export const LONGEST_DASH_MM = 14;
export const SHORTEST_SOLID_MM = 9;

/** Of a row of dashes: gaps no wider than this, so many dashes at least, each so straight and the longest so many times the shortest. */
export const DASH_GAP_MM = 7;
export const FEWEST_DASHES = 4;
export const DASH_STRAIGHT = 0.96;
export const DASH_RATIO = 3.5;
/** A dash goes on where the last one points to, up to this turn (cosine). */
export const DASH_TURN_COS = 0.8;

/** Short lines from the edge inwards are notches up to this length. */
export const NOTCH_LINE_MM = 8;

/** A line that ends this near to the edge goes up to it. */
export const REACHES_EDGE_MM = 1.6;

/** Barbs of an arrow: their length, and how far they are turned back from its shaft, degrees. */
export const BARB_MM = { least: 1, most: 14 } as const;
export const BARB_DEG = { least: 12, most: 65 } as const;
export const SHORTEST_ARROW_MM = 7;

/** Branches of one crossing that go on this straight are one line (cosine of the angle between them). */
export const GOES_ON_COS = -0.82;

/** How far drawn places lie off a line by chance: hands are no rulers. */
export const DRAWN_SIGMA_MM = 0.12;

/** A line that takes more segments than one every so many mm, and some, is writing. */
export const MM_PER_SEGMENT = 7;
export const SEGMENTS_ALLOWED = 3;
