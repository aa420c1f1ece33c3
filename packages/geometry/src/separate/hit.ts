import type { TurnedRings } from './turned.js';

/**
 * True if the insides of two sets of rings meet, `a` moved by (dx, dy). Rings that only touch may or may not count:
 * the search's rings are inset, so that shapes which touch in truth are apart here.
 */
export function ringsMeet(a: TurnedRings, b: TurnedRings, dx: number, dy: number): boolean {
  const minX = a.minX + dx > b.minX ? a.minX + dx : b.minX;
  const maxX = a.maxX + dx < b.maxX ? a.maxX + dx : b.maxX;
  const minY = a.minY + dy > b.minY ? a.minY + dy : b.minY;
  const maxY = a.maxY + dy < b.maxY ? a.maxY + dy : b.maxY;
  if (minX >= maxX || minY >= maxY) return false;
  if (edgesCross(a, b, dx, dy, minX, minY, maxX, maxY)) return true;
  // No edges cross: one lies within the other, or they are apart.
  return holdsCorner(b, a, dx, dy) || holdsCorner(a, b, -dx, -dy);
}

function edgesCross(
  a: TurnedRings,
  b: TurnedRings,
  dx: number,
  dy: number,
  minX: number,
  minY: number,
  maxX: number,
  maxY: number,
): boolean {
  const { x, y, start } = a;
  for (let r = 0; r + 1 < start.length; r++) {
    const end = start[r + 1]!;
    let px = x[end - 1]! + dx;
    let py = y[end - 1]! + dy;
    for (let i = start[r]!; i < end; i++) {
      const qx = x[i]! + dx;
      const qy = y[i]! + dy;
      const isNear =
        !(px < minX && qx < minX) &&
        !(px > maxX && qx > maxX) &&
        !(py < minY && qy < minY) &&
        !(py > maxY && qy > maxY);
      if (isNear && edgeCrosses(px, py, qx, qy, b)) return true;
      px = qx;
      py = qy;
    }
  }
  return false;
}

/** True if the edge from p to q properly crosses an edge of the rings. */
function edgeCrosses(px: number, py: number, qx: number, qy: number, rings: TurnedRings): boolean {
  const { x, y, start } = rings;
  const ex = qx - px;
  const ey = qy - py;
  const lowX = px < qx ? px : qx;
  const highX = px < qx ? qx : px;
  const lowY = py < qy ? py : qy;
  const highY = py < qy ? qy : py;
  for (let r = 0; r + 1 < start.length; r++) {
    const end = start[r + 1]!;
    let cx = x[end - 1]!;
    let cy = y[end - 1]!;
    let before = ex * (cy - py) - ey * (cx - px);
    for (let i = start[r]!; i < end; i++) {
      const tx = x[i]!;
      const ty = y[i]!;
      const after = ex * (ty - py) - ey * (tx - px);
      if (
        before > 0 !== after > 0 &&
        !(cx < lowX && tx < lowX) &&
        !(cx > highX && tx > highX) &&
        !(cy < lowY && ty < lowY) &&
        !(cy > highY && ty > highY)
      ) {
        const fx = tx - cx;
        const fy = ty - cy;
        const s = fx * (py - cy) - fy * (px - cx);
        const t = fx * (qy - cy) - fy * (qx - cx);
        if (s > 0 !== t > 0) return true;
      }
      cx = tx;
      cy = ty;
      before = after;
    }
  }
  return false;
}

/** True if a ring of `a`, moved by (dx, dy), has its first corner inside `within`. */
function holdsCorner(within: TurnedRings, a: TurnedRings, dx: number, dy: number): boolean {
  for (let r = 0; r + 1 < a.start.length; r++) {
    const i = a.start[r]!;
    if (isInRings(within, a.x[i]! + dx, a.y[i]! + dy)) return true;
  }
  return false;
}

/** Even-odd. */
export function isInRings(rings: TurnedRings, px: number, py: number): boolean {
  if (px < rings.minX || px > rings.maxX || py < rings.minY || py > rings.maxY) return false;
  const { x, y, start } = rings;
  let inside = false;
  for (let r = 0; r + 1 < start.length; r++) {
    const end = start[r + 1]!;
    let ax = x[end - 1]!;
    let ay = y[end - 1]!;
    for (let i = start[r]!; i < end; i++) {
      const bx = x[i]!;
      const by = y[i]!;
      if (ay > py !== by > py && px < ((bx - ax) * (py - ay)) / (by - ay) + ax) inside = !inside;
      ax = bx;
      ay = by;
    }
  }
  return inside;
}
