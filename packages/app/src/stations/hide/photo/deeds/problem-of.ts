import type { App } from '../../../../app/app.js';
import { toldError } from '../../../../words/told.js';
import type { WordKey } from '../../../../words/words.js';
import { WorkError } from '../../../../work/task.js';
import type { Problem } from '../bring-in.js';

/** What the packages refuse, in the words of the screen. */
const REFUSALS: Readonly<Record<string, WordKey>> = {
  'not-a-photo': 'hide.refused.not-a-photo',
  'photo-heic': 'hide.refused.photo-heic',
  'photo-broken': 'hide.refused.photo-broken',
  'photo-too-many-pixels': 'hide.refused.photo-too-many-pixels',
  'photo-too-small': 'hide.refused.photo-too-small',
  'no-reference': 'hide.refused.no-reference',
  'photo-not-tied': 'hide.refused.photo-not-tied',
  'bad-reference': 'hide.refused.bad-reference',
  'no-hide-in-photo': 'hide.refused.no-hide-in-photo',
  'sides-do-not-match': 'hide.refused.sides-do-not-match',
  'moved-photos-do-not-join': 'hide.refused.moved-photos-do-not-join',
  'crosses-disagree': 'hide.refused.crosses-disagree',
};

/** `called`: the file's name where the person has it, if the job calls it otherwise. */
export function problemOf(app: App, error: unknown, called?: string): Problem {
  const told = toldError(error);
  const failed = (): string => app.say('shell.failed', { sentence: app.sentence(told) });
  if (!(error instanceof WorkError)) return { code: 'unknown', words: failed };
  const { code, sentence, isRefusal } = error.failure;
  const key = REFUSALS[code];
  if (key !== undefined) {
    const file = called ?? fileIn(sentence);
    return { code, words: () => app.say(key, { file }) };
  }
  return { code, words: isRefusal ? () => app.sentence(told) : failed };
}

/** Refusals begin with the file. */
function fileIn(sentence: string): string {
  return /^[^:]*/.exec(sentence)![0];
}

export function isStopped(error: unknown): boolean {
  return error instanceof WorkError && error.failure.code === 'stopped';
}
