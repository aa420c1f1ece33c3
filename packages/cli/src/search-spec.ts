import type { OptionSpec } from './option-table.js';

/** Seconds of search where the user says nothing. */
const DEFAULT_SECONDS = 30;
const ONE_DAY_SECONDS = 86_400;
/** Seeds and efforts stay whole numbers that every part of the program holds exactly. */
const LARGEST_SEED = 0xffffffff;
const LARGEST_EFFORT = 1_000_000;
/** Beyond any machine that this runs on; the search has no use for more than it has streams. */
const MOST_CORES = 1024;

/** On every command that lays pieces: how long, how much, from where, on how many cores. */
export const SEARCH_OPTIONS: readonly OptionSpec[] = [
  {
    flags: '--seconds <n>',
    description: 'how long to go on improving',
    value: { kind: 'number', min: 0, max: ONE_DAY_SECONDS },
    fallback: DEFAULT_SECONDS,
  },
  {
    flags: '--effort <n>',
    description: 'do so much work however long it takes; the same effort and seed give the same layout',
    value: { kind: 'whole number', min: 0, max: LARGEST_EFFORT },
  },
  {
    flags: '--seed <n>',
    description: 'another number gives another layout',
    value: { kind: 'whole number', min: 0, max: LARGEST_SEED },
    fallback: 1,
  },
  {
    flags: '--cores <n>',
    description: 'how many processor cores to use (all there are); the same work gives the same layout',
    value: { kind: 'whole number', min: 1, max: MOST_CORES },
  },
];
