import { applyAffine } from '@hidebound/geometry';
import type { Box, Point } from '@hidebound/geometry';
import type { Camera } from './camera.js';
import { CAMERA_NUMBERS } from './inner-frame.js';
import { isInPhoto, pxPerMmAt, toFloorPoint } from './places.js';
import type { FloorError, SolvedFloor, Unsureness } from './solved-floor.js';
import { FLOOR_UNIT_MM, SLOTS, project } from './unknowns.js';

/** Nine of ten errors lie within so many deviations of a bell curve; and on a plane, of both directions together. */
const NINE_IN_TEN = 1.645;
const NINE_IN_TEN_PLANE = 1.52;
/** The grid of places: so many along the longer side. */
const GRID_STEPS = 9;
/** Leather and floor depart from a plane by this much, mm (deviation): folds pressed flat, cloth, planks. */
const LIFT_MM = 0.8;
/** All of the leather lies higher or lower than it is taken for, mm (deviation): its thickness is roughly known. */
const MEAN_LIFT_MM = 0.5;
const SLOPE_STEP = 1e-6;

/** How far a place that lies `lumpMm` over the floor seems to be off: h · r / (H − h), r being its way from the camera's foot. */
export function lumpShiftMm(lumpMm: number, heightMm: number, fromFootMm: number): number {
  return (lumpMm * fromFootMm) / (heightMm - lumpMm);
}

/** Errors for all that the photos see. */
export function floorErrorOf(cameras: readonly Camera[], unsureness: Unsureness): FloorError {
  return errorOnGrid(cameras, unsureness, seenBox(cameras));
}

/** Errors within a box of the floor: the hide's, say. */
export function floorErrorWithin(floor: Pick<SolvedFloor, 'cameras' | 'unsureness'>, box: Box): FloorError {
  return errorOnGrid(floor.cameras, floor.unsureness, box);
}

/** The box that the photos' corners span; a corner at or beyond the horizon is drawn in. */
export function seenBox(cameras: readonly Camera[]): Box {
  const points = cameras.flatMap((camera) => {
    const { width, height } = camera;
    return [
      { x: 0, y: 0 },
      { x: width - 1, y: 0 },
      { x: width - 1, y: height - 1 },
      { x: 0, y: height - 1 },
    ].map((corner) => toFloorPoint(camera, corner));
  });
  return {
    minX: Math.min(...points.map(({ x }) => x)),
    minY: Math.min(...points.map(({ y }) => y)),
    maxX: Math.max(...points.map(({ x }) => x)),
    maxY: Math.max(...points.map(({ y }) => y)),
  };
}

function errorOnGrid(cameras: readonly Camera[], unsureness: Unsureness, box: Box): FloorError {
  const sights = gridPoints(box).flatMap((at) => {
    const photo = bestPhoto(cameras, at);
    return photo === undefined ? [] : [{ at, photo }];
  });
  const rows = sights.map(({ at, photo }) => placeSlopes(unsureness, photo, at));
  const shape = withoutRigidMotion(
    sights.map(({ at }) => at),
    rows,
  );
  const { covariance } = unsureness;
  const scale = scaleSlopes(
    sights.map(({ at }) => at),
    rows,
  );
  const lowest = Math.min(...unsureness.cameras.map(({ heightMm }) => heightMm));
  const scaleShare = NINE_IN_TEN * Math.hypot(Math.sqrt(variance(scale, covariance)), MEAN_LIFT_MM / lowest);
  return {
    scaleShare,
    areaShare: 2 * scaleShare,
    at: sights.map(({ at, photo }, i) => ({
      at,
      mm:
        NINE_IN_TEN_PLANE *
        Math.hypot(
          Math.sqrt(variance(shape[i]!.x, covariance) + variance(shape[i]!.y, covariance)),
          liftError(unsureness, photo, at),
        ),
    })),
  };
}

function liftError(unsureness: Unsureness, photo: number, at: Point): number {
  const { foot, heightMm } = unsureness.cameras[photo]!;
  return lumpShiftMm(LIFT_MM, heightMm, Math.hypot(at.x - foot.x, at.y - foot.y));
}

function gridPoints(box: Box): Point[] {
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const step = Math.max(width, height) / GRID_STEPS;
  const [columns, rows] = [Math.max(2, Math.round(width / step)), Math.max(2, Math.round(height / step))];
  const points: Point[] = [];
  for (let row = 0; row <= rows; row++) {
    for (let column = 0; column <= columns; column++) {
      points.push({ x: box.minX + (width * column) / columns, y: box.minY + (height * row) / rows });
    }
  }
  return points;
}

/** The photo that has most pixels for a place; undefined where none shows it. */
export function bestPhoto(cameras: readonly Camera[], at: Point): number | undefined {
  let best: number | undefined;
  let most = 0;
  cameras.forEach((camera, photo) => {
    if (!isInPhoto(camera, at)) return;
    const pxPerMm = pxPerMmAt(camera, at);
    if (pxPerMm > most) {
      most = pxPerMm;
      best = photo;
    }
  });
  return best;
}

