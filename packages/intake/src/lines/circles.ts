import { arcCentre, curveBox, distanceBetween, flattenCurve } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import {
  CIRCLE_CHORD_MM,
  CIRCLE_MM,
  CIRCLE_SHARE,
  STITCH_HOLE_MAX_SPACING_MM,
  STITCH_HOLE_NEIGHBOURS,
  STITCH_HOLE_RADIUS_MM,
  STITCH_ROW_MIN_HOLES,
  STITCH_ROW_SPACING_RATIO,
} from '../limits.js';

export interface Circle {
  readonly center: Point;
  readonly radius: number;
}

/** The circle that a closed curve is, however it is drawn (arcs, four or more cubics, many chords); else nothing. */
export function circleOfCurve(curve: Curve): Circle | undefined {
  if (!curve.closed) return undefined;
  const drawn = circleOfArcs(curve);
  if (drawn !== undefined) return drawn;
  const box = curveBox(curve);
  const center = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const radius = (box.maxX - box.minX + box.maxY - box.minY) / 4;
  const slack = Math.max(CIRCLE_MM, CIRCLE_SHARE * radius) + CIRCLE_CHORD_MM;
  if (Math.abs(box.maxX - box.minX - (box.maxY - box.minY)) > 2 * slack) return undefined;
  const points = flattenCurve(curve, Math.min(CIRCLE_CHORD_MM, radius / 20));
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    if (Math.abs(distanceBetween(b, center) - radius) > slack) return undefined;
    if (Math.abs(distanceBetween(middle, center) - radius) > slack) return undefined;
  }
  return { center, radius };
}

/** The common circle of a curve that is all arcs, the usual case; nothing if they differ by more than rounding does. */
function circleOfArcs(curve: Curve): Circle | undefined {
  let first: Circle | undefined;
  let turn = 0;
  let from = curve.start;
  for (const segment of curve.segments) {
    const circle = segment.kind === 'arc' ? arcCentre(from, segment.via, segment.to) : 'straight';
    if (circle === 'straight') return undefined;
    from = segment.to;
    first ??= circle;
    turn += circle.sweepDeg;
    if (distanceBetween(first.center, circle.center) > CIRCLE_MM) return undefined;
    if (Math.abs(first.radius - circle.radius) > CIRCLE_MM) return undefined;
  }
  const isOnce = Math.abs(Math.abs(turn) - 360) < 1;
  return first === undefined || !isOnce ? undefined : { center: first.center, radius: first.radius };
}

/** A row of holes: numbers of the circles in order; a closed row comes back to its first. */
export interface HoleRow {
  readonly members: readonly number[];
  readonly isClosed: boolean;
}

/**
 * Rows of four or more equal circles at nearly equal steps. Neighbours are linked from the nearest pair upwards, each
 * circle to two at most, a step at most 1.35 times the shortest one at either circle.
 */
export function findHoleRows(circles: readonly Circle[]): HoleRow[] {
  const pairs = nearPairs(circles);
  const shortest = circles.map(() => Infinity);
  for (const { i, j, distance } of pairs) {
    shortest[i] = Math.min(shortest[i]!, distance);
    shortest[j] = Math.min(shortest[j]!, distance);
  }
  const links: number[][] = circles.map(() => []);
  const root = circles.map((_, i) => i);
  const rootOf = (i: number): number => (root[i] === i ? i : (root[i] = rootOf(root[i]!)));
  const closing: { i: number; j: number }[] = [];
  for (const { i, j, distance } of pairs) {
    if (distance > STITCH_ROW_SPACING_RATIO * Math.min(shortest[i]!, shortest[j]!)) continue;
    if (links[i]!.length >= 2 || links[j]!.length >= 2) continue;
    if (rootOf(i) === rootOf(j)) {
      closing.push({ i, j });
      continue;
    }
    links[i]!.push(j);
    links[j]!.push(i);
    root[rootOf(i)] = rootOf(j);
  }
  const isClosing = new Set(
    closing.filter(({ i, j }) => links[i]!.length === 1 && links[j]!.length === 1).map(({ i }) => rootOf(i)),
  );
  return rowsOf(links, (i) => isClosing.has(rootOf(i)));
}

function rowsOf(links: readonly (readonly number[])[], closes: (i: number) => boolean): HoleRow[] {
  const rows: HoleRow[] = [];
  const seen = new Set<number>();
  links.forEach((own, i) => {
    if (own.length !== 1 || seen.has(i)) return;
    const members = [i];
    seen.add(i);
    for (;;) {
      const next = links[members.at(-1)!]!.find((j) => !seen.has(j));
      if (next === undefined) break;
      members.push(next);
      seen.add(next);
    }
    if (members.length >= STITCH_ROW_MIN_HOLES) rows.push({ members, isClosed: closes(i) });
  });
  return rows;
}

interface NearPair {
  readonly i: number;
  readonly j: number;
  readonly distance: number;
}

/** Pairs of equal circles no farther apart than stitches are, nearest first. */
function nearPairs(circles: readonly Circle[]): NearPair[] {
  const order = circles.map((_, i) => i).sort((a, b) => circles[a]!.center.x - circles[b]!.center.x || a - b);
  const pairs: NearPair[] = [];
  order.forEach((i, at) => {
    const a = circles[i]!;
    const own: NearPair[] = [];
    for (let k = at + 1; k < order.length; k++) {
      const j = order[k]!;
      const b = circles[j]!;
      if (b.center.x - a.center.x > STITCH_HOLE_MAX_SPACING_MM) break;
      const distance = distanceBetween(a.center, b.center);
      if (distance > STITCH_HOLE_MAX_SPACING_MM || distance === 0) continue;
      if (Math.abs(a.radius - b.radius) > STITCH_HOLE_RADIUS_MM) continue;
      if (own.length >= STITCH_HOLE_NEIGHBOURS && distance >= own.at(-1)!.distance) continue;
      own.push({ i: Math.min(i, j), j: Math.max(i, j), distance });
      own.sort((p, q) => p.distance - q.distance);
      own.length = Math.min(own.length, STITCH_HOLE_NEIGHBOURS);
    }
    pairs.push(...own);
  });
  return pairs.sort((p, q) => p.distance - q.distance || p.i - q.i || p.j - q.j);
}
