import { sinCosDeg } from '../number/trigonometry.js';
import type { Item, Placement } from '../types/problem.js';
import type { Point, Region } from '../types/shape.js';

/** An item where it lies on its sheet. */
export function placedRegion({ region }: Item, { x, y, rotationDeg }: Placement): Region {
  const { sin, cos } = sinCosDeg(rotationDeg);
  const place = (p: Point): Point => ({ x: p.x * cos - p.y * sin + x, y: p.x * sin + p.y * cos + y });
  return { outer: region.outer.map(place), openings: region.openings.map((ring) => ring.map(place)) };
}
