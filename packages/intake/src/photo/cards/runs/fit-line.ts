import {
  distanceBetween,
  findSelfCrossing,
  flattenCurve,
  pointToSegment,
  roundPoint,
} from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import { corePlaces, rootMeanSquare } from './core-places.js';
import type { EdgePlace } from './edge-place.js';
import { jointOf } from './join-runs.js';
import { PLACE_REACH_MM, PLACE_SIGMA_MM, RULE_COSTS_MM, RULE_COSTS_SHARE } from './limits.js';
import { partRuns } from './part-runs.js';
import type { PlacedRun } from './part-runs.js';
import { smoothRules, squareRules } from './rules.js';
import type { RoughJoint, Rule } from './rules.js';
import { nearestOnRun, offRun } from './run.js';
import type { Run } from './run.js';
import { solveRuns } from './solve-runs.js';

export interface FittedLine {
  /** Lines and arcs on the 1 µm grid. */
  readonly curve: Curve;
  /** How far the places lie off it, mm: root mean square, and the worst one. */
  readonly meanOffMm: number;
  readonly worstOffMm: number;
  readonly worstAt: Point;
}

export interface FitOptions {
  readonly closed: boolean;
  /** How far places lie off by chance, mm; as little as a hand-cut edge waves if absent. */
  readonly sigmaMm?: number;
}

/**
 * The clean line that measured places lie on: straight runs and arcs, sharp corners where they meet, smooth where they
 * meet with hardly a corner, square within the measured error. Nothing if there are too few places.
 */
export function fitLine(
  measured: readonly EdgePlace[],
  { closed, sigmaMm }: FitOptions,
): FittedLine | undefined {
  if (measured.length < FEWEST_PLACES) return undefined;
  const middle = middleOf(measured);
  const places = measured.map(({ x, y, weightMm }) => ({ x: x - middle.x, y: y - middle.y, weightMm }));
  const sigma = Math.max(sigmaMm ?? 0, PLACE_SIGMA_MM);
  const { chain, runs } = closed
    ? partedRing(places, sigma)
    : { chain: places, runs: partRuns(places, sigma) };
  const solved = settled(chain, runs, closed);
  const moved = curveOf(chain, runs, solved, closed);
  const curve = movedCurve(moved, middle);
  const offs = offsOf(chain, moved);
  const worstAt = { x: offs.worstAt.x + middle.x, y: offs.worstAt.y + middle.y };
  return { curve, ...offs, worstAt };
}

/** Below, there is nothing to fit. */
const FEWEST_PLACES = 8;

function middleOf(places: readonly Point[]): Point {
  const sum = places.reduce((a, p) => ({ x: a.x + p.x, y: a.y + p.y }), { x: 0, y: 0 });
  return { x: sum.x / places.length, y: sum.y / places.length };
}

/** A ring has no start: it is parted once anywhere, and again from one of the joints that this gives. */
function partedRing(places: readonly EdgePlace[], sigma: number) {
  const first = partRuns(places, sigma);
  if (first.length === 1) return { chain: places, runs: first };
  const longest = first.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a));
  const start = longest.to % places.length;
  const chain = [...places.slice(start), ...places.slice(0, start)];
  return { chain, runs: partRuns(chain, sigma) };
}

/** Runs adjusted together; rules that make a run fit worse are dropped again. */
function settled(chain: readonly EdgePlace[], placed: readonly PlacedRun[], closed: boolean): readonly Run[] {
  const cores = placed.map((run) => corePlaces(chain, run));
  const free = solveRuns(
    placed.map(({ run }) => run),
    cores,
    [],
  );
  const offs = (runs: readonly Run[]) => runs.map((run, i) => meanOff(run, cores[i]!));
  const before = offs(free);
  const lines = free.flatMap((run, index) =>
    run.kind === 'line'
      ? [{ index, angle: run.angle, sigma: directionSigma(cores[index]!, before[index]!) }]
      : [],
  );
  let rules: readonly Rule[] = [
    ...smoothRules(free, roughJoints(chain, placed, closed)),
    ...squareRules(lines),
  ];
  for (;;) {
    const runs = solveRuns(free, cores, rules);
    const after = offs(runs);
    const isWorse = (i: number) => after[i]! > before[i]! * (1 + RULE_COSTS_SHARE) + RULE_COSTS_MM;
    const kept = rules.filter(({ a, b }) => !isWorse(a) && !isWorse(b));
    if (kept.length === rules.length) return runs;
    rules = kept;
  }
}

function meanOff(run: Run, core: readonly EdgePlace[]): number {
  return rootMeanSquare(core.map((place) => ({ off: offRun(run, place), weightMm: place.weightMm })));
}

/** How well a line's direction is known: error of one place, spread over the line's length. */
function directionSigma(core: readonly EdgePlace[], meanOffMm: number): number {
  const length = core.reduce((sum, { weightMm }) => sum + weightMm, 0);
  const told = Math.max(2, length / PLACE_REACH_MM);
  return (Math.max(meanOffMm, LEAST_OFF_MM) * Math.sqrt(12 / told)) / length;
}

