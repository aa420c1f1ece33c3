import { rotationDeg as turning, transformRing } from '../shape/affine.js';
import { ringBox } from '../shape/ring.js';
import type { Box, Ring } from '../types/shape.js';
import { SIDE_FORGIVES_MM } from './constants.js';

/**
 * The `fits` of a plain rectangle: true if the piece keeps `edgeMm` to the box's sides, 1 µm forgiven (its placement
 * was rounded by half of it). For a strip the box is as long as it may get.
 */
export function fitsInBox(
  ring: Ring,
  box: Box,
  edgeMm = 0,
): (x: number, y: number, rotationDeg: number) => boolean {
  const turned = new Map<number, Box>();
  const by = edgeMm - SIDE_FORGIVES_MM;
  return (x, y, rotationDeg) => {
    let own = turned.get(rotationDeg);
    if (own === undefined) {
      own = ringBox(transformRing(turning(rotationDeg), ring));
      turned.set(rotationDeg, own);
    }
    return (
      x + own.minX >= box.minX + by &&
      x + own.maxX <= box.maxX - by &&
      y + own.minY >= box.minY + by &&
      y + own.maxY <= box.maxY - by
    );
  };
}
