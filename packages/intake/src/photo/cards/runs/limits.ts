/** Magic numbers of fitting lines and arcs to measured places, each with its trade-off. Lengths in mm. */

/** How far a place lies from a clean line: hand-cut card waves by a few hundredths, a scan's pixel by less. */
export const PLACE_SIGMA_MM = 0.05;

/** Places nearer to each other than this say the same: the wave of a hand-cut edge is about as long. */
export const PLACE_REACH_MM = 1;

/** What one more run must save: above what chance saves with three more numbers, below what a 1 mm round of a corner costs. */
export const RUN_COST = 16;

/** What an arc must save more than a line: most runs of patterns are straight. */
export const ARC_COST = 4;

/** A stretch whose misfit costs this many runs is never one run; looking on would only take time. */
export const HOPELESS_RUNS = 6;

/** Stretches at whose ends runs may change: so many at most (the time grows with the square), and no shorter than this. */
export const MOST_STRETCHES = 900;
export const STRETCH_MM = 0.4;

/** Flatter arcs are lines: no pattern is drawn with a larger radius than a hide is long. */
export const LARGEST_RADIUS_MM = 4000;

/** Tighter ones are corners. */
export const SMALLEST_RADIUS_MM = 0.6;

/** An arc that bows less from its chord than this is a line. */
export const LEAST_BOW_MM = 0.12;

/** Places this near to the end of a run are rounded by the blur of the picture and say nothing of it. */
export const CORNER_BLUR_MM = 0.35;

/** Of a short run this share in its middle counts all the same. */
export const CORE_SHARE = 0.6;

/** Runs whose directions differ by less where they meet are meant to go on smoothly, degrees. */
export const SMOOTH_DEG = 14;

/** A rule that is laid on runs (smooth, square) may raise their misfit by this share and by so much, mm. */
export const RULE_COSTS_SHARE = 0.35;
export const RULE_COSTS_MM = 0.015;

/** Lines this near to square may be meant square, if the measured error allows it, degrees. */
export const SQUARE_WITHIN_DEG = 1.5;

/** The measured error of a direction is taken twice (95 %), and never as less than this, degrees. */
export const DIRECTION_SIGMAS = 2;
export const DIRECTION_FLOOR_DEG = 0.03;

/** A joint farther from where the runs were parted is no joint of theirs. */
export const JOINT_REACH_MM = 2.5;
