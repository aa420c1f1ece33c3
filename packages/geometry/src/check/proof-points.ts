import { FIELD_GRID_MM } from '../tolerance.js';
import type { Point, Region } from '../types/shape.js';
import { areaOfRegion } from './area.js';
import { centroidOfRegion } from './centroid.js';
import { isStrictlyInside } from './point-in-area.js';

/**
 * The points of an item's own frame at which rules about direction and thickness must hold: its centroid first,
 * then the crossings of a grid of 50 mm through (0, 0) that lie strictly inside.
 */
export function proofPointsOfRegion(region: Region): readonly Point[] {
  const area = areaOfRegion(region);
  const points: Point[] = [centroidOfRegion(region)];
  const { minX, minY, maxX, maxY } = area.box;
  for (let j = Math.ceil(minY / FIELD_GRID_MM); j * FIELD_GRID_MM <= maxY; j++) {
    for (let i = Math.ceil(minX / FIELD_GRID_MM); i * FIELD_GRID_MM <= maxX; i++) {
      const x = i * FIELD_GRID_MM;
      const y = j * FIELD_GRID_MM;
      if (isStrictlyInside(area, x, y)) points.push({ x, y });
    }
  }
  return points;
}
