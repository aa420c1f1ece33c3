import { FIELD_NEAREST_MM } from '../tolerance.js';
import type { ThicknessField } from '../types/problem.js';
import type { Point } from '../types/shape.js';

/**
 * The thinnest and the thickest (mm) that the leather may be at a place: with readings their mean, weighted by
 * 1/max(d, 5 mm)²; without, the whole range.
 */
export function thicknessAt(field: ThicknessField, at: Point): readonly [min: number, max: number] {
  if (field.readings.length === 0) return field.rangeMm;
  let weights = 0;
  let sum = 0;
  for (const reading of field.readings) {
    const distance = Math.hypot(reading.at.x - at.x, reading.at.y - at.y);
    const weight = 1 / Math.max(distance, FIELD_NEAREST_MM) ** 2;
    weights += weight;
    sum += weight * reading.mm;
  }
  return [sum / weights, sum / weights];
}
