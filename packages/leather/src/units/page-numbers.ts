import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';

/** More pages than any pattern was ever tiled over. */
export const MOST_PAGES = 2000;

/**
 * "2-7, 9" → 2, 3, 4, 5, 6, 7, 9, in the order in which they are written.
 * @throws LeatherError `bad-page-numbers`
 */
export function readPageNumbers(written: string | number): number[] {
  const numbers = String(written)
    .split(',')
    .flatMap((part) => pagesOfSpan(part, written));
  if (numbers.length > MOST_PAGES || new Set(numbers).size < numbers.length) throw badNumbers(written);
  return numbers;
}

function pagesOfSpan(part: string, written: string | number): number[] {
  const span = /^\s*(\d{1,6})\s*(?:-\s*(\d{1,6})\s*)?$/.exec(part);
  const from = Number(span?.[1] ?? 0);
  const to = Number(span?.[2] ?? from);
  if (from < 1 || to < from || to - from >= MOST_PAGES) throw badNumbers(written);
  return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

function badNumbers(written: string | number) {
  return leatherError('bad-page-numbers', { found: quoteValue(written) });
}

/** The way back: runs become spans. */
export function writePageNumbers(numbers: readonly number[]): string {
  const spans: [number, number][] = [];
  for (const n of numbers) {
    const last = spans.at(-1);
    if (last?.[1] === n - 1) last[1] = n;
    else spans.push([n, n]);
  }
  return spans.map(([from, to]) => (from === to ? String(from) : `${from}-${to}`)).join(', ');
}
