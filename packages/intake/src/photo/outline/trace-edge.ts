import type { Point, Ring } from '@hidebound/geometry';
import type { StraightPicture } from '../straight/straight-picture.js';
import { lookBesideEdge } from './beside-edge.js';
import { bestLine } from './best-line.js';
import { placeBetweenSamples, shadowDoubt } from './between-samples.js';
import { edgeGains } from './edge-gains.js';
import { sampleEdge } from './edge-samples.js';
import type { EdgeSamples } from './edge-samples.js';
import { railOf } from './even-steps.js';
import { steadyPlaces } from './steady.js';

/** An edge of leather followed on the straightened picture; all in its pixels. */
export interface TracedEdge {
  /** Points as they follow each other; loops are still in. */
  readonly points: Ring;
  readonly rail: Ring;
  /** For each point how far it can be off (90 %). */
  readonly offPx: Float32Array;
  readonly state: Uint8Array;
}

/** What there is at a point of the edge. */
export const EDGE_STATE = { plain: 0, leavesPicture: 1, hidden: 2, blownOut: 3 } as const;

/** From one point to the next along the edge. */
const STEP_MM = 1;
/** How far the edge is looked for from where the coarser picture has it. */
const LOOK_MM = 6;
/** How far leather and floor beside it are looked at. */
const BESIDE_MM = 12;
/** What is nearer to the edge than this is in its blur, its shadow or beyond it. */
const CLEAR_MM = 2.5;
/** How far along the edge colours are taken together. */
const ALONG_MM = 15;
/** From a standard deviation to what is not exceeded in nine cases of ten. */
const NINE_IN_TEN = 1.645;
/** What is left in the best case: the smallest step between pixels, their raster and the lens' blur. */
const LEAST_OFF_PX = 0.25;

/**
 * `sideAt` tells for a place of the picture the coarser odds of leather, NaN where a sheet lies or nothing is seen.
 */
export function traceEdge(
  picture: StraightPicture,
  ring: Ring,
  sideAt: (x: number, y: number) => number,
): TracedEdge {
  const { pxPerMm } = picture;
  const inPx = (mm: number, least: number): number => Math.max(least, Math.round(mm * pxPerMm));
  const rail = railOf(ring, Math.max(1, STEP_MM * pxPerMm));
  const reach = inPx(BESIDE_MM, 8);
  const most = Math.min(reach - 4, inPx(LOOK_MM, 4));
  const clear = inPx(CLEAR_MM, 2);
  const samples = sampleEdge(picture, rail, reach, clear, sideAt);
  const count = rail.points.length;
  const beside = lookBesideEdge(samples, count, clear, Math.round((ALONG_MM * pxPerMm) / rail.step));
  const gains = edgeGains(samples, beside, count);
  const { splits, spreads } = bestLine(gains, count, samples.across, most);
  const state = edgeStates(picture, rail.points, rail.out, samples, splits, sideAt);
  const offPx = new Float32Array(count);
  const away = Float32Array.from(rail.points, (_, i) => {
    if (state[i] === EDGE_STATE.leavesPicture || state[i] === EDGE_STATE.hidden) return NaN;
    offPx[i] = NINE_IN_TEN * Math.hypot(spreads[i]!, LEAST_OFF_PX, shadowDoubt(samples, i, splits[i]!));
    return placeBetweenSamples(samples, i, splits[i]!);
  });
  steadyPlaces(away, offPx, rail.step, pxPerMm);
  const points = rail.points.map((p, i) => {
    const moved = Number.isNaN(away[i]!) ? 0 : away[i]!;
    return { x: p.x + moved * rail.out[i]!.x, y: p.y + moved * rail.out[i]!.y };
  });
  return { points, rail: rail.points, offPx, state };
}

function edgeStates(
  picture: StraightPicture,
  points: readonly Point[],
  out: readonly Point[],
  samples: EdgeSamples,
  splits: Int32Array,
  sideAt: (x: number, y: number) => number,
): Uint8Array {
  return Uint8Array.from(points, (p, i) => {
    const beyond = { x: p.x + 3 * out[i]!.x, y: p.y + 3 * out[i]!.y };
    if (!isSeen(picture, beyond) || !isSeen(picture, p)) return EDGE_STATE.leavesPicture;
    if (Number.isNaN(sideAt(p.x, p.y))) return EDGE_STATE.hidden;
    const at = i * samples.across + splits[i]!;
    const bothBlownOut = samples.blownOut[at - 2] === 1 && samples.blownOut[at + 1] === 1;
    return bothBlownOut ? EDGE_STATE.blownOut : EDGE_STATE.plain;
  });
}

function isSeen({ width, height, seen }: StraightPicture, { x, y }: Point): boolean {
  const i = Math.round(x);
  const j = Math.round(y);
  return i >= 0 && j >= 0 && i < width && j < height && seen[j * width + i] !== 0;
}
