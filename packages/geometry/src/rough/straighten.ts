import { distanceBetween, roundPoint } from '../point.js';
import { convexHull } from '../shape/hull.js';
import { lineMeeting, segmentsTouch, turnOf } from '../shape/orientation.js';
import { ringArea, ringPerimeter } from '../shape/ring.js';
import type { Point, Ring } from '../types/shape.js';
import { CONVEX_COST, CORNER_WORTH_MM2, LENGTH_WORTH_MM } from './constants.js';

export interface StraightenOptions {
  /** True if the area within a patch may be added. */
  readonly isClear: (patch: Ring) => boolean;
  /** Bulges may be drawn out to a new corner; else only hollows are cut across. */
  readonly drawsOut: boolean;
}

/** What an outline costs: leather, length of cut and corners, in mm². */
export function outlineCost(ring: Ring): number {
  return ringArea(ring) + LENGTH_WORTH_MM * ringPerimeter(ring) + CORNER_WORTH_MM2 * ring.length;
}

/**
 * An outline that contains the given one and is easy to cut by hand: few corners, straight runs, convex where that is
 * clear and costs little more. Corners lie on the grid.
 */
export function straighten(ring: Ring, options: StraightenOptions): Ring {
  const straight = dropCorners(ring, options);
  const hull = convexHull(straight);
  if (hull.length < 3 || hull.length === straight.length) return straight;
  if (!options.isClear(hull)) return straight;
  const convex = dropCorners(hull, options);
  return outlineCost(convex) <= CONVEX_COST * outlineCost(straight) ? convex : straight;
}

/** A corner in a circular list. */
interface Corner {
  readonly point: Point;
  previous: Corner;
  next: Corner;
  change: Change | undefined;
  isStale: boolean;
}

/** Cuts across the hollow at a corner, or draws the neighbours of the edge after it out until they meet. */
interface Change {
  readonly from: Corner;
  readonly to: Corner;
  readonly corner: Point | undefined;
  /** The area that is added. */
  readonly patch: Ring;
  readonly areaMm2: number;
}

/** Takes out corner after corner, the least added area first, while the outline gets cheaper by it. */
function dropCorners(ring: Ring, options: StraightenOptions): Ring {
  let head = linked(ring);
  let count = ring.length;
  const blocked = new Set<Corner>();
  while (count > 3) {
    const best = leastChange(head, options, blocked);
    if (best === undefined) break;
    const change = best.change!;
    if (!isSimple(change) || !options.isClear(change.patch)) {
      blocked.add(best);
      continue;
    }
    apply(change);
    count -= 1;
    head = change.from;
    const { from, to } = change;
    for (const touched of [from.previous.previous, from.previous, from, from.next, to, to.next]) {
      touched.isStale = true;
      blocked.delete(touched);
    }
  }
  return corners(head).map(({ point }) => point);
}

function linked(ring: Ring): Corner {
  const list = ring.map((point) => ({ point, change: undefined, isStale: true }) as unknown as Corner);
  list.forEach((corner, i) => {
    corner.next = list[(i + 1) % list.length]!;
    corner.previous = list[(i + list.length - 1) % list.length]!;
  });
  return list[0]!;
}

function corners(head: Corner): Corner[] {
  const list: Corner[] = [];
  let corner = head;
  do {
    list.push(corner);
    corner = corner.next;
  } while (corner !== head);
  return list;
}

function leastChange(
  head: Corner,
  options: StraightenOptions,
  blocked: ReadonlySet<Corner>,
): Corner | undefined {
  let best: Corner | undefined;
  let corner = head;
  do {
    if (corner.isStale) {
      corner.change = changeAt(corner, options);
      corner.isStale = false;
    }
    const { change } = corner;
    if (change !== undefined && !blocked.has(corner)) {
      if (best === undefined || change.areaMm2 < best.change!.areaMm2) best = corner;
    }
    corner = corner.next;
  } while (corner !== head);
  return best;
}

function changeAt(corner: Corner, { drawsOut }: StraightenOptions): Change | undefined {
  const { previous, next } = corner;
  if (turnOf(previous.point, corner.point, next.point) <= 0) {
    return worthwhile({ from: previous, to: next, corner: undefined }, [
      previous.point,
      next.point,
      corner.point,
    ]);
  }
  const last = next.next;
  if (!drawsOut || last === previous || turnOf(corner.point, next.point, last.point) <= 0) return undefined;
  const meeting = lineMeeting(previous.point, corner.point, next.point, last.point);
  if (meeting === undefined || !liesBeyond(previous.point, corner.point, meeting)) return undefined;
  if (!liesBeyond(last.point, next.point, meeting)) return undefined;
  const corner2 = roundPoint(meeting);
  return worthwhile({ from: previous, to: last, corner: corner2 }, [corner.point, corner2, next.point]);
}

function worthwhile(change: Omit<Change, 'patch' | 'areaMm2'>, patch: Ring): Change | undefined {
  const [a, b, c] = patch as readonly [Point, Point, Point];
  // Of a hollow, b is the far end of the new edge; of a bulge, the new corner.
  const lengthMm =
    change.corner === undefined
      ? distanceBetween(a, b) - distanceBetween(a, c) - distanceBetween(c, b)
      : distanceBetween(a, b) + distanceBetween(b, c) - distanceBetween(a, c);
  const areaMm2 = Math.abs(ringArea(patch));
  if (areaMm2 + LENGTH_WORTH_MM * lengthMm > CORNER_WORTH_MM2) return undefined;
  return { ...change, patch, areaMm2 };
}

function liesBeyond(from: Point, to: Point, p: Point): boolean {
  return (p.x - to.x) * (to.x - from.x) + (p.y - to.y) * (to.y - from.y) >= 0;
}

/** True if the rest of the outline stays out of the patch and meets the new edges at their ends only. */
function isSimple({ from, to, corner, patch }: Change): boolean {
  const fresh: readonly Point[] =
    corner === undefined ? [from.point, to.point] : [from.next.point, corner, to.previous.point];
  const minX = Math.min(...patch.map((p) => p.x));
  const maxX = Math.max(...patch.map((p) => p.x));
  const minY = Math.min(...patch.map((p) => p.y));
  const maxY = Math.max(...patch.map((p) => p.y));
  for (let at = to; at !== from; at = at.next) {
    const a = at.point;
    const b = at.next.point;
    if (Math.max(a.x, b.x) < minX || Math.min(a.x, b.x) > maxX) continue;
    if (Math.max(a.y, b.y) < minY || Math.min(a.y, b.y) > maxY) continue;
    if (at !== to && isInTriangle(a, patch)) return false;
    // Edges next to a hollow end where the new edge does; a bulge's new edges begin within the old ones.
    if (corner === undefined && (at === to || at.next === from)) continue;
    for (let i = 0; i + 1 < fresh.length; i++)
      if (segmentsTouch(a, b, fresh[i]!, fresh[i + 1]!)) return false;
  }
  return true;
}

function isInTriangle(p: Point, [a, b, c]: Ring): boolean {
  const s = turnOf(a!, b!, p);
  const t = turnOf(b!, c!, p);
  const u = turnOf(c!, a!, p);
  return (s >= 0 && t >= 0 && u >= 0) || (s <= 0 && t <= 0 && u <= 0);
}

/** Either change takes one corner out of the ring on balance. */
function apply({ from, to, corner }: Change): void {
  if (corner === undefined) {
    from.next = to;
    to.previous = from;
    return;
  }
  const fresh: Corner = { point: corner, previous: from, next: to, change: undefined, isStale: true };
  from.next = fresh;
  to.previous = fresh;
}
