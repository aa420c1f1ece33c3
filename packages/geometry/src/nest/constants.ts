/** Numbers of the search, with their trade-offs. Lengths in mm unless said otherwise. */

/**
 * Moving contours are shrunk by this, and required distances grow by it, so that every required distance is
 * positive and two shapes that may touch need no special case. It moves a right-angled corner by 1.4 times as
 * much, which stays within what the exact check forgives.
 */
export const SKIN_MM = 0.001;

/** What a placement may lose by rounding x and y to 0.001 mm (0.71 µm), and a little for the arithmetic. */
export const ROUNDING_SLACK_MM = 0.0009;

/** Finest and coarsest pitch of the raster on which positions are looked for. */
export const RASTER_FINEST_MM = 1.5;
export const RASTER_COARSEST_MM = 6;

/** Points of one raster layer, at most: bounds memory and the time to look through a sheet. */
export const RASTER_MOST_POINTS = 260_000;

/** Edges that share one box in a soup of edges. Fewer: more boxes to test; more: boxes that say less. */
export const EDGES_PER_CHUNK = 8;

/** Pitch of the cached direction, thickness and axis distance. */
export const FIELD_CACHE_MM = 20;

/** How many raster positions are tried exactly, for one piece on one sheet. */
export const FIRST_CANDIDATES = 6;

/** Angles and raster positions for a second look at a piece that found no place at first: slower, misses less. */
export const SECOND_ANGLES = 32;
export const SECOND_CANDIDATES = 16;

/** Angles tried for a piece that may lie at any. */
export const FIRST_FREE_ANGLES = 12;

/** Work of each stream between two joins: about a fifth of a second of one core; the first few joins come sooner. */
export const WORK_PER_JOIN = 500_000;
export const SHORT_JOINS = 4;

/** Turned items kept ready; the oldest go first. */
export const MOST_VARIANTS = 4000;

/** Copies of one item from which on a repeat is tried, and the share of all area that such items must make up. */
export const LATTICE_LEAST_COPIES = 12;
export const LATTICE_SHARE = 0.5;

/** Repeats of an item, rotations of each, and looks at places, for one sheet. */
export const LATTICE_REPEATS = 4;
export const LATTICE_ANGLES = 8;
export const LATTICE_WORK = 40_000;

/**
 * The join at which doing with one sheet fewer is tried first, joins that a try takes at most, and joins between the
 * first two tries.
 */
export const FIRST_DETOUR = 3;
export const DETOUR_JOINS = 8;
export const DETOUR_EVERY = 24;

/** Sheets are thought to hold no more than this share of their area. */
export const CLOSE_DENSITY = 0.9;
