import type { Point } from './bitmap.js';

/** A rigid motion: turned about the origin (radians, clockwise as seen), then moved by x, y (mm). Never a scale. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

export function moved({ x, y, turn }: Pose, point: Point): Point {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return { x: x + cos * point.x - sin * point.y, y: y + sin * point.x + cos * point.y };
}

export function movedBack({ x, y, turn }: Pose, point: Point): Point {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [dx, dy] = [point.x - x, point.y - y];
  return { x: cos * dx + sin * dy, y: -sin * dx + cos * dy };
}
