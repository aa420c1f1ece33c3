import { applyAffine, curveFromPolyline, curveSteps, distanceBetween } from '@hidebound/geometry';
import type { Affine, Curve, CurveSegment, Point } from '@hidebound/geometry';
import type { StrapLane } from '../model/layout.js';
import { SAME_LINE_MM, acrossAxis, alongAxis, onAxis } from './contour.js';
import type { Axis, Contour } from './contour.js';

/** What a lane's straps come to: their ends, one by one, and the long lines, each once. */
export interface LaneCuts {
  readonly ends: readonly Contour[];
  readonly lines: readonly Contour[];
}

/** A stretch of a strap's side, along and across the lane. */
interface Side {
  readonly across: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The straps of a lane parted into their ends and the long lines that they share. Sides that lie on one line, as they
 * do without kerf, or with just the kerf that the lane was laid for, become one line, from the first strap's start to
 * the last one's end; sides that lie apart stay two.
 */
export function laneCuts(
  lane: StrapLane,
  straps: readonly Contour[],
  toFile: Affine,
  bridgesPerStrap: number,
): LaneCuts {
  const axis = laneAxis(lane, toFile);
  const sides: Side[] = [];
  const ends: Contour[] = [];
  for (const strap of straps) {
    const parted = partStrap(strap, axis);
    sides.push(...parted.sides);
    ends.push(...parted.ends.map((curve): Contour => openPart(strap, curve, lane.id)));
  }
  return { ends, lines: sameLines(sides).map((line) => lineContour(line, axis, lane.id, bridgesPerStrap)) };
}

function laneAxis(lane: StrapLane, toFile: Affine): Axis {
  const from = applyAffine(toFile, lane.from);
  const to = applyAffine(toFile, lane.to);
  const length = distanceBetween(from, to);
  return { from, unit: { x: (to.x - from.x) / length, y: (to.y - from.y) / length } };
}

function openPart({ kind, of }: Contour, curve: Curve, lane: string): Contour {
  return { kind, of, curves: [curve], waste: 'none', lane, bridgesAtMm: [] };
}

interface PartedStrap {
  readonly sides: readonly Side[];
  readonly ends: readonly Curve[];
}

/** A strap's line without its straight sides along the lane. A strap that has none stays whole. */
function partStrap(strap: Contour, axis: Axis): PartedStrap {
  const [curve] = strap.curves as [Curve];
  const steps = curveSteps(curve);
  const box = widthOf(curve, axis);
  const isSide = steps.map(({ from, segment }) => liesOnSide(from, segment, axis, box));
  const first = isSide.indexOf(true);
  if (first < 0) return { sides: [], ends: strap.curves };
  const sides: Side[] = [];
  const ends: Curve[] = [];
  let end: { readonly start: Point; readonly segments: CurveSegment[] } | undefined;
  for (let i = 1; i <= steps.length; i++) {
    const at = (first + i) % steps.length;
    const { from, segment } = steps[at]!;
    if (!isSide[at]!) {
      end ??= { start: from, segments: [] };
      end.segments.push(segment);
      continue;
    }
    if (end !== undefined) ends.push({ ...end, closed: false });
    end = undefined;
    sides.push(sideOf(from, segment.to, axis));
  }
  return { sides, ends };
}

interface Width {
  readonly low: number;
  readonly high: number;
}

function widthOf(curve: Curve, axis: Axis): Width {
  const across = [curve.start, ...curve.segments.map(({ to }) => to)].map((p) => acrossAxis(axis, p));
  return { low: Math.min(...across), high: Math.max(...across) };
}

function liesOnSide(from: Point, segment: CurveSegment, axis: Axis, { low, high }: Width): boolean {
  if (segment.kind !== 'line') return false;
  const [a, b] = [acrossAxis(axis, from), acrossAxis(axis, segment.to)];
  const near = (line: number): boolean =>
    Math.abs(a - line) <= SAME_LINE_MM && Math.abs(b - line) <= SAME_LINE_MM;
  return near(low) || near(high);
}

function sideOf(from: Point, to: Point, axis: Axis): Side {
  const [a, b] = [alongAxis(axis, from), alongAxis(axis, to)];
  return {
    across: (acrossAxis(axis, from) + acrossAxis(axis, to)) / 2,
    from: Math.min(a, b),
    to: Math.max(a, b),
  };
}

/** Sides in the order across the lane, those on one line together. */
function sameLines(sides: readonly Side[]): (readonly Side[])[] {
  const sorted = [...sides].sort((a, b) => a.across - b.across || a.from - b.from);
  const lines: Side[][] = [];
  for (const side of sorted) {
    const line = lines[lines.length - 1];
    if (line !== undefined && side.across - line[0]!.across <= SAME_LINE_MM) line.push(side);
    else lines.push([side]);
  }
  return lines;
}

function lineContour(sides: readonly Side[], axis: Axis, lane: string, bridgesPerStrap: number): Contour {
  const across = sides.reduce((sum, side) => sum + side.across, 0) / sides.length;
  const from = Math.min(...sides.map((side) => side.from));
  const to = Math.max(...sides.map((side) => side.to));
  return {
    kind: 'cut',
    of: { kind: 'lane', id: lane },
    curves: [curveFromPolyline([onAxis(axis, from, across), onAxis(axis, to, across)], false)],
    waste: 'none',
    lane,
    bridgesAtMm: bridgePlaces(sides, bridgesPerStrap).map((along) => along - from),
  };
}

/** Half of a strap's bridges on each of its sides; where two straps share a line, those of the longer one serve both. */
function bridgePlaces(sides: readonly Side[], bridgesPerStrap: number): number[] {
  const each = Math.ceil(bridgesPerStrap / 2);
  const longestFirst = [...sides].sort((a, b) => b.to - b.from - (a.to - a.from) || a.from - b.from);
  const places: number[] = [];
  for (const { from, to } of longestFirst) {
    const missing = each - places.filter((at) => at > from && at < to).length;
    for (let i = 0; i < missing; i++) places.push(from + ((to - from) * (i + 0.5)) / missing);
  }
  return places.sort((a, b) => a - b);
}
