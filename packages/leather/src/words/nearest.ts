/** A slip of one letter in three is still the same word. */
const LETTERS_PER_SLIP = 3;

/** The known word that a mistyped one most likely means, or undefined if none is near. Letter case does not count. */
export function nearestWord(typed: string, known: Iterable<string>): string | undefined {
  const wanted = typed.toLowerCase();
  let best: string | undefined;
  let bestSlips = Math.max(1, Math.floor(typed.length / LETTERS_PER_SLIP)) + 1;
  for (const word of known) {
    if (Math.abs(word.length - typed.length) >= bestSlips) continue;
    const slips = countSlips(wanted, word.toLowerCase());
    if (slips < bestSlips) {
      best = word;
      bestSlips = slips;
    }
  }
  return best;
}

/** Letters to add, drop, change or swap with their neighbour (optimal string alignment distance). */
function countSlips(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let slips = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + change);
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (isSwap) slips = Math.min(slips, beforeLast[j - 2]! + 1);
      row.push(slips);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}

/** What can be said about a name that isn't there. */
export interface NearestParams {
  /** The one that was most likely meant. */
  readonly near?: string;
  /** All that there are, quoted, with commas between; "" if there is none. */
  readonly known: string;
}

/** A name that isn't there, for a sentence. */
export function nearestParams(wanted: string, names: readonly string[]): NearestParams {
  const near = nearestWord(wanted, names);
  const known = names.map((name) => `"${name}"`).join(', ');
  return { ...(near === undefined ? {} : { near }), known };
}

/** The end of a sentence about it: " (did you mean …?); it has …." or "; it has none.". It closes the sentence. */
export function nameHint({ near, known }: NearestParams): string {
  if (known === '') return '; it has none.';
  return `${near === undefined ? '' : ` (did you mean "${near}"?)`}; it has ${known}.`;
}
