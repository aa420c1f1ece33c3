import { curveSteps, endDirection, startDirection } from '@hidebound/geometry';
import type { Box, Point } from '@hidebound/geometry';
import type { DrawnLine } from '../drawing/drawn-line.js';
import { FIGURE_MAX_MM, SEEK_MM } from './limits.js';
import { dot, heightOf, widthOf } from './vectors.js';

/** Where a long line turns sharply: a place that two pages may both show. */
export interface Corner {
  readonly at: Point;
  readonly look: string;
  /** The ways in which its two sides leave it, in a fixed order. */
  readonly ways: readonly [Point, Point];
}

/** Sides that differ from going straight on by less make no corner (cosine of 25°): chords of a curve do not. */
const STRAIGHT_COS = 0.906;

/** Sides of one corner on two pages run alike to 10° (cosine). */
const SAME_WAY_COS = 0.985;

/** More corners than a page of pieces has come from lettering and hatching, and would take long to compare. */
const MAX_CORNERS = 60;

/** Corners of long lines that are not at the very edge of what the page shows. */
export function cornersOf(
  lines: readonly DrawnLine[],
  boxes: readonly Box[],
  looks: readonly string[],
  window: Box,
  isDropped: (line: number) => boolean,
): Corner[] {
  const found = lines.flatMap((line, i) => {
    const isLong = Math.max(widthOf(boxes[i]!), heightOf(boxes[i]!)) > FIGURE_MAX_MM;
    return isLong && !isDropped(i) ? cornersOfLine(line, looks[i]!) : [];
  });
  const inside = found.filter(
    ({ at }) =>
      at.x > window.minX + SEEK_MM &&
      at.x < window.maxX - SEEK_MM &&
      at.y > window.minY + SEEK_MM &&
      at.y < window.maxY - SEEK_MM,
  );
  return inside.length > MAX_CORNERS ? [] : inside;
}

function cornersOfLine({ curve }: DrawnLine, look: string): Corner[] {
  const steps = [...curveSteps(curve)];
  return steps.flatMap((step, k): Corner[] => {
    const next = steps[k + 1] ?? (curve.closed ? steps[0] : undefined);
    if (next === undefined) return [];
    const into = endDirection(step.from, step.segment);
    const on = startDirection(next.from, next.segment);
    if (dot(into, on) >= STRAIGHT_COS) return [];
    return [{ at: step.segment.to, look, ways: inOrder({ x: -into.x, y: -into.y }, on) }];
  });
}

/** Whichever way the line is drawn, the ways are told in one order. */
function inOrder(a: Point, b: Point): readonly [Point, Point] {
  return a.x * b.y - a.y * b.x >= 0 ? [a, b] : [b, a];
}

export function isSameCorner(a: Corner, b: Corner): boolean {
  return (
    a.look === b.look &&
    dot(a.ways[0], b.ways[0]) >= SAME_WAY_COS &&
    dot(a.ways[1], b.ways[1]) >= SAME_WAY_COS
  );
}
