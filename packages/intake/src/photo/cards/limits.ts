/** Magic numbers of reading cards and paper templates, each with its trade-off. Lengths in mm, colours in steps of 0 to 255. */

/** Where cards lie is sought at this scale at most: holes of 1.5 mm are seen, and a page has a million pixels. */
export const COARSE_PX_PER_MM = 4;

/** What differs from the ground by less, or by less than so many times its own unevenness, is ground. */
export const LEAST_CONTRAST = 20;
export const GROUND_SIGMAS = 5;

/** The ground's colour is taken from this share of the picture along its border. */
export const BORDER_SHARE = 0.03;

/** Smaller things on the ground are dust, paper clips and weights. */
export const SMALLEST_CARD_MM2 = 60;

/** Drawn lines that cut the ground's colour into a card are closed up to twice this width. */
export const CLOSE_MM = 0.6;

/** Threads and specks narrower than twice this are no part of a card. */
export const OPEN_MM = 0.3;

/** A shadow leaves at least this share of the ground's light; less, and it is a thing of its own. */
export const DEEPEST_SHADOW = 0.3;

/** A card of the shadow's own hue: shadows darker than so much of the way to it are taken for card. */
export const SHADOW_WAY = 0.6;

/** What is this far from every shadow of the ground is not ground, whatever the card's colour is: print, ink, glue. */
export const NO_GROUND_CONTRAST = 70;

/** Contrast by hue alone, beyond which lightness is left out: a shadow then can't be told for card. */
export const HUE_CONTRAST = 30;

/** How far on either side of the coarse edge the fine one is sought. */
export const EDGE_REACH_MM = 0.7;

/** Of a card 1 and the ground 0, the least fall that is an edge, and its least share of the strongest fall there. */
export const LEAST_FALL = 0.25;
export const FALL_SHARE = 0.55;

/** Where the card is of a shadow's hue, the first fainter step counts, sought farther inwards. */
export const SHADOW_REACH_MM = 1.4;
export const LEAST_SHADOW_FALL = 0.09;
export const FALL_SIGMAS = 4;

/** A place that lies this far off its neighbours' mean is no edge but ink or dirt upon it. */
export const STRAY_PLACE_MM = 0.35;
/** How far along the edge neighbours are counted. */
export const NEIGHBOURS_MM = 1.5;

/** Holes of less width are marks (a sharp pencil's hole, print), unless they stand in a row. */
export const SMALLEST_HOLE_MM = 1.4;

/** Narrower holes that are not round are drawn lines as light or dark as the ground: an arrow's head, a letter. */
export const NARROWEST_CUT_OUT_MM = 3;

/** A small hole shows at least this share of the ground's light; a darker one on a light ground is ink. */
export const HOLE_LIGHT = 0.4;

/** A hole is round if its places lie this near to a circle, or within this share of its radius. */
export const ROUND_MM = 0.1;
export const ROUND_SHARE = 0.035;

/** An outline whose places lie farther from its clean line than this is told of. */
export const ROUGH_EDGE_MM = 0.3;

/** More things on one picture are no cards but its pattern. */
export const MOST_CARDS = 200;

/** Drawn lines are read at this scale at most: a pencil's line of 0.3 mm has two pixels, and more would tell no more. */
export const DRAWN_PX_PER_MM = 8;
