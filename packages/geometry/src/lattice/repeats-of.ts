import { distanceBetween } from '../point.js';
import { convexHull } from '../shape/hull.js';
import { offsetRegions } from '../shape/clipper.js';
import { regionArea, ringArea, ringBox, orientRing } from '../shape/ring.js';
import { simplifyGrowing } from '../shape/simplify.js';
import type { Point, Region, Ring } from '../types/shape.js';
import { MOST_CORNERS, MOST_REPEATS, SIMPLIFY_ROUNDS, SIMPLIFY_SHARE } from './constants.js';
import { CONVEX_SHARE, densestDoubleLattice } from './double-lattice.js';
import type { Corners } from './forbidden.js';
import { forbiddenToMoved, forbiddenToTurned, partsOf } from './forbidden.js';
import type { Lattice, LatticeRules } from './lattice.js';
import { lookForDouble, lookForSingle } from './look.js';
import { cross, toRepeat } from './repeat.js';
import type { Repeat } from './repeat.js';
import { tightenLattice } from './tighten.js';

export interface RepeatOptions {
  /** Distance that any two pieces keep, in mm; the check's own forgiveness is not used up. */
  readonly gap: number;
  /** True if the half-turned piece is as good: the angle rule is free, or its modulo is 180. */
  readonly mayHalfTurn: boolean;
  /** At most so many repeats; default 6. */
  readonly most?: number;
}

/**
 * The densest repeats of a piece that were found, best first: lattices of moved copies, and (if it may be turned) of
 * the piece and its half turn. Pieces keep the gap to 1e-7 mm, so that placements rounded to 0.001 mm and 1e-6 degrees
 * pass the exact check, which forgives 2 µm. Pieces never nest into each other's openings.
 *
 * For a convex piece without gap the best double lattice is the densest one there is (`densestDoubleLattice`); for
 * others it is the best of many starts, each tightened until nothing moves, with no promise. Deterministic, and
 * bounded in work: about a second for most pieces, twice that with a gap.
 *
 * To use: take the first repeats, turn each as the item's angle rule allows (`patternRotations`), lay it on the sheet
 * (`trimToContainer`), and give the placements to the search as a start.
 */
export function repeatsOf(region: Region, options: RepeatOptions): Repeat[] {
  const { ring, middle } = centred(orientRing(region.outer, 'outer'));
  const { gap, mayHalfTurn, most = MOST_REPEATS } = options;
  const coarse = simplified(ring);
  const starts = latticeStarts(coarse, options);
  const rules = rulesOf(ring, gap);
  if (coarse !== ring && mayHalfTurn && isConvex(ring)) starts.push(convexStart(ring, gap));
  const area = regionArea(region);
  const tightened = (corners: Corners): Repeat[] => {
    const lattices = coarse === ring ? starts : tightenAll({ ...rulesOf(coarse, gap), corners }, starts);
    const fewer = coarse === ring ? lattices : lattices.slice(0, EXACTLY_TIGHTENED);
    const exact = tightenAll({ ...rules, corners }, fewer);
    return distinct(exact.map((lattice) => toRepeat(area, movedBack(lattice, middle))));
  };
  const round = tightened('round');
  if (gap === 0) return round.slice(0, most);
  // Straight rows, a little less dense than nestled ones, often end better at a sheet's side: some places are theirs.
  const straight = tightened('mitred').slice(0, Math.floor(most * STRAIGHT_SHARE));
  return distinct([...round.slice(0, most - straight.length), ...straight]);
}

/** Share of the returned repeats that are straight rows where there is a gap. */
const STRAIGHT_SHARE = 0.34;

/** Of a simplified piece, so many of the best lattices are tightened again with all corners. */
const EXACTLY_TIGHTENED = 8;

/** About the middle of its box, where the forbidden places reach least far. */
function centred(ring: Ring): { readonly ring: Ring; readonly middle: Point } {
  const box = ringBox(ring);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return { ring: ring.map(({ x, y }) => ({ x: x - middle.x, y: y - middle.y })), middle };
}

/** Half a turn about the piece's origin rather than about its middle: the same places of leather. */
function movedBack({ u, v, turned }: Lattice, middle: Point): Lattice {
  if (turned === undefined) return { u, v };
  return { u, v, turned: { x: turned.x + 2 * middle.x, y: turned.y + 2 * middle.y } };
}

function simplified(ring: Ring): Ring {
  let simple = ring;
  let tolerance = SIMPLIFY_SHARE * sizeOf(ring);
  for (let round = 0; round < SIMPLIFY_ROUNDS && simple.length > MOST_CORNERS; round++, tolerance *= 2) {
    simple = simplifyGrowing(ring, tolerance);
  }
  return simple;
}

function isConvex(ring: Ring): boolean {
  return ringArea(convexHull(ring)) <= ringArea(ring) * (1 + CONVEX_SHARE);
}

