import { distanceBetween } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import {
  DASH_GAP_MM,
  DASH_RATIO,
  DASH_STRAIGHT,
  DASH_TURN_COS,
  FEWEST_DASHES,
  LONGEST_DASH_MM,
} from './limits.js';
import { cosBetween } from './strokes.js';
import type { Stroke } from './strokes.js';

/** Dashes of one line, in order, each turned the way of the line. */
export interface DashRow {
  readonly strokes: readonly Stroke[];
  readonly points: readonly Point[];
  readonly closed: boolean;
}

interface Link {
  readonly a: number;
  readonly b: number;
  readonly gap: number;
}

/** Ends of dash i are numbered 2i and 2i + 1. */
const otherEnd = (end: number) => end ^ 1;

/** Rows of short straight strokes that go on where the last one points to; the nearest are linked first. */
export function findDashRows(strokes: readonly Stroke[]): DashRow[] {
  const dashes = strokes.filter(isDash);
  const endPoint = (end: number) =>
    dashes[end >> 1]!.points[end % 2 === 0 ? 0 : dashes[end >> 1]!.points.length - 1]!;
  const linked = new Map<number, number>();
  for (const { a, b } of linksOf(dashes, endPoint)) {
    if (linked.has(a) || linked.has(b)) continue;
    linked.set(a, b);
    linked.set(b, a);
  }
  const seen = new Set<number>();
  const starts = dashes.flatMap((_, i) => [2 * i, 2 * i + 1].filter((end) => !linked.has(end)));
  const rows: DashRow[] = [];
  // Open rows first, from their ends; what is left comes round.
  for (const start of [...starts, ...dashes.map((_, i) => 2 * i)]) {
    if (seen.has(start >> 1)) continue;
    const order: number[] = [];
    let end: number | undefined = start;
    for (; end !== undefined && !seen.has(end >> 1); end = linked.get(otherEnd(end))) {
      seen.add(end >> 1);
      order.push(end);
    }
    if (order.length >= FEWEST_DASHES) rows.push(rowOf(dashes, order, end === start));
  }
  return rows;
}

function isDash({ points, closed, lengthMm }: Stroke): boolean {
  if (closed || lengthMm > LONGEST_DASH_MM) return false;
  return distanceBetween(points[0]!, points.at(-1)!) >= DASH_STRAIGHT * lengthMm;
}

function linksOf(dashes: readonly Stroke[], endPoint: (end: number) => Point): Link[] {
  const links: Link[] = [];
  const way = (end: number) => {
    const [p, q] = [endPoint(otherEnd(end)), endPoint(end)];
    return { x: q.x - p.x, y: q.y - p.y };
  };
  for (let a = 0; a < 2 * dashes.length; a++) {
    for (let b = a + 1; b < 2 * dashes.length; b++) {
      if (a >> 1 === b >> 1) continue;
      const [p, q] = [endPoint(a), endPoint(b)];
      const gap = distanceBetween(p, q);
      if (gap > DASH_GAP_MM || !isAlike(dashes[a >> 1]!, dashes[b >> 1]!)) continue;
      const over = { x: q.x - p.x, y: q.y - p.y };
      const back = { x: -over.x, y: -over.y };
      if (cosBetween(way(a), over) < DASH_TURN_COS || cosBetween(way(b), back) < DASH_TURN_COS) continue;
      links.push({ a, b, gap });
    }
  }
  return links.sort((p, q) => p.gap - q.gap || p.a - q.a || p.b - q.b);
}

function isAlike(a: Stroke, b: Stroke): boolean {
  return Math.max(a.lengthMm, b.lengthMm) <= DASH_RATIO * Math.min(a.lengthMm, b.lengthMm);
}

function rowOf(dashes: readonly Stroke[], order: readonly number[], closed: boolean): DashRow {
  const strokes = order.map((end) => dashes[end >> 1]!);
  const points = order.flatMap((end, i) =>
    end % 2 === 0 ? strokes[i]!.points : [...strokes[i]!.points].reverse(),
  );
  return { strokes, points, closed };
}
