import type { Point, Ring } from '@hidebound/geometry';

/** A place along a smoothed ring, and the direction to the right of its way, of length 1. */
export interface RingStation extends Point {
  readonly normal: Point;
}

/** Evenly spaced places along a ring of small steps, with its stairs smoothed over a reach either way. */
export function stationsAlong(
  ring: Ring,
  stepMm: number,
  reachMm: number,
  normalReachMm: number,
): RingStation[] {
  const even = evenSteps(ring, stepMm);
  const places = smoothed(even, Math.max(1, Math.round(reachMm / stepMm)));
  const broad = smoothed(even, Math.max(1, Math.round(normalReachMm / stepMm)));
  const n = places.length;
  return places.map(({ x, y }, i) => {
    const a = broad[(i - 1 + n) % n]!;
    const b = broad[(i + 1) % n]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    return { x, y, normal: { x: -(b.y - a.y) / length, y: (b.x - a.x) / length } };
  });
}

function evenSteps(ring: Ring, stepMm: number): Point[] {
  const lengths = [0];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    lengths.push(lengths[i]! + Math.hypot(q.x - p.x, q.y - p.y));
  });
  const total = lengths.at(-1)!;
  const count = Math.max(8, Math.round(total / stepMm));
  let k = 1;
  return Array.from({ length: count }, (_, i) => {
    const at = (i / count) * total;
    while (lengths[k]! < at) k++;
    const share = (at - lengths[k - 1]!) / (lengths[k]! - lengths[k - 1]! || 1);
    const [p, q] = [ring[k - 1]!, ring[k % ring.length]!];
    return { x: p.x + (q.x - p.x) * share, y: p.y + (q.y - p.y) * share };
  });
}

/** Two running means one after the other: a triangle's weights. */
function smoothed(places: readonly Point[], reach: number): Point[] {
  const half = Math.min(Math.max(1, Math.round(reach / 2)), (places.length - 2) >> 1);
  return runningMean(runningMean(places, half), half);
}

function runningMean(places: readonly Point[], half: number): Point[] {
  const n = places.length;
  const at = (i: number) => places[((i % n) + n) % n]!;
  let [x, y] = [0, 0];
  for (let i = -half; i <= half; i++) [x, y] = [x + at(i).x, y + at(i).y];
  const size = 2 * half + 1;
  return places.map((_, i) => {
    const mean = { x: x / size, y: y / size };
    [x, y] = [x + at(i + half + 1).x - at(i - half).x, y + at(i + half + 1).y - at(i - half).y];
    return mean;
  });
}
