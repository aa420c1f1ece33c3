import { distanceBetween } from '../point.js';
import { convexParts } from '../shape/convex-parts.js';
import { convexSum } from '../shape/no-fit.js';
import type { Point, Ring } from '../types/shape.js';

/**
 * Where a second piece's origin may not lie, as a union of convex rings, each moved by (dx, dy) if the same rings are
 * used more than once: flat arrays, because everything else here asks them over and over. The parts are kept apart on
 * purpose. Two pieces overlap just where the origin is strictly inside one of the sums of a part of the one and
 * a part of the other, so that a place where a piece fits exactly into another one's hollow, though surrounded by
 * forbidden places, is still told to be free. A united no-fit polygon has lost it.
 */
export interface ForbiddenParts {
  readonly count: number;
  /** Edges of part k are firstEdge[k] up to before firstEdge[k + 1]. */
  readonly firstEdge: Int32Array;
  /** Unit normal of each edge, outwards, and its distance from the origin along that; then its first corner. */
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly offset: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Boxes of the parts. */
  readonly minX: Float64Array;
  readonly minY: Float64Array;
  readonly maxX: Float64Array;
  readonly maxY: Float64Array;
  /** The farthest corner from the origin. */
  readonly reach: number;
}

/** Which half-plane keeps a place out of a part: n · p must be at least `offset`. */
export interface Separation {
  nx: number;
  ny: number;
  offset: number;
  /** Signed distance of the place from the part: negative inside. */
  distance: number;
}

/** Where the origin of a copy of the piece, moved only, may not lie. */
export function forbiddenToMoved(parts: readonly Ring[]): ForbiddenParts {
  const turned = parts.map(negated);
  return toFlat(parts.flatMap((a) => turned.map((b) => convexSum(a, b))));
}

/** Where the origin of a copy of the piece, turned by half a turn, may not lie. */
export function forbiddenToTurned(parts: readonly Ring[]): ForbiddenParts {
  return toFlat(parts.flatMap((a, i) => parts.slice(i).map((b) => convexSum(a, b))));
}

/** The piece cut into convex rings; its openings, into which no equal piece can go, are filled. */
export function partsOf(outer: Ring): Ring[] {
  return convexParts({ outer, openings: [] });
}

function negated(ring: Ring): Ring {
  return ring.map((p) => ({ x: -p.x, y: -p.y }));
}

function toFlat(rings: readonly Ring[]): ForbiddenParts {
  const cleaned = rings.map(withoutShortEdges).filter((ring) => ring.length > 2);
  const edges = cleaned.reduce((sum, ring) => sum + ring.length, 0);
  const firstEdge = new Int32Array(cleaned.length + 1);
  const [nx, ny, offset, x, y] = Array.from({ length: 5 }, () => new Float64Array(edges)) as Five;
  const [minX, minY, maxX, maxY] = Array.from({ length: 4 }, () => new Float64Array(cleaned.length)) as Four;
  let reachSq = 0;
  let e = 0;
  cleaned.forEach((ring, k) => {
    firstEdge[k] = e;
    minX[k] = minY[k] = Infinity;
    maxX[k] = maxY[k] = -Infinity;
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      const length = distanceBetween(p, q);
      nx[e] = (q.y - p.y) / length;
      ny[e] = (p.x - q.x) / length;
      offset[e] = nx[e]! * p.x + ny[e]! * p.y;
      x[e] = p.x;
      y[e] = p.y;
      minX[k] = Math.min(minX[k]!, p.x);
      minY[k] = Math.min(minY[k]!, p.y);
      maxX[k] = Math.max(maxX[k]!, p.x);
      maxY[k] = Math.max(maxY[k]!, p.y);
      reachSq = Math.max(reachSq, p.x * p.x + p.y * p.y);
      e++;
    });
  });
  firstEdge[cleaned.length] = e;
  const reach = Math.sqrt(reachSq);
  return { count: cleaned.length, firstEdge, nx, ny, offset, x, y, minX, minY, maxX, maxY, reach };
}

type Four = [Float64Array, Float64Array, Float64Array, Float64Array];
type Five = [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];

/** An edge so short has no direction that its ends' last digits leave certain (mm). */
const SHORT_EDGE_MM = 1e-9;

function withoutShortEdges(ring: Ring): Ring {
  const kept: Point[] = [];
  const isApart = (p: Point, q: Point): boolean => Math.abs(p.x - q.x) + Math.abs(p.y - q.y) > SHORT_EDGE_MM;
  for (const p of ring) if (kept.length === 0 || isApart(p, kept[kept.length - 1]!)) kept.push(p);
  while (kept.length > 1 && !isApart(kept[0]!, kept[kept.length - 1]!)) kept.pop();
  return kept;
}

/**
 * How a place is kept out of part k: by the edge that it is farthest outside of, or, with `wide` (the place is to keep
 * a distance and lies beside a corner), by the line across from the nearest corner. Writes into `out`. Of two
 * edges that keep it out alike the first counts, or with `later` the last: at a corner of the part that is a choice.
 */
export function separate(
  parts: ForbiddenParts,
  k: number,
  px: number,
  py: number,
  out: Separation,
  options: { readonly wide: boolean; readonly later: boolean },
): void {
  const { firstEdge, nx, ny, offset } = parts;
  const first = firstEdge[k]!;
  const end = firstEdge[k + 1]!;
  let most = -Infinity;
  let edge = first;
  const slack = options.later ? TIE_MM : -TIE_MM;
  for (let e = first; e < end; e++) {
    const d = nx[e]! * px + ny[e]! * py - offset[e]!;
    if (d > most - slack) {
      edge = e;
      if (d > most) most = d;
    }
  }
  out.nx = nx[edge]!;
  out.ny = ny[edge]!;
  out.offset = offset[edge]!;
  out.distance = out.nx * px + out.ny * py - out.offset;
  if (options.wide && out.distance > 0) separateFromCorner(parts, k, px, py, out);
}

