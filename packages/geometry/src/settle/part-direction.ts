import { CUT_PENALTY, SAME_DIRECTION } from './constants.js';
import type { SettlePart } from './settle-shape.js';

/**
 * A way in which two convex parts are kept apart: n · (place of the second - place of the first) >= bound + gap.
 * Written to by `findDirection`; one is made for each use and used again.
 */
export interface PartDirection {
  /** Unit normal, from the first part to the second. */
  nx: number;
  ny: number;
  bound: number;
  /** How far apart the parts are along the chosen normal; negative: how deep they overlap along it. */
  separation: number;
  /** The greatest separation along any normal: the distance of parts that are apart. */
  truth: number;
  /** The second choice, and its separation; -Infinity: none. */
  secondX: number;
  secondY: number;
  secondBound: number;
  secondSeparation: number;
}

export function createDirection(): PartDirection {
  return {
    nx: 0,
    ny: 0,
    bound: 0,
    separation: 0,
    truth: 0,
    secondX: 0,
    secondY: 0,
    secondBound: 0,
    secondSeparation: -Infinity,
  };
}

/**
 * Chooses the direction in which part `p` at (0, 0) and part `q` at (dx, dy) are to be kept `gap` apart: that of the
 * greatest separation among the normals of their edges (which bound the no-fit polygon), or for a gap, of two
 * corners that face each other, the direction between them. False if they are farther apart than `far`.
 */
export function findDirection(
  p: SettlePart,
  q: SettlePart,
  dx: number,
  dy: number,
  gap: number,
  far: number,
  out: PartDirection,
): boolean {
  out.truth = -Infinity;
  out.separation = -Infinity;
  out.secondSeparation = -Infinity;
  let bestScore = -Infinity;
  let secondScore = -Infinity;
  for (let side = 0; side < 2; side++) {
    const own = side === 0 ? p : q;
    const other = side === 0 ? q : p;
    const sign = side === 0 ? 1 : -1;
    const { nx, ny, support, isCut } = own;
    const { px, py } = other;
    const corners = px.length;
    for (let e = 0; e < nx.length; e++) {
      const ux = nx[e]!;
      const uy = ny[e]!;
      let least = ux * px[0]! + uy * py[0]!;
      for (let k = 1; k < corners; k++) {
        const along = ux * px[k]! + uy * py[k]!;
        if (along < least) least = along;
      }
      const bound = support[e]! - least;
      const separation = sign * (ux * dx + uy * dy) - bound;
      if (separation > far) return false;
      if (separation > out.truth) out.truth = separation;
      const short = gap - separation;
      const score = short > 0 && isCut[e] === 1 ? -CUT_PENALTY * short : -short;
      if (score > bestScore) {
        if (sign * (ux * out.nx + uy * out.ny) < SAME_DIRECTION) {
          secondScore = bestScore;
          demote(out);
        }
        bestScore = score;
        out.nx = sign * ux;
        out.ny = sign * uy;
        out.bound = bound;
        out.separation = separation;
      } else if (score > secondScore && sign * (ux * out.nx + uy * out.ny) < SAME_DIRECTION) {
        secondScore = score;
        out.secondX = sign * ux;
        out.secondY = sign * uy;
        out.secondBound = bound;
        out.secondSeparation = separation;
      }
    }
  }
  if (gap > 0 && out.truth > 0) {
    tryCorners(p, q, dx, dy, out);
    if (out.truth > far) return false;
  }
  return true;
}

/** The direction between the two nearest corners, where that separates the parts more than any edge does. */
function tryCorners(p: SettlePart, q: SettlePart, dx: number, dy: number, out: PartDirection): void {
  let nearest = Infinity;
  let ux = 0;
  let uy = 0;
  for (let i = 0; i < p.px.length; i++) {
    const ax = dx - p.px[i]!;
    const ay = dy - p.py[i]!;
    for (let k = 0; k < q.px.length; k++) {
      const x = ax + q.px[k]!;
      const y = ay + q.py[k]!;
      const distanceSq = x * x + y * y;
      if (distanceSq >= nearest) continue;
      nearest = distanceSq;
      ux = x;
      uy = y;
    }
  }
  const distance = Math.sqrt(nearest);
  if (distance <= out.truth) return;
  ux /= distance;
  uy /= distance;
  const bound = farthest(p, ux, uy) + farthest(q, -ux, -uy);
  const separation = ux * dx + uy * dy - bound;
  if (separation <= out.truth) return;
  demote(out);
  out.nx = ux;
  out.ny = uy;
  out.bound = bound;
  out.separation = separation;
  out.truth = separation;
}

function farthest(part: SettlePart, ux: number, uy: number): number {
  let far = -Infinity;
  for (let i = 0; i < part.px.length; i++) far = Math.max(far, ux * part.px[i]! + uy * part.py[i]!);
  return far;
}

function demote(out: PartDirection): void {
  out.secondX = out.nx;
  out.secondY = out.ny;
  out.secondBound = out.bound;
  out.secondSeparation = out.separation;
}
