import type { Point, Ring } from '../types/shape.js';
import { pointToSegment } from './distance.js';
import { lineMeeting, segmentsTouch, turnOf } from './orientation.js';
import { orientRing, reverseRing } from './ring.js';

/**
 * A ring of fewer corners that contains the given one (to 1e-9 mm) and lies within `toleranceMm` of it. Drops corners
 * in hollows, and edges on bulges (their neighbours are drawn out until they meet), the least change first, and
 * never so that the ring would touch itself. Oriented as an outer ring; corners are not rounded.
 */
export function simplifyGrowing(ring: Ring, toleranceMm: number): Ring {
  return simplify(orientRing(ring, 'outer'), toleranceMm);
}

/** A ring of fewer corners that the given one contains; otherwise as `simplifyGrowing`. */
export function simplifyShrinking(ring: Ring, toleranceMm: number): Ring {
  return reverseRing(simplify(orientRing(ring, 'opening'), toleranceMm));
}

/** A corner in a circular list. */
interface Corner {
  readonly point: Point;
  /** The edge of the given ring that it stands for: of an old corner the one that leaves it, of a new one the nearest. */
  readonly edge: number;
  previous: Corner;
  next: Corner;
  /** The cheapest change here, recomputed when a neighbour changes. */
  change: Change | undefined;
  stale: boolean;
}

/** Replaces the corners after `from` up to before `to` by `corner`, or by nothing. */
interface Change {
  readonly from: Corner;
  readonly to: Corner;
  readonly corner: Point | undefined;
  /** Of `corner`, as for a corner of the list. */
  readonly edge: number;
  /** No point of the new edges is further from the given ring, nor the other way round. */
  readonly cost: number;
}

/** The side towards which a positive turn bends stays covered: the inside of an outer ring, the outside of an opening. */
function simplify(ring: Ring, toleranceMm: number): Ring {
  const list = linked(ring);
  let head = list[0]!;
  let count = ring.length;
  const blocked = new Set<Corner>();
  while (count > 3) {
    const best = cheapest(ring, head, toleranceMm, blocked);
    if (best === undefined) break;
    if (!isClear(best.change!, toleranceMm)) {
      blocked.add(best);
      continue;
    }
    const { from, to } = best.change!;
    apply(best.change!);
    count -= 1;
    head = from;
    for (const touched of [from.previous.previous, from.previous, from, from.next, to, to.next]) {
      touched.stale = true;
      blocked.delete(touched);
    }
  }
  return corners(head).map((corner) => corner.point);
}

