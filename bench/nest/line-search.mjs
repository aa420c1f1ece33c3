// Exact search along a line, for the baselines alone: where may a shape lie that moves along x at a fixed y?
// Two edges meet for an interval of x; the intervals of all edge pairs leave gaps, in each of which the shapes
// either overlap or don't (Egeblad, Nielsen & Odgaard 2007 sum overlaps of edge pairs in the same way).
// Uses + - * / and square root only, so that results are the same everywhere.

/** Contacts nearer than this are contacts; far below what the exact check forgives (2 µm). */
const CONTACT_MM = 1e-7;

/** Less overlap than this (mm²) is rounding: sums of edge pairs reach 1e7 mm² on a hide. */
const OVERLAP_MM2 = 4e-6;

/** A shape's edges but the level ones, lower end first, sorted by it; `sign` tells on which side its inside is. */
export function makeShape(rings) {
  const edges = rings.flatMap((ring) =>
    ring.flatMap((p, i) => {
      const q = ring[(i + 1) % ring.length];
      if (p.y === q.y) return [];
      return [p.y < q.y ? [p.x, p.y, q.x, q.y, -1] : [q.x, q.y, p.x, p.y, 1]];
    }),
  );
  edges.sort((a, b) => a[1] - b[1] || a[3] - b[3] || a[0] - b[0] || a[2] - b[2]);
  const points = rings.flat();
  const column = (k) => Float64Array.from(edges, (edge) => edge[k]);
  const ys1 = column(3);
  return {
    count: edges.length,
    x0: column(0),
    y0: column(1),
    y1: ys1,
    slope: Float64Array.from(edges, ([x0, y0, x1, y1]) => (x1 - x0) / (y1 - y0)),
    sign: column(4),
    // The highest end of all edges so far: edges before the first that reaches a level can be skipped.
    reach: runningMost(ys1),
    minX: Math.min(...points.map(({ x }) => x)),
    minY: Math.min(...points.map(({ y }) => y)),
    maxX: Math.max(...points.map(({ x }) => x)),
    maxY: Math.max(...points.map(({ y }) => y)),
    isConvex: rings.length === 1 && isConvexRing(rings[0]),
    area: rings.reduce((sum, ring) => sum + signedArea(ring), 0),
  };
}

function runningMost(values) {
  let most = -Infinity;
  return values.map((value) => (most = value > most ? value : most));
}

/** The same shape with x and y exchanged, to search along y. */
export function makeCrossShape(rings) {
  return makeShape(rings.map((ring) => ring.map(({ x, y }) => ({ x: y, y: x })).reverse()));
}

function signedArea(ring) {
  let twice = 0;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length];
    twice += p.x * q.y - q.x * p.y;
  });
  return twice / 2;
}

function isConvexRing(ring) {
  return ring.every((p, i) => {
    const q = ring[(i + 1) % ring.length];
    const r = ring[(i + 2) % ring.length];
    return (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x) >= 0;
  });
}

/** Room for the intervals of one pair of shapes; grown when needed. */
const room = { from: new Float64Array(1024), to: new Float64Array(1024), count: 0 };

/**
 * Fills `room` with the intervals of x for which an edge of `shape`, at height y, meets one of `other`. The two
 * loops over edge pairs, here and in `overlapArea`, are written out: a callback took twice the time.
 */
function meetings(shape, other, y) {
  room.count = 0;
  for (let i = 0; i < shape.count; i++) {
    const from = shape.y0[i] + y;
    const to = shape.y1[i] + y;
    for (let k = firstReaching(other.reach, from + CONTACT_MM); k < other.count; k++) {
      if (other.y0[k] >= to - CONTACT_MM) break;
      const low = other.y0[k] > from ? other.y0[k] : from;
      const high = other.y1[k] < to ? other.y1[k] : to;
      if (high - low <= CONTACT_MM) continue;
      const a = xAt(other, k, low) - xAt(shape, i, low - y);
      const b = xAt(other, k, high) - xAt(shape, i, high - y);
      if (room.count === room.from.length) growRoom();
      room.from[room.count] = a < b ? a : b;
      room.to[room.count++] = a < b ? b : a;
    }
  }
}

function growRoom() {
  for (const key of ['from', 'to']) {
    const wider = new Float64Array(2 * room[key].length);
    wider.set(room[key]);
    room[key] = wider;
  }
}

function firstReaching(reach, level) {
  let low = 0;
  let high = reach.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (reach[middle] < level) low = middle + 1;
    else high = middle;
  }
  return low;
}

function xAt(shape, i, y) {
  return shape.x0[i] + (y - shape.y0[i]) * shape.slope[i];
}

