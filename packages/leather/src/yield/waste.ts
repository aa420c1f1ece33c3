import {
  intersectRegions,
  offsetRegions,
  pointToRing,
  subtractRegions,
  unionRegions,
} from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';

/** Corners this near to the outline lie on it, mm: rounding of booleans moves them by a µm or two. */
const ON_OUTLINE_MM = 0.005;
/** The hull around the pieces is only a dividing line within the waste: its arcs may be coarse, mm. */
const HULL_ARC_MM = 0.5;

/** The waste of a hide, in two parts that share no place. */
export interface Waste {
  readonly edge: readonly Region[];
  readonly between: readonly Region[];
}

/**
 * Divides the used-up leather that is neither piece nor flaw. *Between* is what lies within the pieces' hull: the
 * gaps, notches and bays that are too narrow for a disc of `widthMm` to roll into from outside, and wider gaps too
 * where pieces close them in on all sides. *Edge* is the rest: the strip along outline and openings that no piece
 * reaches.
 */
export function divideWaste(input: {
  readonly hide: Region;
  readonly usedUp: readonly Region[];
  readonly pieces: readonly Region[];
  readonly flaws: readonly Region[];
  readonly widthMm: number;
}): Waste {
  const { hide, usedUp, pieces, flaws, widthMm } = input;
  const hull = hullOf(pieces, widthMm / 2);
  const outside = subtractRegions(usedUp, hull);
  const rings = [hide.outer, ...hide.openings];
  const isAtEdge = (part: Region): boolean =>
    part.outer.some((p) => rings.some((ring) => pointToRing(p, ring) <= ON_OUTLINE_MM)) ||
    part.openings.some((inner) =>
      hide.openings.some((opening) => opening.some((p) => pointToRing(p, inner) <= ON_OUTLINE_MM)),
    );
  const atEdge = outside.filter(isAtEdge);
  const closedIn = outside.filter((part) => !atEdge.includes(part));
  const rest = unionRegions([...pieces, ...flaws]);
  return {
    edge: subtractRegions(atEdge, rest),
    between: subtractRegions([...intersectRegions(hull, usedUp), ...closedIn], rest),
  };
}

/** The pieces grown by `radius` and shrunk back: gaps narrower than a disc of that radius are filled. */
function hullOf(pieces: readonly Region[], radius: number): Region[] {
  if (pieces.length === 0) return [];
  const options = { join: 'round', arcTolerance: HULL_ARC_MM } as const;
  const closed = offsetRegions(offsetRegions(pieces, radius, options), -radius, options);
  return unionRegions([...closed, ...pieces]);
}
