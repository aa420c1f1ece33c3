import { curveBox } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { expect } from 'vitest';

/** An upright box by its corner of least x and y and its size, mm. */
export interface DrawnBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The curve's box lies where it was drawn, each side within so many mm. */
export function expectBox(curve: Curve, want: DrawnBox, withinMm: number): void {
  const box = curveBox(curve);
  const off = [
    box.minX - want.x,
    box.minY - want.y,
    box.maxX - want.x - want.width,
    box.maxY - want.y - want.height,
  ];
  expect(Math.max(...off.map(Math.abs))).toBeLessThanOrEqual(withinMm);
}