/** Area of the overlap with `shape` moved to (x, y). */
function overlapArea(shape, other, x, y) {
  const zero = other.minX;
  let area = 0;
  for (let i = 0; i < shape.count; i++) {
    const from = shape.y0[i] + y;
    const to = shape.y1[i] + y;
    for (let k = firstReaching(other.reach, from + CONTACT_MM); k < other.count; k++) {
      if (other.y0[k] >= to - CONTACT_MM) break;
      const low = other.y0[k] > from ? other.y0[k] : from;
      const high = other.y1[k] < to ? other.y1[k] : to;
      if (high - low <= CONTACT_MM) continue;
      const a0 = xAt(shape, i, low - y) + x - zero;
      const a1 = xAt(shape, i, high - y) + x - zero;
      const mean = meanOfGreater(a0, a1, xAt(other, k, low) - zero, xAt(other, k, high) - zero);
      area -= shape.sign[i] * other.sign[k] * (high - low) * mean;
    }
  }
  return area;
}

/** Mean, along a line, of the greater one of two values that each change evenly. */
function meanOfGreater(a0, a1, b0, b1) {
  const d0 = a0 - b0;
  const d1 = a1 - b1;
  if (d0 >= 0 && d1 >= 0) return (a0 + a1) / 2;
  if (d0 <= 0 && d1 <= 0) return (b0 + b1) / 2;
  const t = d0 / (d0 - d1);
  const middle = a0 + t * (a1 - a0);
  const [first, last] = d0 > 0 ? [a0, b1] : [b0, a1];
  return (t * (first + middle) + (1 - t) * (middle + last)) / 2;
}

/** The least x' >= x at which `shape`, at height y, doesn't overlap `other`. */
export function leave(shape, other, x, y) {
  if (isBoxApart(shape, other, x, y)) return x;
  meetings(shape, other, y);
  if (shape.isConvex && other.isConvex && room.count > 0) {
    const [from, to] = wholeRange();
    return x <= from + CONTACT_MM || x >= to - CONTACT_MM ? x : to;
  }
  for (let at = x; ;) {
    at = outOfMeetings(at);
    if (overlapArea(shape, other, at, y) <= OVERLAP_MM2) return at;
    at = endOfNextMeeting(at);
    if (at === Infinity) return other.maxX - shape.minX;
  }
}

function isBoxApart(shape, other, x, y) {
  return (
    y + shape.minY >= other.maxY - CONTACT_MM ||
    y + shape.maxY <= other.minY + CONTACT_MM ||
    x + shape.minX >= other.maxX - CONTACT_MM ||
    x + shape.maxX <= other.minX + CONTACT_MM
  );
}

function wholeRange() {
  let [from, to] = [Infinity, -Infinity];
  for (let i = 0; i < room.count; i++) {
    if (room.from[i] < from) from = room.from[i];
    if (room.to[i] > to) to = room.to[i];
  }
  return [from, to];
}

/** The least place from x on at which no two edges cross. */
function outOfMeetings(x) {
  let at = x;
  for (let moved = true; moved;) {
    moved = false;
    for (let i = 0; i < room.count; i++) {
      if (room.from[i] >= at - CONTACT_MM || room.to[i] <= at + CONTACT_MM) continue;
      at = room.to[i];
      moved = true;
    }
  }
  return at;
}

/** Between meetings, whether shapes overlap doesn't change: where they do, the end of the next is the next hope. */
function endOfNextMeeting(at) {
  let [from, to] = [Infinity, Infinity];
  for (let i = 0; i < room.count; i++) {
    if (room.to[i] <= at + CONTACT_MM || room.from[i] > from) continue;
    if (room.from[i] < from || room.to[i] < to) [from, to] = [room.from[i], room.to[i]];
  }
  return to;
}

/** Ranges [from, to] of x in which `shape`, at height y, lies within `outer`, from left to right. */
export function rangesWithin(shape, outer, y) {
  if (y + shape.minY < outer.minY - CONTACT_MM || y + shape.maxY > outer.maxY + CONTACT_MM) return [];
  meetings(shape, outer, y);
  const order = Array.from({ length: room.count }, (_, i) => i).sort((a, b) => room.from[a] - room.from[b]);
  const sorted = order.map((i) => [room.from[i], room.to[i]]);
  const ranges = [];
  let end = Infinity;
  for (const [from, to] of sorted) {
    if (from >= end - CONTACT_MM && isWithin(shape, outer, (end + from) / 2, y)) {
      ranges.push([end, from > end ? from : end]);
    }
    end = end === Infinity || to > end ? to : end;
  }
  return ranges;
}

function isWithin(shape, outer, x, y) {
  return overlapArea(shape, outer, x, y) >= shape.area - OVERLAP_MM2;
}

/** How far `shape` at (x, y) can move towards smaller x before it meets `other`: the x at which it does. */
export function slideStop(shape, other, x, y) {
  if (y + shape.minY >= other.maxY - CONTACT_MM || y + shape.maxY <= other.minY + CONTACT_MM)
    return -Infinity;
  meetings(shape, other, y);
  let stop = -Infinity;
  for (let i = 0; i < room.count; i++) {
    if (room.to[i] <= x + CONTACT_MM && room.to[i] > stop) stop = room.to[i];
  }
  return stop;
}
