import type { Point, Ring } from '@hidebound/geometry';

/** Finds the place nearest to a point on some closed lines. */
export type NearestOnRings = (point: Point) => { readonly at: Point; readonly distance: number };

/** Squares of this side, each with the sides of rings that touch it. */
const SQUARE_MM = 24;

export function nearestOnRings(rings: readonly Ring[]): NearestOnRings {
  const squares = new Map<string, (readonly [Point, Point])[]>();
  const key = (i: number, j: number) => `${i} ${j}`;
  const square = (value: number) => Math.floor(value / SQUARE_MM);
  let reach = 0;
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      reach = Math.max(reach, Math.abs(a.x), Math.abs(a.y));
      for (let u = square(Math.min(a.x, b.x)); u <= square(Math.max(a.x, b.x)); u++)
        for (let v = square(Math.min(a.y, b.y)); v <= square(Math.max(a.y, b.y)); v++) {
          const list = squares.get(key(u, v));
          if (list === undefined) squares.set(key(u, v), [[a, b]]);
          else list.push([a, b]);
        }
    });
  }
  const farthest = 2 * Math.ceil(reach / SQUARE_MM) + 4;
  return (point) => {
    let best = { at: point, distance: Infinity };
    const [u, v] = [square(point.x), square(point.y)];
    // A square ring by ring outwards, until nothing in the next one can be nearer.
    for (let out = 0; out <= farthest && best.distance > (out - 1) * SQUARE_MM; out++) {
      for (let i = u - out; i <= u + out; i++) {
        const isSide = Math.abs(i - u) === out;
        for (let j = v - out; j <= v + out; j += isSide || out === 0 ? 1 : 2 * out) {
          for (const [a, b] of squares.get(key(i, j)) ?? []) {
            const at = nearestOnSide(point, a, b);
            const distance = Math.hypot(at.x - point.x, at.y - point.y);
            if (distance < best.distance) best = { at, distance };
          }
        }
      }
    }
    return best;
  };
}

export function nearestOnSide(point: Point, a: Point, b: Point): Point {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const lengthSq = dx * dx + dy * dy;
  if (lengthSq === 0) return a;
  const t = Math.max(0, Math.min(1, ((point.x - a.x) * dx + (point.y - a.y) * dy) / lengthSq));
  return { x: a.x + t * dx, y: a.y + t * dy };
}

/** Points along a closed line, one every so many mm. */
export function pointsEvery(ring: Ring, mm: number): readonly Point[] {
  const points: Point[] = [];
  let left = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    for (; left < length; left += mm) {
      const t = left / length;
      points.push({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) });
    }
    left -= length;
  });
  return points;
}
