import { GeometryError } from '../error.js';
import { createRandom } from '../number/random.js';
import { distanceBetween } from '../point.js';
import { TIE_SHARE } from '../tolerance.js';
import type { Point } from '../types/shape.js';
import { convexHull } from './hull.js';

/** A circle, in mm. */
export interface Circle {
  readonly center: Point;
  readonly radius: number;
}

/** The order of the points decides the time taken, not the result; any seed does. */
const SHUFFLE_SEED = 1;

/**
 * The smallest circle around the points, exact but for rounding; no point lies outside by more than the last bit.
 * Incremental in a fixed shuffled order (Welzl 1991). Throws `empty-shape` for no points.
 */
export function enclosingCircle(points: readonly Point[]): Circle {
  const hull = shuffled(convexHull(points));
  if (hull.length === 0) throw new GeometryError('empty-shape', 'No points, so no circle around them.');
  let circle: Circle = { center: hull[0]!, radius: 0 };
  for (let i = 1; i < hull.length; i++) {
    if (holds(circle, hull[i]!)) continue;
    circle = withOneOn(hull, i);
  }
  const radius = Math.max(...hull.map((p) => distanceBetween(circle.center, p)));
  return { center: circle.center, radius };
}

function shuffled(points: readonly Point[]): Point[] {
  const random = createRandom(SHUFFLE_SEED);
  const order = [...points];
  for (let i = order.length - 1; i > 0; i--) {
    const j = random.integer(i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

/** The smallest circle around the points before number i, through point i. */
function withOneOn(points: readonly Point[], i: number): Circle {
  let circle = throughTwo(points[0]!, points[i]!);
  for (let j = 1; j < i; j++) {
    if (!holds(circle, points[j]!)) circle = withTwoOn(points, i, j);
  }
  return circle;
}

function withTwoOn(points: readonly Point[], i: number, j: number): Circle {
  let circle = throughTwo(points[i]!, points[j]!);
  for (let k = 0; k < j; k++) {
    if (!holds(circle, points[k]!)) circle = throughThree(points[i]!, points[j]!, points[k]!);
  }
  return circle;
}

function holds(circle: Circle, p: Point): boolean {
  return distanceBetween(circle.center, p) <= circle.radius * (1 + TIE_SHARE);
}

function throughTwo(a: Point, b: Point): Circle {
  const center = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  return { center, radius: distanceBetween(center, a) };
}

function throughThree(a: Point, b: Point, c: Point): Circle {
  const bx = b.x - a.x;
  const by = b.y - a.y;
  const cx = c.x - a.x;
  const cy = c.y - a.y;
  const cross = 2 * (bx * cy - by * cx);
  if (cross === 0) return throughTwo(a, distanceBetween(a, b) > distanceBetween(a, c) ? b : c);
  const bb = bx * bx + by * by;
  const cc = cx * cx + cy * cy;
  const center = { x: a.x + (cy * bb - by * cc) / cross, y: a.y + (bx * cc - cx * bb) / cross };
  return { center, radius: distanceBetween(center, a) };
}
