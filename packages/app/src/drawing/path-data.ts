import type { Curve, Point, Region, Ring } from '@hidebound/geometry';
import { curveToPathData } from '@hidebound/render';

const known = new WeakMap<Curve, string>();

/** A curve as an SVG path's data; worked out once for each curve, since panels ask for it again at every drawing. */
export function curvePath(curve: Curve): string {
  const before = known.get(curve);
  if (before !== undefined) return before;
  const data = curveToPathData(curve);
  known.set(curve, data);
  return data;
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
