/** Every magic number of the settling kernel, with its trade-off. Lengths in mm. */

/** A row counts as held from here on: far below a micrometre, far above what doubles lose on a sheet of metres. */
export const ROW_HELD_MM = 1e-7;

/**
 * Shortfall of a settled layout that is still called exact: placements that are rounded to 1 µm afterwards add up
 * to 1.42 µm between two bodies, and the exact check forgives 2 µm.
 */
export const EXACT_MM = 0.0004;

/**
 * How far rows that contradict each other may be loosened, so that shapes that fit but for their rounded corners
 * do settle. A little under what is called exact, because a pair of outlines may meet in more than one row.
 */
export const LOOSEN_MM = 0.0003;

/** Pairs nearer than this (on top of their gap) become rows: wide enough for what one round moves, else a next one. */
export const REACH_MM = 1;

/** Rounds of choosing directions and projecting. Most layouts take two; one that takes more than this never settles. */
export const MAX_ROUNDS = 24;

/** Rounds without a shortfall less than this share of the least before, until a layout is given up. */
export const PATIENCE = 6;
export const PROGRESS_SHARE = 0.8;

/**
 * What is left of a row's normal outside the span of the rows held (squared). Below this the row counts as told by
 * them: a lever longer than 10,000 to 1 would move bodies by more than anything that is to be settled.
 */
export const SPAN_LEFT_SQ = 1e-9;

/** A share of a contradiction smaller than this is the noise of doubles. */
export const SHARE_NOISE = 1e-9;

/** Steps of one projection for each unknown, before it is given up: a step takes in or lets go one row. */
export const STEPS_PER_UNKNOWN = 12;

/**
 * A separating line along a cut between two parts of one shape counts its shortfall this many times, because a
 * body that is pushed across such a cut only gets into the next part.
 */
export const CUT_PENALTY = 4;

/** Normals whose cosine is more than this are one direction: the other one is no second choice. */
export const SAME_DIRECTION = 0.9999;

/**
 * Where rows contradict each other, a pair among them may take its second direction, if what is missing along that
 * is at most so many times what is missing of the worst pair (and a little): farther than that, nothing was moved.
 */
export const SECOND_SHARE = 2;
export const SECOND_ALSO_MM = 0.01;

/**
 * A layout is given up if its bodies would have to move farther (root mean square) than so many times what is
 * missing of the worst pair, and a little. A chain of 17 bodies from a wall on, each overlapping the next as much, stays below.
 */
export const FARTHEST_SHARE = 10;
export const FARTHEST_ALSO_MM = 0.05;

/** Such changes in one projection, each of which starts it anew. */
export const MAX_CHANGES = 3;

/** Compaction: pairs within this reach (beyond their gap) become rows. */
export const COMPACT_REACH_MM = 8;

/** Compaction ends when a step shortens the strip by less. */
export const COMPACT_LEAST_MM = 1e-5;

/** Compaction: most steps, should gains go on shrinking. */
export const COMPACT_STEPS = 60;

/** No body moves farther in one step. Two come nearer by at most 2 √2 times this, which must be less than the reach. */
export const COMPACT_TRUST_MM = COMPACT_REACH_MM / 3;
