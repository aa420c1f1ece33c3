import { circleCurve, curveFromPolyline } from '@hidebound/geometry';
import type { Box, Curve, Point, Region } from '@hidebound/geometry';
import type { DrawingElement, GroupElement, PathElement, PathStyle, Stroke } from './model.js';

/** A path of one or more curves. */
export function path(curves: readonly Curve[], style: PathStyle): PathElement {
  return { kind: 'path', curves, style };
}

/** A straight line. */
export function line(from: Point, to: Point, stroke: Stroke): PathElement {
  return path([curveFromPolyline([from, to], false)], { stroke });
}

/** An open or closed chain of straight lines. */
export function chain(points: readonly Point[], closed: boolean, style: PathStyle): PathElement {
  return path([curveFromPolyline(points, closed)], style);
}

/** A rectangle along the axes. */
export function rectangle(box: Box, style: PathStyle): PathElement {
  return chain(boxCorners(box), true, style);
}

/** A circle. */
export function circle(center: Point, radius: number, style: PathStyle): PathElement {
  return path([circleCurve(center, radius)], style);
}

/** The outline and openings of a region, each a closed curve. */
export function regionCurves(region: Region): Curve[] {
  return [region.outer, ...region.openings].map((ring) => curveFromPolyline(ring, true));
}

/** A named group. */
export function group(
  name: string,
  elements: readonly DrawingElement[],
  more: Partial<Pick<GroupElement, 'transform' | 'clip'>> = {},
): GroupElement {
  return { kind: 'group', name, elements, ...more };
}

/** The corners of a box, clockwise as seen from the top left. */
export function boxCorners(box: Box): Point[] {
  return [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ];
}
