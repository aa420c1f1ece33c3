import { writePageNumbers } from '@hidebound/leather';

/** Spans of pages named in one sentence. */
const NAMED_SPANS = 8;

/** "1-4, 7"; of very many spans the first ones, "and 12 more". Numbers in rising order. */
export function listPages(numbers: readonly number[]): string {
  const spans = writePageNumbers(numbers).split(', ');
  if (spans.length <= NAMED_SPANS) return spans.join(', ');
  const shown = spans.slice(0, NAMED_SPANS);
  const named = shown.reduce((sum, span) => {
    const [from, to] = span.split('-').map(Number);
    return sum + (to ?? from!) - from! + 1;
  }, 0);
  return `${shown.join(', ')} and ${numbers.length - named} more`;
}

/** To a hundredth, as sentences say it. */
export function roundMm(mm: number): number {
  return Math.round(mm * 100) / 100 + 0;
}
