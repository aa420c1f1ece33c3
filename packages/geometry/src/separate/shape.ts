import type { Poles } from './poles.js';

/** Rings as flat columns; ring r runs from corner `start[r]` to `start[r + 1]`. */
export interface RingSet {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly start: Int32Array;
}

/** Rings that must lie on good ground: the whole shape, or a part of it that needs better leather. */
export interface ShapeBody {
  /** Index of the ground, among those of each sheet. */
  readonly ground: number;
  readonly rings: RingSet;
  /** Farthest corner from the first pole's centre. */
  readonly radius: number;
  readonly poleX: Float64Array;
  readonly poleY: Float64Array;
  readonly poleR: Float64Array;
}

/**
 * A shape as the search by separation sees it, in its own frame about the centre of its first pole. Other shapes are
 * met with `pair` (grown by half the gap) or, where groups keep farther apart, with `far`; sheets with the bodies.
 */
export interface SepShape {
  readonly pair: RingSet;
  readonly far: RingSet;
  /** Inscribed circles, not grown. */
  readonly poleX: Float64Array;
  readonly poleY: Float64Array;
  readonly poleR: Float64Array;
  /** What circles grow by against a shape of the same group, and of another one. */
  readonly pairGrowth: number;
  readonly farGrowth: number;
  /** The outline itself: its box keeps within the sheet's. */
  readonly outline: RingSet;
  readonly bodies: readonly ShapeBody[];
  /** Square root of the hull's area: how hard it is to move. */
  readonly lambda: number;
  readonly diameter: number;
  readonly areaMm2: number;
  /** Where the frame's origin lies in the item's own frame. */
  readonly centreX: number;
  readonly centreY: number;
}

export function ringSetOf(rings: readonly Float64Array[], centreX: number, centreY: number): RingSet {
  const count = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  const start = new Int32Array(rings.length + 1);
  let at = 0;
  rings.forEach((ring, r) => {
    start[r] = at;
    for (let i = 0; i < ring.length; i += 2, at++) {
      x[at] = ring[i]! - centreX;
      y[at] = ring[i + 1]! - centreY;
    }
  });
  start[rings.length] = at;
  return { x, y, start };
}

/** Poles about the centre, as columns. */
export function poleColumns(
  poles: Poles,
  centreX: number,
  centreY: number,
): { readonly poleX: Float64Array; readonly poleY: Float64Array; readonly poleR: Float64Array } {
  const n = poles.length / 3;
  const poleX = new Float64Array(n);
  const poleY = new Float64Array(n);
  const poleR = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    poleX[i] = poles[3 * i]! - centreX;
    poleY[i] = poles[3 * i + 1]! - centreY;
    poleR[i] = poles[3 * i + 2]!;
  }
  return { poleX, poleY, poleR };
}

/** Farthest corner from a place. */
export function radiusAbout({ x, y }: RingSet, fromX: number, fromY: number): number {
  let most = 0;
  for (let i = 0; i < x.length; i++) {
    const dx = x[i]! - fromX;
    const dy = y[i]! - fromY;
    most = Math.max(most, dx * dx + dy * dy);
  }
  return Math.sqrt(most);
}
