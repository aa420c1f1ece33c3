import {
  curveLength,
  curveStretch,
  curveSteps,
  distanceBetween,
  findSelfContacts,
  findSelfCrossing,
  flattenCurve,
  ringBox,
  roundCurve,
  roundPoint,
} from '@hidebound/geometry';
import type { Curve, CurveSegment, Point, SelfContact } from '@hidebound/geometry';
import { LOOP_CHORD_MM, MAX_LOOPED_SEGMENTS, TINY_LOOP_MM } from '../limits.js';
import { flatRing } from './duplicates.js';
import { dropStandstill } from './tidy.js';

export interface RemovedLoop {
  readonly at: Point;
  /** The longer side of its box, mm. */
  readonly extentMm: number;
}

/** Each pass removes every loop that lies apart from the others; what is left after so many is no slip of a pen. */
const PASSES = 4;

/**
 * A closed curve without loops and spikes smaller than 0.5 mm, which offsets and tracing leave behind: cut off where
 * it crosses itself. Larger ones stay.
 */
export function cutTinyLoops(curve: Curve): {
  readonly curve: Curve;
  readonly removed: readonly RemovedLoop[];
} {
  const removed: RemovedLoop[] = [];
  let mended = curve;
  if (!curve.closed || curve.segments.length > MAX_LOOPED_SEGMENTS) return { curve, removed };
  for (let pass = 0; pass < PASSES; pass++) {
    if (findSelfCrossing(flatRing(mended)) === undefined) break;
    const chords = chordsOf(mended);
    const loops = tinyLoops(chords);
    if (loops.length === 0) break;
    const next = withoutLoops(mended, chords, loops);
    if (next === undefined) break;
    mended = next;
    removed.push(...loops.map(({ at, extentMm }) => ({ at, extentMm })));
  }
  return { curve: mended, removed };
}

/** Fine chords of a closed curve, with the segment that each is of. */
interface Chords {
  readonly steps: ReturnType<typeof curveSteps>;
  readonly points: readonly Point[];
  readonly segmentOf: readonly number[];
}

function chordsOf(curve: Curve): Chords {
  const points: Point[] = [];
  const segmentOf: number[] = [];
  const steps = curveSteps(curve);
  steps.forEach(({ from, segment }, s) => {
    const part = flattenCurve({ start: from, segments: [segment], closed: false }, LOOP_CHORD_MM);
    for (let k = 0; k + 1 < part.length; k++) {
      points.push(part[k]!);
      segmentOf.push(s);
    }
  });
  return { steps, points, segmentOf };
}

/** A loop from chord `first` round to chord `last`, which meet `at`; over the start if `first` is the later one. */
interface Loop extends RemovedLoop {
  readonly first: number;
  readonly last: number;
}

/** Small loops none of which lies within another, in the order of their first chords. */
function tinyLoops({ points }: Chords): Loop[] {
  const loops: Loop[] = [];
  let free = 0;
  for (const contact of findSelfContacts(points)) {
    const loop = loopAt(points, contact);
    if (loop === undefined) continue;
    const isWrapped = loop.first > loop.last;
    if (isWrapped && loops.length > 0) continue;
    if (!isWrapped && loop.first < free) continue;
    loops.push(loop);
    if (isWrapped) break;
    free = loop.last + 1;
  }
  return loops;
}

function loopAt(points: readonly Point[], { kind, place, edges }: SelfContact): Loop | undefined {
  if (kind !== 'crosses' && kind !== 'overlaps') return undefined;
  const [a, b] = edges;
  const spike = kind === 'overlaps' ? spikeAt(points, a, b) : undefined;
  if (spike !== undefined) return spike.extentMm < TINY_LOOP_MM ? spike : undefined;
  const inner = [place, ...points.slice(a + 1, b + 1)];
  const outer =
    b - a > points.length / 2 ? [place, ...points.slice(b + 1), ...points.slice(0, a + 1)] : undefined;
  const at = roundPoint(place);
  const [extent, around] = [extentOf(inner), outer === undefined ? Infinity : extentOf(outer)];
  if (Math.min(extent, around) >= TINY_LOOP_MM) return undefined;
  return extent <= around
    ? { first: a, last: b, at, extentMm: extent }
    : { first: b, last: a, at, extentMm: around };
}

