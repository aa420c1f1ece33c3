import type { Point, Region, Ring } from '../types/shape.js';
import { signedAreaOfRing } from './centroid.js';

/** No coordinate is farther from zero (mm): far above any sheet, and doubles still tell 0.0001 µm apart there. */
const FARTHEST_MM = 100_000;

/** A ring with less area (mm²) encloses nothing that could be cut. */
const LEAST_AREA_MM2 = 1e-6;

export function isSaneLength(value: number): boolean {
  return Number.isFinite(value) && Math.abs(value) <= FARTHEST_MM;
}

export function isSaneDistance(value: number): boolean {
  return isSaneLength(value) && value >= 0;
}

export function isSaneAngle(value: number): boolean {
  return Number.isFinite(value) && Math.abs(value) <= FARTHEST_MM;
}

/** A number of something: whole, from 1 on. */
export function isOrdinal(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 1;
}

export function isSanePoint(point: Point): boolean {
  return isSaneLength(point.x) && isSaneLength(point.y);
}

export function isSaneLine(line: readonly Point[]): boolean {
  return line.length >= 2 && line.every(isSanePoint);
}

export function isSaneRing(ring: Ring): boolean {
  return ring.length >= 3 && ring.every(isSanePoint) && Math.abs(signedAreaOfRing(ring)) >= LEAST_AREA_MM2;
}

export function isSaneRegion(region: Region): boolean {
  return isSaneRing(region.outer) && region.openings.every(isSaneRing);
}
