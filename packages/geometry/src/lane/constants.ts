/** Numbers of the search for lanes, with their trade-offs. Lengths in mm, angles in degrees. */

/** Directions of lanes that are tried on one sheet, the most useful first. More: slower, and rarely better. */
export const MOST_ANGLES = 4;

/** Directions that differ by less are one: below what a hand follows along a straight edge. */
export const SAME_ANGLE_DEG = 2;

/** Places each way over a sheet at which the local direction is asked for, to see how lanes may run. */
export const ANGLE_ANCHORS = 7;

/** First cuts that are looked at across a sheet; between two of them the best is found by halving. */
export const START_SAMPLES = 28;
export const START_HALVINGS = 7;

/** First cuts that are followed up, from either side: the rest is judged by its first row alone. */
export const MOST_STARTS = 4;

/** How far a lane may reach from its open end, in lengths of its longest strap, where it is not without a limit. */
export const REACHES: readonly number[] = [1.15, 1.35, 1.7, 2.3];

/** The best lanes without a limit that are tried with one, too. */
export const MOST_LIMITED = 6;

/** Lanes on one sheet at most: bounds the work where each strap would need a lane of its own. */
export const MOST_LANES_PER_SHEET = 24;

/** Rows of one lane at most: far more than a hide is wide. */
export const MOST_ROWS = 200;

/** Step along a row with which a strap looks for a place whose direction and thickness suit it. */
export const RULE_STEP_MM = 12;

/** Pitch of the remembered direction and thickness that tell quickly where it is worth proving. */
export const LOOK_PITCH_MM = 10;

/** What a quick look forgives, because it is of a place up to 7 mm away. */
export const LOOK_FORGIVES_DEG = 3;
export const LOOK_FORGIVES_MM = 0.2;

/** The first cut runs out over the hide's edge by so much, so that the open end is open beyond doubt. */
export const OPEN_BEYOND_MM = 2;

/** A lane ends so far short of what must not reach into it. */
export const SHORT_OF_OBSTACLE_MM = 0.02;

/** Room along a row for placing straps on the 0.001 mm grid as near to their lines as can be. */
export const ALONG_SLACK_MM = 0.01;

/** Grid steps each way among which the place nearest to the line is sought; see `ALONG_SLACK_MM`. */
export const NUDGE_STEPS = 4;

/** What straps that are laid count for in one try. */
export interface LaneTaste {
  /** Of their area: more than 1, because left to another lane they would need a cut and room of their own. */
  readonly laidWeight: number;
  /** And of their area times their length, as a share of the longest one's: long straps find few places. */
  readonly longWeight: number;
}

/** Tried one after the other while some strap finds no place; the first where all do is taken. */
export const TASTES: readonly LaneTaste[] = [
  { laidWeight: 1.5, longWeight: 0 },
  { laidWeight: 1, longWeight: 0 },
  { laidWeight: 0.5, longWeight: 1.5 },
];

/** What a lane costs beside its straps, each as a share of an area in mm² that it spoils. */
export const WASTE_WEIGHT = 0.35;

/** A side of the lane too narrow to be worth keeping counts whole, a broader one only because it is cut off. */
export const BROAD_SIDE_WEIGHT = 0.15;

/** Room of a lane beyond the hide's edge spoils nothing, but a first cut along leather guides the cutter better. */
export const AIR_WEIGHT = 0.5;

/** Straps come from the back: a strap 100 mm farther from the backbone costs this share of its own area. */
export const BACKBONE_WEIGHT_PER_100_MM = 0.03;

/** Share of the leather that all pieces together are expected to cover, to guess how far a hide is used up anyway. */
export const EXPECTED_YIELD = 0.75;

/** A strap wider than its lane by more than this doesn't lie between straight lines. */
export const STRAIGHT_SIDES_MM = 0.001;

/** Round ends are searched with chords that reach out by no more: fewer corners, for this much leather at a tip. */
export const ROUND_END_MM = 0.2;
