import type { Point, Region } from '../types/shape.js';
import { pointInside } from './contain.js';
import { pointToRing } from './distance.js';
import type { Circle } from './enclosing-circle.js';
import { pointInRegion } from './point-in-ring.js';
import { regionBox, regionCentroid } from './ring.js';

/** Distance in mm from p to the region's edge: positive inside, negative outside or in an opening. */
export function signedDistance(p: Point, region: Region): number {
  let distance = pointToRing(p, region.outer);
  for (const opening of region.openings) distance = Math.min(distance, pointToRing(p, opening));
  return pointInRegion(p, region) === 'outside' ? -distance + 0 : distance;
}

/**
 * A circle inside the region (clear of its openings) whose radius is within `precision` mm of the widest one's.
 * Squares are halved, most promising first: none can hold a centre better than its own by more than half its diagonal.
 */
export function widestInscribedCircle(region: Region, precision: number): Circle {
  const { minX, minY, maxX, maxY } = regionBox(region);
  let best = circleAt(region, regionCentroid(region));
  const fallback = circleAt(region, pointInside(region.outer));
  if (fallback.radius > best.radius) best = fallback;
  const half = Math.max(Math.min(maxX - minX, maxY - minY), precision) / 2;
  const queue: Square[] = [];
  for (let x = minX; x < maxX; x += 2 * half) {
    for (let y = minY; y < maxY; y += 2 * half) pushSquare(queue, squareAt(region, x + half, y + half, half));
  }
  for (let square = popSquare(queue); square !== undefined; square = popSquare(queue)) {
    if (square.circle.radius > best.radius) best = square.circle;
    if (square.bound - best.radius <= precision) break;
    const quarter = square.half / 2;
    const { x, y } = square.circle.center;
    for (const [sx, sy] of QUARTERS) {
      pushSquare(queue, squareAt(region, x + sx * quarter, y + sy * quarter, quarter));
    }
  }
  return { center: best.center, radius: Math.max(best.radius, 0) };
}

const QUARTERS: readonly (readonly [number, number])[] = [
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
];

interface Square {
  readonly circle: Circle;
  readonly half: number;
  /** No circle with its centre in this square is wider. */
  readonly bound: number;
}

function circleAt(region: Region, center: Point): Circle {
  return { center, radius: signedDistance(center, region) };
}

function squareAt(region: Region, x: number, y: number, half: number): Square {
  const circle = circleAt(region, { x, y });
  return { circle, half, bound: circle.radius + half * Math.SQRT2 };
}

/** A binary heap, the greatest bound on top. */
function pushSquare(heap: Square[], square: Square): void {
  let i = heap.length;
  heap.push(square);
  while (i > 0) {
    const parent = (i - 1) >> 1;
    if (heap[parent]!.bound >= square.bound) break;
    heap[i] = heap[parent]!;
    i = parent;
  }
  heap[i] = square;
}

function popSquare(heap: Square[]): Square | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (top === undefined || last === undefined || heap.length === 0) return top;
  let i = 0;
  for (;;) {
    let child = 2 * i + 1;
    if (child >= heap.length) break;
    if (child + 1 < heap.length && heap[child + 1]!.bound > heap[child]!.bound) child++;
    if (heap[child]!.bound <= last.bound) break;
    heap[i] = heap[child]!;
    i = child;
  }
  heap[i] = last;
  return top;
}
