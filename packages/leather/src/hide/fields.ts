import type { DirectionField, ThicknessField } from '@hidebound/geometry';
import type { Hide } from '../model/hide.js';

/** Where the leather stretches least, as it is drawn: backbone (directed) and tightness strokes; none if nothing is drawn. */
export function directionField(hide: Pick<Hide, 'backbone' | 'tightness'>): DirectionField | undefined {
  const { backbone, tightness } = hide;
  if (backbone === undefined && tightness.length === 0) return undefined;
  return { ...(backbone === undefined ? {} : { axis: backbone }), strokes: tightness };
}

/** Thickness range and readings; with readings alone, the range is theirs; none if nothing is known. */
export function thicknessField(hide: Pick<Hide, 'leather'>): ThicknessField | undefined {
  const { thickness, readings } = hide.leather;
  if (thickness !== undefined) return { rangeMm: [thickness.minMm, thickness.maxMm], readings };
  if (readings.length === 0) return undefined;
  const values = readings.map(({ mm }) => mm);
  return { rangeMm: [Math.min(...values), Math.max(...values)], readings };
}
