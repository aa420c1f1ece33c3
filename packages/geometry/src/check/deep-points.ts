import type { Point } from '../types/shape.js';
import type { Area } from './area.js';
import { farStretches } from './far-stretches.js';
import { FORGIVEN_MM } from './forgiven.js';
import { isStrictlyInside } from './point-in-area.js';

/** Just deeper than what is forgiven: the line beside an edge on which deep points are looked for. */
const DEEP_MM = FORGIVEN_MM * 1.01;

/**
 * Points of an area that lie deeper than what the check forgives, at least one in each of its deep parts:
 * beside every edge, the middle of the longest stretch that no other edge is near to.
 */
export function deepPoints(area: Area): readonly Point[] {
  if (area.memo.deepPoints !== undefined) return area.memo.deepPoints;
  const points: Point[] = [];
  for (let i = 0; i < area.count; i++) {
    const point = deepPointBeside(area, i, DEEP_MM) ?? deepPointBeside(area, i, -DEEP_MM);
    if (point !== undefined) points.push(point);
  }
  area.memo.deepPoints = points;
  return points;
}

function deepPointBeside(area: Area, edge: number, aside: number): Point | undefined {
  const dx = area.bx[edge]! - area.ax[edge]!;
  const dy = area.by[edge]! - area.ay[edge]!;
  const length = Math.hypot(dx, dy);
  const px = area.ax[edge]! - (aside * dy) / length;
  const py = area.ay[edge]! + (aside * dx) / length;
  let longest: readonly [number, number] | undefined;
  for (const stretch of farStretches(px, py, px + dx, py + dy, [area], FORGIVEN_MM)) {
    if (longest === undefined || stretch[1] - stretch[0] > longest[1] - longest[0]) longest = stretch;
  }
  if (longest === undefined) return undefined;
  const t = (longest[0] + longest[1]) / 2;
  const point = { x: px + t * dx, y: py + t * dy };
  return isStrictlyInside(area, point.x, point.y) ? point : undefined;
}