/** Diagonal of its box, in mm. */
function sizeOf(ring: Ring): number {
  const box = ringBox(ring);
  return distanceBetween({ x: box.minX, y: box.minY }, { x: box.maxX, y: box.maxY });
}

function rulesOf(ring: Ring, gap: number): LatticeRules {
  const parts = partsOf(ring);
  return {
    moved: forbiddenToMoved(parts),
    turned: forbiddenToTurned(parts),
    gap,
    corners: 'round',
    sizeMm: sizeOf(ring),
    areaMm2: ringArea(ring),
  };
}

/** Lattices to tighten; with a gap some of them don't keep it yet. */
function latticeStarts(ring: Ring, { gap, mayHalfTurn }: RepeatOptions): Lattice[] {
  const rules = rulesOf(ring, gap);
  const starts = startsOf(rules, ring, mayHalfTurn);
  if (gap > 0) {
    // What fits without a gap, tight, is a start for what fits with it: exact fits are points that rays miss.
    const close = { ...rules, gap: 0 };
    const tight = tightenAll(close, startsOf(close, ring, mayHalfTurn));
    starts.push(...tight.slice(0, CLOSE_STARTS));
  }
  if (mayHalfTurn && isConvex(ring)) starts.push(convexStart(ring, gap));
  return starts;
}

/** Of the lattices that are tight without a gap, so many are starts for those with it. */
const CLOSE_STARTS = 12;

/** Tightened lattices, best first. */
function tightenAll(rules: LatticeRules, starts: readonly Lattice[]): Lattice[] {
  const tightened = starts.flatMap((start) => tightenLattice(rules, start) ?? []);
  return tightened.sort((a, b) => areaPerPiece(a) - areaPerPiece(b));
}

function startsOf(rules: LatticeRules, ring: Ring, mayHalfTurn: boolean): Lattice[] {
  const single = lookForSingle(rules, ring);
  const double = mayHalfTurn ? lookForDouble(rules, ring) : [];
  return [...single, ...double].map(({ lattice }) => lattice);
}

function convexStart(ring: Ring, gap: number): Lattice {
  const hull = convexHull(ring);
  const [grown] = gap > 0 ? offsetRegions([{ outer: hull, openings: [] }], gap / 2, { join: 'round' }) : [];
  const { u, v, members } = densestDoubleLattice(grown?.outer ?? hull);
  return { u, v, turned: { x: members[1]!.x, y: members[1]!.y } };
}

function areaPerPiece({ u, v, turned }: Lattice): number {
  return cross(u, v) / (turned === undefined ? 1 : 2);
}

/** Best first, of equal areas those with the straightest cells; of those with equal cells and equal vectors one. */
function distinct(repeats: readonly Repeat[]): Repeat[] {
  const sorted = repeats
    .map((repeat) => ({
      repeat,
      area: Math.round(repeat.areaPerPieceMm2 * AREA_STEPS),
      lengths: lengthsOf(repeat),
    }))
    .sort((a, b) => a.area - b.area || a.lengths - b.lengths)
    .map(({ repeat }) => repeat);
  const kept: Repeat[] = [];
  for (const repeat of sorted) {
    if (kept.some((other) => isSameRepeat(other, repeat))) continue;
    const alike = kept.filter((other) => other.kind === repeat.kind && isAsDense(other, repeat)).length;
    if (alike < MOST_ALIKE) kept.push(repeat);
  }
  return kept;
}

/** Of patterns of one kind and density (rows that can be shifted, say) so many are kept, to leave room for others. */
const MOST_ALIKE = 2;

function isAsDense(a: Repeat, b: Repeat): boolean {
  return Math.abs(a.density - b.density) < 1e-6;
}

/** Cell areas are compared to 1e-6 mm², so that last digits don't decide. */
const AREA_STEPS = 1e6;

/** Rounded as well, so that single lattices come before equal double ones. */
function lengthsOf({ u, v, members }: Repeat): number {
  return Math.round((lengthOf(u) + lengthOf(v)) * members.length * 1e3) + members.length;
}

/** Lengths that differ by less are equal (mm): two ways to the same pattern end so near each other. */
const SAME_MM = 1e-3;

/** One and the same pattern, or its half turn, told by the lengths of its vectors and of their diagonal. */
function isSameRepeat(a: Repeat, b: Repeat): boolean {
  if (a.members.length !== b.members.length) return false;
  const isNear = (p: Point, q: Point): boolean => Math.abs(lengthOf(p) - lengthOf(q)) <= SAME_MM;
  const diagonal = ({ u, v }: Repeat): Point => ({ x: u.x + v.x, y: u.y + v.y });
  return isNear(a.u, b.u) && isNear(a.v, b.v) && isNear(diagonal(a), diagonal(b));
}

function lengthOf({ x, y }: Point): number {
  return Math.sqrt(x * x + y * y);
}
