import type { Point } from '../types/shape.js';
import { clearanceOf } from './forbidden.js';
import type { Corners, ForbiddenParts } from './forbidden.js';
import { cross } from './repeat.js';

/** Lattice vectors, and for a double lattice the place of the half-turned copy. */
export interface Lattice {
  readonly u: Point;
  readonly v: Point;
  readonly turned?: Point;
}

/** What a lattice of one piece must keep. */
export interface LatticeRules {
  /** Where a moved copy's origin may not lie; and a half-turned one's. */
  readonly moved: ForbiddenParts;
  readonly turned: ForbiddenParts;
  /** Distance between two pieces, mm; and how it is kept at corners. */
  readonly gap: number;
  readonly corners: Corners;
  /** The piece's greatest extent: steps and tolerances of the search are shares of it. */
  readonly sizeMm: number;
  readonly areaMm2: number;
}

/** Called with the numbers i and j of i u + j v, and the place. */
export type VisitPlace = (i: number, j: number, x: number, y: number) => void;

/** Visits every place of `from` + i u + j v within `reach` of the origin. */
export function visitPlaces({ u, v }: Lattice, from: Point, reach: number, visit: VisitPlace): void {
  const area = cross(u, v);
  const alongU = -cross(from, v) / area;
  const spanU = (reach * Math.sqrt(v.x * v.x + v.y * v.y)) / area;
  const alongV = -cross(u, from) / area;
  const spanV = (reach * Math.sqrt(u.x * u.x + u.y * u.y)) / area;
  for (let i = Math.ceil(alongU - spanU); i <= alongU + spanU; i++) {
    for (let j = Math.ceil(alongV - spanV); j <= alongV + spanV; j++) {
      const x = from.x + i * u.x + j * v.x;
      const y = from.y + i * u.y + j * v.y;
      if (x * x + y * y <= reach * reach) visit(i, j, x, y);
    }
  }
}

const ORIGIN: Point = { x: 0, y: 0 };

/** Visits the places of moved copies but one of every two opposite ones, and not the piece's own. */
export function visitMoved(lattice: Lattice, reach: number, visit: VisitPlace): void {
  visitPlaces(lattice, ORIGIN, reach, (i, j, x, y) => {
    if (i > 0 || (i === 0 && j > 0)) visit(i, j, x, y);
  });
}

/** How far from the origin a place can be too near: a mitred corner of a box reaches sqrt(2) times the gap beyond it. */
export function reachOf(parts: ForbiddenParts, { gap }: LatticeRules): number {
  return parts.reach + MITRE_REACH * gap;
}

const MITRE_REACH = 1.5;

/**
 * By how much any two pieces of the lattice keep the gap (mm): 0 if all do, negative by what the worst lacks. Stops
 * to look when it is below `limit`.
 */
export function latticeShortfall(rules: LatticeRules, lattice: Lattice, limit = -Infinity): number {
  const { moved, turned } = rules;
  let least = 0;
  visitMoved(lattice, reachOf(moved, rules), (_i, _j, x, y) => {
    if (least >= limit) least = Math.min(least, clearanceOf(moved, x, y, rules));
  });
  if (lattice.turned === undefined) return least;
  visitPlaces(lattice, lattice.turned, reachOf(turned, rules), (_i, _j, x, y) => {
    if (least >= limit) least = Math.min(least, clearanceOf(turned, x, y, rules));
  });
  return least;
}
