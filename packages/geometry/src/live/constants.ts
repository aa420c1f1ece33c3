/** Numbers of the live bench, with their trade-offs. Lengths in mm. */

/** Cosine below which two sides count as parallel: flush sides stay in contact, and 100 mm of them stray by 0.1 µm. */
export const FLUSH = 1e-6;

/** A contact may fall short of its distance by so much when places are sifted: rounding to the grid takes 0.71 µm. */
export const SIFT_MM = 0.0015;

/** How far the ends of an inset edge are drawn in, so that it does not reach out of a sharp corner. */
export const INSET_END_MM = 0.01;

/** Two things touch where their distance is within this of what they must keep: what the exact check forgives. */
export const TOUCHING_MM = 0.002;

/** A shortfall that is arithmetic, not distance. */
export const ARITHMETIC_MM = 1e-9;

/** Curves whose meetings are looked for, nearest first: with n of them n²/2 pairs are gone through. */
export const MOST_CURVES = 1500;

/** Places that are sifted, and that are judged, before a snap gives up: some tens of milliseconds. */
export const MOST_SIFTED = 3000;
export const MOST_JUDGED = 200;
