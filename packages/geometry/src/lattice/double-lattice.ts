import { distanceBetween } from '../point.js';
import { GeometryError } from '../error.js';
import { convexHull } from '../shape/hull.js';
import { ringArea } from '../shape/ring.js';
import { sinCosDeg } from '../number/trigonometry.js';
import type { Point, Ring } from '../types/shape.js';
import { DIPS_FOLLOWED, GOLDEN_STEPS, PARALLELOGRAM_DIRECTIONS } from './constants.js';
import { toRepeat } from './repeat.js';
import type { Repeat } from './repeat.js';

/** Share by which the ring's area may differ from its hull's and still be called convex: rounded arcs wobble. */
export const CONVEX_SHARE = 1e-6;

/**
 * The densest double lattice of a convex ring: pieces and half-turned pieces, each kind on the same lattice. By the
 * theorem of Kuperberg and Kuperberg (1990, Discrete & Computational Geometry 5): in any direction take the two chords
 * of half the longest chord's length; they span a parallelogram, half turns about whose corners pack the plane with
 * one piece to twice its area; the least such parallelogram gives the densest double lattice. Its density is at
 * least sqrt(3)/2; for a ring that is its own half turn no packing at all is denser.
 *
 * Lengths in mm, exact but for the last digits of doubles; nothing is added for a gap (grow the ring by half of it
 * first, or use `repeatsOf`). Throws `bad-argument` if the ring is not convex.
 */
export function densestDoubleLattice(ring: Ring): Repeat {
  const hull = convexHull(ring);
  const area = Math.abs(ringArea(ring));
  if (hull.length < 3 || ringArea(hull) > area * (1 + CONVEX_SHARE)) {
    throw new GeometryError('bad-argument', 'The densest double lattice is sought of a convex ring only.');
  }
  const { along, from, across } = leastParallelogram(hull);
  return toRepeat(area, {
    u: { x: 2 * along.x, y: 2 * along.y },
    v: { x: 2 * across.x, y: 2 * across.y },
    turned: { x: 2 * from.x, y: 2 * from.y },
  });
}

/** A half-length parallelogram: a corner and the two sides from it. */
interface Parallelogram {
  readonly from: Point;
  readonly along: Point;
  readonly across: Point;
  readonly area: number;
}

function leastParallelogram(hull: Ring): Parallelogram {
  const directions = directionsOf(hull);
  const all = directions.map((direction) => parallelogramAlong(hull, direction));
  const at = (i: number): number => (i + all.length) % all.length;
  const dips = all
    .map((_, i) => i)
    .filter((i) => all[i]!.area <= all[at(i - 1)]!.area && all[i]!.area <= all[at(i + 1)]!.area)
    .sort((i, j) => all[i]!.area - all[j]!.area || i - j)
    .slice(0, DIPS_FOLLOWED);
  let best = all[dips[0]!]!;
  for (const i of dips) {
    const here = directions[i]!;
    const found = golden(hull, [
      oriented(directions[at(i - 1)]!, here),
      oriented(directions[at(i + 1)]!, here),
    ]);
    for (const one of [all[i]!, found]) if (one.area < best.area) best = one;
  }
  return best;
}

/** Directions over half a turn, sorted: an even fan, and all the edges' own, at which the area often has its kinks. */
function directionsOf(hull: Ring): Point[] {
  const fan = Array.from({ length: PARALLELOGRAM_DIRECTIONS }, (_, i) => {
    const { sin, cos } = sinCosDeg((180 * (i + 0.5)) / PARALLELOGRAM_DIRECTIONS);
    return { x: cos, y: sin };
  });
  const edges = hull.map((p, i) => {
    const q = hull[(i + 1) % hull.length]!;
    const length = distanceBetween(p, q);
    const sign = q.y - p.y < 0 || (q.y === p.y && q.x < p.x) ? -1 : 1;
    return { x: (sign * (q.x - p.x)) / length, y: (sign * (q.y - p.y)) / length };
  });
  return [...fan, ...edges].sort((a, b) => b.x - a.x);
}

