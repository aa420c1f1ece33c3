import { createSpatialIndex, growBox } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { agreementOf } from './agreement.js';
import type { Tie, Wanted } from './agreement.js';
import type { Places } from './arrangement.js';
import { SEEK_MM } from './limits.js';
import type { PageFacts } from './page-facts.js';
import { dot, minus, moveBox, plus } from './vectors.js';

/** What two pages share where they lie now. */
export interface Meeting {
  readonly a: number;
  readonly b: number;
  readonly ties: readonly Tie[];
  readonly contradictions: number;
  readonly twins: number;
  readonly clashes: number;
}

/** Pages at their final places, and how well they meet. */
export interface Settled {
  readonly places: Places;
  readonly meetings: readonly Meeting[];
  /** By page: the worst miss, mm, of pages that share anything. */
  readonly misses: ReadonlyMap<number, number>;
  readonly contradictions: number;
}

/** Ties change a little as pages move, since lines are not quite straight. */
const ROUNDS = 3;

/** All shifts of a group mended together, so that what its pages share misses least (least squares over all ties). */
export function settle(facts: readonly PageFacts[], start: Places, wanted: Wanted): Settled {
  const pairs = meetingPairs(facts, start);
  let places = start;
  for (let round = 0; round < ROUNDS; round++) {
    const meetings = meetingsOf(facts, places, pairs, wanted);
    places = mended(places, meetings);
  }
  const meetings = meetingsOf(facts, places, pairs, wanted);
  const misses = new Map<number, number>();
  for (const { a, b, ties } of meetings) {
    for (const { miss } of ties) {
      const size = Math.sqrt(dot(miss, miss));
      for (const page of [a, b]) misses.set(page, Math.max(misses.get(page) ?? 0, size));
    }
  }
  return { places, meetings, misses, contradictions: meetings.reduce((sum, m) => sum + m.contradictions, 0) };
}

/** Pairs of pages whose windows touch. */
export function meetingPairs(facts: readonly PageFacts[], places: Places): [number, number][] {
  const pages = [...places.keys()].sort((a, b) => a - b);
  const boxes = pages.map((page) => growBox(moveBox(facts[page]!.window, places.get(page)!), SEEK_MM / 2));
  const index = createSpatialIndex(boxes);
  return pages.flatMap((page, i) => {
    const found: number[] = [];
    index.query(boxes[i]!, (j) => {
      if (j > i) found.push(j);
    });
    return found.sort((p, q) => p - q).map((j): [number, number] => [page, pages[j]!]);
  });
}

function meetingsOf(
  facts: readonly PageFacts[],
  places: Places,
  pairs: readonly (readonly [number, number])[],
  wanted: Wanted,
): Meeting[] {
  return pairs.map(([a, b]) => {
    const shift = minus(places.get(b)!, places.get(a)!);
    return { a, b, ...agreementOf(facts[a]!, facts[b]!, shift, wanted) };
  });
}

/** Weight with which neighbours keep their shift where nothing tells it. */
const HOLD_WEIGHT = 0.01;

/** Keeps the whole from drifting. */
const ANCHOR_WEIGHT = 1e-6;

/** The 2 × 2 matrices of what joins two pages, and what they should change by. */
interface Pull {
  readonly a: number;
  readonly b: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  readonly right: Point;
}

function mended(places: Places, meetings: readonly Meeting[]): Places {
  const pages = [...places.keys()];
  const numberOf = new Map(pages.map((page, i) => [page, i]));
  const pulls = meetings.map(({ a, b, ties }) => pullOf(numberOf.get(a)!, numberOf.get(b)!, ties));
  const change = solve(pages.length, pulls);
  return new Map(
    pages.map((page, i) => [page, plus(places.get(page)!, { x: change[2 * i]!, y: change[2 * i + 1]! })]),
  );
}

function pullOf(a: number, b: number, ties: readonly Tie[]): Pull {
  let [xx, xy, yy, x, y] = [HOLD_WEIGHT, 0, HOLD_WEIGHT, 0, 0];
  for (const { normals, miss } of ties) {
    for (const n of normals) {
      const r = dot(n, miss);
      xx += n.x * n.x;
      xy += n.x * n.y;
      yy += n.y * n.y;
      x += n.x * r;
      y += n.y * r;
    }
  }
  return { a, b, xx, xy, yy, right: { x, y } };
}

/** Conjugate gradients on the normal equations, which are sparse: each page has a few neighbours. */
function solve(count: number, pulls: readonly Pull[]): Float64Array {
  const right = new Float64Array(2 * count);
  for (const { a, b, right: r } of pulls) {
    right[2 * b]! += r.x;
    right[2 * b + 1]! += r.y;
    right[2 * a]! -= r.x;
    right[2 * a + 1]! -= r.y;
  }
  const change = new Float64Array(2 * count);
  let rest = right.slice();
  let way = right.slice();
  let size = sumOfProducts(rest, rest);
  const enough = 1e-24 * Math.max(1, size);
  for (let step = 0; step < 8 * count + 20 && size > enough; step++) {
    const pulled = applied(way, pulls);
    const share = size / sumOfProducts(way, pulled);
    for (let i = 0; i < change.length; i++) change[i]! += share * way[i]!;
    rest = rest.map((value, i) => value - share * pulled[i]!);
    const next = sumOfProducts(rest, rest);
    way = rest.map((value, i) => value + (next / size) * way[i]!);
    size = next;
  }
  return change;
}

function applied(way: Float64Array, pulls: readonly Pull[]): Float64Array {
  const result = way.map((value) => ANCHOR_WEIGHT * value);
  for (const { a, b, xx, xy, yy } of pulls) {
    const dx = way[2 * b]! - way[2 * a]!;
    const dy = way[2 * b + 1]! - way[2 * a + 1]!;
    const x = xx * dx + xy * dy;
    const y = xy * dx + yy * dy;
    result[2 * b]! += x;
    result[2 * b + 1]! += y;
    result[2 * a]! -= x;
    result[2 * a + 1]! -= y;
  }
  return result;
}

function sumOfProducts(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
