import { atan2Deg } from '../number/trigonometry.js';

/** Edges whose directions differ by less count as one. */
const SAME_DIRECTION_DEG = 1;

/** Angles in degrees, in [0, 180), of the edges of the convex hull, longest first, at most `most`. */
export function hullAnglesDeg(ring: Float64Array, most: number): number[] {
  const hull = hullOf(ring);
  const lengths: { deg: number; length: number }[] = [];
  for (let i = 0; i < hull.length; i++) {
    const a = hull[i]!;
    const b = hull[(i + 1) % hull.length]!;
    const length = Math.sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
    const raw = atan2Deg(b.y - a.y, b.x - a.x);
    const deg = raw < 0 ? raw + 180 : raw >= 180 ? raw - 180 : raw;
    const same = lengths.find((other) => isSame(other.deg, deg));
    if (same === undefined) lengths.push({ deg, length });
    else same.length += length;
  }
  lengths.sort((a, b) => b.length - a.length || a.deg - b.deg);
  return lengths.slice(0, most).map(({ deg }) => deg);
}

function isSame(a: number, b: number): boolean {
  const turn = Math.abs(a - b);
  return Math.min(turn, 180 - turn) < SAME_DIRECTION_DEG;
}

interface Corner {
  readonly x: number;
  readonly y: number;
}

/** Monotone chain (Andrew 1979). */
function hullOf(ring: Float64Array): Corner[] {
  const corners: Corner[] = [];
  for (let i = 0; i < ring.length; i += 2) corners.push({ x: ring[i]!, y: ring[i + 1]! });
  corners.sort((a, b) => a.x - b.x || a.y - b.y);
  const lower = chain(corners);
  const upper = chain([...corners].reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(corners: readonly Corner[]): Corner[] {
  const out: Corner[] = [];
  for (const c of corners) {
    while (out.length >= 2) {
      const a = out[out.length - 2]!;
      const b = out[out.length - 1]!;
      if ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x) > 0) break;
      out.pop();
    }
    out.push(c);
  }
  return out;
}
