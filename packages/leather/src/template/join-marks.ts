import type { Point, Polyline, Ring } from '@hidebound/geometry';
import { JOIN_SQUARES, joinCode } from './join-code.js';
import type { JoinMarks, TileContent } from './tile-plan.js';

/** Side of a square of a row of marks, and from one square's centre to the next one's. */
export const JOIN_SQUARE_MM = 3.5;
export const JOIN_PITCH_MM = 5;

/** From the last square's centre to the middle of the names, and how long the names may be. */
export const JOIN_NAMES_AFTER_MM = 10;
export const JOIN_NAMES_MM = 13;

/** From the triangle's centre to the end of the names. */
const ROW_MM = JOIN_SQUARES * JOIN_PITCH_MM + JOIN_NAMES_AFTER_MM + JOIN_NAMES_MM / 2;

/** Kept free at either end of a join line, for the corner crosses. */
const END_CLEAR_MM = 9;

/** A line nearer than this to a mark is in its way. */
const AIR_MM = 1;

/** A stretch of a join line near which the content has a line, in mm from its beginning. */
type Stretch = readonly [number, number];

/**
 * The row of marks of one join line: where along the line the fewest marks lie on lines of the content, of equal places
 * the one nearest to the middle. The triangle stands a whole number of mm from the line's beginning.
 */
export function joinMarks(
  content: TileContent,
  from: Point,
  to: Point,
  { number, seed }: { readonly number: number; readonly seed: number },
): JoinMarks {
  const isUpright = from.x === to.x;
  const length = isUpright ? to.y - from.y : to.x - from.x;
  const start = freestStart(length, stretchesNear(content, from, to));
  const at = (along: number): Point =>
    isUpright ? { x: from.x, y: from.y + along } : { x: from.x + along, y: from.y };
  return {
    start: at(start),
    squares: Array.from({ length: JOIN_SQUARES }, (_, i) => at(start + (i + 1) * JOIN_PITCH_MM)),
    code: joinCode(number, seed),
    namesAt: at(start + JOIN_SQUARES * JOIN_PITCH_MM + JOIN_NAMES_AFTER_MM),
  };
}

function freestStart(length: number, stretches: readonly Stretch[]): number {
  const first = END_CLEAR_MM;
  const last = Math.floor(length - END_CLEAR_MM - ROW_MM);
  const middle = Math.round((first + last) / 2);
  let best = middle;
  let fewest = marksInTheWay(middle, stretches);
  for (let away = 1; fewest > 0 && away <= Math.max(middle - first, last - middle); away++) {
    for (const start of [middle - away, middle + away]) {
      if (start < first || start > last) continue;
      const count = marksInTheWay(start, stretches);
      if (count < fewest) [best, fewest] = [start, count];
    }
  }
  return best;
}

function marksInTheWay(start: number, stretches: readonly Stretch[]): number {
  const reach = JOIN_SQUARE_MM / 2 + AIR_MM;
  const isFree = (from: number, to: number): boolean => stretches.every(([a, b]) => b < from || a > to);
  let count = 0;
  for (let i = 0; i <= JOIN_SQUARES; i++) {
    const at = start + i * JOIN_PITCH_MM;
    if (!isFree(at - reach, at + reach)) count++;
  }
  const names = start + JOIN_SQUARES * JOIN_PITCH_MM + JOIN_NAMES_AFTER_MM;
  return isFree(names - JOIN_NAMES_MM / 2, names + JOIN_NAMES_MM / 2) ? count : count + NAMES_COUNT;
}

/** Names with a line through them are harder to read than one square. */
const NAMES_COUNT = 2;

/** Where lines of the content run within reach of the join line. */
function stretchesNear(content: TileContent, from: Point, to: Point): Stretch[] {
  const isUpright = from.x === to.x;
  const length = isUpright ? to.y - from.y : to.x - from.x;
  const intoFrame = (p: Point): Point =>
    isUpright ? { x: p.y - from.y, y: p.x - from.x } : { x: p.x - from.x, y: p.y - from.y };
  const reach = JOIN_SQUARE_MM / 2 + AIR_MM;
  const stretches: Stretch[] = [];
  const look = (line: Ring | Polyline, isClosed: boolean): void => {
    for (let i = isClosed ? 0 : 1; i < line.length; i++) {
      const a = intoFrame(line[(i + line.length - 1) % line.length]!);
      const b = intoFrame(line[i]!);
      const stretch = stretchWithin(a, b, reach);
      if (stretch !== undefined && stretch[1] >= 0 && stretch[0] <= length) stretches.push(stretch);
    }
  };
  for (const { outer, openings } of content.shapes) for (const ring of [outer, ...openings]) look(ring, true);
  for (const edge of content.edges) look(edge, true);
  for (const line of content.lines ?? []) look(line, false);
  return stretches;
}

/** The part of a segment that is no farther than `reach` from the x axis, by its extent along it. */
function stretchWithin(a: Point, b: Point, reach: number): Stretch | undefined {
  if (Math.min(a.y, b.y) > reach || Math.max(a.y, b.y) < -reach) return undefined;
  if (a.y === b.y) return [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  const xAt = (y: number): number => a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
  const clamp = (y: number): number => Math.max(-reach, Math.min(reach, y));
  const ends = [xAt(clamp(a.y)), xAt(clamp(b.y))];
  return [Math.min(...ends), Math.max(...ends)];
}
