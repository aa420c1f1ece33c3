import type { Point } from '@hidebound/geometry';
import type { Lens, PinholeCamera, Scene, View } from './scene.js';

type Vector = readonly [number, number, number];

/** A place over the floor: z is its height, mm. */
export interface Place extends Point {
  readonly z: number;
}

/** Where a place over the floor comes to lie in the photo, px; the middle of the first pixel is (0, 0). */
export function project(camera: PinholeCamera, place: Place): Point {
  const { position, axes, lens } = camera;
  const ray: Vector = [place.x - position.x, place.y - position.y, position.z - place.z];
  const depth = dot(axes[2]!, ray);
  const bent = distort(
    lens,
    (lens.focal * dot(axes[0]!, ray)) / depth,
    (lens.focal * dot(axes[1]!, ray)) / depth,
  );
  return toPixel(camera, bent);
}

/** Where the ray through a place in the photo meets the floor; undefined where it never does. */
export function meetFloor(camera: PinholeCamera, pixel: Point): Point | undefined {
  const { position, axes, lens } = camera;
  const { x: u, y: v } = undistort(lens, fromPixel(camera, pixel));
  const ray = [0, 1, 2].map(
    (i) => (axes[0]![i]! * u) / lens.focal + (axes[1]![i]! * v) / lens.focal + axes[2]![i]!,
  );
  if (ray[2]! <= LEAST_SINK) return undefined;
  const length = position.z / ray[2]!;
  return { x: position.x + ray[0]! * length, y: position.y + ray[1]! * length };
}

/** A ray must sink by so much of its length to meet the floor before the horizon. */
const LEAST_SINK = 0.05;

function halfDiagonal({ width, height }: { readonly width: number; readonly height: number }): number {
  return Math.hypot(width, height) / 2;
}

function toPixel(camera: PinholeCamera, { x, y }: Point): Point {
  const unit = halfDiagonal(camera);
  return {
    x: (camera.width - 1) / 2 + (camera.lens.axisX + x) * unit,
    y: (camera.height - 1) / 2 + (camera.lens.axisY + y) * unit,
  };
}

function fromPixel(camera: PinholeCamera, { x, y }: Point): Point {
  const unit = halfDiagonal(camera);
  return {
    x: (x - (camera.width - 1) / 2) / unit - camera.lens.axisX,
    y: (y - (camera.height - 1) / 2) / unit - camera.lens.axisY,
  };
}

function distort({ k1, k2, k3, p1, p2 }: Lens, u: number, v: number): Point {
  const rr = u * u + v * v;
  const radial = 1 + rr * (k1 + rr * (k2 + rr * k3));
  return {
    x: u * radial + 2 * p1 * u * v + p2 * (rr + 2 * u * u),
    y: v * radial + p1 * (rr + 2 * v * v) + 2 * p2 * u * v,
  };
}

/** Newton's method with slopes by small differences. */
function undistort(lens: Lens, bent: Point): Point {
  let { x: u, y: v } = bent;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const here = distort(lens, u, v);
    const right = distort(lens, u + SMALL, v);
    const down = distort(lens, u, v + SMALL);
    const a = (right.x - here.x) / SMALL;
    const b = (down.x - here.x) / SMALL;
    const c = (right.y - here.y) / SMALL;
    const d = (down.y - here.y) / SMALL;
    const det = a * d - b * c;
    const ex = bent.x - here.x;
    const ey = bent.y - here.y;
    u += (d * ex - b * ey) / det;
    v += (a * ey - c * ex) / det;
  }
  return { x: u, y: v };
}

const NEWTON_STEPS = 6;
const SMALL = 1e-6;

/** A camera that looks as the scene says and sees all the places, so far away that they fill what they may. */
export function aimCamera(
  { picture, view, lens }: Pick<Scene, 'picture' | 'view' | 'lens'>,
  seen: readonly Point[],
): PinholeCamera {
  const axes = turnedAxes(view);
  const [minX, maxX] = extent(seen.map(({ x }) => x));
  const [minY, maxY] = extent(seen.map(({ y }) => y));
  let target = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  let distance = 2 * Math.max(maxX - minX, maxY - minY);
  let camera = cameraAt(picture, axes, lens, target, distance);
  for (let step = 0; step < AIM_STEPS; step++) {
    const pixels = seen.map(({ x, y }) => project(camera, { x, y, z: 0 }));
    const [left, right] = extent(pixels.map(({ x }) => x));
    const [top, bottom] = extent(pixels.map(({ y }) => y));
    const share = Math.max((right - left) / picture.width, (bottom - top) / picture.height) / view.fill;
    const middle = meetFloor(camera, { x: (left + right) / 2, y: (top + bottom) / 2 });
    const aimed = meetFloor(camera, { x: picture.width / 2, y: picture.height / 2 });
    if (middle !== undefined && aimed !== undefined)
      target = { x: target.x + middle.x - aimed.x, y: target.y + middle.y - aimed.y };
    distance *= Math.sqrt(share);
    camera = cameraAt(picture, axes, lens, target, distance);
  }
  return camera;
}

const AIM_STEPS = 40;

function cameraAt(
  { width, height }: Scene['picture'],
  axes: readonly Vector[],
  lens: Lens,
  target: Point,
  distance: number,
): PinholeCamera {
  const forward = axes[2]!;
  const position = {
    x: target.x - forward[0] * distance,
    y: target.y - forward[1] * distance,
    z: forward[2] * distance,
  };
  return { width, height, position, axes, lens };
}

/** From looking straight down: tilted towards a side, then rolled about the axis. */
function turnedAxes({ tiltDeg, towardsDeg, rollDeg }: View): readonly Vector[] {
  const [sinT, cosT] = sinCos(tiltDeg);
  const [sinA, cosA] = sinCos(towardsDeg);
  const forward: Vector = [sinT * cosA, sinT * sinA, cosT];
  // The shortest turn that takes straight down to `forward`, applied to the floor's right and down.
  const right: Vector = [cosA * cosA * (cosT - 1) + 1, cosA * sinA * (cosT - 1), -sinT * cosA];
  const down: Vector = [cosA * sinA * (cosT - 1), sinA * sinA * (cosT - 1) + 1, -sinT * sinA];
  const [sinR, cosR] = sinCos(rollDeg);
  return [mix(right, cosR, down, sinR), mix(right, -sinR, down, cosR), forward];
}

function mix(a: Vector, s: number, b: Vector, t: number): Vector {
  return [s * a[0] + t * b[0], s * a[1] + t * b[1], s * a[2] + t * b[2]];
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function sinCos(deg: number): readonly [number, number] {
  return [Math.sin((deg * Math.PI) / 180), Math.cos((deg * Math.PI) / 180)];
}

function extent(values: readonly number[]): readonly [number, number] {
  return [Math.min(...values), Math.max(...values)];
}
