import type { Point } from './bitmap.js';
import type { LayoutSample } from './layout-lines.js';
import { moved } from './pose.js';
import type { Pose } from './pose.js';
import type { PageReading } from './read-page.js';

/**
 * How far the layout must be moved (whole mm, not turned) so that most of its lines lie on something black of the
 * joined pages. The pages' own names and places in the grid play no part.
 */
export function findLayout(
  readings: readonly PageReading[],
  poses: ReadonlyMap<number, Pose>,
  samples: readonly LayoutSample[],
): Pose {
  const black = [...poses].flatMap(([page, pose]) => readings[page]!.darkMm.map((at) => moved(pose, at)));
  const [paper, layout] = [boxOf(black), boxOf(samples)];
  const width = Math.ceil(paper.maxX - paper.minX) + 1;
  const height = Math.ceil(paper.maxY - paper.minY) + 1;
  const map = new Uint8Array(width * height);
  for (const { x, y } of black) map[Math.floor(y - paper.minY) * width + Math.floor(x - paper.minX)] = 1;
  const few = samples.filter((_, i) => i % Math.ceil(samples.length / MOST_SAMPLES) === 0);
  let best = { x: 0, y: 0, turn: 0 };
  let most = -1;
  for (let y = Math.floor(paper.minY - layout.minY); y <= paper.maxY - layout.maxY; y++) {
    for (let x = Math.floor(paper.minX - layout.minX); x <= paper.maxX - layout.maxX; x++) {
      let hits = 0;
      for (const sample of few) {
        const [column, row] = [Math.floor(sample.x + x - paper.minX), Math.floor(sample.y + y - paper.minY)];
        if (column >= 0 && row >= 0) hits += map[row * width + column] ?? 0;
      }
      if (hits <= most) continue;
      most = hits;
      best = { x, y, turn: 0 };
    }
  }
  return best;
}

const MOST_SAMPLES = 2000;

function boxOf(points: readonly Point[]): { minX: number; minY: number; maxX: number; maxY: number } {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { x, y } of points) {
    box.minX = Math.min(box.minX, x);
    box.minY = Math.min(box.minY, y);
    box.maxX = Math.max(box.maxX, x);
    box.maxY = Math.max(box.maxY, y);
  }
  return box;
}
