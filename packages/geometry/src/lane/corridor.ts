import { isInSoup } from '../nest/soup.js';
import type { Soup } from '../nest/soup.js';
import { OPEN_BEYOND_MM, SHORT_OF_OBSTACLE_MM } from './constants.js';

/** A band across the lane: from one line to the other. */
export interface Band {
  readonly lowV: number;
  readonly highV: number;
}

/** Lines that only touch a band don't reach into it. */
const TOUCH_MM = 1e-6;

/**
 * Stretches of t (u seen from the open end) that edges cover within a band, as [lo, hi, …] in the order of the edges.
 */
function coveredT(soup: Soup, { lowV, highV }: Band, openSign: 1 | -1): number[] {
  const covered: number[] = [];
  if (soup.maxY <= lowV + TOUCH_MM || soup.minY >= highV - TOUCH_MM) return covered;
  for (let i = 0; i < soup.count; i++) {
    const va = soup.ay[i]!;
    const vb = soup.by[i]!;
    if (Math.max(va, vb) <= lowV + TOUCH_MM || Math.min(va, vb) >= highV - TOUCH_MM) continue;
    const ta = openSign * soup.ax[i]!;
    const tb = openSign * soup.bx[i]!;
    const from = shareAt(va, vb, lowV, highV, 0);
    const to = shareAt(va, vb, lowV, highV, 1);
    const one = ta + from * (tb - ta);
    const other = ta + to * (tb - ta);
    covered.push(Math.min(one, other), Math.max(one, other));
  }
  return covered;
}

/** The share of the way from va to vb at which the edge enters the band (end 0) or leaves it (end 1). */
function shareAt(va: number, vb: number, low: number, high: number, end: 0 | 1): number {
  const v = end === 0 ? va : vb;
  if (v >= low && v <= high) return end;
  return ((v < low ? low : high) - va) / (vb - va);
}

/** How far a lane in the band may reach from the open end: just short of the first thing that lies there. */
export function limitInBand(soups: readonly Soup[], band: Band, openSign: 1 | -1): number {
  let limit = Infinity;
  for (const soup of soups) {
    const covered = coveredT(soup, band, openSign);
    for (let i = 0; i < covered.length; i += 2) limit = Math.min(limit, covered[i]! - SHORT_OF_OBSTACLE_MM);
  }
  return limit;
}

/**
 * Where a lane in the band, whose first strap starts at `startT`, runs out over the hide's edge: the nearest place
 * before it at which the whole line across the band lies outside the outline.
 */
export function openEndT(outline: Soup, band: Band, startT: number, openSign: 1 | -1): number {
  const covered = coveredT(outline, band, openSign);
  const order = Array.from({ length: covered.length >> 1 }, (_, i) => 2 * i);
  order.sort((a, b) => covered[a]! - covered[b]!);
  const middleV = (band.lowV + band.highV) / 2;
  let reach = -Infinity;
  let open = startT;
  for (const i of order) {
    const from = covered[i]!;
    if (from > startT + TOUCH_MM) break;
    if (from > reach + TOUCH_MM) {
      const width = from - reach;
      const end = from - Math.min(OPEN_BEYOND_MM, width / 2);
      if (!isInSoup(outline, openSign * (from - Math.min(1, width / 2)), middleV)) open = end;
    }
    reach = Math.max(reach, covered[i + 1]!);
  }
  return open;
}
