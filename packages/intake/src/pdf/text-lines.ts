import { atan2Deg, distanceBetween, roundPoint } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { DrawnSource, DrawnText } from '../drawing/drawn-line.js';
import type { TextRun } from './text-runs.js';

/** A run with the element that it comes from; those of one line must have the same layer. */
export interface PlacedRun extends TextRun {
  readonly source: DrawnSource;
}

/** Shares of the letters' size: how far the next run may begin from the end of this one, and beside its line. */
const GAP_MOST = 1;
const OVERLAP_MOST = 0.5;
const BESIDE_MOST = 0.25;
/** A wider gap than this stands for a space. */
const GAP_IS_SPACE = 0.15;
/** Sizes of one line differ by this factor at most. */
const SIZES_ALIKE = 1.4;

/** Runs that go on beside each other, as one text each: programs show lines in words or letter by letter. */
export function textLines(runs: readonly PlacedRun[]): DrawnText[] {
  const texts: DrawnText[] = [];
  let line: PlacedRun | undefined;
  const finish = () => {
    const text = line?.text.replace(/\s+/g, ' ').trim();
    if (line !== undefined && text !== undefined && text !== '') texts.push(drawnText(line, text));
  };
  for (const run of runs) {
    const gap = line === undefined ? undefined : gapTo(line, run);
    if (line === undefined || gap === undefined) {
      finish();
      line = run;
    } else {
      const space = gap > GAP_IS_SPACE * line.sizeMm && !line.text.endsWith(' ') ? ' ' : '';
      line = { ...line, text: line.text + space + run.text, end: run.end };
    }
  }
  finish();
  return texts;
}

/** The way from the end of a line to a run that goes on from it, mm, or nothing if it does not. */
function gapTo(line: PlacedRun, run: PlacedRun): number | undefined {
  if (line.source.groups[0]?.key !== run.source.groups[0]?.key) return undefined;
  const ratio = line.sizeMm / run.sizeMm;
  if (!(ratio < SIZES_ALIKE && ratio > 1 / SIZES_ALIKE)) return undefined;
  const way = direction(line.at, line.end) ?? direction(run.at, run.end);
  if (way === undefined) return undefined;
  const other = direction(run.at, run.end) ?? way;
  if (way.x * other.x + way.y * other.y < PARALLEL_COS) return undefined;
  const [dx, dy] = [run.at.x - line.end.x, run.at.y - line.end.y];
  const along = dx * way.x + dy * way.y;
  const beside = Math.abs(dx * way.y - dy * way.x);
  const size = line.sizeMm;
  const goesOn = along <= GAP_MOST * size && along >= -OVERLAP_MOST * size && beside <= BESIDE_MOST * size;
  return goesOn ? along : undefined;
}

/** Directions of one line: within 2 degrees. */
const PARALLEL_COS = 0.9994;

function direction(from: Point, to: Point): Point | undefined {
  const length = distanceBetween(from, to);
  return length < 1e-6 ? undefined : { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

function drawnText(line: PlacedRun, text: string): DrawnText {
  const way = direction(line.at, line.end);
  return {
    text,
    at: roundPoint(line.at),
    ...(way === undefined ? {} : { angleDeg: roundDeg(atan2Deg(way.y, way.x)) }),
    sizeMm: Math.round(line.sizeMm * 1000) / 1000,
    source: line.source,
  };
}

/** Thousandths of a degree are as exact as the letters' places. */
function roundDeg(deg: number): number {
  return Math.round(deg * 1000) / 1000 + 0;
}
