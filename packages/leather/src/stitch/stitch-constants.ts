/** Every figure of stitching that a file can overrule or that decides what is told. */

/** With an awl the pitch may be so much longer or shorter. Common practice, no source. */
export const DEFAULT_ADJUST_SHARE = 0.1;

/** A turn sharper than this is a corner that wants a hole. Common practice, no source. */
export const DEFAULT_CORNER_DEG = 30;

/** Two lines that are sewn together may differ by so much: more shows as puckers. From memory. */
export const DEFAULT_GATHER_SHARE = 0.02;

/** Thread for the tails and the two needles of a seam: saddler's blog [S111], about 300 mm. */
export const DEFAULT_TAILS_MM = 300;

/** The outer holes lie at the ends of the line, unless written. */
export const DEFAULT_END_GAP_MM = 0;

/** Pitch over thread thickness, from memory: 5 to 6. */
export const PITCH_PER_THREAD = { min: 5, max: 6 } as const;

/** A hint is given only where the ratio is off by more than this share: sizes of thread are rough. */
export const PITCH_PER_THREAD_SLACK = 0.1;

/** Less than this gave nothing worth telling: it shows in no tenth of a mm. Of a pitch, in no hundredth. In mm. */
export const NOTHING_GAVE_MM = 0.05;
export const SAME_PITCH_MM = 0.005;

/** A hole this near to a corner, along the line, is in it. In mm. */
export const HOLE_IN_CORNER_MM = 0.05;

/** Rounding must not cost a hole: 10 pitches of 3.4 mm fit into 34 mm. In pitches. */
export const PITCH_ROUNDING = 1e-6;

/** A stretch whose ends are so near to its length apart is straight. */
export const STRAIGHT_SHARE = 0.995;

/** A straight stretch that takes up this share of the strap's width runs across it from edge to edge. */
export const ACROSS_SHARE = 0.7;
