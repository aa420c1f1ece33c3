import { distanceBetween, roundPoint } from '../point.js';
import { convexHull } from '../shape/hull.js';
import { lineMeeting, segmentsTouch, turnOf } from '../shape/orientation.js';
import { pointInRing } from '../shape/point-in-ring.js';
import { ringArea, ringBox, ringPerimeter } from '../shape/ring.js';
import { GRID_MM } from '../tolerance.js';
import type { Point, Ring } from '../types/shape.js';
import { CONVEX_COST, CORNER_WORTH_MM2, LENGTH_WORTH_MM } from './constants.js';

export interface StraightenOptions {
  /** True if the area within a patch may be added. */
  readonly isClear: (patch: Ring) => boolean;
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
  /** The area that is added, from `from` over the new edges to `to` and back along the old ones. */
  readonly patch: Ring;
  readonly areaMm2: number;
}

/** Takes out corner after corner, the least added area first, while the outline gets cheaper by it. */
function dropCorners(ring: Ring, options: StraightenOptions): Ring {
  let head = linked(ring);
  let count = ring.length;
  const blocked = new Set<Corner>();
  while (count > 3) {
    const best = leastChange(head, blocked);
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

function leastChange(head: Corner, blocked: ReadonlySet<Corner>): Corner | undefined {
  let best: Corner | undefined;
  let corner = head;
  do {
    if (corner.isStale) {
      corner.change = changeAt(corner);
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

function changeAt(corner: Corner): Change | undefined {
  const { previous, next } = corner;
  if (turnOf(previous.point, corner.point, next.point) <= 0) {
    const patch = [previous.point, next.point, corner.point];
    return worthwhile({ from: previous, to: next, corner: undefined, patch });
  }
  const last = next.next;
  if (last === previous || turnOf(corner.point, next.point, last.point) <= 0) return undefined;
  const drawn = drawnOut(previous.point, corner.point, next.point, last.point);
  if (drawn === undefined) return undefined;
  const patch = [previous.point, drawn, last.point, next.point, corner.point];
  return worthwhile({ from: previous, to: last, corner: drawn, patch });
}

/** Where the edges before and after b-c meet, on the grid, and so that the new edges leave b and c inside. */
function drawnOut(a: Point, b: Point, c: Point, d: Point): Point | undefined {
  const meeting = lineMeeting(a, b, c, d);
  if (meeting === undefined || !liesBeyond(a, b, meeting) || !liesBeyond(d, c, meeting)) return undefined;
  const near = roundPoint(meeting);
  for (const [dx, dy] of NEIGHBOURS) {
    const p = roundPoint({ x: near.x + dx * GRID_MM, y: near.y + dy * GRID_MM });
    if (turnOf(a, p, b) >= 0 && turnOf(p, d, c) >= 0) return p;
  }
  return undefined;
}

/** Steps of the grid around a place, the place itself first. */
const NEIGHBOURS = [
  [0, 0],
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
  [1, 1],
  [-1, 1],
  [-1, -1],
  [1, -1],
] as const;

/** The change with what it adds, if the outline gets cheaper by it. */
function worthwhile(change: Omit<Change, 'areaMm2'>): Change | undefined {
  const { from, to, corner, patch } = change;
  const ends = distanceBetween(from.point, to.point);
  const way = patch.slice(corner === undefined ? 1 : 2);
  let before = 0;
  for (let i = 0; i < way.length; i++) before += distanceBetween(way[i]!, way[i + 1] ?? from.point);
  const after =
    corner === undefined ? ends : distanceBetween(from.point, corner) + distanceBetween(corner, to.point);
  const areaMm2 = Math.abs(ringArea(patch));
  if (areaMm2 + LENGTH_WORTH_MM * (after - before) > CORNER_WORTH_MM2) return undefined;
  return { ...change, areaMm2 };
}

function liesBeyond(from: Point, to: Point, p: Point): boolean {
  return (p.x - to.x) * (to.x - from.x) + (p.y - to.y) * (to.y - from.y) >= 0;
}

/** True if the rest of the outline stays out of the patch and meets the new edges at their ends only. */
function isSimple({ from, to, corner, patch }: Change): boolean {
  const fresh = corner === undefined ? [from.point, to.point] : [from.point, corner, to.point];
  const { minX, maxX, minY, maxY } = ringBox(patch);
  for (let at = to; at !== from; at = at.next) {
    const a = at.point;
    const b = at.next.point;
    if (Math.max(a.x, b.x) < minX || Math.min(a.x, b.x) > maxX) continue;
    if (Math.max(a.y, b.y) < minY || Math.min(a.y, b.y) > maxY) continue;
    if (at !== to && pointInRing(a, patch) !== 'outside') return false;
    for (let i = 0; i + 1 < fresh.length; i++) {
      // Edges next to the change end where the new ones do.
      if ((at === to && i + 2 === fresh.length) || (at.next === from && i === 0)) continue;
      if (segmentsTouch(a, b, fresh[i]!, fresh[i + 1]!)) return false;
    }
  }
  return true;
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
