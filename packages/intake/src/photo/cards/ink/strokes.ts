import { distanceBetween } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { branchesOf } from './branches.js';
import type { Branch } from './branches.js';
import { GOES_ON_COS } from './limits.js';

/** One drawn stroke: places along its middle. */
export interface Stroke {
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly lengthMm: number;
}

/**
 * The strokes of a thinned mask: branches that go straight on over a crossing are one, and spurs no longer than the
 * line is wide are dropped. `toMm` places a pixel, `widthPx` is the line's width.
 */
export function strokesOf(
  mask: Uint8Array,
  width: number,
  widthPx: number,
  toMm: (p: Point) => Point,
): Stroke[] {
  const { branches, degrees } = branchesOf(mask, width);
  const isSpur = ({ points, from, to }: Branch) => {
    if (from === undefined || to === undefined || lengthOf(points) > widthPx) return false;
    return degrees[from] === 1 ? degrees[to]! > 2 : degrees[to] === 1 && degrees[from]! > 2;
  };
  const kept = branches.filter((branch) => !isSpur(branch));
  return joined(kept).map(({ points, closed }) => {
    const smooth = smoothed(points, Math.max(2, Math.round(widthPx)), closed).map(toMm);
    return { points: smooth, closed, lengthMm: lengthOf(closed ? [...smooth, smooth[0]!] : smooth) };
  });
}

export function lengthOf(points: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) length += distanceBetween(points[i - 1]!, points[i]!);
  return length;
}

interface Chain {
  /** Stays when a chain is turned round. */
  readonly id: number;
  readonly points: readonly Point[];
  readonly from: number | undefined;
  readonly to: number | undefined;
}

interface JoinedChain extends Pick<Chain, 'points'> {
  readonly closed: boolean;
}

/** Joins at each node the two branches that go on straightest, again and again. */
function joined(branches: readonly Branch[]): JoinedChain[] {
  let chains: Chain[] = branches.map(({ points, from, to }, id) => ({ id, points, from, to }));
  for (let id = chains.length; ; id++) {
    const best = straightestPair(chains);
    if (best === undefined) break;
    const [a, b] = best;
    const whole = { id, points: [...a.points, ...b.points.slice(1)], from: a.from, to: b.to };
    chains = [...chains.filter((c) => c.id !== a.id && c.id !== b.id), whole];
  }
  return chains.map(({ points, from, to }) => {
    const comesBack = from === to && from !== undefined;
    return { points: comesBack ? points.slice(0, -1) : points, closed: from === to };
  });
}

function reversed({ id, points, from, to }: Chain): Chain {
  return { id, points: [...points].reverse(), from: to, to: from };
}

/** Two chains of which the first ends where the second begins. */
function straightestPair(chains: readonly Chain[]): readonly [Chain, Chain] | undefined {
  let best: { pair: readonly [Chain, Chain]; cos: number } | undefined;
  chains.forEach((a, i) => {
    for (const first of [a, reversed(a)]) {
      if (first.to === undefined) continue;
      chains.slice(i + 1).forEach((b) => {
        for (const second of [b, reversed(b)]) {
          if (second.from !== first.to) continue;
          const cos = cosBetween(awayFrom([...first.points].reverse()), awayFrom(second.points));
          if (cos <= GOES_ON_COS && (best === undefined || cos < best.cos))
            best = { pair: [first, second], cos };
        }
      });
    }
  });
  return best?.pair;
}

/** The direction in which a line leaves its start, over a few pixels. */
const START_PX = 8;

function awayFrom(points: readonly Point[]): Point {
  const [a, b] = [points[Math.min(1, points.length - 1)]!, points[Math.min(START_PX, points.length - 1)]!];
  return a === b
    ? { x: points.at(-1)!.x - points[0]!.x, y: points.at(-1)!.y - points[0]!.y }
    : { x: b.x - a.x, y: b.y - a.y };
}

export function cosBetween(a: Point, b: Point): number {
  return (a.x * b.x + a.y * b.y) / (Math.hypot(a.x, a.y) * Math.hypot(b.x, b.y) || 1);
}

/** Running mean; towards the ends of an open line over fewer, so that they stay. */
function smoothed(points: readonly Point[], reach: number, closed: boolean): Point[] {
  const n = points.length;
  return points.map((_, i) => {
    const half = closed ? Math.min(reach, (n - 1) >> 1) : Math.min(reach, i, n - 1 - i);
    let [x, y] = [0, 0];
    for (let k = -half; k <= half; k++) {
      const p = points[(i + k + n) % n]!;
      [x, y] = [x + p.x, y + p.y];
    }
    return { x: x / (2 * half + 1), y: y / (2 * half + 1) };
  });
}
