import type { Point, Region, Ring } from '../types/shape.js';

/** Centre of area of a region (mm), its openings taken off, whichever way its rings run. */
export function centroidOfRegion(region: Region): Point {
  const origin = region.outer[0]!;
  let area = 0;
  let sumX = 0;
  let sumY = 0;
  for (const [index, ring] of [region.outer, ...region.openings].entries()) {
    const moments = momentsOfRing(ring, origin);
    const sign = (index === 0) === moments.area > 0 ? 1 : -1;
    area += sign * moments.area;
    sumX += sign * moments.x;
    sumY += sign * moments.y;
  }
  return { x: origin.x + sumX / area, y: origin.y + sumY / area };
}

/** Signed area within a ring (mm²): positive where it runs clockwise as seen, y down. */
export function signedAreaOfRing(ring: Ring): number {
  return momentsOfRing(ring, ring[0]!).area;
}

function momentsOfRing(
  ring: Ring,
  origin: Point,
): { readonly area: number; readonly x: number; readonly y: number } {
  let area = 0;
  let x = 0;
  let y = 0;
  for (const [i, from] of ring.entries()) {
    const to = ring[(i + 1) % ring.length]!;
    const ax = from.x - origin.x;
    const ay = from.y - origin.y;
    const bx = to.x - origin.x;
    const by = to.y - origin.y;
    const cross = ax * by - bx * ay;
    area += cross / 2;
    x += ((ax + bx) * cross) / 6;
    y += ((ay + by) * cross) / 6;
  }
  return { area, x, y };
}
