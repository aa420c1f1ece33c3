import { DECAY_SHARE } from './constants.js';
import { ringsMeet } from './hit.js';
import type { Turned } from './turned.js';

/**
 * How badly two shapes overlap, `a` moved by (dx, dy) against `b`: 0 if they are apart; else the square root of the
 * decayed overlap of their poles times a factor of their size (Gardeyn, Vanden Berghe & Wauters 2025). `limit`: as
 * soon as it is certain to be exceeded, some number at or above it is returned.
 */
export function overlapSeverity(
  a: Turned,
  b: Turned,
  dx: number,
  dy: number,
  isFar: boolean,
  limit: number,
): number {
  const p = a.shape;
  const q = b.shape;
  const growth = isFar ? p.farGrowth + q.farGrowth : p.pairGrowth + q.pairGrowth;
  if (
    !polesMeet(a, b, dx, dy, growth) &&
    !ringsMeet(isFar ? a.far : a.pair, isFar ? b.far : b.pair, dx, dy)
  ) {
    return 0;
  }
  const diameter = p.diameter > q.diameter ? p.diameter : q.diameter;
  const factor = Math.sqrt(p.lambda * q.lambda);
  const most = limit < Infinity ? (limit / factor) * (limit / factor) : Infinity;
  return Math.sqrt(poleOverlap(a, b, dx, dy, growth, DECAY_SHARE * diameter, most)) * factor;
}

/** True if some circle of one meets one of the other: then the shapes surely do. */
function polesMeet(a: Turned, b: Turned, dx: number, dy: number, growth: number): boolean {
  const ax = a.poleX;
  const ay = a.poleY;
  const ar = a.shape.poleR;
  const bx = b.poleX;
  const by = b.poleY;
  const br = b.shape.poleR;
  for (let i = 0; i < ax.length; i++) {
    const x = ax[i]! + dx;
    const y = ay[i]! + dy;
    const r = ar[i]! + growth;
    for (let j = 0; j < bx.length; j++) {
      const ex = x - bx[j]!;
      const ey = y - by[j]!;
      const reach = r + br[j]!;
      if (ex * ex + ey * ey < reach * reach) return true;
    }
  }
  return false;
}

function poleOverlap(
  a: Turned,
  b: Turned,
  dx: number,
  dy: number,
  growth: number,
  decay: number,
  most: number,
): number {
  const ax = a.poleX;
  const ay = a.poleY;
  const ar = a.shape.poleR;
  const bx = b.poleX;
  const by = b.poleY;
  const br = b.shape.poleR;
  const decay2 = decay * decay;
  let sum = 0;
  for (let i = 0; i < ax.length; i++) {
    const x = ax[i]! + dx;
    const y = ay[i]! + dy;
    const r = ar[i]!;
    for (let j = 0; j < bx.length; j++) {
      const ex = x - bx[j]!;
      const ey = y - by[j]!;
      const s = br[j]!;
      const depth = r + s + growth - Math.sqrt(ex * ex + ey * ey);
      const decayed = depth >= decay ? depth : decay2 / (2 * decay - depth);
      sum += decayed * (r < s ? r : s);
    }
    if (sum >= most) return sum;
  }
  return sum;
}
