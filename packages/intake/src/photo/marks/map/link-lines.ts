import type { Point } from '@hidebound/geometry';

/** The middle of a stroke, in cells. */
export interface Way {
  readonly way: readonly Point[];
}

/** How far apart ends may lie that point at each other and belong together. */
export interface LinkOptions {
  readonly stepMm: number;
  readonly mostGapMm: number;
}

/** A ring may stay open by this share of its length. */
const RING_GAP_SHARE = 0.18;
const LEAST_RING_GAP_MM = 30;
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
export function linksBetween(strokes: readonly Way[], { stepMm, mostGapMm }: LinkOptions): Link[] {
  const ends = strokes.flatMap((stroke, i) => endsOf(stroke, i, stepMm));
  const gaps: { readonly i: number; readonly j: number; readonly mm: number }[] = [];
  ends.forEach((one, i) => {
    ends.slice(i + 1).forEach((other, offset) => {
      const mm = Math.hypot(other.at.x - one.at.x, other.at.y - one.at.y) * stepMm;
      if (mm <= mostGapMm && goesOn(one, other)) gaps.push({ i, j: i + 1 + offset, mm });
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
export function closingLink(
  { way, lengthMm }: Way & { readonly lengthMm: number },
  stepMm: number,
): Link | undefined {
  const from = way[0];
  const to = way[way.length - 1];
  if (from === undefined || to === undefined || lengthMm < LEAST_RING_MM) return undefined;
  const most = Math.min(MOST_RING_GAP_MM, Math.max(LEAST_RING_GAP_MM, RING_GAP_SHARE * lengthMm));
  return Math.hypot(to.x - from.x, to.y - from.y) * stepMm <= most ? { from, to } : undefined;
}

function endsOf({ way }: Way, stroke: number, stepMm: number): End[] {
  if (way.length < 2) return [];
  const back = Math.min(way.length - 1, Math.max(1, Math.round(END_MM / stepMm)));
  const end = (at: Point, before: Point): End => {
    const length = Math.hypot(at.x - before.x, at.y - before.y) || 1;
    return { stroke, at, way: { x: (at.x - before.x) / length, y: (at.y - before.y) / length } };
  };
  return [end(way[0]!, way[back]!), end(way[way.length - 1]!, way[way.length - 1 - back]!)];
}

function goesOn(one: End, other: End): boolean {
  if (one.stroke === other.stroke) return false;
  const cos = Math.cos((MOST_TURN_DEG * Math.PI) / 180);
  return pointsAt(one, other) >= cos && pointsAt(other, one) >= cos;
}

function pointsAt({ at, way }: End, { at: to }: End): number {
  const length = Math.hypot(to.x - at.x, to.y - at.y);
  return length === 0 ? 1 : ((to.x - at.x) * way.x + (to.y - at.y) * way.y) / length;
}

/** Sets the cells along the gap, three cells wide. */
export function drawLink(
  { from, to }: Link,
  mask: Uint8Array,
  { width, height }: { readonly width: number; readonly height: number },
): void {
  const steps = Math.max(1, Math.ceil(2 * Math.hypot(to.x - from.x, to.y - from.y)));
  for (let s = 0; s <= steps; s++) {
    const x = Math.round(from.x + (s / steps) * (to.x - from.x));
    const y = Math.round(from.y + (s / steps) * (to.y - from.y));
    for (let j = Math.max(0, y - 1); j <= Math.min(height - 1, y + 1); j++) {
      for (let i = Math.max(0, x - 1); i <= Math.min(width - 1, x + 1); i++) mask[j * width + i] = 255;
    }
  }
}
