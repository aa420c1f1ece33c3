// Small polygon helpers of the benchmarks. A ring is a list of {x, y} without a repeated last corner.

/** Corners that turn by less than this share of their two edges' lengths are taken as straight. */
const STRAIGHT = 1e-12;

/** Shoelace area, positive for an outer ring in the y-down frame. */
export function ringArea(ring) {
  let twice = 0;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length];
    twice += p.x * q.y - q.x * p.y;
  });
  return twice / 2;
}

export function ringBox(ring) {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { x, y } of ring) {
    box.minX = Math.min(box.minX, x);
    box.minY = Math.min(box.minY, y);
    box.maxX = Math.max(box.maxX, x);
    box.maxY = Math.max(box.maxY, y);
  }
  return box;
}

/** Greatest distance between two corners. */
export function ringDiameter(ring) {
  let most = 0;
  for (const p of ring) for (const q of ring) most = Math.max(most, (p.x - q.x) ** 2 + (p.y - q.y) ** 2);
  return Math.sqrt(most);
}

/**
 * A ring from [x, y] pairs as files hold them: without repeated corners and corners on a straight line, outer
 * rings positive (`isOpening`: negative), scaled last, so that whole numbers are compared as such. Never rounded.
 */
export function cleanRing(pairs, { scale = 1, isOpening = false } = {}) {
  let ring = pairs.map(([x, y]) => ({ x, y }));
  for (;;) {
    const kept = ring.filter((p, i) => isCorner(ring.at(i - 1), p, ring[(i + 1) % ring.length]));
    if (kept.length === ring.length) break;
    // Only one of several neighbours may go at a time where corners repeat: the rest is looked at again.
    ring = kept.length >= 3 ? kept : dropFirstFlat(ring);
    if (ring.length < 3) throw new Error('a ring encloses nothing');
  }
  const scaled = ring.map(({ x, y }) => ({ x: x * scale, y: y * scale }));
  return ringArea(scaled) > 0 === !isOpening ? scaled : scaled.reverse();
}

function isCorner(before, p, after) {
  const ax = p.x - before.x;
  const ay = p.y - before.y;
  const bx = after.x - p.x;
  const by = after.y - p.y;
  const size = Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by));
  return ax !== 0 || ay !== 0 ? Math.abs(ax * by - ay * bx) > STRAIGHT * size || size === 0 : false;
}

function dropFirstFlat(ring) {
  const flat = ring.findIndex((p, i) => !isCorner(ring.at(i - 1), p, ring[(i + 1) % ring.length]));
  return ring.filter((_, i) => i !== flat);
}

/** The part of a convex or non-convex ring within an axis-parallel box (Sutherland & Hodgman 1974), for its area. */
export function clipToBox(ring, { minX, minY, maxX, maxY }) {
  const sides = [
    ['x', 1, minX],
    ['x', -1, -maxX],
    ['y', 1, minY],
    ['y', -1, -maxY],
  ];
  return sides.reduce((rest, [axis, sign, limit]) => clipHalf(rest, axis, sign, limit), ring);
}

function clipHalf(ring, axis, sign, limit) {
  const clipped = [];
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length];
    const dp = sign * p[axis] - limit;
    const dq = sign * q[axis] - limit;
    if (dp >= 0) clipped.push(p);
    if (dp > 0 !== dq > 0 && dp !== dq) {
      const t = dp / (dp - dq);
      clipped.push({ x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) });
    }
  });
  return clipped;
}
