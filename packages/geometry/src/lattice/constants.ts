/** Numbers of the search for repeats, each with its trade-off. Lengths in mm unless they are shares or counts. */

/** Directions of the first look at half-length parallelograms; each dip is then followed to the last digits. */
export const PARALLELOGRAM_DIRECTIONS = 360;

/** The deepest dips are followed; neighbours of one dip are half a degree off, so that the least is among them. */
export const DIPS_FOLLOWED = 32;

/** Steps of the golden section; each shrinks the bracket to 0.618 of itself, so the last is below a double's digits. */
export const GOLDEN_STEPS = 80;

/** Deeper than this into another piece counts as overlap; far above rounding of doubles, far below the 1 µm grid. */
export const OVERLAP_MM = 1e-7;

/** Contacts are told from near misses at this. */
export const CONTACT_MM = 1e-5;

/** A ring of more corners is simplified (grown) before the first look, and tightened with all its corners afterwards. */
export const MOST_CORNERS = 48;

/** Share of the piece's size by which simplifying may first grow it; doubled until the corners are few enough. */
export const SIMPLIFY_SHARE = 0.0005;
export const SIMPLIFY_ROUNDS = 8;

/** Work of the first look: edges that one line is cut with, times lines. Bounds its time to some tenths of a second. */
export const LOOK_WORK = 12_000_000;

/** Places of the half-turned copy, and of the first lattice vector, that the first look tries: most, and least. */
export const MOST_TURNED_PLACES = 72;
export const LEAST_TURNED_PLACES = 16;
export const MOST_ROW_VECTORS = 40;
export const LEAST_ROW_VECTORS = 10;

/** Shifts of one row against the next. */
export const ROW_SHIFTS = 20;

/** Rays from the origin, over half a turn, on which contacts are sought beside those of two corners. */
export const CONTACT_RAYS = 36;

/** Starts of each kind that are tightened. */
export const STARTS_TIGHTENED = 16;

/** Two starts whose cell areas and vectors differ by less than this share of the size are one. */
export const SAME_START_SHARE = 0.02;

/** First and last reach of a tightening step, as shares of the piece's size. */
export const TIGHTEN_FIRST_SHARE = 0.06;
export const TIGHTEN_LAST_SHARE = 1e-10;

/** Steps of one tightening at most. */
export const TIGHTEN_STEPS = 120;

/** Pivots of one linear program at most; it stops at a valid point in any case. */
export const MOST_PIVOTS = 300;

/** After so many pivots the slower rule that can't go round in circles takes over. */
export const GREEDY_PIVOTS = 120;

/** Repeats that are returned at most. */
export const MOST_REPEATS = 6;

/** Calls of the caller's `fits` that one trimming makes at most, about; a call may cost some microseconds. */
export const TRIM_WORK = 200_000;

/** Share of that for the even look over a cell; the rest is for contacts with the sheet and for climbing. */
export const TRIM_LOOK_SHARE = 0.6;

/** Offsets to a side of the even look over one cell: most, and least. */
export const MOST_OFFSETS = 12;
export const LEAST_OFFSETS = 2;

/** Offsets that are improved by climbing, and how often their step is halved. */
export const OFFSETS_CLIMBED = 3;
export const CLIMB_HALVINGS = 7;

/** Of each member, pieces of the best layout so far that are slid until they touch the sheet's sides. */
export const SLID_PIECES = 3;

/** A slide to the sheet's edge ends within this (mm): the grid of stored placements. */
export const SLIDE_FINEST_MM = 0.0005;