/** The direction or its opposite, whichever is nearer to the other one. */
function oriented(direction: Point, like: Point): Point {
  const isNear = direction.x * like.x + direction.y * like.y >= 0;
  return isNear ? direction : { x: -direction.x, y: -direction.y };
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The least area between two directions, by golden section along the chord between them. */
function golden(hull: Ring, [a, b]: readonly [Point, Point]): Parallelogram {
  const at = (t: number): Parallelogram =>
    parallelogramAlong(hull, { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
  let low = 0;
  let high = 1;
  let left = at(1 - GOLDEN);
  let right = at(GOLDEN);
  for (let step = 0; step < GOLDEN_STEPS; step++) {
    const width = high - low;
    if (left.area <= right.area) {
      high = low + GOLDEN * width;
      right = left;
      left = at(high - GOLDEN * (high - low));
    } else {
      low = high - GOLDEN * width;
      left = right;
      right = at(low + GOLDEN * (high - low));
    }
  }
  return left.area <= right.area ? left : right;
}

function parallelogramAlong(hull: Ring, direction: Point): Parallelogram {
  const chords = chordsAlong(hull, direction);
  let longest = 0;
  chords.forEach((chord, i) => {
    if (chord.length > chords[longest]!.length) longest = i;
  });
  const half = chords[longest]!.length / 2;
  const below = chordOfLength(chords, half, longest, -1);
  const above = chordOfLength(chords, half, longest, 1);
  const along = { x: direction.x * half, y: direction.y * half };
  const across = { x: above.x - below.x, y: above.y - below.y };
  return { from: below, along, across, area: Math.abs(along.x * across.y - along.y * across.x) };
}

/** A chord: where it starts, seen along the direction, and how many times the direction's length it is long. */
interface Chord {
  readonly start: Point;
  readonly length: number;
}

/** A corner by its place along the direction and across it, both in multiples of the direction's length. */
interface Placed {
  readonly along: number;
  readonly height: number;
}

/** The chords through all corners, sorted across the direction; between two of them start and length are linear. */
function chordsAlong(hull: Ring, direction: Point): Chord[] {
  const lengthSq = direction.x * direction.x + direction.y * direction.y;
  const placed = hull.map((p) => ({
    along: (p.x * direction.x + p.y * direction.y) / lengthSq,
    height: (p.y * direction.x - p.x * direction.y) / lengthSq,
  }));
  let low = 0;
  placed.forEach((p, i) => {
    if (p.height < placed[low]!.height) low = i;
  });
  const sides = ([1, -1] as const).map((step) => createSide(placed, low, step));
  const heights = placed.map(({ height }) => height).sort((a, b) => a - b);
  return heights.map((height) => {
    let least = Infinity;
    let greatest = -Infinity;
    for (const side of sides) {
      for (const end of side(height)) {
        if (end < least) least = end;
        if (end > greatest) greatest = end;
      }
    }
    const start = {
      x: least * direction.x - height * direction.y,
      y: least * direction.y + height * direction.x,
    };
    return { start, length: greatest - least };
  });
}

/** One side of the ring from its lowest corner up: asked with heights that rise, where it is at each, level edges whole. */
function createSide(placed: readonly Placed[], low: number, step: 1 | -1): (height: number) => number[] {
  const count = placed.length;
  const at = (k: number): Placed => placed[(low + step * k + count * Math.abs(k)) % count]!;
  let k = 0;
  return (height) => {
    while (k + 1 < count && at(k + 1).height < height && at(k + 1).height >= at(k).height) k++;
    const a = at(k);
    const b = at(k + 1);
    const rise = b.height - a.height;
    const share = rise > 0 ? Math.min(1, (height - a.height) / rise) : 0;
    const ends = [a.along + share * (b.along - a.along)];
    for (let level = k + 1; level <= k + count && at(level).height === height; level++)
      ends.push(at(level).along);
    return ends;
  };
}

/** Where the chord of this length starts, from the longest one on to one side. */
function chordOfLength(chords: readonly Chord[], length: number, from: number, step: -1 | 1): Point {
  for (let i = from; chords[i + step] !== undefined; i += step) {
    const wide = chords[i]!;
    const narrow = chords[i + step]!;
    if (narrow.length > length) continue;
    const share = wide.length === narrow.length ? 1 : (wide.length - length) / (wide.length - narrow.length);
    return {
      x: wide.start.x + share * (narrow.start.x - wide.start.x),
      y: wide.start.y + share * (narrow.start.y - wide.start.y),
    };
  }
  // The outermost edge lies along the direction and is longer than half the longest chord: it holds the half chord.
  return chords[step < 0 ? 0 : chords.length - 1]!.start;
}
