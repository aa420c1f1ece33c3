import { GeometryError } from '../error.js';
import { distanceSq } from '../point.js';
import type { Point, Region, Ring } from '../types/shape.js';
import { segmentsCross, turnOf, isOnSegment } from './orientation.js';
import { orientRegion } from './ring.js';

/**
 * The region cut into convex rings along lines between its own corners, so that corners stay exact: openings are
 * joined to the outline by cuts, ears are clipped, and triangles are put together again while they stay convex
 * (Hertel & Mehlhorn 1983: at most four times as many parts as needed). Rings must not cross themselves
 * or each other; where that shows, `bad-argument` is thrown.
 */
export function convexParts(region: Region): Ring[] {
  const { outer, openings } = orientRegion(region);
  const joined = openings.length === 0 ? [...outer] : joinOpenings(outer, openings);
  return mergeConvex(clipEars(withoutRepeats(joined)));
}

/** One ring that runs along the outline and, out and back on a cut, round each opening. */
function joinOpenings(outer: Ring, openings: readonly Ring[]): Point[] {
  const rest = [...openings];
  let ring = [...outer];
  while (rest.length > 0) {
    const cut = shortestCut(ring, rest);
    const opening = rest.splice(cut.opening, 1)[0]!;
    const round = [...opening.slice(cut.at), ...opening.slice(0, cut.at + 1)];
    ring = [...ring.slice(0, cut.from + 1), ...round, ...ring.slice(cut.from)];
  }
  return ring;
}

interface Cut {
  readonly from: number;
  readonly opening: number;
  readonly at: number;
}

function shortestCut(ring: Ring, openings: readonly Ring[]): Cut {
  const cuts: (Cut & { readonly lengthSq: number })[] = [];
  openings.forEach((opening, k) => {
    opening.forEach((q, at) => {
      ring.forEach((p, from) => cuts.push({ from, opening: k, at, lengthSq: distanceSq(p, q) }));
    });
  });
  cuts.sort((a, b) => a.lengthSq - b.lengthSq || a.from - b.from || a.opening - b.opening || a.at - b.at);
  for (const cut of cuts) {
    const p = ring[cut.from]!;
    const q = openings[cut.opening]![cut.at]!;
    if (cut.lengthSq > 0 && !isInCorner(ring, cut.from, q)) continue;
    if ([ring, ...openings].every((edge) => isFree(p, q, edge))) return cut;
  }
  throw new GeometryError('bad-argument', 'An opening crosses the outline or another opening.');
}

/** True if the stretch meets the ring at its own ends only. */
function isFree(p: Point, q: Point, ring: Ring): boolean {
  return ring.every((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    if (segmentsCross(p, q, a, b)) return false;
    return isSame(a, p) || isSame(a, q) || !isOnSegment(p, q, a);
  });
}

/** True if, seen from corner i, q lies on the ring's inner side: which of two passes of a cut it may start from. */
function isInCorner(ring: Ring, i: number, q: Point): boolean {
  const before = ring[(i + ring.length - 1) % ring.length]!;
  const at = ring[i]!;
  const after = ring[(i + 1) % ring.length]!;
  const left = turnOf(before, at, q);
  const right = turnOf(at, after, q);
  return turnOf(before, at, after) > 0 ? left > 0 && right > 0 : left > 0 || right > 0;
}

