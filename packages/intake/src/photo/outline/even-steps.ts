import type { Point, Ring } from '@hidebound/geometry';

/** Points along the ring at even steps of about `step`, and which way is out at each. */
export interface Rail {
  readonly points: readonly Point[];
  /** Unit vectors, outwards for an outer ring, into the opening for an opening: away from the leather. */
  readonly out: readonly Point[];
  readonly step: number;
}

/** How far to either side the direction of the edge is taken from, in steps. */
const DIRECTION_STEPS = 3;

export function railOf(ring: Ring, step: number): Rail {
  const { points, length } = evenPoints(ring, step);
  const out = points.map((_, i) => {
    const a = points[(i + points.length - DIRECTION_STEPS) % points.length]!;
    const b = points[(i + DIRECTION_STEPS) % points.length]!;
    const size = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    // The leather lies to the right of the way.
    return { x: (b.y - a.y) / size, y: (a.x - b.x) / size };
  });
  return { points, out, step: length / points.length };
}

function evenPoints(ring: Ring, step: number): { points: Point[]; length: number } {
  const along = [0];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    along.push(along[i]! + Math.hypot(b.x - a.x, b.y - a.y));
  });
  const length = along[ring.length]!;
  const count = Math.max(8, Math.round(length / step));
  const points: Point[] = [];
  let edge = 0;
  for (let k = 0; k < count; k++) {
    const at = (k * length) / count;
    while (edge + 1 < ring.length && along[edge + 1]! < at) edge++;
    const a = ring[edge]!;
    const b = ring[(edge + 1) % ring.length]!;
    const share =
      along[edge + 1]! > along[edge]! ? (at - along[edge]!) / (along[edge + 1]! - along[edge]!) : 0;
    points.push({ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) });
  }
  return { points, length };
}
