import type { View } from './unknowns.js';

/** Where a camera stands, told by how it sees the floor. */
export interface Standpoint extends View {
  /** Between the lens' axis and the plumb line, degrees. */
  readonly tiltDeg: number;
  /** In half diagonals. */
  readonly focal: number;
}

/**
 * Standpoint from a homography (floor to photo, in half diagonals from the middle; eight numbers, the ninth 1) and the focal
 * length: its first columns are those of a rotation once divided by it (Zhang 2000, section 3.1).
 */
export function standpointOf(h: ArrayLike<number>, focal: number): Standpoint {
  const a = [h[0]! / focal, h[3]! / focal, h[6]!] as const;
  const b = [h[1]! / focal, h[4]! / focal, h[7]!] as const;
  const t = [h[2]! / focal, h[5]! / focal, 1] as const;
  const scale = Math.sqrt(Math.hypot(...a) * Math.hypot(...b));
  const down = cross(a, b).map((value) => value / (scale * scale));
  const dot = (u: readonly number[], v: readonly number[]): number =>
    u[0]! * v[0]! + u[1]! * v[1]! + u[2]! * v[2]!;
  const length = Math.hypot(...down);
  return {
    footX: -dot(a, t) / dot(a, a),
    footY: -dot(b, t) / dot(b, b),
    height: Math.abs(dot(down, t)) / (length * scale),
    tiltDeg: (Math.acos(Math.min(1, Math.abs(down[2]!) / length)) * 180) / Math.PI,
    focal,
  };
}

function cross(a: readonly [number, number, number], b: readonly [number, number, number]): number[] {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
