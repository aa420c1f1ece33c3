import {
  createSpatialIndex,
  curveBox,
  curveSteps,
  distanceBetween,
  endDirection,
  flattenCurve,
  startDirection,
} from '@hidebound/geometry';
import type { Box, Curve, Point } from '@hidebound/geometry';
import type { DrawnLine } from '../drawing/drawn-line.js';
import { lookOf } from './look.js';
import { dot } from './vectors.js';

/** Chords this near to their curves: places on lines are sought to a hundredth of a millimetre. */
const CHORD_MM = 0.005;

/** The lines of a page, to be asked what runs near a place. */
export interface PageLines {
  readonly boxes: readonly Box[];
  readonly looks: readonly string[];
  /** Nearest place on a line of that look which runs in that direction, either way, within the reach. */
  nearest(p: Point, along: Point, look: string, reachMm: number): PlaceOnLine | undefined;
  /** Every chord of that look that touches the box. */
  chordsIn(box: Box, visit: (a: Point, b: Point, look: string) => void): void;
}

export interface PlaceOnLine {
  readonly at: Point;
  readonly line: number;
}

/** Lines run in one direction if they differ by 10° at most (cosine). */
const SAME_WAY_COS = 0.985;

export function pageLines(lines: readonly DrawnLine[]): PageLines {
  const looks = lines.map(lookOf);
  const chords = chordsOf(lines);
  const index = createSpatialIndex(chords.boxes());
  return {
    boxes: lines.map(({ curve }) => curveBox(curve)),
    looks,
    nearest: (p, along, look, reachMm) => {
      let best: PlaceOnLine | undefined;
      let least = reachMm;
      index.query(boxAround(p, reachMm), (i) => {
        const line = chords.lineOf(i);
        if (looks[line] !== look) return;
        const place = nearestOnChord(p, along, chords.startOf(i), chords.endOf(i));
        if (place === undefined) return;
        const distance = distanceBetween(place, p);
        if (distance > least) return;
        least = distance;
        best = { at: place, line };
      });
      return best;
    },
    chordsIn: (box, visit) => {
      index.query(box, (i) => visit(chords.startOf(i), chords.endOf(i), looks[chords.lineOf(i)]!));
    },
  };
}

/** Chords of lines, by number. */
interface Chords {
  lineOf(i: number): number;
  startOf(i: number): Point;
  endOf(i: number): Point;
  /** To build an index from; made anew, not kept. */
  boxes(): Box[];
}

/** Curved pages have a million chords, which as objects would take hundreds of megabytes: their corners lie in one row of numbers. */
function chordsOf(lines: readonly DrawnLine[]): Chords {
  const flats = lines.map(({ curve }) => flatCorners(curve));
  const count = flats.reduce((sum, flat) => sum + flat.length / 2 - 1, 0);
  const ends = new Float64Array(4 * count);
  const lineOf = new Uint32Array(count);
  let at = 0;
  flats.forEach((flat, line) => {
    for (let k = 2; k < flat.length; k += 2, at++) {
      ends.set(flat.subarray(k - 2, k + 2), 4 * at);
      lineOf[at] = line;
    }
  });
  const startOf = (i: number) => ({ x: ends[4 * i]!, y: ends[4 * i + 1]! });
  const endOf = (i: number) => ({ x: ends[4 * i + 2]!, y: ends[4 * i + 3]! });
  const boxes = () => Array.from(lineOf, (_, i) => boxOfChord(startOf(i), endOf(i)));
  return { lineOf: (i) => lineOf[i]!, startOf, endOf, boxes };
}

function flatCorners(curve: Curve): Float64Array {
  const corners = flattenCurve(curve, CHORD_MM);
  const flat = new Float64Array(2 * corners.length);
  corners.forEach(({ x, y }, i) => flat.set([x, y], 2 * i));
  return flat;
}

function nearestOnChord(p: Point, along: Point, a: Point, b: Point): Point | undefined {
  const chord = { x: b.x - a.x, y: b.y - a.y };
  const length = Math.sqrt(dot(chord, chord));
  if (length === 0 || Math.abs(dot(chord, along)) < SAME_WAY_COS * length) return undefined;
  const share = Math.min(1, Math.max(0, ((p.x - a.x) * chord.x + (p.y - a.y) * chord.y) / (length * length)));
  return { x: a.x + share * chord.x, y: a.y + share * chord.y };
}

function boxOfChord(a: Point, b: Point): Box {
  return {
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
}

export function boxAround(p: Point, by: number): Box {
  return { minX: p.x - by, minY: p.y - by, maxX: p.x + by, maxY: p.y + by };
}

/** An end of an open line, with the direction in which it would go on. */
export interface LineEnd {
  readonly at: Point;
  readonly out: Point;
}

/** Both ends of an open line: its start, then its end. */
export function lineEnds(curve: Curve): readonly [LineEnd, LineEnd] {
  const steps = curveSteps(curve);
  const first = steps[0]!;
  const last = steps.at(-1)!;
  const into = startDirection(first.from, first.segment);
  return [
    { at: curve.start, out: { x: -into.x, y: -into.y } },
    { at: last.segment.to, out: endDirection(last.from, last.segment) },
  ];
}
