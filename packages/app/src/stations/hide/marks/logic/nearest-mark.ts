import {
  curveBox,
  flattenCurve,
  pointInRing,
  pointToRing,
  polylineNearest,
  ringBox,
} from '@hidebound/geometry';
import type { Box, Point } from '@hidebound/geometry';
import type { FlawShape } from '@hidebound/leather';

/** How far a place is from a mark, mm; 0 within it. */
export function markDistance(place: Point, shape: FlawShape): number {
  switch (shape.kind) {
    case 'point':
      return Math.max(0, Math.hypot(place.x - shape.at.x, place.y - shape.at.y) - shape.radiusMm);
    case 'line':
      return Math.max(0, polylineNearest(shape.line, place).distance - shape.widthMm / 2);
    case 'area': {
      const ring = flattenCurve(shape.outline).slice(0, -1);
      return pointInRing(place, ring) === 'outside' ? pointToRing(place, ring) : 0;
    }
  }
}

/** The box around a mark, mm. */
export function markBox(shape: FlawShape): Box {
  switch (shape.kind) {
    case 'point': {
      const { at, radiusMm } = shape;
      return {
        minX: at.x - radiusMm,
        minY: at.y - radiusMm,
        maxX: at.x + radiusMm,
        maxY: at.y + radiusMm,
      };
    }
    case 'line':
      return ringBox(shape.line);
    case 'area':
      return curveBox(shape.outline);
  }
}

/** The mark at a place or within reach (mm) of it: the nearest, and of several over each other the smallest. */
export function nearestMark<M extends { readonly shape: FlawShape }>(
  marks: readonly M[],
  place: Point,
  reachMm: number,
): M | undefined {
  let best: { readonly mark: M; readonly off: number; readonly size: number } | undefined;
  for (const mark of marks) {
    const off = markDistance(place, mark.shape);
    if (off > reachMm || (best !== undefined && off > best.off)) continue;
    const size = boxSize(markBox(mark.shape));
    if (best === undefined || off < best.off || size < best.size) best = { mark, off, size };
  }
  return best?.mark;
}

function boxSize({ minX, minY, maxX, maxY }: Box): number {
  return maxX - minX + (maxY - minY);
}
