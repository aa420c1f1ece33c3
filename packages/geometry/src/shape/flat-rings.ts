import type { Region, Ring } from '../types/shape.js';
import { orientRegion } from './ring.js';

/** Corners nearer to each other than this are one: their edge has no direction worth having. */
const SAME_CORNER_MM = 1e-7;

/** Rings of a region as flat corners [x0, y0, …], outer rings positive, openings negative, no repeated corner. */
export function flatRings(regions: readonly Region[]): Float64Array[] {
  const rings: Float64Array[] = [];
  for (const region of regions) {
    const turned = orientRegion(region);
    for (const ring of [turned.outer, ...turned.openings]) {
      const flat = flatRing(ring);
      if (flat.length >= 6) rings.push(flat);
    }
  }
  return rings;
}

function flatRing(ring: Ring): Float64Array {
  const flat: number[] = [];
  for (const { x, y } of ring) {
    const n = flat.length;
    if (n > 0 && near(flat[n - 2]!, flat[n - 1]!, x, y)) continue;
    flat.push(x, y);
  }
  while (flat.length > 2 && near(flat[flat.length - 2]!, flat[flat.length - 1]!, flat[0]!, flat[1]!)) {
    flat.length -= 2;
  }
  return Float64Array.from(flat);
}

function near(ax: number, ay: number, bx: number, by: number): boolean {
  return Math.abs(ax - bx) < SAME_CORNER_MM && Math.abs(ay - by) < SAME_CORNER_MM;
}
