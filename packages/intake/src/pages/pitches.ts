import type { Box } from '@hidebound/geometry';
import { AT_BORDER_MM, MAX_OVERLAP_MM, SEEK_MM } from './limits.js';
import type { Axis } from './overlaps.js';
import type { PageFacts } from './page-facts.js';
import { heightOf, widthOf } from './vectors.js';

/** Lines of pieces are longer than this one way at least, mm: holes, dashes and letters repeat themselves everywhere. */
const PIECE_MIN_MM = 10;

/** Sizes and places of equal pieces of one page agree to this, mm: programs write them to a hundredth at least. */
const ALIKE_MM = 0.05;

/** Pieces of one row stand no nearer to each other, mm. */
const MIN_PITCH_MM = 5;

/** Of the lines that could repeat themselves at a distance, at least this share does, and so many. */
const REPEATING_SHARE = 0.6;
const REPEATING_LINES = 6;

/** Distances that are looked at more closely. */
const MOST_PITCHES = 6;

/** Pages with more whole lines of pieces would take long to compare with themselves. */
const MAX_LINES = 400;

/** A whole line: where it begins along the axis, and where beside it. */
interface WholeLine {
  readonly from: number;
  readonly to: number;
  readonly beside: number;
  readonly long: number;
  readonly wide: number;
  readonly look: string;
}

/**
 * The distances along an axis at which most lines of the pages have another one like them, mm, the least first: pages that
 * lie right still agree when they are moved by one of these.
 */
export function pitchesOf(facts: readonly PageFacts[], axis: Axis): number[] {
  const pages = facts.map((page) => ({ lines: wholeLines(page, axis), end: endOf(page.window, axis) }));
  const found = clustersOf(pages.flatMap(({ lines }) => distancesAmong(lines)));
  return found
    .filter(({ pitch, count }) => {
      const could = pages.reduce(
        (sum, { lines, end }) => sum + lines.filter(({ to }) => to + pitch < end - AT_BORDER_MM).length,
        0,
      );
      return count >= REPEATING_LINES && count >= REPEATING_SHARE * could;
    })
    .slice(0, MOST_PITCHES)
    .map(({ pitch }) => pitch);
}

const endOf = (box: Box, axis: Axis): number => (axis === 'x' ? box.maxX : box.maxY);

function wholeLines({ lines, window, frames, repeated }: PageFacts, axis: Axis): WholeLine[] {
  const found = lines.boxes.flatMap((box, i): WholeLine[] => {
    if (frames.has(i) || repeated.has(i) || !isWhole(box, window)) return [];
    const size = [widthOf(box), heightOf(box)] as const;
    if (Math.max(...size) < PIECE_MIN_MM) return [];
    const look = lines.looks[i]!;
    return axis === 'x'
      ? [{ from: box.minX, to: box.maxX, beside: box.minY, long: size[0], wide: size[1], look }]
      : [{ from: box.minY, to: box.maxY, beside: box.minX, long: size[1], wide: size[0], look }];
  });
  return found.length > MAX_LINES ? [] : found;
}

/** Not cut off by a border. */
export function isWhole(box: Box, window: Box): boolean {
  return (
    box.minX > window.minX + AT_BORDER_MM &&
    box.maxX < window.maxX - AT_BORDER_MM &&
    box.minY > window.minY + AT_BORDER_MM &&
    box.maxY < window.maxY - AT_BORDER_MM
  );
}

/** From each line to those like it farther on, no two of one line the same. */
function distancesAmong(lines: readonly WholeLine[]): number[] {
  return lines.flatMap((one) => {
    const own = lines
      .filter((other) => isAlike(one, other))
      .map((other) => other.from - one.from)
      .filter((distance) => distance >= MIN_PITCH_MM && distance <= MAX_OVERLAP_MM + SEEK_MM)
      .sort((a, b) => a - b);
    return own.filter((distance, i) => i === 0 || distance - own[i - 1]! > ALIKE_MM);
  });
}

function isAlike(a: WholeLine, b: WholeLine): boolean {
  return (
    a.look === b.look &&
    Math.abs(a.beside - b.beside) <= ALIKE_MM &&
    Math.abs(a.long - b.long) <= ALIKE_MM &&
    Math.abs(a.wide - b.wide) <= ALIKE_MM
  );
}

/** Distances that are one but for rounding, with how often they were met; the least first. */
function clustersOf(distances: readonly number[]): { readonly pitch: number; readonly count: number }[] {
  const sorted = [...distances].sort((a, b) => a - b);
  const starts = sorted.flatMap((d, i) => (i === 0 || d - sorted[i - 1]! > ALIKE_MM ? [i] : []));
  return starts.map((start, k) => {
    const own = sorted.slice(start, starts[k + 1] ?? sorted.length);
    return { pitch: own.reduce((sum, d) => sum + d, 0) / own.length, count: own.length };
  });
}
