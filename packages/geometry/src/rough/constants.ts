/** Every magic number of rough cuts, with its trade-off. Lengths in mm, areas in mm². */

/**
 * Room that each rough cut has beyond its margins, so that its corners may be drawn with few chords where it lies
 * close to something. Less, and tight corners take more cuts; more, and leather is lost beside each of them.
 */
export const ROUGH_ROOM_MM = 0.1;

/** How margins are drawn around pieces. For `EASY`, all three together stay below the room. */
export interface Precision {
  /** An item's outline may grow by this much for fewer corners. */
  readonly simplifyMm: number;
  /** Added to the margin, so that chords of arcs and rounded corners keep it. */
  readonly excessMm: number;
  /** Greatest distance of a chord from its arc. */
  readonly arcMm: number;
}

/** Within the room: few corners. */
export const EASY: Precision = { simplifyMm: 0.03, excessMm: 0.058, arcMm: 0.055 };

/** For pieces at the bare margin of something: many corners, and true to what the exact check forgives. */
export const TIGHT: Precision = { simplifyMm: 0, excessMm: 0.0002, arcMm: 0.0004 };

/** Rounds in which pieces that turn out to lie at the bare margin are drawn anew; each draws more of them tight. */
export const TIGHT_ROUNDS = 3;

/** Where a step of the grid is too coarse, shapes are magnified by this before clipper-lib rounds them. */
export const MAGNIFIED = 16;

/** Added parts of an outline keep this clear of all that is foreign: a few steps of the grid. */
export const CLEAR_MM = 0.003;

/** Overlaps narrower than twice this are rounding; the exact check forgives a depth of 2 µm. */
export const OVERLAP_HALF_WIDTH_MM = 0.0009;

/** A cut that is 1 mm shorter is worth so many mm² of leather: rectangular notches up to twice as wide are cut across. */
export const LENGTH_WORTH_MM = 40;

/** A corner less to cut is worth so much leather. */
export const CORNER_WORTH_MM2 = 400;

/** A block less to cut out, mark and handle is worth so much leather: a patch of about 6 cm. */
export const BLOCK_WORTH_MM2 = 4000;

/** A convex outline may cost this many times as much as the best one found: straight cuts from edge to edge. */
export const CONVEX_COST = 1.1;

/** Blocks of one group farther apart than this stay apart. */
export const JOIN_REACH_MM = 120;

/** Half of the distance is closed from each side when blocks are bridged, and so much more, so that they do meet. */
export const BRIDGE_OVERLAP_MM = 0.05;
