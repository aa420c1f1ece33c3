import type { Box, Point } from '@hidebound/geometry';

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;
export const middleOf = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
export const moveBox = (box: Box, by: Point): Box => ({
  minX: box.minX + by.x,
  minY: box.minY + by.y,
  maxX: box.maxX + by.x,
  maxY: box.maxY + by.y,
});

/** What two boxes share; of boxes apart, sides are negative. */
export const sharedBox = (a: Box, b: Box): Box => ({
  minX: Math.max(a.minX, b.minX),
  minY: Math.max(a.minY, b.minY),
  maxX: Math.min(a.maxX, b.maxX),
  maxY: Math.min(a.maxY, b.maxY),
});

export const widthOf = (box: Box): number => box.maxX - box.minX;
export const heightOf = (box: Box): number => box.maxY - box.minY;
export const boxMiddle = (box: Box): Point => ({
  x: (box.minX + box.maxX) / 2,
  y: (box.minY + box.maxY) / 2,
});
export const isInBox = (p: Point, box: Box, by = 0): boolean =>
  p.x >= box.minX - by && p.x <= box.maxX + by && p.y >= box.minY - by && p.y <= box.maxY + by;