/** Two edges that keep a place out alike to this (mm) are a choice. */
const TIE_MM = 1e-7;

/** Beside a corner, the line through the corner across the way to the place keeps it farther out than any edge. */
function separateFromCorner(parts: ForbiddenParts, k: number, px: number, py: number, out: Separation): void {
  const first = parts.firstEdge[k]!;
  const end = parts.firstEdge[k + 1]!;
  let leastSq = Infinity;
  let corner = -1;
  for (let e = first; e < end; e++) {
    const next = e + 1 < end ? e + 1 : first;
    const before = e > first ? e - 1 : end - 1;
    const wx = px - parts.x[e]!;
    const wy = py - parts.y[e]!;
    // Between the two normals: past the start of the edge that leaves, and past the end of the one that arrives.
    const alongLeaving = (parts.x[next]! - parts.x[e]!) * wx + (parts.y[next]! - parts.y[e]!) * wy;
    const alongArriving = (parts.x[e]! - parts.x[before]!) * wx + (parts.y[e]! - parts.y[before]!) * wy;
    if (alongLeaving > 0 || alongArriving < 0) continue;
    const sq = wx * wx + wy * wy;
    if (sq < leastSq) {
      leastSq = sq;
      corner = e;
    }
  }
  const distance = Math.sqrt(leastSq);
  if (corner < 0 || distance <= out.distance) return;
  out.nx = (px - parts.x[corner]!) / distance;
  out.ny = (py - parts.y[corner]!) / distance;
  out.offset = out.nx * parts.x[corner]! + out.ny * parts.y[corner]!;
  out.distance = distance;
}

/**
 * How a distance is kept at corners: `round`, as it is; `mitred`, as from the edges' lines, so that straight pieces stand
 * in straight rows (each beside the other, not nestled into the roundness of the other's corners).
 */
export type Corners = 'round' | 'mitred';

/** The distance that is to be kept, mm. */
export interface Distance {
  readonly gap: number;
  readonly corners: Corners;
}

/**
 * By how much a place keeps the distance from the forbidden parts: 0 if it does, negative by what the worst lacks.
 */
export function clearanceOf(
  parts: ForbiddenParts,
  px: number,
  py: number,
  { gap, corners }: Distance,
): number {
  let least = 0;
  for (let k = 0; k < parts.count; k++) {
    const reach = gap + least;
    if (px <= parts.minX[k]! - reach || px >= parts.maxX[k]! + reach) continue;
    if (py <= parts.minY[k]! - reach || py >= parts.maxY[k]! + reach) continue;
    const distance = distanceFrom(parts, k, px, py, corners === 'round' ? gap : 0);
    if (distance - gap < least) least = distance - gap;
  }
  return least;
}

const scratch = (): Separation => ({ nx: 0, ny: 0, offset: 0, distance: 0 });

/** To the edges' lines, or within `gap` beside a corner to that. */
function distanceFrom(parts: ForbiddenParts, k: number, px: number, py: number, gap: number): number {
  const { nx, ny, offset } = parts;
  const end = parts.firstEdge[k + 1]!;
  let most = -Infinity;
  for (let e = parts.firstEdge[k]!; e < end; e++) {
    const d = nx[e]! * px + ny[e]! * py - offset[e]!;
    if (d > most) most = d;
  }
  if (gap === 0 || most <= 0 || most >= gap) return most;
  const found = scratch();
  found.distance = most;
  separateFromCorner(parts, k, px, py, found);
  return found.distance;
}

/**
 * The stretch of the line (ox, oy) + h (wx, wy), w a unit vector, that lies nearer than `gap` to part k (corners taken
 * as mitres, so rather more). Writes [from, to] into `out`; false if the line misses the part.
 */
export function stretchWithin(
  parts: ForbiddenParts,
  k: number,
  line: { readonly ox: number; readonly oy: number; readonly wx: number; readonly wy: number },
  gap: number,
  out: Float64Array,
): boolean {
  const { nx, ny, offset } = parts;
  let from = -Infinity;
  let to = Infinity;
  const end = parts.firstEdge[k + 1]!;
  for (let e = parts.firstEdge[k]!; e < end; e++) {
    const slope = nx[e]! * line.wx + ny[e]! * line.wy;
    const room = offset[e]! + gap - nx[e]! * line.ox - ny[e]! * line.oy;
    if (slope > PARALLEL) {
      if (room < to * slope) to = room / slope;
    } else if (slope < -PARALLEL) {
      if (room < from * slope) from = room / slope;
    } else if (room <= 0) return false;
    if (from >= to) return false;
  }
  out[0] = from;
  out[1] = to;
  return true;
}

/** A slope below this is a line along the edge. */
const PARALLEL = 1e-12;

/** The parts turned about the origin by half a turn. */
export function negatedParts(parts: ForbiddenParts): ForbiddenParts {
  const minus = (values: Float64Array): Float64Array => values.map((n) => -n);
  return {
    ...parts,
    nx: minus(parts.nx),
    ny: minus(parts.ny),
    x: minus(parts.x),
    y: minus(parts.y),
    minX: minus(parts.maxX),
    minY: minus(parts.maxY),
    maxX: minus(parts.minX),
    maxY: minus(parts.minY),
  };
}
