import { ringBox } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import { paintRing } from './paint.js';
import type { Axis } from './outline-shape.js';

export interface MirrorAxis extends Axis {
  /** How much of the leather falls onto leather when it is folded over the axis, 0 to 1. */
  readonly share: number;
  /** By how much that is more than about any line at an angle of 30° or more to it. */
  readonly lead: number;
}

const MASK_CELLS = 200;
const DEG = Math.PI / 180;
const COARSE_STEP_DEG = 5;
/** Lines beside the middle of the leather that are tried, as shares of its size. */
const OFFSETS = [-0.08, -0.06, -0.04, -0.02, 0, 0.02, 0.04, 0.06, 0.08];
const FAR_DEG = 30;

/** The line about which the leather is most like its mirror image: every few degrees first, then finer. */
export function mirrorAxis(points: readonly Point[], outline: Ring): MirrorAxis {
  const covers = maskOf(outline);
  const { minX, minY, maxX, maxY } = ringBox(outline);
  const size = Math.max(maxX - minX, maxY - minY);
  const middle = {
    x: points.reduce((sum, p) => sum + p.x, 0) / points.length,
    y: points.reduce((sum, p) => sum + p.y, 0) / points.length,
  };
  const tryAt = (angle: number, offset: number): Axis & { share: number } => {
    const axis = {
      angle,
      at: { x: middle.x - offset * Math.sin(angle), y: middle.y + offset * Math.cos(angle) },
    };
    return { ...axis, share: foldedShare(points, covers, axis) };
  };
  const byAngle: (Axis & { share: number; offset: number })[] = [];
  for (let deg = 0; deg < 180; deg += COARSE_STEP_DEG)
    byAngle.push(
      OFFSETS.map((share) => ({ ...tryAt(deg * DEG, share * size), offset: share * size })).reduce(
        (best, one) => (one.share > best.share ? one : best),
      ),
    );
  let best = byAngle.reduce((a, b) => (b.share > a.share ? b : a));
  const apart = (angle: number): number => {
    const turn = Math.abs(angle - best.angle) / DEG;
    return Math.min(turn, 180 - turn);
  };
  const rival = byAngle
    .filter(({ angle }) => apart(angle) >= FAR_DEG)
    .reduce((most, one) => Math.max(most, one.share), 0);
  for (let step = COARSE_STEP_DEG / 2, shift = 0.01 * size; step > 0.15; step /= 2, shift /= 2) {
    const centre = best;
    for (const turn of [-1, 0, 1])
      for (const move of [-1, 0, 1]) {
        const offset = centre.offset + move * shift;
        const tried = { ...tryAt(centre.angle + turn * step * DEG, offset), offset };
        if (tried.share > best.share) best = tried;
      }
  }
  return { at: best.at, angle: best.angle, share: best.share, lead: best.share - rival };
}

function foldedShare(points: readonly Point[], covers: (p: Point) => boolean, { at, angle }: Axis): number {
  const nx = -Math.sin(angle);
  const ny = Math.cos(angle);
  let count = 0;
  for (const p of points) {
    const away = 2 * ((p.x - at.x) * nx + (p.y - at.y) * ny);
    if (covers({ x: p.x - away * nx, y: p.y - away * ny })) count += 1;
  }
  return count / points.length;
}

/** The outline's area, quick to look up. */
function maskOf(outline: Ring): (p: Point) => boolean {
  const { minX, minY, maxX, maxY } = ringBox(outline);
  const scale = MASK_CELLS / Math.max(maxX - minX, maxY - minY);
  const width = Math.ceil((maxX - minX) * scale) + 1;
  const height = Math.ceil((maxY - minY) * scale) + 1;
  const mask = new Uint8Array(width * height);
  paintRing(
    { width, height },
    outline.map(({ x, y }) => ({ x: (x - minX) * scale, y: (y - minY) * scale })),
    (pixel) => (mask[pixel] = 1),
  );
  return ({ x, y }) => {
    const i = Math.round((x - minX) * scale);
    const j = Math.round((y - minY) * scale);
    return i >= 0 && j >= 0 && i < width && j < height && mask[j * width + i] === 1;
  };
}
