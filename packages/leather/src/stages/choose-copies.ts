import { compareNumbers } from '../layout/cutting-numbers.js';
import { nearestWord } from '../words/nearest.js';
import { leatherError } from '../words/refuse.js';
import { listWords, quoteValue } from '../words/sentence.js';
import type { CurrentCopy } from './current-copies.js';

/** The copies that one entry of a list names. */
export interface ChosenCopies {
  /** The entry as it is told in a sentence: number 12, or the name in quotes. */
  readonly asked: string;
  readonly copies: readonly CurrentCopy[];
  /** A range, a step of several pieces, or all copies of a piece: what is ticked already within it is passed over. */
  readonly isWide: boolean;
}

const NUMBER = /^\d+(?:\.\d+)?$/;
const RANGE = /^(\d+(?:\.\d+)?)\s*(?:-|–|to)\s*(\d+(?:\.\d+)?)$/;
/** "saddlebag: front 2/1 mirrored"; article, set, copy and "mirrored" may be left out. */
const NAME = /^(?:(.+?)\s*:\s*)?(.+?)(?:\s+(\d+)(?:\s*\/\s*(\d+))?)?(?:\s+(mirrored))?$/;

/**
 * Copies by what stands on sheets and lists: numbers of the order of cutting, ranges of them, and names with set and
 * copy, with commas between. A step's number means all its pieces.
 * @throws LeatherError `tick-bad-words`, `tick-no-such-number`, `tick-range-backwards`, `tick-no-such-piece`,
 * `tick-piece-of-several`
 */
export function chooseCopies(text: string, copies: readonly CurrentCopy[]): ChosenCopies[] {
  const entries = text
    .split(/[,;]/)
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');
  if (entries.length === 0) throw leatherError('tick-bad-words', { asked: quoteValue(text) });
  return entries.map((entry) => chooseEntry(entry, copies));
}

function chooseEntry(entry: string, copies: readonly CurrentCopy[]): ChosenCopies {
  if (NUMBER.test(entry)) return chooseNumber(entry, copies);
  const range = RANGE.exec(entry);
  return range === null ? chooseName(entry, copies) : chooseRange(entry, [range[1]!, range[2]!], copies);
}

function chooseNumber(number: string, copies: readonly CurrentCopy[]): ChosenCopies {
  const found = copies.filter((copy) => bears(copy, number));
  if (found.length === 0) throw noSuchNumber(number, copies);
  return { asked: `number ${number}`, copies: found, isWide: found.length > 1 };
}

/** Its own number, or that of a step that it belongs to. */
function bears({ number, steps }: CurrentCopy, asked: string): boolean {
  return number === asked || (!asked.includes('.') && steps.includes(Number(asked)));
}

function chooseRange(
  asked: string,
  [from, to]: readonly [string, string],
  copies: readonly CurrentCopy[],
): ChosenCopies {
  if (compareNumbers(from, to) > 0) throw leatherError('tick-range-backwards', { asked: quoteValue(asked) });
  for (const end of [from, to]) {
    if (!copies.some((copy) => bears(copy, end))) throw noSuchNumber(end, copies);
  }
  const last = to.includes('.') ? to : `${to}.${Number.MAX_SAFE_INTEGER}`;
  const isWithin = (number: string): boolean =>
    compareNumbers(number, from) >= 0 && compareNumbers(number, last) <= 0;
  const found = copies.filter(
    ({ number, steps }) => isWithin(number) || steps.some((step) => isWithin(String(step))),
  );
  return { asked: `numbers ${asked}`, copies: found, isWide: true };
}

function noSuchNumber(number: string, copies: readonly CurrentCopy[]) {
  const sorted = copies.map((copy) => copy.number).sort(compareNumbers);
  return leatherError('tick-no-such-number', {
    number,
    first: sorted[0] ?? '',
    last: sorted[sorted.length - 1] ?? '',
  });
}

function chooseName(entry: string, copies: readonly CurrentCopy[]): ChosenCopies {
  const asked = quoteValue(entry);
  const whole = copies.filter(({ placement }) => isSame(placement.piece, entry));
  const found = whole.length > 0 ? whole : namedCopies(entry, copies);
  if (found.length === 0) {
    const names = [...new Set(copies.map(({ placement }) => placement.piece))];
    const near = nearestWord(NAME.exec(entry)?.[2] ?? entry, names);
    throw leatherError('tick-no-such-piece', { asked, ...(near === undefined ? {} : { near }) });
  }
  const articles = [...new Set(found.map(({ placement }) => placement.article))];
  if (articles.length > 1) {
    throw leatherError('tick-piece-of-several', { asked, articles: listWords(articles, 'and') });
  }
  return { asked, copies: found, isWide: found.length > 1 };
}

function namedCopies(entry: string, copies: readonly CurrentCopy[]): readonly CurrentCopy[] {
  const [, article, piece = '', set, copy, mirrored] = NAME.exec(entry) ?? [];
  const found = copies.filter(
    ({ placement }) =>
      isSame(placement.piece, piece) &&
      (article === undefined || isSame(placement.article, article)) &&
      (set === undefined || placement.set === Number(set)) &&
      (copy === undefined || placement.copy === Number(copy)) &&
      (mirrored === undefined || placement.mirrored),
  );
  // Plain and mirrored copies are numbered apart: a number without "mirrored" is a plain one's, where there is one.
  const plain = found.filter(({ placement }) => !placement.mirrored);
  return copy !== undefined && mirrored === undefined && plain.length > 0 ? plain : found;
}

function isSame(name: string, asked: string): boolean {
  return name.toLowerCase() === asked.toLowerCase();
}