/** Nothing is measured better. */
const LEAST_OFF_MM = 0.01;

function roughJoints(
  chain: readonly EdgePlace[],
  placed: readonly PlacedRun[],
  closed: boolean,
): RoughJoint[] {
  const joints = placed.flatMap(({ to }, i) => {
    const b = i + 1 < placed.length ? i + 1 : 0;
    if (b === 0 && !closed) return [];
    return [{ a: i, b, ...partingAt(chain, to) }];
  });
  return placed.length < 2 ? [] : joints;
}

/** Where the chain is parted before place i, and which way it goes there. */
function partingAt(chain: readonly EdgePlace[], i: number): { readonly at: Point; readonly towards: Point } {
  const n = chain.length;
  const [p, q] = [chain[(i - 1 + n) % n]!, chain[i % n]!];
  const [before, after] = [chain[(i - 4 + n) % n]!, chain[(i + 3) % n]!];
  return {
    at: { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 },
    towards: { x: after.x - before.x, y: after.y - before.y },
  };
}

function curveOf(
  chain: readonly EdgePlace[],
  placed: readonly PlacedRun[],
  runs: readonly Run[],
  closed: boolean,
): Curve {
  const ends = placed.map(({ to }, i) => {
    const isLast = i + 1 === placed.length;
    if (isLast && !closed) return nearestOnRun(runs[i]!, chain.at(-1)!);
    const next = runs[isLast ? 0 : i + 1]!;
    const at = partingAt(chain, to).at;
    return runs.length === 1 ? nearestOnRun(next, at) : jointOf(runs[i]!, next, at);
  });
  const start = closed ? ends.at(-1)! : nearestOnRun(runs[0]!, chain[0]!);
  const segments = placed.flatMap((run, i) =>
    segmentsOf(runs[i]!, i === 0 ? start : ends[i - 1]!, ends[i]!, midPlace(chain, run)),
  );
  return { start, segments, closed };
}

function midPlace(chain: readonly EdgePlace[], { from, to }: PlacedRun): Point {
  return chain[(from + to) >> 1]!;
}

/** Half turns: no arc of the curve turns farther, so that its ends stay apart. */
const HALF_TURN = Math.PI * 1.01;

function segmentsOf(run: Run, from: Point, to: Point, mid: Point): CurveSegment[] {
  if (run.kind === 'line') return [{ kind: 'line', to }];
  const { centre, radius, sense } = run;
  const angle = (p: Point) => Math.atan2(p.y - centre.y, p.x - centre.x);
  const start = angle(from);
  const whole = 2 * Math.PI;
  const forward = (a: number) => ((((a - start) * sense) % whole) + whole) % whole;
  let sweep = forward(angle(to));
  // A whole circle comes back to its start.
  if (distanceBetween(from, to) < 1e-9) sweep = whole;
  else if (forward(angle(mid)) > sweep) return [{ kind: 'line', to }];
  const parts = Math.ceil(sweep / HALF_TURN);
  const at = (share: number): Point => {
    const a = start + sense * sweep * share;
    return { x: centre.x + radius * Math.cos(a), y: centre.y + radius * Math.sin(a) };
  };
  return Array.from({ length: parts }, (_, k): CurveSegment => ({
    kind: 'arc',
    via: at((k + 0.5) / parts),
    to: k + 1 === parts ? to : at((k + 1) / parts),
  }));
}

function movedCurve({ start, segments, closed }: Curve, by: Point): Curve {
  const move = (p: Point) => roundPoint({ x: p.x + by.x, y: p.y + by.y });
  return {
    start: move(start),
    segments: segments.map((segment) =>
      segment.kind === 'arc'
        ? { kind: 'arc', via: move(segment.via), to: move(segment.to) }
        : { kind: 'line', to: move(segment.to) },
    ),
    closed,
  };
}

/** Chords for measuring how far places lie off. */
const CHORD_MM = 0.01;

function offsOf(chain: readonly EdgePlace[], curve: Curve): Omit<FittedLine, 'curve'> {
  const points = flattenCurve(curve, CHORD_MM);
  const offs = chain.map((place) => ({ off: nearestOff(points, place), weightMm: place.weightMm }));
  const worst = offs.reduce((most, { off }, i) => (off > offs[most]!.off ? i : most), 0);
  return {
    meanOffMm: rootMeanSquare(offs),
    worstOffMm: offs[worst]!.off,
    worstAt: chain[worst]!,
  };
}

function nearestOff(points: readonly Point[], p: Point): number {
  let least = Infinity;
  for (let i = 1; i < points.length; i++)
    least = Math.min(least, pointToSegment(p, points[i - 1]!, points[i]!));
  return least;
}

/** True for an outline that crosses itself, as runs joined wrongly would. */
export function crossesItself(curve: Curve): boolean {
  return findSelfCrossing(flattenCurve(curve, 0.05).slice(0, -1)) !== undefined;
}
