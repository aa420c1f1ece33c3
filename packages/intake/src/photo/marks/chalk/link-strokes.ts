import type { Point } from '@hidebound/geometry';
import type { Grid } from '../map/grid.js';
import type { Stroke } from './strokes.js';

/** The hand lifts, or the chalk skips: ends this near each other that point at each other belong together. */
const MOST_GAP_MM = 30;

/** A ring may stay open by this share of its length. */
const RING_GAP_SHARE = 0.18;
const MOST_RING_GAP_MM = 60;
const LEAST_RING_MM = 110;

/** How far from straight on an end may point past the other one. */
const MOST_TURN_DEG = 60;

/** The way before an end that tells where it points. */
const END_MM = 12;

/** A gap between two ends, in cells. */
export interface Link {
  readonly from: Point;
  readonly to: Point;
}

interface End {
  readonly stroke: number;
  readonly at: Point;
  /** Where the stroke would go on, of length 1. */
  readonly way: Point;
}

/** Gaps between strokes that go on in each other, the shortest first; each end is used once. */
export function linksBetween(strokes: readonly Stroke[], grid: Grid): Link[] {
  const ends = strokes.flatMap((stroke, i) => endsOf(stroke, i, grid));
  const gaps: { readonly i: number; readonly j: number; readonly mm: number }[] = [];
  ends.forEach((one, i) => {
    ends.slice(i + 1).forEach((other, offset) => {
      const mm = Math.hypot(other.at.x - one.at.x, other.at.y - one.at.y) * grid.stepX;
      if (goesOn(one, other, mm)) gaps.push({ i, j: i + 1 + offset, mm });
    });
  });
  gaps.sort((one, other) => one.mm - other.mm || one.i - other.i || one.j - other.j);
  const used = new Set<number>();
  const links: Link[] = [];
  for (const { i, j } of gaps) {
    if (used.has(i) || used.has(j)) continue;
    used.add(i).add(j);
    links.push({ from: ends[i]!.at, to: ends[j]!.at });
  }
  return links;
}

/** The gap of a stroke that comes back nearly to where it began, as a ring that was not closed. */
export function closingLink({ way, lengthMm }: Stroke, grid: Grid): Link | undefined {
  const from = way[0];
  const to = way[way.length - 1];
  if (from === undefined || to === undefined || lengthMm < LEAST_RING_MM) return undefined;
  const most = Math.min(MOST_RING_GAP_MM, Math.max(MOST_GAP_MM, RING_GAP_SHARE * lengthMm));
  return Math.hypot(to.x - from.x, to.y - from.y) * grid.stepX <= most ? { from, to } : undefined;
}

function endsOf({ way }: Stroke, stroke: number, grid: Grid): End[] {
  if (way.length < 2) return [];
  const back = Math.min(way.length - 1, Math.max(1, Math.round(END_MM / grid.stepX)));
  const end = (at: Point, before: Point): End => {
    const length = Math.hypot(at.x - before.x, at.y - before.y) || 1;
    return { stroke, at, way: { x: (at.x - before.x) / length, y: (at.y - before.y) / length } };
  };
  return [end(way[0]!, way[back]!), end(way[way.length - 1]!, way[way.length - 1 - back]!)];
}

function goesOn(one: End, other: End, mm: number): boolean {
  if (one.stroke === other.stroke || mm > MOST_GAP_MM) return false;
  const cos = Math.cos((MOST_TURN_DEG * Math.PI) / 180);
  return pointsAt(one, other) >= cos && pointsAt(other, one) >= cos;
}

function pointsAt({ at, way }: End, { at: to }: End): number {
  const length = Math.hypot(to.x - at.x, to.y - at.y);
  return length === 0 ? 1 : ((to.x - at.x) * way.x + (to.y - at.y) * way.y) / length;
}
