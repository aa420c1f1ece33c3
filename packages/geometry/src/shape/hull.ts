import type { Point, Ring } from '../types/shape.js';
import { turnOf } from './orientation.js';

/**
 * The smallest convex ring around the points, oriented as an outer ring, from its leftmost (then topmost) corner;
 * no corner lies on the line between its neighbours (exact signs). Points on one line give their two ends, equal
 * points give one. Monotone chain (Andrew 1979).
 */
export function convexHull(points: readonly Point[]): Ring {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const distinct = sorted.filter((p, i) => i === 0 || p.x !== sorted[i - 1]!.x || p.y !== sorted[i - 1]!.y);
  if (distinct.length < 3) return distinct;
  const there = chain(distinct);
  const back = chain(distinct.reverse());
  return [...there.slice(0, -1), ...back.slice(0, -1)];
}

function chain(points: readonly Point[]): Point[] {
  const corners: Point[] = [];
  for (const p of points) {
    while (corners.length > 1 && turnOf(corners[corners.length - 2]!, corners[corners.length - 1]!, p) <= 0) {
      corners.pop();
    }
    corners.push(p);
  }
  return corners;
}
