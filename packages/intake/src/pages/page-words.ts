/** Pages named in one sentence. */
const NAMED_PAGES = 8;

/** "1, 2, 3 and 4 more". */
export function listPages(numbers: readonly number[]): string {
  const shown = numbers.slice(0, NAMED_PAGES).join(', ');
  const more = numbers.length - NAMED_PAGES;
  return more > 0 ? `${shown} and ${more} more` : shown;
}

/** To a hundredth, as sentences say it. */
export function roundMm(mm: number): number {
  return Math.round(mm * 100) / 100 + 0;
}
