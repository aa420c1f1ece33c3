import { distanceBetween, pointToRing } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import {
  ALLOWANCE_EVEN_MM,
  ALLOWANCE_EVEN_SHARE,
  ALLOWANCE_MAX_MM,
  ALLOWANCE_MIN_MM,
  ALLOWANCE_OUTER_SHARE,
} from '../limits.js';
import type { Outline } from './outline.js';

/** Places looked at on either outline: enough to tell an even allowance, few enough for outlines of many corners. */
const SAMPLES = 160;

/** A mitred right-angled corner is as many times the width away from the inner corner. */
const MITRE = 1.5;

/**
 * The width of the seam or turning allowance between a cut line and an outline within it, mm: the middle one of the
 * distances, if nine tenths of the inner outline keep it within 0.25 mm and the outer one goes along with it. Nothing
 * if they don't run side by side.
 */
export function allowanceBetween(outer: Outline, inner: Outline): number | undefined {
  const distances = spreadAlong(inner.ring).map((p) => pointToRing(p, outer.ring));
  const width = [...distances].sort((a, b) => a - b)[distances.length >> 1]!;
  if (width < ALLOWANCE_MIN_MM || width > ALLOWANCE_MAX_MM) return undefined;
  const isEven = (mm: number) => Math.abs(mm - width) <= ALLOWANCE_EVEN_MM;
  if (distances.filter(isEven).length < ALLOWANCE_EVEN_SHARE * distances.length) return undefined;
  const back = spreadAlong(outer.ring).map((p) => pointToRing(p, inner.ring));
  const follows = back.filter(
    (mm) => mm >= width - ALLOWANCE_EVEN_MM && mm <= MITRE * width + ALLOWANCE_EVEN_MM,
  );
  return follows.length < ALLOWANCE_OUTER_SHARE * back.length ? undefined : Math.round(width * 10) / 10;
}

/** Places at even steps along a ring, corners or not. */
function spreadAlong(ring: Ring): Point[] {
  const sides = ring.map((p, i) => distanceBetween(p, ring[(i + 1) % ring.length]!));
  const step = sides.reduce((sum, mm) => sum + mm, 0) / SAMPLES;
  const points: Point[] = [];
  let next = step / 2;
  let passed = 0;
  ring.forEach((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    for (; next < passed + sides[i]! && points.length < SAMPLES; next += step) {
      const share = (next - passed) / sides[i]!;
      points.push({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) });
    }
    passed += sides[i]!;
  });
  return points.length > 0 ? points : [ring[0]!];
}
