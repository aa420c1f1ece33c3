import { refuseUnsupported } from '@hidebound/geometry';
import type { NestProblem, NestRefusalCode } from '@hidebound/geometry';
import { CliError } from './cli-error.js';

const WORDS: Readonly<Record<NestRefusalCode, string>> = {
  fill: 'the mode "fill" can\'t be laid yet; use "place all" or "sets"',
  strip: "a roll of open length can't be laid yet; give hides",
  'open-length': "a roll of open length can't be laid yet; give hides",
  lanes: "straps in lanes can't be laid yet; leave out the wish for a lane",
  'rough-cuts': "rough cuts can't be laid yet; leave out the margin of its rough cut",
  streams: "several streams can't be run yet; use one",
};

/** Says in the user's words what the engine can't do, before it starts. */
export function refuseNotPossibleYet(problem: NestProblem): void {
  const [first] = refuseUnsupported(problem);
  if (first === undefined) return;
  const where = first.where === undefined ? '' : `${first.where}: `;
  throw new CliError('not-possible-yet', `${where}${WORDS[first.code]}.`);
}
