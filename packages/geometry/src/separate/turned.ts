import type { RingSet, SepShape } from './shape.js';

/** Rings turned, with their box. Written again and again while an angle is sought. */
export interface TurnedRings {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly start: Int32Array;
  minX: number;
  minY: number;
  maxX: number;
  maxY: number;
}

/** A shape turned to one angle, about its centre. */
export interface Turned {
  readonly shape: SepShape;
  /** Rotation of the item on its sheet. */
  deg: number;
  /** Of the same turn in the sheet's search frame. */
  cos: number;
  sin: number;
  readonly pair: TurnedRings;
  /** The same object as `pair` where no group keeps farther apart. */
  readonly far: TurnedRings;
  readonly outline: TurnedRings;
  readonly poleX: Float64Array;
  readonly poleY: Float64Array;
  readonly bodies: readonly TurnedBody[];
}

export interface TurnedBody {
  readonly rings: TurnedRings;
  readonly poleX: Float64Array;
  readonly poleY: Float64Array;
}

export function createTurned(shape: SepShape): Turned {
  const pair = emptyRings(shape.pair);
  return {
    shape,
    deg: 0,
    cos: 1,
    sin: 0,
    pair,
    far: shape.far === shape.pair ? pair : emptyRings(shape.far),
    outline: shape.outline === shape.pair ? pair : emptyRings(shape.outline),
    poleX: new Float64Array(shape.poleX.length),
    poleY: new Float64Array(shape.poleX.length),
    bodies: shape.bodies.map((body) => ({
      rings: emptyRings(body.rings),
      poleX: new Float64Array(body.poleX.length),
      poleY: new Float64Array(body.poleX.length),
    })),
  };
}

function emptyRings({ x, start }: RingSet): TurnedRings {
  return {
    x: new Float64Array(x.length),
    y: new Float64Array(x.length),
    start,
    minX: 0,
    minY: 0,
    maxX: 0,
    maxY: 0,
  };
}

/** Turns the shape into `turned`; cos and sin are of the angle in the sheet's search frame. */
export function turnInto(turned: Turned, deg: number, cos: number, sin: number): void {
  const { shape } = turned;
  turned.deg = deg;
  turned.cos = cos;
  turned.sin = sin;
  turnRings(turned.pair, shape.pair, cos, sin);
  if (turned.far !== turned.pair) turnRings(turned.far, shape.far, cos, sin);
  if (turned.outline !== turned.pair) turnRings(turned.outline, shape.outline, cos, sin);
  turnPoints(turned.poleX, turned.poleY, shape.poleX, shape.poleY, cos, sin);
  for (let k = 0; k < shape.bodies.length; k++) {
    const from = shape.bodies[k]!;
    const to = turned.bodies[k]!;
    turnRings(to.rings, from.rings, cos, sin);
    turnPoints(to.poleX, to.poleY, from.poleX, from.poleY, cos, sin);
  }
}

function turnRings(to: TurnedRings, from: RingSet, cos: number, sin: number): void {
  const { x, y } = from;
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < x.length; i++) {
    const u = x[i]! * cos - y[i]! * sin;
    const v = x[i]! * sin + y[i]! * cos;
    to.x[i] = u;
    to.y[i] = v;
    if (u < minX) minX = u;
    if (u > maxX) maxX = u;
    if (v < minY) minY = v;
    if (v > maxY) maxY = v;
  }
  to.minX = minX;
  to.minY = minY;
  to.maxX = maxX;
  to.maxY = maxY;
}

function turnPoints(
  toX: Float64Array,
  toY: Float64Array,
  x: Float64Array,
  y: Float64Array,
  cos: number,
  sin: number,
): void {
  for (let i = 0; i < x.length; i++) {
    toX[i] = x[i]! * cos - y[i]! * sin;
    toY[i] = x[i]! * sin + y[i]! * cos;
  }
}
