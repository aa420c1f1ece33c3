import {
  intersectRegions,
  offsetRegions,
  pointToRing,
  simplifyGrowing,
  subtractRegions,
  unionRegions,
} from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';

/** Corners this near to the outline lie on it, mm: rounding of booleans moves them by a µm or two. */
const ON_OUTLINE_MM = 0.005;
/** The hull around the pieces is only a dividing line within the waste: it may be this coarse, mm. */
const HULL_COARSE_MM = 1;
/**
 * The hull keeps so far off the pieces, mm: borders that coincide, or nearly so, cost clipper-lib seconds. A rim of this
 * width around each piece counts as between.
 */
const HULL_RIM_MM = 0.01;

/** The waste of a hide, in two parts that share no place. */
export interface Waste {
  readonly edge: readonly Region[];
  readonly between: readonly Region[];
}

/**
 * Divides the used-up leather that is neither piece nor flaw. *Between* is what lies within the pieces' hull: gaps,
 * notches, cut-outs and bays narrower than `widthMm`, and wider ones too where pieces close them in on all sides.
 * *Edge* is the rest: the strip along outline and openings that no piece reaches.
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
  // Each on its own, so that neighbours which share a border are not joined first: that, too, costs seconds.
  return {
    edge: atEdge.flatMap((part) => subtractRegions([part], rest)),
    between: [...intersectRegions(hull, usedUp), ...closedIn].flatMap((part) =>
      subtractRegions([part], rest),
    ),
  };
}

/** The pieces grown by `by` and shrunk back: what is narrower than twice that is filled. */
function hullOf(pieces: readonly Region[], by: number): Region[] {
  if (pieces.length === 0) return [];
  const coarse = pieces.map(({ outer }): Region => ({
    outer: simplifyGrowing(outer, HULL_COARSE_MM),
    openings: [],
  }));
  const mitred = { join: 'mitre' } as const;
  const rim = Math.min(HULL_RIM_MM, by);
  return offsetRegions(offsetRegions(coarse, by, mitred), rim - by, mitred);
}
