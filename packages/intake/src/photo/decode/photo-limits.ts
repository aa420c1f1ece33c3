/** Photos are at most so large: more than phones and cameras make, and still 300 MB in the memory. */
export const MOST_PHOTO_MEGAPIXELS = 100;

/** And at least so large each way: below this a hide's edge is a guess. */
export const LEAST_PHOTO_SIDE_PX = 300;
