import type { Area } from '../check/area.js';

/**
 * The boundary of something solid as flat edges, ring after ring, each run so that the solid lies to its right as seen
 * (y down); so the unit vector (uy, -ux) of an edge points out of the solid. Kernel data.
 */
export interface SolidLoops {
  readonly count: number;
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  readonly ux: Float64Array;
  readonly uy: Float64Array;
  /** The edge that ends where this one starts. */
  readonly before: Int32Array;
  /** 1 where the solid has an outward corner (or none) at the start of the edge: only there can it touch. */
  readonly isConvex: Uint8Array;
}

/** Sides that turn inwards by less than this still count as straight on. */
const STRAIGHT = 1e-9;

/** Of an area, or, with `outside`, of all that lies outside of it. Which way its rings run does not matter. */
export function solidLoops(area: Area, solid: 'inside' | 'outside'): SolidLoops {
  const { count } = area;
  const loops = {
    count,
    ax: new Float64Array(count),
    ay: new Float64Array(count),
    bx: new Float64Array(count),
    by: new Float64Array(count),
    ux: new Float64Array(count),
    uy: new Float64Array(count),
    before: new Int32Array(count),
    isConvex: new Uint8Array(count),
  };
  for (let ring = 0; ring + 1 < area.ringStart.length; ring++) {
    const first = area.ringStart[ring]!;
    const end = area.ringStart[ring + 1]!;
    const runsAsOuter = signedArea(area, first, end) > 0;
    const isOuter = (ring === 0) === (solid === 'inside');
    copyRing(area, first, end, runsAsOuter !== isOuter, loops);
  }
  for (let i = 0; i < count; i++) {
    const k = loops.before[i]!;
    const turn = loops.ux[k]! * loops.uy[i]! - loops.uy[k]! * loops.ux[i]!;
    loops.isConvex[i] = turn >= -STRAIGHT ? 1 : 0;
  }
  return loops;
}

function copyRing(area: Area, first: number, end: number, reverse: boolean, loops: SolidLoops): void {
  for (let i = first; i < end; i++) {
    const from = reverse ? first + end - 1 - i : i;
    const [ax, ay, bx, by] = [area.ax[from]!, area.ay[from]!, area.bx[from]!, area.by[from]!];
    loops.ax[i] = reverse ? bx : ax;
    loops.ay[i] = reverse ? by : ay;
    loops.bx[i] = reverse ? ax : bx;
    loops.by[i] = reverse ? ay : by;
    const dx = loops.bx[i]! - loops.ax[i]!;
    const dy = loops.by[i]! - loops.ay[i]!;
    const length = Math.sqrt(dx * dx + dy * dy);
    loops.ux[i] = dx / length;
    loops.uy[i] = dy / length;
    loops.before[i] = i === first ? end - 1 : i - 1;
  }
}

function signedArea(area: Area, first: number, end: number): number {
  const [x0, y0] = [area.ax[first]!, area.ay[first]!];
  let sum = 0;
  for (let i = first; i < end; i++) {
    sum += (area.ax[i]! - x0) * (area.by[i]! - y0) - (area.bx[i]! - x0) * (area.ay[i]! - y0);
  }
  return sum / 2;
}