/** Two chords that follow each other and fold back: cut off where the shorter one ends. */
function spikeAt(points: readonly Point[], a: number, b: number): Loop | undefined {
  const isWrapped = a === 0 && b === points.length - 1;
  if (b !== a + 1 && !isWrapped) return undefined;
  const [first, last] = isWrapped ? [b, a] : [a, b];
  const [foot, tip, back] = [points[first]!, points[last]!, points[(last + 1) % points.length]!];
  const [out, home] = [distanceBetween(foot, tip), distanceBetween(tip, back)];
  return { first, last, at: roundPoint(out > home ? back : foot), extentMm: Math.min(out, home) };
}

function extentOf(points: readonly Point[]): number {
  const box = ringBox(points);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY);
}

function withoutLoops(curve: Curve, chords: Chords, loops: readonly Loop[]): Curve | undefined {
  const [only] = loops;
  if (only !== undefined && only.first > only.last) {
    const kept = stretchBetween(
      chords,
      { chord: only.last, at: only.at },
      { chord: only.first, at: only.at },
    );
    return closedOf(only.at, kept);
  }
  const segments: CurveSegment[] = [];
  let from: Mark = { chord: 0, at: curve.start };
  for (const { first, last, at } of loops) {
    segments.push(...stretchBetween(chords, from, { chord: first, at }));
    from = { chord: last, at };
  }
  segments.push(...stretchBetween(chords, from, { chord: chords.points.length - 1, at: curve.start }));
  return closedOf(curve.start, segments);
}

function closedOf(start: Point, segments: readonly CurveSegment[]): Curve | undefined {
  const curve = dropStandstill({ start, segments, closed: true });
  return curve !== undefined && curve.segments.length > 1 ? curve : undefined;
}

/** A place on a chord. */
interface Mark {
  readonly chord: number;
  readonly at: Point;
}

/** The curve's segments from one place to a later one, the first and the last cut there. */
function stretchBetween(chords: Chords, from: Mark, to: Mark): CurveSegment[] {
  const [s, e] = [chords.segmentOf[from.chord]!, chords.segmentOf[to.chord]!];
  const segments: CurveSegment[] = [];
  for (let k = s; k <= e; k++) {
    const { from: start, segment } = chords.steps[k]!;
    const one: Curve = { start, segments: [segment], closed: false };
    const begin = k === s ? alongSegment(chords, from) : 0;
    const end = k === e ? alongSegment(chords, to) : 1;
    const length = curveLength(one);
    const part = roundCurve(curveStretch(one, begin * length, end * length)).segments;
    const last = part.at(-1);
    if (last !== undefined) segments.push(...part.slice(0, -1), k === e ? { ...last, to: to.at } : last);
  }
  return segments;
}

/** How far along its segment a place lies, as a share of the segment's chords. */
function alongSegment({ points, segmentOf }: Chords, { chord, at }: Mark): number {
  const next = (k: number) => points[(k + 1) % points.length]!;
  let passed = 0;
  let whole = 0;
  let k = chord;
  while (k > 0 && segmentOf[k - 1] === segmentOf[chord]) k--;
  for (; segmentOf[k] === segmentOf[chord] && k < points.length; k++) {
    if (k < chord) passed += distanceBetween(points[k]!, next(k));
    if (k === chord) passed += distanceBetween(points[k]!, at);
    whole += distanceBetween(points[k]!, next(k));
  }
  return whole === 0 ? 0 : Math.min(1, passed / whole);
}
