import { composeAffine, regionBox, scaling, translation } from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import { regionMask } from '../decode/leather-mask.js';

/** The places within a region that lie in the middles of squares of this side, row by row from its top left corner; mm. */
export function placesInside(region: Region, stepMm: number): Point[] {
  const { minX, minY, maxX, maxY } = regionBox(region);
  const first = { x: minX + stepMm / 2, y: minY + stepMm / 2 };
  const width = Math.max(0, Math.ceil((maxX - first.x) / stepMm));
  const height = Math.max(0, Math.ceil((maxY - first.y) / stepMm));
  // Row by row: to ask of each place by itself walks around thousands of points of the outline every time.
  const toSquares = composeAffine(scaling(1 / stepMm), translation(-first.x, -first.y));
  const mask = regionMask(region, toSquares, { width, height });
  const places: Point[] = [];
  for (let j = 0, y = first.y; j < height; j++, y += stepMm)
    for (let i = 0, x = first.x; i < width; i++, x += stepMm)
      if (mask[j * width + i] === 1) places.push({ x, y });
  return places;
}
