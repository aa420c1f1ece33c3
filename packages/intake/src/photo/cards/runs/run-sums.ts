import type { Point } from '@hidebound/geometry';
import type { EdgePlace } from './edge-place.js';
import type { RoundRun, StraightRun } from './run.js';

/** Sums over the first k stretches of places, so that any stretch of them is fitted at once. */
export interface RunSums {
  /** Number of stretches. */
  readonly count: number;
  /** Place number at which each stretch begins; one more at the end. */
  readonly starts: readonly number[];
  readonly sums: readonly Float64Array[];
}

const POWERS = 9;

/** Places around a common middle keep the sums exact. */
export function sumPlaces(places: readonly EdgePlace[], starts: readonly number[]): RunSums {
  const count = starts.length - 1;
  const sums = Array.from({ length: POWERS }, () => new Float64Array(count + 1));
  for (let k = 0; k < count; k++) {
    for (const s of sums) s[k + 1] = s[k]!;
    for (let i = starts[k]!; i < starts[k + 1]!; i++) addPlace(sums, k + 1, places[i]!);
  }
  return { count, starts, sums };
}

function addPlace(sums: readonly Float64Array[], k: number, { x, y, weightMm: w }: EdgePlace): void {
  const z = x * x + y * y;
  const terms = [1, x, y, x * x, x * y, y * y, x * z, y * z, z * z];
  for (let n = 0; n < POWERS; n++) sums[n]![k] = sums[n]![k]! + w * terms[n]!;
}

/** Weighted moments of stretches from..to (exclusive) about their middle. */
interface Moments {
  readonly weight: number;
  readonly mx: number;
  readonly my: number;
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
  readonly xz: number;
  readonly yz: number;
  readonly zz: number;
}

function momentsOf({ sums }: RunSums, from: number, to: number): Moments {
  const d = (n: number) => sums[n]![to]! - sums[n]![from]!;
  const w = d(0);
  const [mx, my] = [d(1) / w, d(2) / w];
  const [sxx, sxy, syy] = [d(3) / w, d(4) / w, d(5) / w];
  const [sxz, syz, szz] = [d(6) / w, d(7) / w, d(8) / w];
  const xx = sxx - mx * mx;
  const xy = sxy - mx * my;
  const yy = syy - my * my;
  const m2 = mx * mx + my * my;
  const zMean = sxx + syy;
  // z' = |p - m|² = z - 2 m·p + |m|²
  const xz = sxz - 2 * (mx * sxx + my * sxy) + m2 * mx - mx * (zMean - m2);
  const yz = syz - 2 * (mx * sxy + my * syy) + m2 * my - my * (zMean - m2);
  const zz =
    szz -
    4 * (mx * sxz + my * syz) +
    4 * (mx * mx * sxx + 2 * mx * my * sxy + my * my * syy) +
    2 * m2 * zMean -
    4 * m2 * m2 +
    m2 * m2;
  return { weight: w, mx, my, xx, xy, yy, xz, yz, zz };
}

export interface Fitted<Run> {
  readonly run: Run;
  /** Sum of squares of how far places lie off, each times its weight; mm³. */
  readonly misfit: number;
}

/** The line with the least sum of squares. */
export function fitStraight(sums: RunSums, from: number, to: number): Fitted<StraightRun> {
  const { weight, mx, my, xx, xy, yy } = momentsOf(sums, from, to);
  const half = (xx - yy) / 2;
  const root = Math.sqrt(half * half + xy * xy);
  const least = Math.max(0, (xx + yy) / 2 - root);
  // The normal is the axis of the smaller moment.
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy) + Math.PI / 2;
  const offset = mx * Math.cos(angle) + my * Math.sin(angle);
  return { run: { kind: 'line', angle, offset }, misfit: least * weight };
}

/** Newton's steps towards the smallest root; it converges within five from 0. */
const ROOT_STEPS = 12;

/** The circle of G. Taubin's fit (IEEE Trans. PAMI 13, 1991; from memory), which is not drawn to small radii by short arcs. */
export function fitRound(
  sums: RunSums,
  from: number,
  to: number,
): Fitted<{ centre: Point; radius: number }> | undefined {
  const { weight, mx, my, xx, xy, yy, xz, yz, zz } = momentsOf(sums, from, to);
  const z = xx + yy;
  if (z <= 0) return undefined;
  const cov = xx * yy - xy * xy;
  const varZ = zz - z * z;
  const a3 = 4 * z;
  const a2 = -3 * z * z - zz;
  const a1 = varZ * z + 4 * cov * z - xz * xz - yz * yz;
  const a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - varZ * cov;
  let root = 0;
  let value = a0;
  for (let k = 0; k < ROOT_STEPS; k++) {
    const slope = a1 + root * (2 * a2 + root * 3 * a3);
    if (slope === 0) break;
    const next = root - value / slope;
    const nextValue = a0 + next * (a1 + next * (a2 + next * a3));
    if (!Number.isFinite(next) || Math.abs(nextValue) >= Math.abs(value)) break;
    root = next;
    value = nextValue;
  }
  const det = root * root - root * z + cov;
  if (det === 0) return undefined;
  const cx = (xz * (yy - root) - yz * xy) / det / 2;
  const cy = (yz * (xx - root) - xz * xy) / det / 2;
  const radius = Math.sqrt(cx * cx + cy * cy + z);
  if (!Number.isFinite(radius)) return undefined;
  const misfit = meanSquareOff({ xx, xy, yy, xz, yz, zz }, cx, cy, radius) * weight;
  return { run: { centre: { x: mx + cx, y: my + cy }, radius }, misfit: Math.max(0, misfit) };
}

type Central = Pick<Moments, 'xx' | 'xy' | 'yy' | 'xz' | 'yz' | 'zz'>;

/** |p - c|² - r² is 2 r times the way off the circle, near it. */
function meanSquareOff(m: Central, cx: number, cy: number, radius: number): number {
  const z = m.xx + m.yy;
  const k = cx * cx + cy * cy - radius * radius;
  // F = z' - 2 c·p + k, with the mean of p at 0
  const square =
    m.zz +
    4 * (cx * cx * m.xx + 2 * cx * cy * m.xy + cy * cy * m.yy) +
    k * k -
    4 * (cx * m.xz + cy * m.yz) +
    2 * k * z;
  return square / (4 * radius * radius);
}

/** How a stretch of places turns around a centre: 1 clockwise as seen, -1 the other way. */
export function senseOf(
  places: readonly Point[],
  from: number,
  to: number,
  centre: Point,
): RoundRun['sense'] {
  let turn = 0;
  for (let i = from + 1; i < to; i++) {
    const a = places[i - 1]!;
    const b = places[i]!;
    turn += (a.x - centre.x) * (b.y - centre.y) - (a.y - centre.y) * (b.x - centre.x);
  }
  return turn >= 0 ? 1 : -1;
}
