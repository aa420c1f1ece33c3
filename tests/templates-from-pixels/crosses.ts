import { isBlack, median } from './bitmap.js';
import type { Bitmap, Point } from './bitmap.js';

/** How far from where it is expected a cross is looked for, mm. */
const SEARCH = 4;
/** Half of the length of a line of a cross that is asked to be black, mm; it is 4. */
const ARM = 3.6;
const CIRCLE_RADIUS = 2;
const CIRCLE_POINTS = 72;
const BLACK_SHARE = 0.85;
/** A line of a cross is 0.25 mm wide; more than this is crossed by something, mm. */
const LINE_MOST = 0.4;

/** Finds the centre of a corner cross near a place; all in pixels, to a fraction of one. */
export function findCross(bitmap: Bitmap, near: Point, pxPerMm: number): Point | undefined {
  let best: Point | undefined;
  let bestShare = BLACK_SHARE;
  for (const centre of crossings(bitmap, near, pxPerMm)) {
    const share = circleShare(bitmap, centre, pxPerMm);
    if (share <= bestShare) continue;
    best = centre;
    bestShare = share;
  }
  return best === undefined ? undefined : refine(bitmap, best, pxPerMm);
}

/** Pixels in which a level and an upright black line of twice the arm cross. */
function* crossings(bitmap: Bitmap, near: Point, pxPerMm: number): Generator<Point> {
  const arm = Math.round(ARM * pxPerMm);
  const half = Math.round(SEARCH * pxPerMm);
  const size = 2 * (half + arm) + 1;
  const x0 = Math.round(near.x) - half - arm;
  const y0 = Math.round(near.y) - half - arm;
  // Black pixels before each place, along rows and down columns.
  const alongRow = new Int32Array(size * (size + 1));
  const downColumn = new Int32Array((size + 1) * size);
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      const black = isBlack(bitmap, x0 + x, y0 + y) ? 1 : 0;
      alongRow[y * (size + 1) + x + 1] = alongRow[y * (size + 1) + x]! + black;
      downColumn[(y + 1) * size + x] = downColumn[y * size + x]! + black;
    }
  }
  const least = BLACK_SHARE * (2 * arm + 1);
  for (let y = arm; y < size - arm; y++) {
    for (let x = arm; x < size - arm; x++) {
      const level = alongRow[y * (size + 1) + x + arm + 1]! - alongRow[y * (size + 1) + x - arm]!;
      if (level < least) continue;
      const upright = downColumn[(y + arm + 1) * size + x]! - downColumn[(y - arm) * size + x]!;
      if (upright >= least) yield { x: x0 + x + 0.5, y: y0 + y + 0.5 };
    }
  }
}

function circleShare(bitmap: Bitmap, centre: Point, pxPerMm: number): number {
  let black = 0;
  for (let i = 0; i < CIRCLE_POINTS; i++) {
    const angle = (2 * Math.PI * i) / CIRCLE_POINTS;
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    if (isBlack(bitmap, centre.x + CIRCLE_RADIUS * pxPerMm * x, centre.y + CIRCLE_RADIUS * pxPerMm * y))
      black++;
  }
  return black / CIRCLE_POINTS;
}

/** The middle of the lines, on both sides of the centre between centre and circle and beyond it. */
function refine(bitmap: Bitmap, rough: Point, pxPerMm: number): Point | undefined {
  const places = [...steps(0.5, 1.6), ...steps(2.4, 3.6)];
  const middles = (sign: number, isLevel: boolean): number[] =>
    places.flatMap((place) => {
      const off = sign * place * pxPerMm;
      const middle = isLevel
        ? middleOfLine((d) => isBlack(bitmap, rough.x + off, rough.y + d), LINE_MOST * pxPerMm)
        : middleOfLine((d) => isBlack(bitmap, rough.x + d, rough.y + off), LINE_MOST * pxPerMm);
      return middle === undefined ? [] : [middle];
    });
  const sides = [middles(-1, true), middles(1, true), middles(-1, false), middles(1, false)];
  if (sides.some((side) => side.length < 4)) return undefined;
  const [left, right, above, below] = sides.map(median) as [number, number, number, number];
  // Rough is the middle of a pixel, so edges lie half a pixel off whole steps from it.
  return { x: rough.x + (above + below) / 2, y: rough.y + (left + right) / 2 };
}

function steps(from: number, to: number): number[] {
  return Array.from({ length: Math.floor((to - from) / 0.1) + 1 }, (_, i) => from + 0.1 * i);
}

/** The middle of the black stretch through 0, in whole pixels to either side; undefined if white or too wide. */
function middleOfLine(black: (offset: number) => boolean, most: number): number | undefined {
  if (!black(0)) return undefined;
  let [before, after] = [0, 0];
  while (before < most && black(-before - 1)) before++;
  while (after < most && black(after + 1)) after++;
  return before + after + 1 > most + 1 ? undefined : (after - before) / 2;
}
