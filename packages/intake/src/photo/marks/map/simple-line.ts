import { pointToSegment } from '@hidebound/geometry';
import type { Point, Polyline } from '@hidebound/geometry';

/** Fewer corners, none of the left-out ones farther than this from the line (D. H. Douglas, T. K. Peucker 1973). */
export function simpleLine(line: Polyline, toleranceMm: number): Polyline {
  if (line.length < 3) return line;
  const first = line[0]!;
  const last = line[line.length - 1]!;
  let worst = 0;
  let at = 0;
  line.forEach((point, i) => {
    const off = pointToSegment(point, first, last);
    if (off > worst) [worst, at] = [off, i];
  });
  if (worst <= toleranceMm) return [first, last];
  return [
    ...simpleLine(line.slice(0, at + 1), toleranceMm).slice(0, -1),
    ...simpleLine(line.slice(at), toleranceMm),
  ];
}

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
