/**
 * All that is solved for, in one row of numbers. Lengths on the floor are in units of FLOOR_UNIT_MM and places on photos in
 * half diagonals from the middle, so that all numbers are near 1.
 */
export const FLOOR_UNIT_MM = 1000;

/** What one sighting depends on, in this order; `Slots` tells where each stands in the row of all unknowns. */
export const SLOT = {
  homography: 0,
  k1: 8,
  k2: 9,
  p1: 10,
  p2: 11,
  axisX: 12,
  axisY: 13,
  spread: 14,
  x: 15,
  y: 16,
  turn: 17,
  curlX: 18,
  curlY: 19,
  curlXY: 20,
  sizeX: 21,
  sizeY: 22,
  slideX: 23,
  slideY: 24,
} as const;
export const SLOTS = 25;

/** Floor coordinates of the camera's foot and its height, in floor units: which way what rises from the floor moves. */
export interface View {
  readonly footX: number;
  readonly footY: number;
  readonly height: number;
}

/** What of a sighting does not change. */
export interface FixedSight {
  /** On the body, in floor units. */
  readonly onX: number;
  readonly onY: number;
  readonly spreadX: number;
  readonly spreadY: number;
  readonly slideX: number;
  readonly slideY: number;
  /** Place on the body from -1 to 1 each way. */
  readonly shareX: number;
  readonly shareY: number;
  readonly stretchX: number;
  readonly stretchY: number;
}

/** Where a sighting would be, in units of the photo; `v` holds the values of its slots. */
export function predict(v: Float64Array, sight: FixedSight, view: View, out: Float64Array): void {
  const bodyX =
    (sight.onX * sight.stretchX + v[SLOT.spread]! * sight.spreadX) * (1 + v[SLOT.sizeX]!) +
    v[SLOT.slideX]! * sight.slideX;
  const bodyY =
    (sight.onY * sight.stretchY + v[SLOT.spread]! * sight.spreadY) * (1 + v[SLOT.sizeY]!) +
    v[SLOT.slideY]! * sight.slideY;
  const cos = Math.cos(v[SLOT.turn]!);
  const sin = Math.sin(v[SLOT.turn]!);
  const floorX = v[SLOT.x]! + cos * bodyX - sin * bodyY;
  const floorY = v[SLOT.y]! + sin * bodyX + cos * bodyY;
  const rise =
    v[SLOT.curlX]! * sight.shareX * sight.shareX +
    v[SLOT.curlY]! * sight.shareY * sight.shareY +
    v[SLOT.curlXY]! * sight.shareX * sight.shareY;
  const away = rise / (view.height - rise);
  project(v, floorX + away * (floorX - view.footX), floorY + away * (floorY - view.footY), out);
}

/** A place of the floor on the photo, by the homography and the lens among the slots. */
export function project(v: Float64Array, x: number, y: number, out: Float64Array): void {
  const w = v[6]! * x + v[7]! * y + 1;
  const dx = (v[0]! * x + v[1]! * y + v[2]!) / w - v[SLOT.axisX]!;
  const dy = (v[3]! * x + v[4]! * y + v[5]!) / w - v[SLOT.axisY]!;
  const rSq = dx * dx + dy * dy;
  const radial = 1 + rSq * (v[SLOT.k1]! + rSq * v[SLOT.k2]!);
  const p1 = v[SLOT.p1]!;
  const p2 = v[SLOT.p2]!;
  out[0] = v[SLOT.axisX]! + dx * radial + 2 * p1 * dx * dy + p2 * (rSq + 2 * dx * dx);
  out[1] = v[SLOT.axisY]! + dy * radial + p1 * (rSq + 2 * dy * dy) + 2 * p2 * dx * dy;
}
