import { createSpatialIndex, flattenCurve, segmentsTouch } from '@hidebound/geometry';
import type { Box, Curve, Point, Polyline } from '@hidebound/geometry';
import { RING_TOLERANCE_MM } from './contour.js';

/** Every line that is cut through, so that nothing else runs across it. */
export interface Obstacles {
  readonly meets: (line: Polyline) => boolean;
  /** The same lines with one more. */
  readonly add: (line: Polyline) => void;
}

interface Edge {
  readonly a: Point;
  readonly b: Point;
}

export function obstaclesOf(curves: readonly Curve[]): Obstacles {
  const edges = curves.flatMap((curve) => edgesOf(flattenCurve(curve, RING_TOLERANCE_MM)));
  const index = createSpatialIndex(edges.map(boxOf));
  const added: Edge[] = [];
  const meets = (line: Polyline): boolean =>
    edgesOf(line).some((one) => {
      const touches = ({ a, b }: Edge): boolean => segmentsTouch(one.a, one.b, a, b);
      let found = added.some(touches);
      if (!found) index.query(boxOf(one), (i) => (found = touches(edges[i]!)));
      return found;
    });
  return { meets, add: (line) => void added.push(...edgesOf(line)) };
}

function edgesOf(line: Polyline): Edge[] {
  return line.slice(1).map((b, i) => ({ a: line[i]!, b }));
}

function boxOf({ a, b }: Edge): Box {
  return {
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
}
