import { curveBox, curveSteps, pointToSegment } from '@hidebound/geometry';
import type { Box, Curve, CurveSegment, Point } from '@hidebound/geometry';
import { clipBoxed } from '../lines/clip-to-box.js';
import { crossings, partOfSegment, pointOfSegment } from '../lines/segment-parts.js';
import { isEmptyBox } from './clip-shape.js';
import type { Clip, ClipShape, Edge } from './clip-shape.js';
import { ALONG_CLIP_MM } from './limits.js';

/** Told of how many comparisons were made; throws when they become too many. */
export type Spend = (work: number) => void;

/**
 * What of a line may be seen. Lines and cubics stay what they are, split where they cross the edge; a closed line that
 * leaves the clip becomes open ones. A line along the edge is within.
 */
export function clipCurve(curve: Curve, clip: Clip, spend: Spend): readonly Curve[] {
  if (isEmptyBox(clip.box)) return [];
  let pieces = clipBoxed(curve, curveBox(curve), clip.box);
  for (const shape of clip.shapes) pieces = pieces.flatMap((piece) => clipToShape(piece, shape, spend));
  return pieces;
}

/** True for a point that may be seen. */
export function isSeen(p: Point, clip: Clip, spend: Spend): boolean {
  const { minX, minY, maxX, maxY } = clip.box;
  if (p.x < minX || p.x > maxX || p.y < minY || p.y > maxY) return false;
  return clip.shapes.every((shape) => isInside(p, shape, spend));
}

function clipToShape(curve: Curve, shape: ClipShape, spend: Spend): readonly Curve[] {
  spend(curve.segments.length);
  const box = curveBox(curve);
  const isOff =
    box.minX > shape.box.maxX ||
    box.maxX < shape.box.minX ||
    box.minY > shape.box.maxY ||
    box.maxY < shape.box.minY;
  if (isOff) return [];
  const runs: Run[] = [];
  let goesOn = false;
  for (const { from, segment } of curveSteps(curve)) {
    let end = 0;
    for (const [first, last] of rangesInside(from, segment, shape, spend)) {
      const part = partOfSegment(from, segment, first, last);
      if (goesOn && first === 0) runs.at(-1)!.segments.push(part.segment);
      else runs.push({ start: part.from, segments: [part.segment] });
      end = last;
    }
    goesOn = end === 1;
  }
  return finishRuns(runs, curve, goesOn);
}

/** The ranges of the segment's parameter within the shape, ascending, none touching the next. */
function rangesInside(
  from: Point,
  segment: CurveSegment,
  shape: ClipShape,
  spend: Spend,
): [number, number][] {
  const cuts = [0, ...crossingsWith(from, segment, shape, spend), 1];
  const ranges: [number, number][] = [];
  for (let i = 1; i < cuts.length; i++) {
    const [first, last] = [cuts[i - 1]!, cuts[i]!];
    if (!isInside(pointOfSegment(from, segment, (first + last) / 2), shape, spend)) continue;
    const before = ranges.at(-1);
    if (before?.[1] === first) before[1] = last;
    else ranges.push([first, last]);
  }
  return ranges;
}

interface Run {
  readonly start: Point;
  readonly segments: CurveSegment[];
}

/** A closed line that never left stays as it is; of one that did, the last run goes on into the first. */
function finishRuns(runs: readonly Run[], curve: Curve, endsInside: boolean): Curve[] {
  const first = runs[0];
  if (first === undefined) return [];
  const startsInside = first.start.x === curve.start.x && first.start.y === curve.start.y;
  if (runs.length === 1 && startsInside && endsInside) return [curve];
  const joins = curve.closed && startsInside && endsInside;
  const last = runs.at(-1)!;
  const open = joins
    ? [{ start: last.start, segments: [...last.segments, ...first.segments] }, ...runs.slice(1, -1)]
    : runs;
  return open.map(({ start, segments }) => ({ start, segments, closed: false }));
}

