import {
  circleCurve,
  curveFromPolyline,
  distanceBetween,
  pointInRing,
  polylineNearest,
} from '@hidebound/geometry';
import type { Curve, Point, Ring } from '@hidebound/geometry';
import { NOTCH_REACH_MM } from '../limits.js';
import { DRILL_DIAMETER_MM, NOTCH_DEPTH_MM } from './piece-layers.js';

/** A hole that is drawn as a point, in units of the drawing. */
export function drillHole(at: Point, mmPerUnit: number): Curve {
  return circleCurve(at, DRILL_DIAMETER_MM / 2 / mmPerUnit);
}

/** Share of its depth by which a notch is tried to either side of the boundary. */
const TRY = 0.01;

/**
 * A notch that is drawn as a point on the boundary: a line square to it inwards, as deep as the point's thickness
 * (group code 39, from memory) or 5 mm. Nothing for a point that lies away from the boundary.
 */
export function notchLine(
  at: Point,
  thickness: number,
  boundary: Ring,
  mmPerUnit: number,
): Curve | undefined {
  const edge = [...boundary, boundary[0]!];
  const { point, distance, segmentIndex } = polylineNearest(edge, at);
  if (distance * mmPerUnit > NOTCH_REACH_MM) return undefined;
  const [a, b] = [edge[segmentIndex]!, edge[segmentIndex + 1]!];
  const length = distanceBetween(a, b);
  if (length === 0) return undefined;
  const depth = thickness > 0 ? thickness : NOTCH_DEPTH_MM / mmPerUnit;
  const ahead = (by: number): Point => ({
    x: point.x - ((b.y - a.y) / length) * by,
    y: point.y + ((b.x - a.x) / length) * by,
  });
  const isLeftInside = pointInRing(ahead(depth * TRY), boundary) === 'inside';
  return curveFromPolyline([point, ahead(isLeftInside ? depth : -depth)], false);
}
