/** Names that differ in more than this share of their letters are not taken for slips of the pen. */
const FURTHEST_SHARE = 0.5;

/**
 * The end of a sentence about a name that isn't there: " (did you mean …?); there are …." or "; there is none.". It
 * closes the sentence.
 */
export function nearestName(wanted: string, names: readonly string[]): string {
  if (names.length === 0) return '; it has none.';
  const near = closest(wanted, names);
  const hint = near === undefined ? '' : ` (did you mean "${near}"?)`;
  return `${hint}; it has ${names.map((name) => `"${name}"`).join(', ')}.`;
}

/** The name with the fewest changed letters, the first of equals; none if all are too far off. */
export function closest(wanted: string, names: readonly string[]): string | undefined {
  let best: string | undefined;
  let bestChanges = Infinity;
  for (const name of names) {
    const changes = changedLetters(wanted.toLowerCase(), name.toLowerCase());
    if (changes < bestChanges) {
      best = name;
      bestChanges = changes;
    }
  }
  const most = FURTHEST_SHARE * Math.max(wanted.length, best?.length ?? 0);
  return bestChanges <= most ? best : undefined;
}

/** Letters to insert, drop or replace (Levenshtein 1965). */
function changedLetters(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min(replaced, previous[j]! + 1, row[j - 1]! + 1));
    }
    previous = row;
  }
  return previous[b.length]!;
}
