/** Every magic number of putting pages together, with its trade-off. Lengths in mm unless the name says otherwise. */

/** Paper between pages that are drawings of their own. */
export const APART_MM = 50;

/** Line ends this near to the border of a page's window were cut by it: far above rounding, far below what is drawn by chance. */
export const AT_BORDER_MM = 0.05;

/** A line meets a border at this angle at least (sine); flatter ones run along it. */
export const CUT_MIN_SINE = 0.05;

/** Borders of the windows of one file's pages lie within this of each other: prints and scans shift a page's whole drawing. */
export const WINDOW_SPREAD_MM = 0.8;

/** A border within the page is believed if so many lines end there, hardly any cross it, and it leaves no wider margin. */
export const WINDOW_MIN_ENDS = 2;
export const WINDOW_CROSSING_SHARE = 0.05;
export const MAX_MARGIN_MM = 60;

/** Neighbours' drawings lie no farther one over the other; paper overlaps of 5 to 30 mm are usual (common practice, no source). */
export const MAX_OVERLAP_MM = 60;

/** Lines and marks of neighbours are sought this far around where they should be, and must fit this well once the shift is refined. */
export const SEEK_MM = 1;
export const FIT_MM = 0.4;

/** Ends go on in lines whose direction differs by 10° at most (cosine). */
export const GOES_ON_COS = 0.985;

/** Small figures: what marks are made of. A cross of 20 mm is a large one. */
export const FIGURE_MAX_MM = 25;
export const FIGURE_MIN_MM = 1;
export const FIGURE_MAX_LINES = 16;

/** Sizes of one figure on two pages differ by less. */
export const FIGURE_SIZE_STEP_MM = 0.2;

/** Marks lie this near to an edge of the page at most. */
export const MARK_ZONE_MM = 60;

/** Figures of one look of which a page has more are no landmarks: dashes, stitch holes. */
export const LANDMARKS_PER_PAGE = 12;

/** A text this near to a mark is its label. */
export const LABEL_REACH_MM = 10;

/** A figure at one place of several pages: within this, and on this share of the pages (two at least). */
export const SAME_PLACE_MM = 0.7;
export const REPEATED_SHARE = 0.2;

/** Pages of which every pair is compared; of more, only those this near in number. Keeps hundreds of pages within seconds. */
export const ALL_PAIRS_PAGES = 100;
export const NEAR_PAGES = 40;

/** Pages that are put together by search; of more the grid must be stated. */
export const MAX_SEARCHED_PAGES = 400;

/** Weight of a contradiction (an end without its other half) against an agreement. */
export const CONTRADICTION_WEIGHT = 2;

/** Two names at one place outweigh all that one piece can share: its holes, corners and lines, some twenty things. */
export const CLASH_WEIGHT = 25;

/** Marks that miss each other by more belong to pages that don't fit. */
export const MAX_MISS_MM = 2;

/** A miss above this is warned of: a knife follows lines better. */
export const WARN_MISS_MM = 0.5;

/** Ends that meet at a seam: joined up to this, in silence up to `SNAP_MM`. */
export const MAX_BRIDGE_MM = 1;
export const SNAP_MM = 0.1;

/**
 * Of lines that cross a seam at a flat angle, what counts is the gap across it. Along the line it is bridged up to this (a strip
 * of 0.3 mm at 2°) where each end lies on the other's tangent to within the second number.
 */
export const MAX_FLAT_BRIDGE_MM = 8;
export const ON_TANGENT_MM = 0.1;

/** The tip of a curve that is on no page is drawn anew if it reached no farther over the edge: wide enough for what paper sizes are rounded by. */
export const MAX_TIP_MM = 0.5;

/** The two ends of such a tip lie no farther from each other: a circle of 200 mm radius that reaches 0.5 mm over the edge has 28 mm. */
export const MAX_TIP_CHORD_MM = 30;

/** A straight line over a seam is one line again if its joint lies this near to it. */
export const STRAIGHT_MM = 0.05;

/** Lines nearer to square over an edge than this (sine) say nothing of how far pages lie over each other: a miss of 0.1 mm would be one of 0.7 mm. */
export const TELLING_SINE = 0.15;

/** The middle of a mark, or a line to trim along, lies this near to the seam that it is for. */
export const ON_SEAM_MM = 0.5;
