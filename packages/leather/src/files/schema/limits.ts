/** What a file may say at most. Generous for the trade, narrow enough to catch a slip of the pen or a hostile file. */

/** No hide, table or roll is 50 m long; 1 µm steps stay exact far beyond. In mm. */
export const FARTHEST_MM = 50_000;
export const LARGEST_AREA_MM2 = FARTHEST_MM * FARTHEST_MM;

/** Copies, sets, holes: more than a workshop cuts in one order. */
export const MOST_COPIES = 10_000;

/** Leather is at most about 10 mm thick before it is split; stacks and felt stay below this. */
export const THICKEST_MM = 50;

/** Runs of one line: traced outlines have hundreds. Far beyond this, laying would take hours. */
export const MOST_SEGMENTS = 50_000;

/** Characters of a name and of a text. */
export const LONGEST_NAME = 200;
export const LONGEST_TEXT = 10_000;

/** Decimals of a stored share (yield, depth) and of a stored area. */
export const SHARE_DECIMALS = 6;
export const AREA_DECIMALS = 3;
/** Decimals of a unit vector's halves. */
export const UNIT_DECIMALS = 9;

/** Less than this is a slip of the pen, not leather. */
export const SMALLEST_AREA_MM2 = 1;

/** Factors of size: a long pattern stays true to less than a micrometre a metre. */
export const FACTOR_DECIMALS = 6;
