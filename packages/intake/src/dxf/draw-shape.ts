import {
  affineDeterminant,
  composeAffine,
  scaling,
  transformCurve,
  transformCurveToGrid,
} from '@hidebound/geometry';
import type { Affine, Curve } from '@hidebound/geometry';
import type { Shape } from './entity.js';
import { splineCurve } from './spline.js';

/** How far a line that is fitted may lie from what the file says: the grid of all coordinates. */
const FITTED_WITHIN_MM = 0.001;

/** A shape under a transform to mm, on the 1 µm grid. Arcs stay arcs where the transform keeps circles. */
export function drawnCurve(shape: Shape, matrix: Affine): Curve {
  switch (shape.kind) {
    case 'plain':
      return toGrid(matrix, shape.curve);
    case 'ellipse':
      return toGrid(composeAffine(matrix, shape.frame), shape.circle);
    case 'spline':
      return transformCurveToGrid(matrix, splineCurve(shape.spline, FITTED_WITHIN_MM / stretchOf(matrix)));
  }
}

/** Arcs that must become cubics do so at about their final size, for which the tolerance is meant. */
function toGrid(matrix: Affine, curve: Curve): Curve {
  if (curve.segments.every(({ kind }) => kind === 'line')) return transformCurveToGrid(matrix, curve);
  const stretch = stretchOf(matrix);
  const before = transformCurve(scaling(stretch), curve);
  return transformCurveToGrid(composeAffine(matrix, scaling(1 / stretch)), before);
}

/** How many times the longest a length can become: the larger singular value. */
export function stretchOf({ a, b, c, d }: Affine): number {
  const sum = (a * a + b * b + c * c + d * d) / 2;
  const det = a * d - b * c;
  return Math.sqrt(sum + Math.sqrt(Math.max(sum * sum - det * det, 0)));
}

/** How many times as long lengths become on average. */
export function evenScale(matrix: Affine): number {
  return Math.sqrt(Math.abs(affineDeterminant(matrix)));
}
