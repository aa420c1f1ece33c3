import { rotationDeg as turning, transformRing } from '../shape/affine.js';
import { ringBox } from '../shape/ring.js';
import type { Box, Ring } from '../types/shape.js';

/** A piece may be out by this (mm): rounding its placement may have moved it by 0.0005. */
const FORGIVES_MM = 0.0006;

/** The `fits` of a plain rectangle: true if the piece keeps within the box. */
export function fitsInBox(ring: Ring, box: Box): (x: number, y: number, rotationDeg: number) => boolean {
  const turned = new Map<number, Box>();
  return (x, y, rotationDeg) => {
    let own = turned.get(rotationDeg);
    if (own === undefined) {
      own = ringBox(transformRing(turning(rotationDeg), ring));
      turned.set(rotationDeg, own);
    }
    return (
      x + own.minX >= box.minX - FORGIVES_MM &&
      x + own.maxX <= box.maxX + FORGIVES_MM &&
      y + own.minY >= box.minY - FORGIVES_MM &&
      y + own.maxY <= box.maxY + FORGIVES_MM
    );
  };
}
