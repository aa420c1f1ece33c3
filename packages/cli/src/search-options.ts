import type { Budget } from '@hidebound/geometry';
import type { LayoutOrigin } from '@hidebound/leather';
import type { OptionValues } from './command-context.js';
import { numberOption } from './command-context.js';
import type { LayGoal } from './lay-progress.js';

/** Streams of every search: the layout depends on them, so it can't depend on the machine. */
const STREAMS = 4;

/** How much is to be searched: so long, or so much. */
export function searchFrom(options: OptionValues): { readonly budget: Budget; readonly goal: LayGoal } {
  const start = { seed: numberOption(options, 'seed')!, streams: STREAMS };
  const joins = numberOption(options, 'effort');
  return joins === undefined
    ? { budget: start, goal: { seconds: numberOption(options, 'seconds')! } }
    : { budget: { ...start, joins }, goal: { joins } };
}

export function coresFrom(options: OptionValues): { readonly cores?: number } {
  const cores = numberOption(options, 'cores');
  return cores === undefined ? {} : { cores };
}

/** Where a layout comes from, as it says itself. */
export function originFrom({ seed, streams, joins }: Budget, version: string): Omit<LayoutOrigin, 'joins'> {
  return { version, seed, streams, ...(joins === undefined ? {} : { effort: joins }) };
}
