import { atan2Deg, regionArea, sinCosDeg } from '@hidebound/geometry';
import type { Region, Ring } from '@hidebound/geometry';

/** A straight strip of one width that lies within a region. */
export interface InnerStrip {
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Of its length, degrees clockwise from the x axis, from 0 up to 180. */
  readonly angleDeg: number;
  /** Oriented as an outer ring. */
  readonly corners: Ring;
}

export interface StripWish {
  /** Absent: whichever way it is longest. */
  readonly angleDeg?: number;
  /** Enough: the first strip found of this length is taken, and none that is shorter. */
  readonly atLeastMm?: number;
}

/** Ways that are tried at first, this far apart, and the last step by which the best of them are turned. */
const COARSE_DEG = 3;
const FINEST_DEG = 0.05;
/** So many of the best ways are looked at closely. */
const CLOSE_LOOKS = 4;
/** Places across the region that are tried for a strip, and the last step by which the best is moved. */
const PLACES = 80;
const FINEST_MM = 0.02;
/** A shape of few corners has its longest strips along its sides and against its corners. */
const FEW_CORNERS = 48;

/**
 * The longest straight strip of a width inside a region and clear of its openings. It truly lies inside (touching is
 * inside). It is looked for every 3 degrees and at 80 places across, along the sides and at the corners of shapes with
 * few of them, and the best are turned and moved by ever smaller steps: to some tenths of a millimetre for shapes of few
 * corners, mostly within one per cent for ragged ones. None if the region is narrower than the strip
 * everywhere, or holds only what is shorter than it is wide.
 */
export function longestStrip(region: Region, widthMm: number, wish: StripWish = {}): InnerStrip | undefined {
  const { angleDeg, atLeastMm = 0 } = wish;
  if (atLeastMm * widthMm > regionArea(region)) return undefined;
  const enough = atLeastMm > 0 ? atLeastMm : Infinity;
  const first = angleDeg === undefined ? waysToTry(region) : [angleDeg];
  const found: StripAt[] = [];
  for (const way of first) {
    const strip = stripAlong(region, widthMm, way);
    if (strip === undefined) continue;
    if (strip.high - strip.low >= enough) return innerStrip(strip, widthMm);
    found.push(strip);
  }
  found.sort((a, b) => lengthOf(b) - lengthOf(a));
  let best = found[0];
  for (const strip of angleDeg === undefined ? found.slice(0, CLOSE_LOOKS) : []) {
    const turned = turnedCloser(region, widthMm, strip);
    if (best === undefined || lengthOf(turned) > lengthOf(best)) best = turned;
    if (lengthOf(best) >= enough) break;
  }
  // What is shorter than it is wide is no strip of this width.
  const least = Math.max(atLeastMm, widthMm - SAME_MM);
  return best === undefined || lengthOf(best) < least ? undefined : innerStrip(best, widthMm);
}

/** In a frame turned so that the strip runs along u: from low to high, its one side at v. */
interface StripAt {
  readonly angleDeg: number;
  readonly low: number;
  readonly high: number;
  readonly v: number;
}

function lengthOf({ low, high }: StripAt): number {
  return high - low;
}

function innerStrip({ angleDeg, low, high, v }: StripAt, widthMm: number): InnerStrip {
  const { sin, cos } = sinCosDeg(angleDeg);
  const at = (x: number, y: number) => ({ x: x * cos - y * sin, y: x * sin + y * cos });
  const corners = [at(low, v), at(high, v), at(high, v + widthMm), at(low, v + widthMm)];
  return { lengthMm: high - low, widthMm, angleDeg: ((angleDeg % 180) + 180) % 180, corners };
}

function waysToTry({ outer, openings }: Region): number[] {
  const ways = Array.from({ length: 180 / COARSE_DEG }, (_, i) => i * COARSE_DEG);
  const sides = [outer, ...openings].flatMap((ring) =>
    ring.map((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      return atan2Deg(q.y - p.y, q.x - p.x) % 180;
    }),
  );
  return sides.length > FEW_CORNERS ? ways : [...sides, ...ways];
}

function turnedCloser(region: Region, widthMm: number, start: StripAt): StripAt {
  let best = start;
  for (let step = COARSE_DEG / 2; step >= FINEST_DEG; step /= 2) {
    for (const angle of [best.angleDeg - step, best.angleDeg + step]) {
      const strip = stripAlong(region, widthMm, angle);
      if (strip !== undefined && lengthOf(strip) > lengthOf(best)) best = strip;
    }
  }
  return best;
}