function isSame(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

function withoutRepeats(ring: readonly Point[]): Point[] {
  return ring.filter((p, i) => !isSame(p, ring[(i + 1) % ring.length]!));
}

type Triangle = readonly [number, number, number];

interface Triangles {
  readonly points: readonly Point[];
  readonly triangles: readonly Triangle[];
}

function clipEars(points: readonly Point[]): Triangles {
  const left = points.map((_, i) => i);
  const triangles: Triangle[] = [];
  while (left.length > 3) {
    const ear = findEar(points, left);
    if (ear === undefined) throw crossing();
    const [a, b, c] = aroundCorner(left, ear);
    if (turnOf(points[a]!, points[b]!, points[c]!) > 0) triangles.push([a, b, c]);
    left.splice(ear, 1);
  }
  if (left.length === 3) {
    const [a, b, c] = left as [number, number, number];
    const turn = turnOf(points[a]!, points[b]!, points[c]!);
    if (turn < 0) throw crossing();
    if (turn > 0) triangles.push([a, b, c]);
  }
  return { points, triangles };
}

function crossing(): GeometryError {
  return new GeometryError('bad-argument', 'A ring that crosses itself has no convex parts.');
}

function aroundCorner(left: readonly number[], k: number): Triangle {
  const n = left.length;
  return [left[(k + n - 1) % n]!, left[k]!, left[(k + 1) % n]!];
}

/** A corner whose triangle holds no other one; a corner on the line between its neighbours goes first. */
function findEar(points: readonly Point[], left: readonly number[]): number | undefined {
  for (let k = 0; k < left.length; k++) {
    const [a, b, c] = aroundCorner(left, k).map((i) => points[i]!) as [Point, Point, Point];
    // A straight corner, or the tip of a cut that is walked out and back.
    if (turnOf(a, b, c) === 0 && isSame(a, c)) return k;
  }
  for (let k = 0; k < left.length; k++) {
    const [a, b, c] = aroundCorner(left, k).map((i) => points[i]!) as [Point, Point, Point];
    if (turnOf(a, b, c) <= 0) continue;
    if (left.every((i) => !isInEar(points[i]!, a, b, c))) return k;
  }
  for (let k = 0; k < left.length; k++) {
    const [a, b, c] = aroundCorner(left, k).map((i) => points[i]!) as [Point, Point, Point];
    if (turnOf(a, b, c) === 0) return k;
  }
  return undefined;
}

/** Corners of the ear itself, and others at the same places (along cuts), don't count. */
function isInEar(p: Point, a: Point, b: Point, c: Point): boolean {
  if (isSame(p, a) || isSame(p, b) || isSame(p, c)) return false;
  return turnOf(a, b, p) >= 0 && turnOf(b, c, p) >= 0 && turnOf(c, a, p) >= 0;
}

/** Puts neighbours together across a shared edge wherever both its ends stay convex. */
function mergeConvex({ points, triangles }: Triangles): Ring[] {
  const parts: (readonly number[] | undefined)[] = [...triangles];
  const owner = new Map<string, number>();
  const key = (i: number, j: number) => `${i} ${j}`;
  const claim = (part: readonly number[], k: number) =>
    part.forEach((corner, i) => owner.set(key(corner, part[(i + 1) % part.length]!), k));
  triangles.forEach(claim);
  for (const triangle of triangles) {
    triangle.forEach((from, i) => {
      const to = triangle[(i + 1) % 3]!;
      const here = owner.get(key(from, to));
      const there = owner.get(key(to, from));
      if (here === undefined || there === undefined || here === there) return;
      const merged = mergedAcross(points, parts[here]!, parts[there]!, from, to);
      if (merged === undefined) return;
      owner.delete(key(from, to));
      owner.delete(key(to, from));
      parts[here] = merged;
      parts[there] = undefined;
      claim(merged, here);
    });
  }
  return parts.filter((part) => part !== undefined).map((part) => part.map((i) => points[i]!));
}

/** Both parts as one, if it is convex at both ends of the shared edge. */
function mergedAcross(
  points: readonly Point[],
  a: readonly number[],
  b: readonly number[],
  from: number,
  to: number,
): readonly number[] | undefined {
  const i = a.indexOf(to);
  const j = b.indexOf(from);
  const merged = [...a.slice(i), ...a.slice(0, i), ...b.slice(j), ...b.slice(0, j)].filter(
    (corner, k, all) => corner !== all[(k + 1) % all.length],
  );
  const bend = (corner: number) => {
    const k = merged.indexOf(corner);
    const [p, q, r] = aroundCorner(merged, k).map((n) => points[n]!) as [Point, Point, Point];
    return turnOf(p, q, r);
  };
  return bend(from) >= 0 && bend(to) >= 0 ? merged : undefined;
}
