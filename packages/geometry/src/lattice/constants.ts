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

/** A convex ring of more corners, and any other ring of more, is simplified (grown) before the first look. */
export const MOST_CONVEX_CORNERS = 200;
export const MOST_CORNERS = 60;

/** Share of the piece's size by which simplifying may first grow it; doubled until the corners are few enough. */
export const SIMPLIFY_SHARE = 0.0005;
export const SIMPLIFY_ROUNDS = 8;

/** Work of the first look: sums of parts that one line is cut with, times lines. Bounds its time. */
export const LOOK_WORK = 6_000_000;

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
