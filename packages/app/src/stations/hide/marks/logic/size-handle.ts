import { polylineNearest } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { FlawShape } from '@hidebound/leather';

/** Where a mark is taken hold of for its size: on the rim of a spot, on the side of a stroke's middle. */
export function sizeHandle(shape: FlawShape): Point | undefined {
  if (shape.kind === 'area') return undefined;
  if (shape.kind === 'point') return { x: shape.at.x + shape.radiusMm, y: shape.at.y };
  const { line, widthMm } = shape;
  const index = Math.floor((line.length - 1) / 2);
  const [a, b] = [line[index]!, line[index + 1]!];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const half = widthMm / 2;
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  return { x: middle.x - ((b.y - a.y) / length) * half, y: middle.y + ((b.x - a.x) / length) * half };
}

/** The size (radius or width, mm) that a mark has when its handle is drawn to a place. */
export function sizeFromHandle(shape: FlawShape, place: Point): number {
  switch (shape.kind) {
    case 'point':
      return Math.hypot(place.x - shape.at.x, place.y - shape.at.y);
    case 'line':
      return 2 * polylineNearest(shape.line, place).distance;
    case 'area':
      return 0;
  }
}
