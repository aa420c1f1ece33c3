import type { Curve, Point, Region, Ring } from '@hidebound/geometry';
import { curveToPathData } from '@hidebound/render';

/** A curve as an SVG path's data. */
export function curvePath(curve: Curve): string {
  return curveToPathData(curve);
}

export function linePath(points: readonly Point[]): string {
  return points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${short(x)} ${short(y)}`).join('');
}

export function ringPath(ring: Ring): string {
  return ring.length === 0 ? '' : `${linePath(ring)}Z`;
}

export function regionPath({ outer, openings }: Region): string {
  return [outer, ...openings].map(ringPath).join('');
}

/** Micrometres: what a file holds, too. */
function short(value: number): number {
  return Math.round(value * 1000) / 1000;
}
