import type { Point, Polyline } from '@hidebound/geometry';

/** The mean over so many neighbours on both sides; ends stay where they are. */
export function softLine(line: Polyline, reach: number): Polyline {
  return line.map((point, i) => {
    const near = Math.min(reach, i, line.length - 1 - i);
    if (near === 0) return point;
    const around: readonly Point[] = line.slice(i - near, i + near + 1);
    return {
      x: around.reduce((sum, { x }) => sum + x, 0) / around.length,
      y: around.reduce((sum, { y }) => sum + y, 0) / around.length,
    };
  });
}