/** Cuts nearer together than this in a segment's parameter are one: neighbouring edges share their corner. */
const SAME_CUT = 1e-9;

/** Parameters in (0, 1), ascending, at which a segment crosses the edges of a clip shape. */
function crossingsWith(from: Point, segment: CurveSegment, shape: ClipShape, spend: Spend): number[] {
  const found: number[] = [];
  let compared = 0;
  shape.index.query(controlBox(from, segment), (i) => {
    compared++;
    found.push(...crossingsWithEdge(from, segment, shape.edges[i]!));
  });
  spend(compared);
  found.sort((a, b) => a - b);
  return found.filter(
    (t, i) => t > SAME_CUT && t < 1 - SAME_CUT && (i === 0 || t - found[i - 1]! > SAME_CUT),
  );
}

/** An edge reaches this little beyond its corners, so that no line slips between two of them; mm. */
const EDGE_SLACK_MM = 1e-6;

/** Crossings with the line that bears the edge, as seen from the edge: it is the x axis there. */
function crossingsWithEdge(from: Point, segment: CurveSegment, edge: Edge): number[] {
  const length = Math.hypot(edge.to.x - edge.from.x, edge.to.y - edge.from.y);
  const way = { x: (edge.to.x - edge.from.x) / length, y: (edge.to.y - edge.from.y) / length };
  const seen = ({ x, y }: Point): Point => {
    const [dx, dy] = [x - edge.from.x, y - edge.from.y];
    return { x: dx * way.x + dy * way.y, y: dy * way.x - dx * way.y };
  };
  const turned = mapped(segment, seen);
  const start = seen(from);
  return crossings(start, turned, 'y', 0).filter((t) => {
    const { x } = pointOfSegment(start, turned, t);
    return x >= -EDGE_SLACK_MM && x <= length + EDGE_SLACK_MM;
  });
}

/** Paths of pages hold lines and cubics only. */
function mapped(segment: CurveSegment, map: (p: Point) => Point): CurveSegment {
  if (segment.kind !== 'cubic') return { kind: 'line', to: map(segment.to) };
  const { handle1, handle2, to } = segment;
  return { kind: 'cubic', handle1: map(handle1), handle2: map(handle2), to: map(to) };
}

function controlBox(from: Point, segment: CurveSegment): Box {
  const points = segment.kind === 'cubic' ? [segment.handle1, segment.handle2, segment.to] : [segment.to];
  let [minX, minY, maxX, maxY] = [from.x, from.y, from.x, from.y];
  for (const { x, y } of points) {
    [minX, maxX] = [Math.min(minX, x), Math.max(maxX, x)];
    [minY, maxY] = [Math.min(minY, y), Math.max(maxY, y)];
  }
  return { minX, minY, maxX, maxY };
}

/** Within the shape by its winding rule (ISO 32000-1, section 8.5.3.3), or on its edge. */
function isInside(p: Point, shape: ClipShape, spend: Spend): boolean {
  let turns = 0;
  let crossed = 0;
  let compared = 0;
  shape.index.query({ minX: p.x, minY: p.y, maxX: shape.box.maxX, maxY: p.y }, (i) => {
    compared++;
    const { from, to } = shape.edges[i]!;
    if (from.y <= p.y === to.y <= p.y) return;
    const side = (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
    const goesDown = to.y > from.y;
    if (goesDown ? side <= 0 : side >= 0) return;
    crossed++;
    turns += goesDown ? 1 : -1;
  });
  spend(compared);
  if (shape.isEvenOdd ? crossed % 2 === 1 : turns !== 0) return true;
  return isOnEdge(p, shape);
}

function isOnEdge(p: Point, { index, edges }: ClipShape): boolean {
  const r = ALONG_CLIP_MM;
  let isOn = false;
  index.query({ minX: p.x - r, minY: p.y - r, maxX: p.x + r, maxY: p.y + r }, (i) => {
    const { from, to } = edges[i]!;
    isOn = pointToSegment(p, from, to) <= r;
    return isOn;
  });
  return isOn;
}
