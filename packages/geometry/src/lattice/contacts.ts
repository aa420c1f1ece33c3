import { sinCosDeg } from '../number/trigonometry.js';
import type { Point, Ring } from '../types/shape.js';
import { CONTACT_MM, CONTACT_RAYS, OVERLAP_MM } from './constants.js';
import { clearanceOf, stretchWithin } from './forbidden.js';
import type { Distance, ForbiddenParts } from './forbidden.js';

/** Forbidden parts moved by (dx, dy). */
export interface MovedParts {
  readonly parts: ForbiddenParts;
  readonly dx: number;
  readonly dy: number;
}

/** True if the place keeps the distance from all of them. */
export function isFree(layers: readonly MovedParts[], p: Point, distance: Distance): boolean {
  return layers.every(({ parts, dx, dy }) => clearanceOf(parts, p.x - dx, p.y - dy, distance) >= -OVERLAP_MM);
}

const TOUCHING: Distance = { gap: 0, corners: 'round' };

/**
 * The free places at which a corner of the one piece lies on a corner of the other: all exact fits of pieces whose
 * edges are equal are among them, also those that are single points. Those that touch most parts come first, then the
 * nearest to `centre`.
 */
export function cornerContacts(
  parts: ForbiddenParts,
  corners: Ring,
  others: Ring,
  centre: Point,
  most: number,
): Point[] {
  const found = new Map<
    string,
    { readonly p: Point; readonly touched: number; readonly distanceSq: number }
  >();
  for (const a of corners) {
    for (const b of others) {
      const p = { x: a.x - b.x, y: a.y - b.y };
      const key = `${Math.round(p.x / CONTACT_MM)},${Math.round(p.y / CONTACT_MM)}`;
      if (found.has(key) || clearanceOf(parts, p.x, p.y, TOUCHING) < -OVERLAP_MM) continue;
      const dx = p.x - centre.x;
      const dy = p.y - centre.y;
      // To the micrometre, so that opposite places, equal but for the last digits, keep their order.
      const distanceSq = Math.round((dx * dx + dy * dy) * 1e6) / 1e6;
      found.set(key, { p, touched: touchedParts(parts, p), distanceSq });
    }
  }
  return [...found.values()]
    .sort((a, b) => b.touched - a.touched || a.distanceSq - b.distanceSq || a.p.x - b.p.x || a.p.y - b.p.y)
    .slice(0, most)
    .map(({ p }) => p);
}

function touchedParts(parts: ForbiddenParts, p: Point): number {
  let touched = 0;
  for (let k = 0; k < parts.count; k++) {
    let most = -Infinity;
    for (let e = parts.firstEdge[k]!; e < parts.firstEdge[k + 1]!; e++) {
      most = Math.max(most, parts.nx[e]! * p.x + parts.ny[e]! * p.y - parts.offset[e]!);
    }
    if (most <= CONTACT_MM) touched++;
  }
  return touched;
}

/** Free places at which a ray from `centre` leaves the forbidden places or passes between them, nearest first. */
export function rayContacts(
  layers: readonly MovedParts[],
  centre: Point,
  options: { readonly gap: number; readonly turnDeg: 180 | 360; readonly rays?: number },
): Point[] {
  const rays = options.rays ?? CONTACT_RAYS;
  const found: Point[] = [];
  for (let r = 0; r < rays; r++) {
    const { sin, cos } = sinCosDeg((options.turnDeg * (r + 0.25)) / rays);
    const stretches = stretchesAlong(layers, { ox: centre.x, oy: centre.y, wx: cos, wy: sin }, options.gap);
    let h = 0;
    for (const [from, to] of stretches) {
      if (to <= h) continue;
      if (from > h + OVERLAP_MM && h > 0) found.push({ x: centre.x + h * cos, y: centre.y + h * sin });
      h = to;
    }
    if (h > 0) found.push({ x: centre.x + h * cos, y: centre.y + h * sin });
  }
  return found;
}

/** A line by a point on it and its direction, a unit vector. */
export interface Line {
  readonly ox: number;
  readonly oy: number;
  readonly wx: number;
  readonly wy: number;
}

function stretchesAlong(layers: readonly MovedParts[], line: Line, gap: number): [number, number][] {
  const out = new Float64Array(2);
  const stretches: [number, number][] = [];
  for (const { parts, dx, dy } of layers) {
    const own = { ...line, ox: line.ox - dx, oy: line.oy - dy };
    for (let k = 0; k < parts.count; k++) {
      if (stretchWithin(parts, k, own, gap, out)) stretches.push([out[0]!, out[1]!]);
    }
  }
  return stretches.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}
