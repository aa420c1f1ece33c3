import type { Affine, Region } from '@hidebound/geometry';
import { transformRing } from '@hidebound/geometry';

export interface MaskSize {
  readonly width: number;
  readonly height: number;
}

/**
 * Where a region lies on a picture: width × height bytes, 1 within it. A pixel counts by its middle.
 * @param toPicture leads from the region's frame to pixels; the middle of the first pixel is (0, 0)
 */
export function regionMask(region: Region, toPicture: Affine, { width, height }: MaskSize): Uint8Array {
  const mask = new Uint8Array(width * height);
  const rings = [region.outer, ...region.openings].map((ring) => transformRing(toPicture, ring));
  for (const [row, crossings] of crossingsByRow(rings, height)) {
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const from = Math.max(0, Math.ceil(crossings[i]!));
      const to = Math.min(width, Math.ceil(crossings[i + 1]!));
      if (to > from) mask.fill(1, row * width + from, row * width + to);
    }
  }
  return mask;
}

/** Where each row's middle crosses the rings; a corner is counted once. */
function crossingsByRow(rings: readonly Region['outer'][], height: number): Map<number, number[]> {
  const rows = new Map<number, number[]>();
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length]!;
      const [top, bottom] = p.y < q.y ? [p, q] : [q, p];
      for (let row = Math.max(0, Math.ceil(top.y)); row < Math.min(height, bottom.y); row++) {
        const crossings = rows.get(row) ?? [];
        crossings.push(top.x + ((row - top.y) / (bottom.y - top.y)) * (bottom.x - top.x));
        rows.set(row, crossings);
      }
    });
  }
  return rows;
}
