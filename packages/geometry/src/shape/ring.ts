import { distanceBetween } from '../point.js';
import type { Box, Point, Region, Ring } from '../types/shape.js';

/** Signed area in mm² (shoelace): positive for an outer ring, which runs clockwise as seen. */
export function ringArea(ring: Ring): number {
  const origin = ring[0];
  if (origin === undefined) return 0;
  let twice = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const p = ring[i]!;
    const q = ring[i + 1]!;
    twice += (p.x - origin.x) * (q.y - origin.y) - (q.x - origin.x) * (p.y - origin.y);
  }
  return twice / 2;
}

/** Length of the closed outline in mm. */
export function ringPerimeter(ring: Ring): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i++) sum += distanceBetween(ring[i]!, ring[(i + 1) % ring.length]!);
  return sum;
}

/** Centre of the ring's area; of a ring without area, the mean of its corners. */
export function ringCentroid(ring: Ring): Point {
  const moment = ringMoment(ring);
  return moment.area === 0 ? cornersMean(ring) : { x: moment.x / moment.area, y: moment.y / moment.area };
}

/** The smallest axis-parallel box; of no points, an empty box (min > max). */
export function ringBox(points: readonly Point[]): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const { x, y } of points) {
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** The same corners in the other order; the first stays first. */
export function reverseRing(ring: Ring): Ring {
  return ring.length === 0 ? [] : [ring[0]!, ...ring.slice(1).reverse()];
}

/** The ring with positive area for an outer ring, negative for an opening. */
export function orientRing(ring: Ring, role: 'outer' | 'opening'): Ring {
  const area = ringArea(ring);
  const wrong = role === 'outer' ? area < 0 : area > 0;
  return wrong ? reverseRing(ring) : ring;
}

/** The region with every ring turned the right way. */
export function orientRegion(region: Region): Region {
  return {
    outer: orientRing(region.outer, 'outer'),
    openings: region.openings.map((opening) => orientRing(opening, 'opening')),
  };
}

/** Area in mm², openings taken off. */
export function regionArea(region: Region): number {
  let area = Math.abs(ringArea(region.outer));
  for (const opening of region.openings) area -= Math.abs(ringArea(opening));
  return area;
}

/** Sum of the areas in mm². */
export function regionsArea(regions: readonly Region[]): number {
  let sum = 0;
  for (const region of regions) sum += regionArea(region);
  return sum;
}

/** Centre of area, openings taken off; it may lie outside the region. */
export function regionCentroid(region: Region): Point {
  const outer = ringMoment(orientRing(region.outer, 'outer'));
  let { area, x, y } = outer;
  for (const opening of region.openings) {
    const moment = ringMoment(orientRing(opening, 'opening'));
    area += moment.area;
    x += moment.x;
    y += moment.y;
  }
  return area === 0 ? cornersMean(region.outer) : { x: x / area, y: y / area };
}

/** Box of the outer ring. */
export function regionBox(region: Region): Box {
  return ringBox(region.outer);
}

/** The smallest box around both. */
export function boxUnion(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

/** True if the boxes share a point, or come within `within` mm of each other along both axes. */
export function boxesTouch(a: Box, b: Box, within = 0): boolean {
  return (
    a.minX <= b.maxX + within &&
    b.minX <= a.maxX + within &&
    a.minY <= b.maxY + within &&
    b.minY <= a.maxY + within
  );
}

/** The box with every side moved out by `by` mm. */
export function growBox(box: Box, by: number): Box {
  return { minX: box.minX - by, minY: box.minY - by, maxX: box.maxX + by, maxY: box.maxY + by };
}

/** Signed area, and its first moments. Taken about the first corner, so that a place far off costs no digits. */
function ringMoment(ring: Ring): { area: number; x: number; y: number } {
  const origin = ring[0];
  if (origin === undefined) return { area: 0, x: 0, y: 0 };
  let area = 0;
  let mx = 0;
  let my = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const px = ring[i]!.x - origin.x;
    const py = ring[i]!.y - origin.y;
    const qx = ring[i + 1]!.x - origin.x;
    const qy = ring[i + 1]!.y - origin.y;
    const twice = px * qy - qx * py;
    area += twice / 2;
    mx += (twice * (px + qx)) / 6;
    my += (twice * (py + qy)) / 6;
  }
  return { area, x: mx + area * origin.x, y: my + area * origin.y };
}

function cornersMean(points: readonly Point[]): Point {
  let x = 0;
  let y = 0;
  for (const p of points) {
    x += p.x;
    y += p.y;
  }
  const n = Math.max(points.length, 1);
  return { x: x / n, y: y / n };
}
