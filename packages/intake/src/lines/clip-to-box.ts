import { curveSteps } from '@hidebound/geometry';
import type { Box, Curve, CurveSegment, Point } from '@hidebound/geometry';
import { crossingsOf, partOfSegment, pointOfSegment } from './segment-parts.js';

/** Places that lie this little beyond an edge count as on it: rounding of crossings that were computed. */
const ON_EDGE_MM = 1e-7;

/**
 * What of a curve lies within a box, its edges included. Lines, arcs and cubics stay what they are, split where they
 * leave the box; such an end lies exactly on the edge. A closed curve that leaves the box becomes open ones; one that
 * only touches an edge from within stays as it is. Of lines along an edge, those on the edge are within.
 */
export function clipToBox(curve: Curve, box: Box): Curve[] {
  const chains: Chain[] = [];
  let open: Chain | undefined;
  for (const { from, segment } of curveSteps(curve)) {
    for (const { first, last } of insideRanges(from, segment, box)) {
      const part = { ...partOfSegment(from, segment, first, last) };
      const start = first === 0 ? from : ontoEdge(part.from, box);
      const piece = last === 1 ? part.segment : { ...part.segment, to: ontoEdge(part.segment.to, box) };
      if (first === 0 && open !== undefined) open.segments.push(piece);
      else {
        open = { start, segments: [piece] };
        chains.push(open);
      }
      if (last < 1) open = undefined;
    }
    if (open !== undefined && !samePlace(open.segments.at(-1)!.to, segment.to)) open = undefined;
  }
  return finish(chains, curve);
}

/** `clipToBox` for a curve that may lie wholly within or wholly outside, as most do: its box is asked first. */
export function clipBoxed(curve: Curve, curveBox: Box, box: Box): readonly Curve[] {
  if (
    curveBox.minX >= box.minX &&
    curveBox.maxX <= box.maxX &&
    curveBox.minY >= box.minY &&
    curveBox.maxY <= box.maxY
  )
    return [curve];
  const isOff =
    curveBox.minX > box.maxX ||
    curveBox.maxX < box.minX ||
    curveBox.minY > box.maxY ||
    curveBox.maxY < box.minY;
  return isOff ? [] : clipToBox(curve, box);
}

interface Chain {
  readonly start: Point;
  readonly segments: CurveSegment[];
}

/** A closed curve that never left stays closed; of one that did, the last chain runs on into the first. */
function finish(chains: readonly Chain[], curve: Curve): Curve[] {
  const whole = chains[0];
  if (whole === undefined) return [];
  if (chains.length === 1 && whole.segments.length === curve.segments.length) {
    const isWhole = whole.segments.every((segment, i) => segment === curve.segments[i]);
    if (isWhole && samePlace(whole.start, curve.start)) return [curve];
  }
  const last = chains.at(-1)!;
  const runsOn =
    curve.closed &&
    chains.length > 1 &&
    samePlace(whole.start, curve.start) &&
    samePlace(last.segments.at(-1)!.to, curve.start);
  const rest = runsOn
    ? [{ start: last.start, segments: [...last.segments, ...whole.segments] }, ...chains.slice(1, -1)]
    : chains;
  return rest.map(({ start, segments }) => ({ start, segments, closed: false }));
}

interface Range {
  readonly first: number;
  readonly last: number;
}

/** The ranges of the segment's parameter within the box. */
function insideRanges(from: Point, segment: CurveSegment, box: Box): Range[] {
  const controls = controlPoints(from, segment);
  if (controls !== undefined) {
    if (controls.every((p) => isWithin(p, box))) return [{ first: 0, last: 1 }];
    if (areBeyondOneSide(controls, box)) return [];
  }
  const cuts = [0, ...crossingsOf(from, segment, box), 1];
  const ranges: { first: number; last: number }[] = [];
  for (let i = 1; i < cuts.length; i++) {
    const first = cuts[i - 1]!;
    const last = cuts[i]!;
    if (last <= first || !isWithin(pointOfSegment(from, segment, (first + last) / 2), box)) continue;
    const before = ranges.at(-1);
    if (before?.last === first) before.last = last;
    else ranges.push({ first, last });
  }
  return ranges;
}

/** Points among which the segment lies; nothing for an arc. */
function controlPoints(from: Point, segment: CurveSegment): Point[] | undefined {
  if (segment.kind === 'arc') return undefined;
  return segment.kind === 'line' ? [from, segment.to] : [from, segment.handle1, segment.handle2, segment.to];
}

function areBeyondOneSide(points: readonly Point[], box: Box): boolean {
  return (
    points.every((p) => p.x < box.minX - ON_EDGE_MM) ||
    points.every((p) => p.x > box.maxX + ON_EDGE_MM) ||
    points.every((p) => p.y < box.minY - ON_EDGE_MM) ||
    points.every((p) => p.y > box.maxY + ON_EDGE_MM)
  );
}

function isWithin({ x, y }: Point, box: Box): boolean {
  return (
    x >= box.minX - ON_EDGE_MM &&
    x <= box.maxX + ON_EDGE_MM &&
    y >= box.minY - ON_EDGE_MM &&
    y <= box.maxY + ON_EDGE_MM
  );
}

/** A computed crossing, with the coordinate that it crosses set to the edge's own. */
function ontoEdge({ x, y }: Point, box: Box): Point {
  return { x: nearestOf(x, box.minX, box.maxX), y: nearestOf(y, box.minY, box.maxY) };
}

function nearestOf(value: number, low: number, high: number): number {
  const slack = ON_EDGE_MM * 10;
  if (Math.abs(value - low) <= slack) return low;
  return Math.abs(value - high) <= slack ? high : value;
}

function samePlace(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}
