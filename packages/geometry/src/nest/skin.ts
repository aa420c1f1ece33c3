import type { Region, Ring } from '../types/shape.js';
import { orientRegion } from '../shape/ring.js';
import { SKIN_MITRE_LIMIT, SKIN_MM } from './constants.js';

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

/** The same rings, each corner moved into the material by the skin. */
export function insetBySkin(rings: readonly Float64Array[]): Float64Array[] {
  return rings.map(insetRing);
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

/** With positive area outside and negative within, the material is on the side (-dy, dx) of each edge (dx, dy). */
function insetRing(ring: Float64Array): Float64Array {
  const n = ring.length >> 1;
  const inset = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const p = i === 0 ? n - 1 : i - 1;
    const q = i + 1 === n ? 0 : i + 1;
    const x = ring[2 * i]!;
    const y = ring[2 * i + 1]!;
    const before = unitNormal(ring[2 * p]!, ring[2 * p + 1]!, x, y);
    const after = unitNormal(x, y, ring[2 * q]!, ring[2 * q + 1]!);
    let mx = before.x + after.x;
    let my = before.y + after.y;
    const length = Math.sqrt(mx * mx + my * my);
    // |sum| = 2 cos(half the turn); the mitre is 1 / cos(half the turn) long.
    const mitre = length > 0 ? Math.min(SKIN_MITRE_LIMIT, 2 / length) : 0;
    if (length > 0) {
      mx /= length;
      my /= length;
    }
    inset[2 * i] = x + SKIN_MM * mitre * mx;
    inset[2 * i + 1] = y + SKIN_MM * mitre * my;
  }
  return inset;
}

function unitNormal(ax: number, ay: number, bx: number, by: number): { x: number; y: number } {
  const dx = bx - ax;
  const dy = by - ay;
  const length = Math.sqrt(dx * dx + dy * dy);
  return { x: -dy / length, y: dx / length };
}