function linked(ring: Ring): Corner[] {
  const list = ring.map(
    (point, edge) => ({ point, edge, change: undefined, stale: true }) as unknown as Corner,
  );
  list.forEach((corner, i) => {
    corner.next = list[(i + 1) % list.length]!;
    corner.previous = list[(i + list.length - 1) % list.length]!;
  });
  return list;
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

function cheapest(
  ring: Ring,
  head: Corner,
  toleranceMm: number,
  blocked: ReadonlySet<Corner>,
): Corner | undefined {
  let best: Corner | undefined;
  let corner = head;
  do {
    if (corner.stale) {
      corner.change = changeAt(ring, corner);
      corner.stale = false;
    }
    const cost = corner.change?.cost ?? Infinity;
    if (cost <= toleranceMm && !blocked.has(corner) && (best === undefined || cost < best.change!.cost))
      best = corner;
    corner = corner.next;
  } while (corner !== head);
  return best;
}

/** Drops this corner if the ring is hollow (or straight) here, else draws the neighbours of the edge after it together. */
function changeAt(ring: Ring, corner: Corner): Change | undefined {
  const before = corner.previous;
  const after = corner.next;
  if (turnOf(before.point, corner.point, after.point) <= 0) {
    const cost = furthestCorner(ring, before, after, before.edge + 1, after.edge);
    return { from: before, to: after, corner: undefined, edge: 0, cost };
  }
  const last = after.next;
  if (last === before || turnOf(corner.point, after.point, last.point) <= 0) return undefined;
  const meeting = lineMeeting(before.point, corner.point, after.point, last.point);
  if (meeting === undefined || !liesBeyond(before.point, corner.point, meeting)) return undefined;
  if (!liesBeyond(last.point, after.point, meeting)) return undefined;
  const near = nearestEdge(ring, meeting, before.edge, last.edge);
  const cost = Math.max(
    near.distance,
    furthestCorner(ring, before, { point: meeting }, before.edge + 1, near.edge),
    furthestCorner(ring, { point: meeting }, last, near.edge + 1, last.edge),
  );
  return { from: before, to: last, corner: meeting, edge: near.edge, cost };
}

/**
 * Greatest distance of the given ring's corners first..last (cyclic) from the edge that is to replace them. Between its
 * feet the edge is no further from them either: the chain passes every place along it at no greater distance.
 */
function furthestCorner(
  ring: Ring,
  from: Pick<Corner, 'point'>,
  to: Pick<Corner, 'point'>,
  first: number,
  last: number,
): number {
  let furthest = 0;
  const count = cyclicSpan(ring, first, last + 1);
  for (let k = 0; k < count; k++) {
    const p = ring[(first + k) % ring.length]!;
    furthest = Math.max(furthest, pointToSegment(p, from.point, to.point));
  }
  return furthest;
}

function nearestEdge(ring: Ring, p: Point, first: number, last: number): { edge: number; distance: number } {
  let edge = first;
  let distance = Infinity;
  const count = cyclicSpan(ring, first, last) + 1;
  for (let k = 0; k < count; k++) {
    const i = (first + k) % ring.length;
    const d = pointToSegment(p, ring[i]!, ring[(i + 1) % ring.length]!);
    if (d < distance) {
      distance = d;
      edge = i;
    }
  }
  return { edge, distance };
}

/** Steps from one number up to another around the ring. */
function cyclicSpan(ring: Ring, from: number, to: number): number {
  return (((to - from) % ring.length) + ring.length) % ring.length;
}

function liesBeyond(from: Point, to: Point, p: Point): boolean {
  return (p.x - to.x) * (to.x - from.x) + (p.y - to.y) * (to.y - from.y) >= 0;
}

/** True if the new edges meet nothing of the rest of the ring and nothing lies between them and the old ones. */
function isClear(change: Change, reach: number): boolean {
  const { from, to, corner } = change;
  const fresh = corner === undefined ? [from.point, to.point] : [from.next.point, corner, to.previous.point];
  const patch = corner === undefined ? [from.point, from.next.point, to.point] : fresh;
  const minX = Math.min(...patch.map((p) => p.x)) - reach;
  const maxX = Math.max(...patch.map((p) => p.x)) + reach;
  const minY = Math.min(...patch.map((p) => p.y)) - reach;
  const maxY = Math.max(...patch.map((p) => p.y)) + reach;
  for (let at = to; at !== from; at = at.next) {
    const a = at.point;
    const b = at.next.point;
    if (Math.max(a.x, b.x) < minX || Math.min(a.x, b.x) > maxX) continue;
    if (Math.max(a.y, b.y) < minY || Math.min(a.y, b.y) > maxY) continue;
    if (at !== to && isInTriangle(a, patch)) return false;
    for (let i = 0; i + 1 < fresh.length; i++) {
      const atEnd = (at === to && i + 2 === fresh.length) || (at.next === from && i === 0);
      if (atEnd ? liesOnFresh(at, to, from, fresh) : segmentsTouch(a, b, fresh[i]!, fresh[i + 1]!))
        return false;
    }
  }
  return true;
}

/** The edges that share an end with the new ones may only touch them there. */
function liesOnFresh(at: Corner, to: Corner, from: Corner, fresh: readonly Point[]): boolean {
  // Drawn-out edges go straight on from old ones, so what meets those at their other ends stays clear.
  if (fresh.length > 2 || (at === to && at.next === from)) return false;
  const own = at === to ? at.next.point : at.point;
  const [s, t] = fresh;
  return turnOf(s!, t!, own) === 0 && isWithin(s!, t!, own);
}

function isWithin(a: Point, b: Point, p: Point): boolean {
  return (
    (p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y) > 0 &&
    (p.x - b.x) * (a.x - b.x) + (p.y - b.y) * (a.y - b.y) > 0
  );
}

function isInTriangle(p: Point, [a, b, c]: readonly Point[]): boolean {
  const s = turnOf(a!, b!, p);
  const t = turnOf(b!, c!, p);
  const u = turnOf(c!, a!, p);
  return (s >= 0 && t >= 0 && u >= 0) || (s <= 0 && t <= 0 && u <= 0);
}

/** Either change takes one corner out of the ring on balance. */
function apply({ from, to, corner, edge }: Change): void {
  if (corner === undefined) {
    from.next = to;
    to.previous = from;
    return;
  }
  const fresh: Corner = { point: corner, edge, previous: from, next: to, change: undefined, stale: true };
  from.next = fresh;
  to.previous = fresh;
}
