import type { Ring } from '@hidebound/geometry';

/** A grid over a part of the floor; the middle of pixel (i, j) is at (x0 + (i + 0.5) / pxPerMm, …). */
export interface MapGrid {
  readonly x0: number;
  readonly y0: number;
  readonly width: number;
  readonly height: number;
  readonly pxPerMm: number;
}

/** How far each pixel's middle lies from the leather's edge, mm: below 0 on leather, cut off at ±`band`. */
export function edgeField(grid: MapGrid, rings: readonly Ring[], band: number): Float32Array {
  const field = new Float32Array(grid.width * grid.height).fill(band);
  for (const ring of rings) {
    ring.forEach((from, i) => {
      const to = ring[(i + 1) % ring.length]!;
      lowerNear(field, grid, band, from.x, from.y, to.x, to.y);
    });
  }
  negateInside(field, grid, rings);
  return field;
}

function lowerNear(
  field: Float32Array,
  grid: MapGrid,
  band: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): void {
  const { x0, y0, width, height, pxPerMm } = grid;
  const firstX = Math.max(0, Math.floor((Math.min(ax, bx) - band - x0) * pxPerMm));
  const lastX = Math.min(width - 1, Math.ceil((Math.max(ax, bx) + band - x0) * pxPerMm));
  const firstY = Math.max(0, Math.floor((Math.min(ay, by) - band - y0) * pxPerMm));
  const lastY = Math.min(height - 1, Math.ceil((Math.max(ay, by) + band - y0) * pxPerMm));
  const dx = bx - ax;
  const dy = by - ay;
  const lengthSq = dx * dx + dy * dy || 1;
  for (let j = firstY; j <= lastY; j++) {
    const py = y0 + (j + 0.5) / pxPerMm - ay;
    for (let i = firstX; i <= lastX; i++) {
      const px = x0 + (i + 0.5) / pxPerMm - ax;
      const t = Math.max(0, Math.min(1, (px * dx + py * dy) / lengthSq));
      const ex = px - t * dx;
      const ey = py - t * dy;
      const distanceSq = ex * ex + ey * ey;
      const at = j * width + i;
      if (distanceSq < field[at]! * field[at]!) field[at] = Math.sqrt(distanceSq);
    }
  }
}

/** Row by row, between the crossings with the rings: openings are outside again. */
function negateInside(
  field: Float32Array,
  { x0, y0, width, height, pxPerMm }: MapGrid,
  rings: readonly Ring[],
): void {
  const crossings: number[][] = Array.from({ length: height }, () => []);
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      if (a.y === b.y) return;
      const first = Math.max(0, Math.ceil((Math.min(a.y, b.y) - y0) * pxPerMm - 0.5));
      const last = Math.min(height - 1, Math.ceil((Math.max(a.y, b.y) - y0) * pxPerMm - 0.5) - 1);
      for (let j = first; j <= last; j++) {
        const y = y0 + (j + 0.5) / pxPerMm;
        crossings[j]!.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
      }
    });
  }
  crossings.forEach((row, j) => {
    row.sort((a, b) => a - b);
    for (let k = 0; k + 1 < row.length; k += 2) {
      const first = Math.max(0, Math.ceil((row[k]! - x0) * pxPerMm - 0.5));
      const last = Math.min(width - 1, Math.ceil((row[k + 1]! - x0) * pxPerMm - 0.5) - 1);
      for (let i = first; i <= last; i++) field[j * width + i] = -field[j * width + i]!;
    }
  });
}
