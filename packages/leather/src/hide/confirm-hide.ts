import type { LeatherError } from '../leather-error.js';
import type { Flaw, FlawCandidate, Hide, HideGuess } from '../model/hide.js';
import { leatherError } from '../words/refuse.js';
import { nearestWord } from '../words/nearest.js';
import { quoteValue } from '../words/sentence.js';

/** What a person decides of what was found in a photo; ids of possible flaws, or all that are left. */
export interface HideDecisions {
  readonly take: readonly string[] | 'all';
  readonly drop: readonly string[] | 'all';
  readonly confirm: readonly HideGuess[];
}

/** The hide after a decision, and what became of what. */
export interface DecidedHide {
  readonly hide: Hide;
  /** Possible flaws that became flaws, with their new names. */
  readonly taken: readonly { readonly candidate: string; readonly flaw: string }[];
  readonly dropped: readonly string[];
  readonly confirmed: readonly HideGuess[];
}

/**
 * Makes flaws of possible flaws, takes others off, and marks guesses as confirmed. With "all" on one side, it means
 * all that the other side does not name.
 * @throws LeatherError `no-such-candidate`, `candidate-both-ways`, `guess-not-open`
 */
export function decideHide(hide: Hide, decisions: HideDecisions): DecidedHide {
  const { take, drop, confirm } = decisions;
  refuseBothWays(take, drop);
  const taken = chosen(hide, take, drop);
  const dropped = chosen(hide, drop, take);
  const open = hide.guessed ?? [];
  for (const guess of confirm) {
    if (!open.includes(guess)) throw leatherError('guess-not-open', { guess, hide: hide.id });
  }
  const names = flawNames(hide, taken);
  const decided = new Set([...taken, ...dropped]);
  const left = open.filter((guess) => !confirm.includes(guess));
  const { guessed: _, ...rest } = hide;
  return {
    hide: {
      ...rest,
      flaws: [...hide.flaws, ...taken.map((candidate, i) => flawFrom(candidate, names[i]!))],
      candidates: hide.candidates.filter((candidate) => !decided.has(candidate)),
      ...(left.length === 0 ? {} : { guessed: left }),
    },
    taken: taken.map(({ id }, i) => ({ candidate: id, flaw: names[i]! })),
    dropped: dropped.map(({ id }) => id),
    confirmed: confirm,
  };
}

function refuseBothWays(take: HideDecisions['take'], drop: HideDecisions['drop']): void {
  if (take === 'all' && drop === 'all') throw leatherError('candidate-both-ways', { id: '"all"' });
  if (take === 'all' || drop === 'all') return;
  const both = take.find((id) => drop.includes(id));
  if (both !== undefined) throw leatherError('candidate-both-ways', { id: quoteValue(both) });
}

function chosen(
  hide: Hide,
  wanted: HideDecisions['take'],
  others: HideDecisions['take'],
): readonly FlawCandidate[] {
  if (wanted === 'all') {
    const named = new Set(others === 'all' ? [] : others);
    return hide.candidates.filter(({ id }) => !named.has(id));
  }
  return [...new Set(wanted)].map((id) => {
    const found = hide.candidates.find((candidate) => candidate.id === id);
    if (found !== undefined) return found;
    throw noSuchCandidate(hide, id);
  });
}

/** Possible flaws named in a sentence; the file lists all. */
const NAMED_IN_SENTENCE = 8;

function noSuchCandidate({ id: hide, candidates }: Hide, wanted: string): LeatherError {
  const ids = candidates.map(({ id }) => id);
  const more = ids.length - NAMED_IN_SENTENCE;
  const shown = ids.slice(0, NAMED_IN_SENTENCE);
  const known =
    ids.length === 0 ? 'none' : more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
  const near = nearestWord(wanted, ids);
  const params = { hide, id: quoteValue(wanted), known, ...(near === undefined ? {} : { near }) };
  return leatherError('no-such-candidate', params);
}

/** "scar-2": the kind and the next free number. */
function flawNames(hide: Hide, taken: readonly FlawCandidate[]): readonly string[] {
  const used = new Set([...hide.flaws, ...hide.candidates].map(({ id }) => id));
  return taken.map(({ kind = 'flaw' }) => {
    const name = freeFlawName(kind, used);
    used.add(name);
    return name;
  });
}

/** "scar-2": the kind and the next number that none of the used names has. */
export function freeFlawName(kind: string, used: ReadonlySet<string>): string {
  const base = kind.replace(/\s+/g, '-');
  let number = 1;
  while (used.has(`${base}-${number}`)) number += 1;
  return `${base}-${number}`;
}

function flawFrom({ confidence: _, ...flaw }: FlawCandidate, id: string): Flaw {
  return { ...flaw, id };
}
