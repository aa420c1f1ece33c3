import { PX_PER_MM, isBlack, median } from './bitmap.js';
import type { Bitmap } from './bitmap.js';

/** A check bar along one axis: where its 0 and its 100 mm lie in the picture, in pixels. */
export interface CheckBar {
  readonly zeroPx: number;
  readonly hundredPx: number;
  /** Length in the picture over 100 mm: 1 is true. */
  readonly scale: number;
}

/** Lines are looked at this far apart, px; a bar is about 70 px thick. */
const LINE_STEP = 12;
const STRETCHES = 10;
/** A stretch may differ from the mean by this share (the last is the rim shorter). */
const STRETCH_SHARE = 0.08;
const RIM_MOST = 0.6 * PX_PER_MM;
const [SHORTEST, LONGEST] = [80 * PX_PER_MM, 120 * PX_PER_MM];

/** Finds the level bar: black from its left end for 10 mm, then white and black by turns, a rim at its end. */
export function findLevelBar(bitmap: Bitmap): CheckBar | undefined {
  return findBar(bitmap.height, bitmap.width, (line, at) => isBlack(bitmap, at, line));
}

/** Finds the upright bar, whose 0 is its lower end. */
export function findUprightBar(bitmap: Bitmap): CheckBar | undefined {
  const { height } = bitmap;
  const bar = findBar(bitmap.width, height, (line, at) => isBlack(bitmap, line, height - 1 - at));
  return bar === undefined
    ? undefined
    : { zeroPx: height - bar.zeroPx, hundredPx: height - bar.hundredPx, scale: bar.scale };
}

function findBar(
  lines: number,
  length: number,
  black: (line: number, at: number) => boolean,
): CheckBar | undefined {
  const hits: (readonly [number, number])[] = [];
  for (let line = 0; line < lines; line += LINE_STEP) {
    const hit = barAmong(changes(length, (at) => black(line, at)));
    if (hit !== undefined) hits.push(hit);
  }
  if (hits.length < 2) return undefined;
  const zeroPx = median(hits.map(([zero]) => zero));
  const hundredPx = median(hits.map(([, hundred]) => hundred));
  return { zeroPx, hundredPx, scale: (hundredPx - zeroPx) / (100 * PX_PER_MM) };
}

/** Where the colour changes along a line; the first change is to black. */
function changes(length: number, black: (at: number) => boolean): number[] {
  const found: number[] = [];
  let was = false;
  for (let at = 0; at < length; at++) {
    const is = black(at);
    if (is !== was) found.push(at);
    was = is;
  }
  if (was) found.push(length);
  return found;
}

function barAmong(edges: readonly number[]): readonly [number, number] | undefined {
  for (let i = 0; i + STRETCHES + 1 < edges.length; i += 2) {
    const [start, end] = [edges[i]!, edges[i + STRETCHES + 1]!];
    const length = end - start;
    if (length < SHORTEST || length > LONGEST || end - edges[i + STRETCHES]! > RIM_MOST) continue;
    const mean = length / STRETCHES;
    const isEven = Array.from({ length: STRETCHES }, (_, j) => edges[i + j + 1]! - edges[i + j]!).every(
      (stretch) => Math.abs(stretch - mean) < STRETCH_SHARE * mean,
    );
    if (isEven) return [start, end];
  }
  return undefined;
}
