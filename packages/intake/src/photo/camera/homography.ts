import type { Point } from '@hidebound/geometry';
import { solveSymmetric } from './dense.js';

/** Nine numbers row by row: a place (x, y) goes to ((a x + b y + c) / w, (d x + e y + f) / w) with w = g x + h y + i. */
export type Homography = readonly number[];

export function applyHomography(h: Homography, { x, y }: Point): Point {
  const w = h[6]! * x + h[7]! * y + h[8]!;
  return { x: (h[0]! * x + h[1]! * y + h[2]!) / w, y: (h[3]! * x + h[4]! * y + h[5]!) / w };
}

/** The product of two: first `inner`, then `outer`. */
export function composeHomographies(outer: Homography, inner: Homography): number[] {
  const product: number[] = [];
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      let sum = 0;
      for (let k = 0; k < 3; k++) sum += outer[row * 3 + k]! * inner[k * 3 + column]!;
      product.push(sum);
    }
  }
  return product;
}

/** Scaled so that its last number is 1. */
export function normalizeHomography(h: Homography): number[] {
  return h.map((value) => value / h[8]!);
}

/** The way back, up to a factor. */
export function invertHomography(h: Homography): number[] {
  const [a, b, c, d, e, f, g, k, i] = h as readonly [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return [
    e * i - f * k,
    c * k - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * k - e * g,
    b * g - a * k,
    a * e - b * d,
  ];
}

/**
 * The homography that brings `from` nearest to `to`, four pairs or more, by the direct linear transform on places moved
 * and scaled to unit size (Hartley & Zisserman, Multiple View Geometry, 2nd ed., 4.4.4). Undefined where the places do
 * not tell it: three on a line.
 */
export function fitHomography(from: readonly Point[], to: readonly Point[]): number[] | undefined {
  if (from.length < 4) return undefined;
  const fromUnit = unitFrame(from);
  const toUnit = unitFrame(to);
  const normal = new Float64Array(64);
  const right = new Float64Array(8);
  for (let i = 0; i < from.length; i++) {
    const { x, y } = applyHomography(fromUnit, from[i]!);
    const { x: u, y: v } = applyHomography(toUnit, to[i]!);
    addRow(normal, right, [x, y, 1, 0, 0, 0, -u * x, -u * y], u);
    addRow(normal, right, [0, 0, 0, x, y, 1, -v * x, -v * y], v);
  }
  const solved = solveSymmetric(normal, right);
  if (solved === undefined) return undefined;
  const inUnits = [...solved, 1];
  const h = composeHomographies(invertHomography(toUnit), composeHomographies(inUnits, fromUnit));
  return h.every(Number.isFinite) && h[8] !== 0 ? normalizeHomography(h) : undefined;
}

function addRow(normal: Float64Array, right: Float64Array, row: readonly number[], value: number): void {
  for (let i = 0; i < 8; i++) {
    right[i]! += row[i]! * value;
    for (let j = 0; j < 8; j++) normal[i * 8 + j]! += row[i]! * row[j]!;
  }
}

function unitFrame(points: readonly Point[]): Homography {
  let x = 0;
  let y = 0;
  for (const point of points) {
    x += point.x / points.length;
    y += point.y / points.length;
  }
  let spread = 0;
  for (const point of points) spread += Math.hypot(point.x - x, point.y - y) / points.length;
  const scale = Math.SQRT2 / spread;
  return [scale, 0, -scale * x, 0, scale, -scale * y, 0, 0, 1];
}
