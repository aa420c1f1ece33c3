import { normalizeDeg } from '../number/trigonometry.js';
import type { Point } from '../types/shape.js';

/**
 * A pattern of equal pieces that goes on for ever. A copy of every member lies at each whole-number combination
 * i u + j v of the lattice vectors. Everything is in the frame of the piece as its item draws it.
 */
export interface Repeat {
  /** `single`: one piece to a cell. `double`: a piece and its half turn. */
  readonly kind: 'single' | 'double';
  /** Lattice vectors in mm, reduced: u is the shortest, v the shortest beside it; u × v is positive. */
  readonly u: Point;
  readonly v: Point;
  readonly members: readonly RepeatMember[];
  /** Area of one cell divided by its pieces, in mm²: what one piece costs. */
  readonly areaPerPieceMm2: number;
  /** The piece's own area (its openings taken off) over that. */
  readonly density: number;
}

/** A piece of the cell: turned clockwise about its origin, then moved by (x, y). */
export interface RepeatMember {
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: 0 | 180;
}

/** Twice the area of the triangle under a and b; positive if b is clockwise from a as seen (y grows downwards). */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** Two lattice vectors of the same lattice, as short as can be (Lagrange, Gauss), with u × v positive. */
export function reduceBasis(u: Point, v: Point): readonly [Point, Point] {
  let a = u;
  let b = v;
  // Each step shortens a vector of a discrete set; the limit only guards against vectors that are not a basis.
  for (let step = 0; step < 100; step++) {
    if (dot(b, b) < dot(a, a)) [a, b] = [b, a];
    const k = Math.round(dot(a, b) / dot(a, a));
    if (k === 0 || !Number.isFinite(k)) break;
    const shorter = { x: b.x - k * a.x, y: b.y - k * a.y };
    if (dot(shorter, shorter) >= dot(b, b) * (1 - 1e-12)) break;
    b = shorter;
  }
  return cross(a, b) < 0 ? [a, { x: -b.x, y: -b.y }] : [a, b];
}

/** The same place modulo the lattice, in the cell about the origin. */
export function reducePlace(place: Point, u: Point, v: Point): Point {
  const area = cross(u, v);
  const i = Math.round(cross(place, v) / area);
  const j = Math.round(cross(u, place) / area);
  return { x: place.x - i * u.x - j * v.x, y: place.y - i * u.y - j * v.y };
}

/** The repeat of these vectors, reduced; `turned` is where the half-turned copy's origin lies. */
export function toRepeat(pieceAreaMm2: number, lattice: { u: Point; v: Point; turned?: Point }): Repeat {
  const [u, v] = reduceBasis(lattice.u, lattice.v);
  const turned = lattice.turned === undefined ? undefined : reducePlace(lattice.turned, u, v);
  const members: RepeatMember[] = [{ x: 0, y: 0, rotationDeg: 0 }];
  if (turned !== undefined) members.push({ x: turned.x, y: turned.y, rotationDeg: 180 });
  const areaPerPieceMm2 = cross(u, v) / members.length;
  return {
    kind: turned === undefined ? 'single' : 'double',
    u,
    v,
    members,
    areaPerPieceMm2,
    density: pieceAreaMm2 / areaPerPieceMm2,
  };
}

/** The rotation of a member when the whole pattern is turned, in [0, 360). */
export function memberRotationDeg(member: RepeatMember, patternDeg: number): number {
  return normalizeDeg(patternDeg + member.rotationDeg);
}
