import { checkAnswer, isProven } from '../check/index.js';
import {
  placement,
  rectangle as region,
  testItem,
  testKind,
  testProblem,
  testSheet,
} from '../nest/test-problems.js';
import type { Random } from '../number/random.js';
import type { Ring } from '../types/shape.js';
import { settleShapeOf } from './settle-shape.js';
import type { SettleShape } from './settle-shape.js';

/** Dissections, piles and judges for the tests of settling. */

export type Corners = readonly (readonly [number, number])[];

export function ringOf(corners: Corners): Ring {
  return corners.map(([x, y]) => ({ x, y }));
}

export function shapeOf(ring: Ring): SettleShape {
  return settleShapeOf([Float64Array.from(ring.flatMap(({ x, y }) => [x, y]))]);
}

export function shapesOf(rings: readonly Ring[]): SettleShape[] {
  return rings.map(shapeOf);
}

/** A rectangle from (0, 0), cut up by chance into convex pieces: every cut goes right through one piece. */
export function cutUp(random: Random, width: number, height: number, count: number): Ring[] {
  const pieces: Ring[] = [ringOf([[0, 0], [width, 0], [width, height], [0, height]])]; // prettier-ignore
  while (pieces.length < count) {
    const [k] = pieces.map((ring, i) => [i, areaOf(ring)] as const).reduce((a, b) => (b[1] > a[1] ? b : a));
    const ring = pieces[k]!;
    const from = random.integer(ring.length);
    const across = 1 + random.integer(ring.length - 1);
    const p = between(ring, from, random.between(0.3, 0.7));
    const q = between(ring, (from + across) % ring.length, random.between(0.3, 0.7));
    const one = [p, ...Array.from({ length: across }, (_, i) => ring[(from + 1 + i) % ring.length]!), q];
    const other = [
      q,
      ...Array.from({ length: ring.length - across }, (_, i) => ring[(from + across + 1 + i) % ring.length]!),
      p,
    ];
    pieces.splice(k, 1, one, other);
  }
  return pieces;
}

function between(ring: Ring, i: number, share: number): { x: number; y: number } {
  const p = ring[i]!;
  const q = ring[(i + 1) % ring.length]!;
  return { x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) };
}

export function areaOf(ring: Ring): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);
}

export function disturbed(random: Random, places: ArrayLike<number>, by: number): Float64Array {
  return Float64Array.from(places, (place) => place + random.between(-by, by));
}

/** A star-shaped ring of so many corners between the two radii, on the 0.001 mm grid. */
export function roughRing(random: Random, corners: number, from: number, to: number): Ring {
  return Array.from({ length: corners }, (_, i) => {
    const angle = ((i + random.between(-0.3, 0.3)) * 2 * Math.PI) / corners;
    const radius = random.between(from, to);
    return { x: rounded(radius * Math.cos(angle)), y: rounded(radius * Math.sin(angle)) };
  });
}

/** Laid in columns from the left by their boxes, `gap` apart. */
export function laidByBoxes(
  shapes: readonly SettleShape[],
  height: number,
  gap: number,
): { x: Float64Array; y: Float64Array } {
  const x = new Float64Array(shapes.length);
  const y = new Float64Array(shapes.length);
  let left = 0;
  let top = 0;
  let wide = 0;
  shapes.forEach((shape, i) => {
    if (top + shape.maxY - shape.minY > height) {
      left += wide + gap;
      top = 0;
      wide = 0;
    }
    x[i] = left - shape.minX;
    y[i] = top - shape.minY;
    top += shape.maxY - shape.minY + gap;
    wide = Math.max(wide, shape.maxX - shape.minX);
  });
  return { x, y };
}

export function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}

/** What the exact check says of the places, rounded as a file holds them; rings must lie on the same grid. */
export function isProvenLayout(
  rings: readonly Ring[],
  places: { readonly x: Float64Array; readonly y: Float64Array },
  width: number,
  height: number,
  gap: number,
): boolean {
  const ids = rings.map((_, i) => `piece ${i}`);
  const problem = testProblem({
    items: rings.map((outer, i) => testItem(ids[i]!, { outer, openings: [] })),
    setKinds: [testKind(Object.fromEntries(ids.map((id) => [id, 1])))],
    sheets: [testSheet('sheet', region(0, 0, width, height))],
    distances: { gap, edge: 0, void: 0 },
  });
  const placements = ids.map((id, i) => placement(id, 1, rounded(places.x[i]!), rounded(places.y[i]!)));
  return isProven(checkAnswer(problem, { placements, lanes: [], roughCuts: [], unplaced: [], joins: 0 }));
}
