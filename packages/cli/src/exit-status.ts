/** Exit statuses of every command. */
export const EXIT_STATUS = {
  /** It did what it was asked. */
  done: 0,
  /** It ran, and the answer is no: a broken rule, a piece that did not fit. */
  answerIsNo: 1,
  /** Wrong use: an unknown option, a missing argument. */
  usage: 2,
  /** A file that can't be used. */
  badInput: 3,
  /** A file that could not be written; what was there is untouched. */
  couldNotWrite: 4,
  /** Not foreseen: a mistake in the program. */
  internal: 70,
  /** Stopped by hand; the best so far is saved. */
  stopped: 130,
} as const;

export type ExitStatus = (typeof EXIT_STATUS)[keyof typeof EXIT_STATUS];
