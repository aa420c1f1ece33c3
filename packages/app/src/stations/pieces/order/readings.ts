import type { OrderFile, PagesReading, PatternReading } from '@hidebound/leather';
import { patched } from './patch.js';
import type { Patch } from './patch.js';

export function readingOf({ patterns }: Pick<OrderFile, 'patterns'>, file: string): PatternReading {
  return patterns.find((each) => each.file === file) ?? { file, roles: [] };
}

/** How a pattern is read; one that is read as it stands needs no word. */
export function changeReading<O extends Pick<OrderFile, 'patterns'>>(
  order: O,
  file: string,
  patch: Patch<Omit<PatternReading, 'file'>>,
): O {
  const reading = patched<PatternReading>(readingOf(order, file), patch);
  const isThere = order.patterns.some((each) => each.file === file);
  const isPlain = reading.roles.length === 0 && Object.keys(reading).length === 2;
  if (isPlain) return { ...order, patterns: order.patterns.filter((each) => each.file !== file) };
  const patterns = isThere
    ? order.patterns.map((each) => (each.file === file ? reading : each))
    : [...order.patterns, reading];
  return { ...order, patterns };
}

/**
 * How the pages of a file lie together, with a part of it changed: what belongs to a grid goes with it, and where nothing
 * is said any more, nothing is written.
 */
export function changePages(
  pages: PagesReading | undefined,
  patch: Patch<PagesReading>,
): PagesReading | undefined {
  const next = patched<PagesReading>(pages ?? {}, patch);
  const { take, join } = next;
  const kept =
    join === 'grid'
      ? next
      : { ...(take === undefined ? {} : { take }), ...(join === undefined ? {} : { join }) };
  return Object.keys(kept).length === 0 ? undefined : kept;
}

/**
 * The pages with one put in or taken out; undefined where all of the file are in, if it is known that there are no more.
 * An order that was written by hand stays.
 */
export function togglePage(
  take: readonly number[] | undefined,
  all: readonly number[],
  page: number,
  isWhole: boolean,
): readonly number[] | undefined {
  const now = take ?? all;
  const isInOrder = now.every((each, i) => i === 0 || each > now[i - 1]!);
  const more = isInOrder ? [...now, page].sort((a, b) => a - b) : [...now, page];
  const next = now.includes(page) ? now.filter((each) => each !== page) : more;
  const isAll = isWhole && next.length === all.length && next.every((each, i) => each === all[i]);
  return isAll ? undefined : next;
}

/** Numbers of a file hold so many digits of a factor: less than a µm on the longest pattern. */
const FACTOR_STEPS = 1e6;

/** All lengths of a file times a factor, on top of what its reading says already. */
export function scaledReading(reading: PatternReading, factor: number): Patch<Omit<PatternReading, 'file'>> {
  const { knownLength, scale = 1 } = reading;
  if (knownLength !== undefined)
    return { knownLength: { ...knownLength, mm: round(knownLength.mm * factor, 1000) } };
  const whole = round(scale * factor, FACTOR_STEPS);
  return { scale: whole === 1 ? undefined : whole };
}

function round(value: number, steps: number): number {
  return Math.round(value * steps) / steps;
}
