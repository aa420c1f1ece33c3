import type { Point } from '../types/shape.js';
import { latticeShortfall } from './lattice.js';
import type { Lattice, LatticeRules } from './lattice.js';
import { OVERLAP_MM, SAME_START_SHARE } from './constants.js';
import { cross, reduceBasis, reducePlace } from './repeat.js';

/** A lattice that keeps its rules, found by looking around, not yet tightened. */
export interface Start {
  readonly lattice: Lattice;
  readonly areaPerPieceMm2: number;
  /** Sum of the squared lengths of its vectors: of equal areas the straightest cell comes first. */
  readonly lengthsSq: number;
}

/** The best starts so far that differ from each other. */
export interface StartList {
  /** Takes the lattice if it is among the best and keeps its rules; true if it keeps them, as far as was looked. */
  offer(lattice: Lattice): boolean;
  /** A start of more area to a piece is of no interest; Infinity while there is room. */
  worstAreaMm2(): number;
  /** Best first. */
  kept(): Start[];
}

export function createStartList(rules: LatticeRules, most: number): StartList {
  const kept: Start[] = [];
  const nearMm = SAME_START_SHARE * rules.sizeMm;
  return {
    offer: (offered) => {
      const pieces = offered.turned === undefined ? 1 : 2;
      const areaPerPieceMm2 = Math.abs(cross(offered.u, offered.v)) / pieces;
      if (!(areaPerPieceMm2 > rules.areaMm2 * LEAST_AREA_SHARE)) return false;
      const worst = kept.length < most ? undefined : kept[kept.length - 1]!;
      if (worst !== undefined && areaPerPieceMm2 > worst.areaPerPieceMm2 * (1 + TIE_SHARE)) return true;
      const lattice = reduced(offered);
      const start: Start = { lattice, areaPerPieceMm2, lengthsSq: lengthsSq(lattice) };
      if (worst !== undefined && !isBetter(start, worst)) return true;
      const same = kept.findIndex((other) => areNear(other.lattice, lattice, nearMm));
      if (same >= 0 && !isBetter(start, kept[same]!)) return true;
      if (latticeShortfall(rules, lattice, -OVERLAP_MM) < -OVERLAP_MM) return false;
      if (same >= 0) kept.splice(same, 1);
      const at = kept.findIndex((other) => isBetter(start, other));
      kept.splice(at < 0 ? kept.length : at, 0, start);
      kept.length = Math.min(kept.length, most);
      return true;
    },
    worstAreaMm2: () =>
      kept.length < most ? Infinity : kept[kept.length - 1]!.areaPerPieceMm2 * (1 + TIE_SHARE),
    kept: () => [...kept],
  };
}

/** A cell of less area than its pieces can't hold them, whatever rounding says. */
const LEAST_AREA_SHARE = 1 - 1e-9;

function reduced(lattice: Lattice): Lattice {
  const [u, v] = reduceBasis(lattice.u, lattice.v);
  return lattice.turned === undefined ? { u, v } : { u, v, turned: reducePlace(lattice.turned, u, v) };
}

function lengthsSq({ u, v }: Lattice): number {
  return u.x * u.x + u.y * u.y + v.x * v.x + v.y * v.y;
}

/** Areas that differ by less than this share are equal. */
const TIE_SHARE = 1e-9;

function isBetter(a: Start, b: Start): boolean {
  if (Math.abs(a.areaPerPieceMm2 - b.areaPerPieceMm2) > TIE_SHARE * b.areaPerPieceMm2) {
    return a.areaPerPieceMm2 < b.areaPerPieceMm2;
  }
  return a.lengthsSq < b.lengthsSq * (1 - TIE_SHARE);
}

function areNear(a: Lattice, b: Lattice, within: number): boolean {
  const isSame = (p: Point, q: Point): boolean =>
    Math.abs(p.x - q.x) <= within && Math.abs(p.y - q.y) <= within;
  const isOpposite = (p: Point, q: Point): boolean => isSame(p, { x: -q.x, y: -q.y });
  const sameVectors =
    (isSame(a.u, b.u) && isSame(a.v, b.v)) || (isOpposite(a.u, b.u) && isOpposite(a.v, b.v));
  if (!sameVectors || a.turned === undefined || b.turned === undefined) return sameVectors;
  return isSame(a.turned, b.turned);
}
