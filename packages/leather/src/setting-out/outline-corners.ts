import { atan2Deg, distanceBetween } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import type { OutlineCorner } from './model.js';

/** Over how long a stretch before and behind a place the outline's turn is taken: ragged edges don't count. */
const REACH_MM = 30;
/** A gentler turn doesn't catch the eye. */
const LEAST_TURN_DEG = 30;
/** Of corners nearer together only the sharpest counts. */
const APART_MM = 80;

/** The corners of a hide's outline that a person finds without a drawing, the sharpest first. */
export function outlineCorners(ring: Ring): OutlineCorner[] {
  const walk = walkAlong(ring);
  const turns = ring
    .map((at, i) => ({ at, turnDeg: Math.abs(turnAt(walk, i)) }))
    .filter(({ turnDeg }) => turnDeg >= LEAST_TURN_DEG)
    .sort((p, q) => q.turnDeg - p.turnDeg);
  const corners: OutlineCorner[] = [];
  for (const { at } of turns) {
    if (corners.every((corner) => distanceBetween(corner.at, at) >= APART_MM))
      corners.push({ at, kind: 'corner' });
  }
  return corners;
}

/** The outermost points of a ring both ways along two directions: what can be found where there are no corners. */
export function outermostPoints(ring: Ring, directions: readonly Point[]): OutlineCorner[] {
  return directions.flatMap(({ x, y }) =>
    [1, -1].map((sign): OutlineCorner => {
      const reach = (p: Point): number => sign * (p.x * x + p.y * y);
      return { at: ring.reduce((far, p) => (reach(p) > reach(far) ? p : far)), kind: 'outermost point' };
    }),
  );
}

interface RingWalk {
  readonly ring: Ring;
  /** Length along the ring from its first corner to each one. */
  readonly at: readonly number[];
  readonly lengthMm: number;
}

/** A ring with its lengths, to walk along it. */
function walkAlong(ring: Ring): RingWalk {
  const at: number[] = [];
  let along = 0;
  ring.forEach((p, i) => {
    at.push(along);
    along += distanceBetween(p, ring[(i + 1) % ring.length]!);
  });
  return { ring, at, lengthMm: along };
}

function turnAt(walk: RingWalk, i: number): number {
  const here = walk.ring[i]!;
  const before = steppedFrom(walk, i, -1);
  const behind = steppedFrom(walk, i, 1);
  const [ax, ay] = [here.x - before.x, here.y - before.y];
  const [bx, by] = [behind.x - here.x, behind.y - here.y];
  return atan2Deg(ax * by - ay * bx, ax * bx + ay * by);
}

/** The place `REACH_MM` along the ring from a corner, forwards or backwards. */
function steppedFrom({ ring }: RingWalk, from: number, way: 1 | -1): Point {
  let left = REACH_MM;
  let i = from;
  for (let steps = 0; steps < ring.length; steps++) {
    const p = ring[i]!;
    const next = (i + way + ring.length) % ring.length;
    const q = ring[next]!;
    const length = distanceBetween(p, q);
    if (length >= left && length > 0) {
      const share = left / length;
      return { x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) };
    }
    left -= length;
    i = next;
  }
  return ring[i]!;
}
