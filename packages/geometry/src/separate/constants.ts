/** Numbers of the search by separation, with their trade-offs. Lengths in mm unless said otherwise. */

/** Circles that stand for a shape in the overlap cost. More tell more and cost more; 8 did better than 16 in equal time. */
export const MOST_POLES = 8;

/** A circle smaller than this share of the first one adds nothing worth its time. */
export const POLE_FIRST_SHARE = 0.1;

/** Circles that cover this share of the area are enough. */
export const POLE_COVER = 0.92;

/** Grid points each way from which a circle's centre is sought, and the last step, as a share of the grid's. */
export const POLE_GRID = 24;
export const POLE_LAST_STEP = 1e-3;

/** Below this share of the larger diameter, overlap of two circles decays instead of ending (Gardeyn et al. 2025). */
export const DECAY_SHARE = 0.01;

/** Growth of a pair's weight after a round: least, most (more forgets sooner how bad each pair is), and decay when apart. */
export const WEIGHT_LEAST = 1.2;
export const WEIGHT_MOST = 1.6;
export const WEIGHT_DECAY = 0.95;

/** Places drawn for one move: anywhere, and near the present one. */
export const SAMPLES_ANYWHERE = 30;
export const SAMPLES_NEAR = 15;

/** Of these the best that are apart are refined. */
export const KEPT_SAMPLES = 3;
/** Apart means: by this share of the piece's diameter, or at another angle. */
export const APART_SHARE = 0.1;

/** Reach of the nearby samples, as a share of the piece's diameter. */
export const NEAR_SHARE = 0.5;

/** Steps of the refinement, as shares of the piece's diameter: all kept samples roughly, then the best one finely. */
export const FIRST_STEP_SHARE = 0.05;
export const ROUGH_STEP_SHARE = 0.003;
export const FINE_STEP_SHARE = 0.006;
export const LAST_STEP_SHARE = 0.0003;

/** Turns, in degrees: reach of nearby samples, first and last step of the refinement. */
export const NEAR_TURN_DEG = 30;
export const FIRST_TURN_DEG = 5;
export const LAST_TURN_DEG = 0.02;

/** Corners of shapes with more than so many are dropped within this: tests of edges are what takes the time. */
export const SHAPE_CORNERS = 32;
export const SHAPE_SIMPLIFY_MM = 0.15;

/**
 * How far contours are inset: tight, so that what touches in truth is apart here and the exact check still holds; and
 * loose, for exact fits to be found at all, as a share of the square root of the mean piece area.
 */
export const TIGHT_EASE_MM = 0.0002;
export const LOOSE_EASE_SHARE = 1 / 3000;

/** Poles of a part of a piece. */
export const MOST_PART_POLES = 4;

/** Share of the drawn angles that lie right on a target instead of anywhere within the tolerance. */
export const ALIGNED_SHARE = 0.3;

/** Quick looks at a direction or a thickness leave this much of the tolerance unused: the cache is of a place nearby. */
export const LOOK_MARGIN_DEG = 1;
export const LOOK_MARGIN_MM = 0.05;
export const LOOK_MARGIN_APART_MM = 10;

/** What a plain no of a rule counts, against the excess of an angle in degrees over this. */
export const EXCESS_DEG = 20;

/** First and least share of the used area that one squeeze takes off while exploring (Gardeyn et al. 2025: 0.1 %). */
export const SQUEEZE_FIRST = 0.02;
/** The first one at all on hides. */
export const SQUEEZE_SOON = 0.005;
export const SQUEEZE_LEAST = 0.001;

/** Drafts that are kept to go on from. */
export const MOST_IN_POOL = 20;

/** Share of the work that goes into compressing once exploring is in vain, and least and largest squeeze there. */
export const COMPRESS_SHARE = 0.2;
export const COMPRESS_LEAST = 0.00001;
export const COMPRESS_MOST = 0.0005;
export const SWAPS_BEFORE_COMPRESSING = 2;

/** Tries to lay what is missing before the rest is drawn together to make room, by turns. */
export const INSERTS_BEFORE_EXPLORING = 3;

/** Effort of one small squeeze: attempts, and rounds of each that get no better. Fewer rounds leave time for more swaps. */
export const SMALL_ATTEMPTS = 3;
export const SMALL_ROUNDS = 60;
