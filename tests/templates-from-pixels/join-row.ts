import { isBlack, median } from './bitmap.js';
import type { Bitmap, Point } from './bitmap.js';
import { decodeRow } from './row-code.js';

/** The row of marks on one join line of one page. */
export interface JoinRow {
  readonly word: number;
  /** From the line's beginning to the triangle's centre, whole mm. */
  readonly start: number;
  /** Centres of the squares, px; undefined where a line of the layout hides one. */
  readonly marks: readonly (Point | undefined)[];
  readonly putRight?: number;
}

/** A join line in the picture: from cross to cross, with its own true length in mm. */
export interface LineInPicture {
  readonly bitmap: Bitmap;
  readonly from: Point;
  readonly to: Point;
  readonly lengthMm: number;
}

const SQUARES = 16;
const PITCH = 5;
const HALF = 1.75;
const FIRST_START = 9;
/** What must be seen of the triangle, and of it and the squares' frames together, to believe in a row: lines cross them. */
const LEAST_TRIANGLE = 0.3;
const LEAST_SCORE = 0.6;

/** Finds and reads the row between two crosses; undefined where there is none, "unreadable" where it makes no sense. */
export function findJoinRow(line: LineInPicture): JoinRow | 'unreadable' | undefined {
  let start = 0;
  let best = LEAST_SCORE;
  for (let at = FIRST_START; at + SQUARES * PITCH + FIRST_START <= line.lengthMm; at++) {
    const triangle = triangleScore(line, at);
    if (triangle < LEAST_TRIANGLE) continue;
    const score = (triangle + frameScore(line, at)) / 2;
    if (score <= best) continue;
    best = score;
    start = at;
  }
  if (start === 0) return undefined;
  const squares = Array.from({ length: SQUARES }, (_, i) => start + PITCH * (i + 1));
  const code = decodeRow(squares.map((centre) => isFilled(line, centre)));
  if (code === undefined) return 'unreadable';
  return { ...code, start, marks: squares.map((centre) => markCentre(line, centre)) };
}

/** A place in the picture: along the line from its beginning, and across it, mm. */
function placeOn(line: LineInPicture, along: number, across: number): Point {
  const [ux, uy] = [(line.to.x - line.from.x) / line.lengthMm, (line.to.y - line.from.y) / line.lengthMm];
  return { x: line.from.x + ux * along - uy * across, y: line.from.y + uy * along + ux * across };
}

function blackAt(line: LineInPicture, along: number, across: number): boolean {
  const { x, y } = placeOn(line, along, across);
  return isBlack(line.bitmap, x, y);
}

const ACROSS = [-1.5, -1.2, -0.9, -0.6, -0.3, 0, 0.3, 0.6, 0.9, 1.2, 1.5];

/** The smaller one of how black the triangle is and how white the corners beside its point are. */
function triangleScore(line: LineInPicture, centre: number): number {
  const seen = { inside: 0, black: 0, outside: 0, white: 0 };
  for (const along of ACROSS) {
    const halfBreadth = (HALF - along) / 2;
    for (const across of ACROSS) {
      const depth = halfBreadth - Math.abs(across);
      if (Math.abs(depth) < 0.15) continue;
      const black = blackAt(line, centre + along, across);
      seen[depth > 0 ? 'inside' : 'outside']++;
      if (depth > 0 && black) seen.black++;
      if (depth < 0 && !black) seen.white++;
    }
  }
  return Math.min(seen.black / seen.inside, seen.white / seen.outside);
}

/** The share of the places that are black on the frames of all squares and white between them. */
function frameScore(line: LineInPicture, start: number): number {
  let [seen, right] = [0, 0];
  for (let i = 1; i <= SQUARES; i++) {
    const centre = start + PITCH * i;
    for (const d of ACROSS) {
      const frame = [
        blackAt(line, centre + d, -1.55),
        blackAt(line, centre + d, 1.55),
        blackAt(line, centre - 1.55, d),
        blackAt(line, centre + 1.55, d),
      ];
      const gap = [blackAt(line, centre - 2.25, d), blackAt(line, centre + 2.25, d)];
      seen += frame.length + gap.length;
      right += frame.filter(Boolean).length + gap.filter((black) => !black).length;
    }
  }
  return right / seen;
}

/** More than half of the inside, without the outer 0.5 mm, is black. */
function isFilled(line: LineInPicture, centre: number): boolean {
  const inside = Array.from({ length: 25 }, (_, i) => -1.2 + 0.1 * i);
  let black = 0;
  for (const along of inside) for (const across of inside) if (blackAt(line, centre + along, across)) black++;
  return black > (inside.length * inside.length) / 2;
}

/** The middle between opposite outer edges of a square, in pixels. */
function markCentre(line: LineInPicture, centre: number): Point | undefined {
  const right = outerEdge((d, out) => blackAt(line, centre + out, d));
  const left = outerEdge((d, out) => blackAt(line, centre - out, d));
  const above = outerEdge((d, out) => blackAt(line, centre + d, -out));
  const below = outerEdge((d, out) => blackAt(line, centre + d, out));
  if (right === undefined || left === undefined || above === undefined || below === undefined)
    return undefined;
  const isWhole =
    Math.abs(left + right - 2 * HALF) < SIDE_OFF && Math.abs(above + below - 2 * HALF) < SIDE_OFF;
  return isWhole ? placeOn(line, centre + (right - left) / 2, (below - above) / 2) : undefined;
}

/** A side that differs by more than this is hidden in part, mm. */
const SIDE_OFF = 0.15;
const EDGE_STEP = 0.01;

/** How far out the black of a frame ends, looked at from the frame's middle at several places. */
function outerEdge(black: (d: number, out: number) => boolean): number | undefined {
  const ends = ACROSS.flatMap((d) => {
    if (!black(d, HALF - 0.2)) return [];
    let out = HALF - 0.2;
    while (out < HALF + 0.3 && black(d, out)) out += EDGE_STEP;
    return out < HALF + 0.3 ? [out - EDGE_STEP / 2] : [];
  });
  return ends.length < 5 ? undefined : median(ends);
}
