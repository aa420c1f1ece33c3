// Fewer corners for the baselines: a ring that contains the given one and strays from it by no more than asked.

/**
 * Takes away the cheapest corner or edge again and again: a hollow corner is filled in; an edge between two bulging
 * corners goes, and its neighbours are drawn out until they meet. Neither may add anything farther off than
 * `tolerance` mm. Positive rings grow outwards. Rings of few corners stay as they are.
 */
export function growRing(ring, tolerance, most) {
  let rest = ring;
  while (rest.length > most) {
    let best;
    for (let i = 0; i < rest.length; i++) {
      const change = changeAt(rest, i, tolerance);
      if (change !== undefined && (best === undefined || change.added < best.added)) best = { ...change, i };
    }
    if (best === undefined) break;
    rest = applied(rest, best);
  }
  return rest;
}

/** Corners are judged against the present ring; half the tolerance is for what strays by several steps. */
function changeAt(ring, i, tolerance) {
  const at = (k) => ring[(k + ring.length) % ring.length];
  const [a, p, q, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
  if (turn(a, p, q) <= 0) {
    const strays = Math.abs(turn(a, p, q)) / length(a, q);
    return strays <= tolerance / 2 ? { added: Math.abs(turn(a, p, q)), corner: undefined } : undefined;
  }
  if (turn(p, q, d) <= 0) return undefined;
  const corner = meeting(a, p, d, q);
  if (corner === undefined) return undefined;
  const strays = Math.abs(turn(p, q, corner)) / length(p, q);
  return strays <= tolerance / 2 ? { added: Math.abs(turn(p, q, corner)), corner } : undefined;
}

function applied(ring, { i, corner }) {
  if (corner === undefined) return ring.filter((_, k) => k !== i);
  const next = (i + 1) % ring.length;
  return ring.map((p, k) => (k === i ? corner : p)).filter((_, k) => k !== next);
}

function turn(a, b, c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

function length(a, b) {
  return Math.sqrt((b.x - a.x) ** 2 + (b.y - a.y) ** 2);
}

/** Where the ray from a over p meets the ray from d over q, ahead of both. */
function meeting(a, p, d, q) {
  const [ux, uy, vx, vy] = [p.x - a.x, p.y - a.y, q.x - d.x, q.y - d.y];
  const cross = ux * vy - uy * vx;
  if (cross === 0) return undefined;
  const t = ((d.x - a.x) * vy - (d.y - a.y) * vx) / cross;
  const s = ((d.x - a.x) * uy - (d.y - a.y) * ux) / cross;
  return t >= 1 && s >= 1 ? { x: a.x + t * ux, y: a.y + t * uy } : undefined;
}
