/** Every magic number of this package, with its trade-off. Lengths in mm, angles in degrees. */

/** Booleans and offsets run on whole numbers of this grid: 1 µm. Finer, and clipper-lib slows down beyond 47 m. */
export const GRID_MM = 0.001;

/** Greatest distance between a curve and the chain of chords or tangents that stands for it. */
export const CURVE_TOLERANCE_MM = 0.05;

/** What the exact check forgives: rounding of stored coordinates (0.5 µm a coordinate) on both sides, and no more. */
export const CHECK_FORGIVES_MM = 0.002;

/** What the exact check forgives of an angle: far above rounding to six decimals, far below what a hand can see. */
export const CHECK_FORGIVES_DEG = 0.002;

/** Decimals of a stored rotation. */
export const ROTATION_DECIMALS = 6;

/** A stroke nearer than this counts no more than one at this distance, so that no place has an infinite weight. */
export const FIELD_NEAREST_MM = 5;

/** A mean of directions shorter than this says nothing: the strokes contradict each other. */
export const DIRECTION_UNKNOWN_BELOW = 0.2;

/** A direction or thickness rule must hold at the centroid and on a grid of this pitch within the piece. */
export const FIELD_GRID_MM = 50;

/** Grid steps per mm: the inverse of the grid, kept as a whole number so that rounding is exact. */
export const GRID_STEPS_PER_MM = 1000;

/** A ring whose mean width is less than this is a rounding sliver of a boolean, not leather. */
export const SLIVER_WIDTH_MM = 0.001;

/** Greatest distance of an offset's round corner from the true arc. Finer costs corners, coarser costs margin. */
export const OFFSET_ARC_TOLERANCE_MM = 0.01;

/** A mitred corner of an offset reaches at most this many times the distance. */
export const OFFSET_MITRE_LIMIT = 2;

/** An arc whose middle point is nearer than this to its chord is a line; far below the grid, far above rounding. */
export const ARC_STRAIGHT_MM = 1e-6;

/** Lengths of cubics are refined until halving changes a part by less. */
export const LENGTH_TOLERANCE_MM = 1e-7;

/** Greatest distance of an elliptical arc from the cubics that stand for it: half a grid step. */
export const ELLIPSE_CUBIC_TOLERANCE_MM = 0.0005;

/** A curved part nearer than this to its chord is drawn straight in a contour: below what rounding moves. */
export const CONTOUR_STRAIGHT_MM = 0.0001;

/** Places this near to an outline count as on it when containment is asked of points that were computed. */
export const TOUCH_MM = 1e-6;

/** Edges to a run when distances between outlines are sought; 8 to 32 measure alike. */
export const DISTANCE_CHUNK = 16;

/** Two candidates whose measures differ by less than this share are a tie, and the first of them counts. */
export const TIE_SHARE = 1e-12;

/** Two stretches of a stroke that are as near but for rounding: the earlier one counts. */
export const FIELD_TIE_MM = 1e-9;

/** Even grid lines each way when a large rectangle is sought; more takes longer and is mended by climbing anyway. */
export const RECTANGLE_CELLS = 256;

/** Last step of that climbing, in mm. */
export const RECTANGLE_FINEST_MM = 0.01;

/** Greatest distance of the arcs that stand for a cubic from it, in a line for a cutter: a tenth of what a knife holds. */
export const ARCS_FIT_MM = 0.005;

/** Ends of moved segments this near to each other are one: neighbours whose directions agree but for rounding. */
export const MOVED_ENDS_MM = 0.002;
