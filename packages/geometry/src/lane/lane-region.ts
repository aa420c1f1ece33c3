import type { Lane } from '../types/problem.js';
import type { Region } from '../types/shape.js';

/** Name of the lane that comes after so many: short, and no rough cut's. */
export function laneId(before: number): string {
  return `L${before + 1}`;
}

/**
 * All that a lane takes up on its sheet: the rectangle from its first cut across all its rows, which reaches a little
 * over the hide's edge at the open end. Nothing but its own straps may reach into it.
 */
export function laneRegion({ from, to, rows, kerfMm }: Lane): Region {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.sqrt(dx * dx + dy * dy);
  let width = Math.max(0, rows.length - 1) * kerfMm;
  for (const row of rows) width += row.widthMm;
  const across = { x: (-dy / length) * width, y: (dx / length) * width };
  return {
    outer: [
      from,
      to,
      { x: to.x + across.x, y: to.y + across.y },
      { x: from.x + across.x, y: from.y + across.y },
    ],
    openings: [],
  };
}
