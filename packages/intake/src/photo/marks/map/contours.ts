import type { Point, Ring } from '@hidebound/geometry';
import { withMats } from '../../vision/mats.js';
import type { Vision } from '../../vision/vision.js';
import type { Patch } from './thin.js';

/**
 * The outer edges of the set cells as rings, clockwise as seen, through the middles of the outermost cells; in cells of
 * the grid that the patch was cut from. They lie half a cell within the true edge.
 */
export function outerEdges(patch: Patch, vision: Vision): Ring[] {
  return withMats((keep) => {
    const mat = keep(new vision.Mat(patch.height, patch.width, vision.CV_8UC1));
    mat.data.set(patch.cells);
    const found = keep(new vision.MatVector());
    const order = keep(new vision.Mat());
    vision.findContours(mat, found, order, vision.RETR_EXTERNAL, vision.CHAIN_APPROX_NONE);
    return Array.from({ length: found.size() }, (_, k) => {
      const contour = keep(found.get(k));
      const ring: Point[] = [];
      for (let i = 0; i < contour.rows; i++) {
        ring.push({ x: patch.x + contour.data32S[2 * i]!, y: patch.y + contour.data32S[2 * i + 1]! });
      }
      return ring;
    });
  });
}

/** Each corner moved to the mean of itself and its neighbours, a few times: takes the steps of cells off. */
export function softened(ring: Ring, rounds: number): Ring {
  let soft = ring;
  for (let round = 0; round < rounds; round++) {
    soft = soft.map((p, i) => {
      const before = soft[(i + soft.length - 1) % soft.length]!;
      const after = soft[(i + 1) % soft.length]!;
      return { x: (before.x + 2 * p.x + after.x) / 4, y: (before.y + 2 * p.y + after.y) / 4 };
    });
  }
  return soft;
}