/** Edges in the turned frame, as x, y, x, y of each. */
function turnedEdges({ outer, openings }: Region, angleDeg: number): Float64Array {
  const { sin, cos } = sinCosDeg(angleDeg);
  const rings = [outer, ...openings];
  const edges = new Float64Array(4 * rings.reduce((sum, ring) => sum + ring.length, 0));
  let at = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const p = ring[i]!;
      const q = ring[i + 1 === ring.length ? 0 : i + 1]!;
      edges[at++] = p.x * cos + p.y * sin;
      edges[at++] = p.y * cos - p.x * sin;
      edges[at++] = q.x * cos + q.y * sin;
      edges[at++] = q.y * cos - q.x * sin;
    }
  }
  return edges;
}

function stripAlong(region: Region, widthMm: number, angleDeg: number): StripAt | undefined {
  const edges = turnedEdges(region, angleDeg);
  let [minV, maxV] = [Infinity, -Infinity];
  for (let i = 1; i < edges.length; i += 2) {
    minV = Math.min(minV, edges[i]!);
    maxV = Math.max(maxV, edges[i]!);
  }
  const room = maxV - minV - widthMm;
  // A region just as wide as the strip: the last bit must not decide.
  if (room < -SAME_MM) return undefined;
  const places = Array.from({ length: PLACES + 1 }, (_, i) => minV + (Math.max(0, room) * i) / PLACES);
  if (edges.length <= 4 * FEW_CORNERS) {
    for (let i = 1; i < edges.length; i += 4) places.push(edges[i]!, edges[i]! - widthMm);
  }
  let best: StripAt | undefined;
  const look = (v: number): void => {
    const gap = longestGap(edges, v, widthMm);
    if (gap !== undefined && (best === undefined || gap.high - gap.low > lengthOf(best))) {
      best = { angleDeg, ...gap, v };
    }
  };
  for (const v of places) look(v);
  for (let step = room / PLACES / 2; step >= FINEST_MM && best !== undefined; step /= 2) {
    const { v }: StripAt = best;
    look(v - step);
    look(v + step);
  }
  return best;
}

/** Lines that touch within this do not block. */
const SAME_MM = 1e-6;

/** The longest stretch between v and v + width that no edge enters and that lies inside. */
function longestGap(
  edges: Float64Array,
  v: number,
  widthMm: number,
): { readonly low: number; readonly high: number } | undefined {
  const top = v + SAME_MM;
  const bottom = v + widthMm - SAME_MM;
  const blocked: [low: number, high: number][] = [];
  for (let i = 0; i < edges.length; i += 4) {
    const [ax, ay, bx, by] = [edges[i]!, edges[i + 1]!, edges[i + 2]!, edges[i + 3]!];
    if ((ay <= top && by <= top) || (ay >= bottom && by >= bottom)) continue;
    const at = (y: number): number => ax + ((y - ay) / (by - ay)) * (bx - ax);
    const from = ay < top ? at(top) : ay > bottom ? at(bottom) : ax;
    const to = by < top ? at(top) : by > bottom ? at(bottom) : bx;
    blocked.push(from < to ? [from, to] : [to, from]);
  }
  blocked.sort((a, b) => a[0] - b[0]);
  const gaps: { readonly low: number; readonly high: number }[] = [];
  let reach = blocked[0]?.[1];
  for (const [low, high] of blocked) {
    if (reach !== undefined && low > reach) gaps.push({ low: reach, high: low });
    reach = Math.max(reach ?? high, high);
  }
  gaps.sort((a, b) => b.high - b.low - (a.high - a.low));
  return gaps.find(({ low, high }) => isInside(edges, (low + high) / 2, v + widthMm / 2));
}

function isInside(edges: Float64Array, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0; i < edges.length; i += 4) {
    const [ay, by] = [edges[i + 1]!, edges[i + 3]!];
    if (ay > y === by > y) continue;
    const [ax, bx] = [edges[i]!, edges[i + 2]!];
    if (ax + ((y - ay) / (by - ay)) * (bx - ax) > x) inside = !inside;
  }
  return inside;
}
