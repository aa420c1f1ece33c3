import { HIDE_GUESSES, decideHide } from '@hidebound/leather';
import type { DecidedHide, Hide, HideDecisions, HideGuess } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { textOption } from '../command-context.js';
import type { OptionValues } from '../command-context.js';
import { countWords } from '../count-words.js';

/** What `--take`, `--drop` and `--confirm` say; nothing where none is given. Fails with a CliError `bad-use`. */
export function decisionsFrom(options: OptionValues): HideDecisions | undefined {
  const [take, drop, confirm] = ['take', 'drop', 'confirm'].map((name) => textOption(options, name));
  if (take === undefined && drop === undefined && confirm === undefined) return undefined;
  return {
    take: idsFrom('--take', take),
    drop: idsFrom('--drop', drop),
    confirm: words(confirm).map(guessFrom),
  };
}

function idsFrom(option: string, text: string | undefined): readonly string[] | 'all' {
  const ids = words(text);
  if (text !== undefined && ids.length === 0) {
    throw new CliError(
      'bad-use',
      `${option} names nothing; give possible flaws as possible-1,possible-4, or all.`,
    );
  }
  return ids.length === 1 && ids[0] === 'all' ? 'all' : ids;
}

function words(text = ''): readonly string[] {
  return text
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');
}

function guessFrom(word: string): HideGuess {
  const guess = HIDE_GUESSES.find((each) => each === word);
  if (guess !== undefined) return guess;
  throw new CliError(
    'bad-use',
    `--confirm can't be "${word}"; it is ${HIDE_GUESSES.join(' or ')}, or both with a comma.`,
  );
}

/** The hide after what was decided, with lines that say so. */
export function decideWith(
  hide: Hide,
  decisions: HideDecisions | undefined,
): { readonly hide: Hide; readonly decided?: Omit<DecidedHide, 'hide'>; readonly lines: readonly string[] } {
  if (decisions === undefined) return { hide, lines: [] };
  const { hide: after, ...decided } = decideHide(hide, decisions);
  const { taken, dropped, confirmed } = decided;
  return {
    hide: after,
    decided,
    lines: [
      ...taken.map(({ candidate, flaw }) => `${candidate} is the flaw ${flaw} now.`),
      ...(dropped.length === 0 ? [] : [`${countWords(dropped.length, 'possible flaw')} taken off.`]),
      ...(confirmed.length === 0 ? [] : [`Confirmed: ${confirmed.join(' and ')}.`]),
    ],
  };
}