/** How a place read off a photo moves (mm, inner directions) with each number of the cameras. */
interface PlaceSlopes {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

function placeSlopes(unsureness: Unsureness, photo: number, at: Point): PlaceSlopes {
  const numbers = unsureness.cameras[photo]!.values;
  const inner = applyAffine(unsureness.inner, at);
  const values = new Float64Array(SLOTS);
  values.set(numbers);
  const slope = (move: (step: number) => void): [number, number] => {
    const [above, below] = [new Float64Array(2), new Float64Array(2)];
    move(SLOPE_STEP);
    project(values, inner.x + offset.x, inner.y + offset.y, above);
    move(-SLOPE_STEP);
    project(values, inner.x + offset.x, inner.y + offset.y, below);
    move(0);
    return [(above[0]! - below[0]!) / (2 * SLOPE_STEP), (above[1]! - below[1]!) / (2 * SLOPE_STEP)];
  };
  const offset = { x: 0, y: 0 };
  const [xx, yx] = slope((step) => (offset.x = step));
  const [xy, yy] = slope((step) => (offset.y = step));
  const determinant = xx * yy - xy * yx;
  const count = unsureness.cameras.length * CAMERA_NUMBERS;
  const slopes = { x: new Float64Array(count), y: new Float64Array(count) };
  for (let k = 0; k < CAMERA_NUMBERS; k++) {
    const [u, v] = slope((step) => (values[k] = numbers[k]! + step));
    // The pixel stays where it is, so the place moves against what the number does to the pixel.
    slopes.x[photo * CAMERA_NUMBERS + k] = (-FLOOR_UNIT_MM * (yy * u - xy * v)) / determinant;
    slopes.y[photo * CAMERA_NUMBERS + k] = (-FLOOR_UNIT_MM * (xx * v - yx * u)) / determinant;
  }
  return turnedToFloor(slopes, unsureness);
}

/** From inner directions to the floor's. */
function turnedToFloor({ x, y }: PlaceSlopes, { inner }: Unsureness): PlaceSlopes {
  const [cos, sin] = [inner.a * FLOOR_UNIT_MM, inner.b * FLOOR_UNIT_MM];
  return {
    x: x.map((value, i) => cos * value + sin * y[i]!),
    y: y.map((value, i) => cos * value - sin * x[i]!),
  };
}

/** The same without what shifts or turns all places together: that does not change a hide. */
function withoutRigidMotion(places: readonly Point[], rows: readonly PlaceSlopes[]): PlaceSlopes[] {
  const { middle, spreadSq } = spreadOf(places);
  const mean = meanSlopes(rows);
  const turn = new Float64Array(mean.x.length);
  rows.forEach((row, i) => {
    const [dx, dy] = [places[i]!.x - middle.x, places[i]!.y - middle.y];
    for (let k = 0; k < turn.length; k++) turn[k]! += (dx * row.y[k]! - dy * row.x[k]!) / spreadSq;
  });
  return rows.map((row, i) => {
    const [dx, dy] = [places[i]!.x - middle.x, places[i]!.y - middle.y];
    return {
      x: row.x.map((value, k) => value - mean.x[k]! + dy * turn[k]!),
      y: row.y.map((value, k) => value - mean.y[k]! - dx * turn[k]!),
    };
  });
}

/** How the size of all places together, as a share, moves with each number. */
function scaleSlopes(places: readonly Point[], rows: readonly PlaceSlopes[]): Float64Array {
  const { middle, spreadSq } = spreadOf(places);
  const scale = new Float64Array(rows[0]?.x.length ?? 0);
  rows.forEach((row, i) => {
    const [dx, dy] = [places[i]!.x - middle.x, places[i]!.y - middle.y];
    for (let k = 0; k < scale.length; k++) scale[k]! += (dx * row.x[k]! + dy * row.y[k]!) / spreadSq;
  });
  return scale;
}

function spreadOf(places: readonly Point[]): { middle: Point; spreadSq: number } {
  const middle = {
    x: places.reduce((sum, { x }) => sum + x, 0) / places.length,
    y: places.reduce((sum, { y }) => sum + y, 0) / places.length,
  };
  const spreadSq = places.reduce((sum, { x, y }) => sum + (x - middle.x) ** 2 + (y - middle.y) ** 2, 0);
  return { middle, spreadSq };
}

function meanSlopes(rows: readonly PlaceSlopes[]): PlaceSlopes {
  const count = rows[0]?.x.length ?? 0;
  const mean = { x: new Float64Array(count), y: new Float64Array(count) };
  for (const row of rows) {
    for (let k = 0; k < count; k++) {
      mean.x[k]! += row.x[k]! / rows.length;
      mean.y[k]! += row.y[k]! / rows.length;
    }
  }
  return mean;
}

function variance(slopes: Float64Array, covariance: readonly number[]): number {
  const n = slopes.length;
  let sum = 0;
  for (let row = 0; row < n; row++) {
    if (slopes[row] === 0) continue;
    let product = 0;
    for (let column = 0; column < n; column++) product += covariance[row * n + column]! * slopes[column]!;
    sum += slopes[row]! * product;
  }
  return Math.max(0, sum);
}
