import type { StraightPicture } from '../straight/straight-picture.js';
import type { Colour } from './colour.js';

/** The picture's value on an axis of colour at a place between pixels (pixel middles are whole numbers). */
export function sampleAlong(
  { width, height, rgb }: StraightPicture,
  x: number,
  y: number,
  [r, g, b]: Colour,
): number {
  const cx = Math.min(Math.max(x, 0), width - 1.001);
  const cy = Math.min(Math.max(y, 0), height - 1.001);
  const x0 = Math.floor(cx);
  const y0 = Math.floor(cy);
  const [fx, fy] = [cx - x0, cy - y0];
  const i = 3 * (y0 * width + x0);
  const below = i + 3 * width;
  const value = (at: number) => rgb[at]! * r + rgb[at + 1]! * g + rgb[at + 2]! * b;
  const top = value(i) * (1 - fx) + value(i + 3) * fx;
  const bottom = value(below) * (1 - fx) + value(below + 3) * fx;
  return top * (1 - fy) + bottom * fy;
}
