import { refuseUnsupported } from '@hidebound/geometry';
import type { NestProblem, NestRefusalCode } from '@hidebound/geometry';
import { CliError } from './cli-error.js';

const WORDS: Readonly<Record<NestRefusalCode, string>> = {
  'lanes-in-open-sets':
    'straps in lanes can only be laid in a fixed number of sets; give a number of sets and the mode "place all"',
};

/** Says in the user's words what the engine can't do, before it starts. */
export function refuseNotPossibleYet(problem: NestProblem): void {
  const [first] = refuseUnsupported(problem);
  if (first === undefined) return;
  const where = first.where === undefined ? '' : `${first.where}: `;
  throw new CliError('not-possible-yet', `${where}${WORDS[first.code]}.`);
}
