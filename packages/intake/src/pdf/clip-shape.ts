import { createSpatialIndex, flattenCurve, ringBox, roundPoint } from '@hidebound/geometry';
import type { Box, Curve, Point, SpatialIndex } from '@hidebound/geometry';
import { CLIP_CHORD_MM } from './limits.js';

/** What may be seen: within a box, and within every other shape. Page frame, mm. */
export interface Clip {
  readonly box: Box;
  readonly shapes: readonly ClipShape[];
}

/** A clip path that is no upright rectangle, as chords. */
export interface ClipShape {
  readonly box: Box;
  readonly edges: readonly Edge[];
  readonly isEvenOdd: boolean;
  readonly index: SpatialIndex;
}

export interface Edge {
  readonly from: Point;
  readonly to: Point;
}

export function pageClip(widthMm: number, heightMm: number): Clip {
  return { box: { minX: 0, minY: 0, maxX: widthMm, maxY: heightMm }, shapes: [] };
}

/** What may be seen within the clip and a path besides (ISO 32000-1, section 8.5.4); open subpaths count as closed. */
export function narrowClip(clip: Clip, path: readonly Curve[], isEvenOdd: boolean): Clip {
  if (path.length === 0) return { ...clip, box: NOTHING };
  const rectangle = path.length === 1 ? uprightRectangle(path[0]!) : undefined;
  if (rectangle !== undefined) return { ...clip, box: intersectBoxes(clip.box, rectangle) };
  const shape = shapeOf(path, isEvenOdd);
  return { box: intersectBoxes(clip.box, shape.box), shapes: [...clip.shapes, shape] };
}

export function isEmptyBox({ minX, minY, maxX, maxY }: Box): boolean {
  return minX > maxX || minY > maxY;
}

const NOTHING: Box = { minX: 1, minY: 1, maxX: 0, maxY: 0 };

function intersectBoxes(a: Box, b: Box): Box {
  return {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  };
}

/** The box of a path of four upright sides, on the grid as lines are; nothing if it is anything else. */
function uprightRectangle({ start, segments }: Curve): Box | undefined {
  if (segments.length < 3 || segments.length > 4) return undefined;
  if (segments.some(({ kind }) => kind !== 'line')) return undefined;
  const corners = [start, ...segments.map(({ to }) => to)].map(roundPoint);
  if (corners.length === 5 && !(corners[4]!.x === corners[0]!.x && corners[4]!.y === corners[0]!.y))
    return undefined;
  const [a, b, c, d] = corners as [Point, Point, Point, Point];
  const acrossFirst = a.y === b.y && b.x === c.x && c.y === d.y && d.x === a.x;
  const downFirst = a.x === b.x && b.y === c.y && c.x === d.x && d.y === a.y;
  return acrossFirst || downFirst ? ringBox([a, b, c, d]) : undefined;
}

function shapeOf(path: readonly Curve[], isEvenOdd: boolean): ClipShape {
  const edges: Edge[] = [];
  for (const curve of path) {
    const corners = flattenCurve(curve, CLIP_CHORD_MM);
    corners.forEach((from, i) => {
      const to = corners[(i + 1) % corners.length]!;
      if (from.x !== to.x || from.y !== to.y) edges.push({ from, to });
    });
  }
  const boxes = edges.map(({ from, to }) => ringBox([from, to]));
  const box = edges.length === 0 ? NOTHING : ringBox(edges.map(({ from }) => from));
  return { box, edges, isEvenOdd, index: createSpatialIndex(boxes) };
}
