import {
  CURVE_TOLERANCE_MM,
  convexHull,
  convexSum,
  densestDoubleLattice,
  offsetRegions,
  orientRing,
  regionArea,
  repeatsOf,
  ringArea,
  simplifyGrowing,
} from '@hidebound/geometry';
import type { Region, Ring } from '@hidebound/geometry';

/** How a piece may lie beside its like. */
export interface RepeatWish {
  /** Distance between two cut lines, mm. */
  readonly gapMm: number;
  /** It may as well lie the other way round. */
  readonly mayHalfTurn: boolean;
  /** Take the time (a second or so) to fit hollow pieces into each other; else their hull stands for them. */
  readonly isThorough?: boolean;
}

/**
 * What one of many equal pieces takes of endless leather in its densest known repeat, mm². Without a hollow it is the
 * densest there is: of a piece and its half turn by G. and W. Kuperberg (Discrete & Computational Geometry 5, 1990);
 * where it may not be turned by H. Minkowski (1904): a convex ring K repeats as densely as half of K - K does, which
 * is its own half turn. A hollow piece is fitted into itself (`repeatsOf`) if there is time for it.
 */
export function areaInRepeat(region: Region, { gapMm, mayHalfTurn, isThorough = false }: RepeatWish): number {
  const hull = orientRing(convexHull(region.outer), 'outer');
  const apart = fewerCorners(grown(hull, gapMm));
  const asHull = mayHalfTurn ? doubleArea(apart) : doubleArea(withOpposite(apart)) / 4;
  if (!isThorough || !isHollow(region.outer, hull)) return asHull;
  const best = repeatsOf(region, { gap: gapMm, mayHalfTurn, most: 1 })[0];
  return best === undefined ? asHull : Math.min(asHull, best.areaPerPieceMm2);
}

/** Hulls that are larger by less than this share are as good as the piece. */
const HOLLOW_SHARE = 0.005;

function isHollow(outer: Ring, hull: Ring): boolean {
  return ringArea(hull) > Math.abs(ringArea(outer)) * (1 + HOLLOW_SHARE);
}

function grown(hull: Ring, gapMm: number): Ring {
  if (gapMm === 0) return hull;
  const [larger] = offsetRegions([{ outer: hull, openings: [] }], gapMm / 2, { join: 'round' });
  return larger === undefined ? hull : convexHull(larger.outer);
}

/** Rounded corners need no more of them than pieces are true to: the densest repeat is sought much sooner. */
function fewerCorners(hull: Ring): Ring {
  return convexHull(simplifyGrowing(hull, CURVE_TOLERANCE_MM));
}

function doubleArea(hull: Ring): number {
  return densestDoubleLattice(hull).areaPerPieceMm2;
}

/** Steps of the grid in a mm: sums of convex rings are exact in whole numbers. */
const STEPS_PER_MM = 1000;

/** K - K: every point of the ring less every point of it. */
function withOpposite(hull: Ring): Ring {
  const whole = hull.map(({ x, y }) => ({
    x: Math.round(x * STEPS_PER_MM),
    y: Math.round(y * STEPS_PER_MM),
  }));
  const opposite = whole.map(({ x, y }) => ({ x: -x, y: -y }));
  const sum = convexSum(orientRing(whole, 'outer'), orientRing(opposite, 'outer'));
  return convexHull(sum).map(({ x, y }) => ({ x: x / STEPS_PER_MM, y: y / STEPS_PER_MM }));
}

/** Equal pieces, as far as the loss between them goes. */
export interface RepeatedPiece {
  readonly copies: number;
  /** Of one piece, openings taken off; and what it takes in its densest repeat. */
  readonly netMm2: number;
  readonly inRepeatMm2: number;
}

/**
 * What lies between pieces, on top of their own area: each kind in its densest repeat, all together, so that large
 * kinds count for more. Small pieces that lie in the gaps of large ones lower it; trial layouts tell by how much.
 */
export function lossBetween(pieces: readonly RepeatedPiece[]): number {
  let netMm2 = 0;
  let inRepeatMm2 = 0;
  for (const { copies, netMm2: net, inRepeatMm2: taken } of pieces) {
    netMm2 += copies * net;
    inRepeatMm2 += copies * taken;
  }
  return netMm2 > 0 ? inRepeatMm2 / netMm2 - 1 : 0;
}

/** What a strap in a lane takes, mm²: its length times its width and the kerf, since neighbours share their lines. */
export function areaInLane(region: Region, widthMm: number, kerfMm: number): number {
  const netMm2 = regionArea(region);
  return widthMm > 0 ? Math.max(netMm2, lengthOf(region.outer) * (widthMm + kerfMm)) : netMm2;
}

/** The longest distance between two corners of the hull: a strap is as long, but for its rounded ends. */
function lengthOf(ring: Ring): number {
  const hull = convexHull(ring);
  let most = 0;
  for (const p of hull) {
    for (const q of hull) most = Math.max(most, (p.x - q.x) * (p.x - q.x) + (p.y - q.y) * (p.y - q.y));
  }
  return Math.sqrt(most);
}
