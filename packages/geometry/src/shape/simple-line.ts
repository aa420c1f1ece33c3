import type { Point, Polyline } from '../types/shape.js';
import { pointToSegment } from './distance.js';

/**
 * Fewer corners, none of the left-out ones farther than the tolerance (mm) from the line; both ends stay. Source: D. H.
 * Douglas, T. K. Peucker: Algorithms for the reduction of the number of points required to represent a digitized line,
 * 1973.
 */
export function simpleLine(line: Polyline, toleranceMm: number): Polyline {
  if (line.length < 3) return line;
  const kept = new Uint8Array(line.length);
  kept[0] = 1;
  kept[line.length - 1] = 1;
  const open: [number, number][] = [[0, line.length - 1]];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [from, to] = span;
    const at = farthestBetween(line, from, to, toleranceMm);
    if (at === undefined) continue;
    kept[at] = 1;
    open.push([from, at], [at, to]);
  }
  return line.filter((_, i) => kept[i] === 1);
}

/** The corner that lies farthest from the straight line between two others; none where all lie within the tolerance. */
function farthestBetween(
  line: readonly Point[],
  from: number,
  to: number,
  toleranceMm: number,
): number | undefined {
  let worst = toleranceMm;
  let at: number | undefined;
  for (let i = from + 1; i < to; i++) {
    const off = pointToSegment(line[i]!, line[from]!, line[to]!);
    if (off > worst) [worst, at] = [off, i];
  }
  return at;
}
