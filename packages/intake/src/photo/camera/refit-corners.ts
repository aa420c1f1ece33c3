import type { Lens } from './camera.js';
import { throughLens, withoutLens } from './lens.js';
import { cornersOfSides } from './measure-marker.js';
import type { SeenMarker } from './seen-references.js';

/**
 * The marker with its corners told anew by a lens that is roughly known: its sides are straight on the paper but bowed on
 * the photo, by 0.2 px for a marker of 150 px near the corner of a photo with a k1 of 0.1; a line through such a side meets
 * the next one off the corner.
 */
export function refitCorners(marker: SeenMarker, lens: Lens): SeenMarker {
  if (marker.sides.some(({ points }) => points.length < FEWEST_POINTS)) return marker;
  const straight = marker.sides.map(({ points }) => ({
    points: points.map((point) => withoutLens(lens, point)),
  }));
  const corners = cornersOfSides(straight);
  if (corners === undefined) return marker;
  return {
    ...marker,
    corners: corners.map((corner) => throughLens(lens, corner)) as unknown as SeenMarker['corners'],
  };
}

/** Fewer points of a side say nothing of its bow. */
const FEWEST_POINTS = 4;
