import type { Point, Polyline, Ring } from '@hidebound/geometry';
import { toPicture } from '../straight/straight-picture.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import { toLevel } from './level.js';
import type { Level } from './level.js';

type Frame = Pick<StraightPicture, 'origin' | 'pxPerMm'>;

/** A place of the floor on a level, in its pixels. */
export function onLevel(frame: Frame, level: Pick<Level, 'step'>, place: Point): Point {
  const { x, y } = toPicture(frame, place);
  return { x: toLevel(level, x), y: toLevel(level, y) };
}

/** Marks all pixels whose middles lie in the ring (even-odd). The ring is in pixels of the grid. */
export function paintRing(
  { width, height }: Pick<Level, 'width' | 'height'>,
  ring: Ring,
  mark: (pixel: number) => void,
): void {
  const top = Math.max(0, Math.ceil(Math.min(...ring.map((p) => p.y))));
  const bottom = Math.min(height - 1, Math.floor(Math.max(...ring.map((p) => p.y))));
  for (let y = top; y <= bottom; y++) {
    const crossings = rowCrossings(ring, y);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const last = Math.min(width - 1, Math.floor(crossings[i + 1]!));
      for (let x = Math.max(0, Math.ceil(crossings[i]!)); x <= last; x++) mark(y * width + x);
    }
  }
}

function rowCrossings(ring: Ring, y: number): number[] {
  const crossings: number[] = [];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    if (a.y <= y === b.y <= y) return;
    crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
  });
  return crossings.sort((a, b) => a - b);
}

/** Marks all pixels within `radius` of the line; both in pixels of the grid. */
export function paintLine(
  { width, height }: Pick<Level, 'width' | 'height'>,
  line: Polyline,
  radius: number,
  mark: (pixel: number) => void,
): void {
  line.forEach((a, i) => {
    const b = line[Math.min(i + 1, line.length - 1)]!;
    const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y)));
    for (let step = 0; step <= steps; step++) {
      const x = a.x + ((b.x - a.x) * step) / steps;
      const y = a.y + ((b.y - a.y) * step) / steps;
      for (let row = Math.max(0, Math.ceil(y - radius)); row <= Math.min(height - 1, y + radius); row++)
        for (
          let column = Math.max(0, Math.ceil(x - radius));
          column <= Math.min(width - 1, x + radius);
          column++
        )
          if ((column - x) ** 2 + (row - y) ** 2 <= radius * radius) mark(row * width + column);
    }
  });
}
