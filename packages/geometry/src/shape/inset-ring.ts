/** A mitred corner moves by at most this many insets; sharper ones move less than a mitre. */
const MITRE_LIMIT = 1.5;

/**
 * Each corner of a flat ring moved into the material by about `by` mm. With positive area outside and negative within,
 * the material is on the side (-dy, dx) of each edge (dx, dy).
 */
export function insetRing(ring: Float64Array, by: number): Float64Array {
  if (by === 0) return ring;
  const n = ring.length >> 1;
  const inset = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const p = i === 0 ? n - 1 : i - 1;
    const q = i + 1 === n ? 0 : i + 1;
    const x = ring[2 * i]!;
    const y = ring[2 * i + 1]!;
    const before = unitNormal(ring[2 * p]!, ring[2 * p + 1]!, x, y);
    const after = unitNormal(x, y, ring[2 * q]!, ring[2 * q + 1]!);
    const mx = before.x + after.x;
    const my = before.y + after.y;
    const length = Math.sqrt(mx * mx + my * my);
    // |sum| = 2 cos(half the turn); the mitre is 1 / cos(half the turn) long.
    const move = length > 0 ? (by * Math.min(MITRE_LIMIT, 2 / length)) / length : 0;
    inset[2 * i] = x + move * mx;
    inset[2 * i + 1] = y + move * my;
  }
  return inset;
}

function unitNormal(ax: number, ay: number, bx: number, by: number): { x: number; y: number } {
  const dx = bx - ax;
  const dy = by - ay;
  const length = Math.sqrt(dx * dx + dy * dy);
  return { x: -dy / length, y: dx / length };
}
