import type { DiagnosticPlace } from '@hidebound/leather';
import { EXIT_STATUS } from './exit-status.js';
import type { ExitStatus } from './exit-status.js';

/** Stable codes of what can go wrong in this package; the sentence is not the contract. */
export type CliErrorCode =
  | 'bad-use'
  | 'no-such-file'
  | 'is-a-folder'
  | 'can-not-read'
  | 'too-large'
  | 'not-text'
  | 'unknown-kind'
  | 'no-output'
  | 'nothing-laid'
  | 'not-possible-yet'
  | 'can-not-write';

const STATUS_OF: Readonly<Record<CliErrorCode, ExitStatus>> = {
  'bad-use': EXIT_STATUS.usage,
  'no-such-file': EXIT_STATUS.badInput,
  'is-a-folder': EXIT_STATUS.badInput,
  'can-not-read': EXIT_STATUS.badInput,
  'too-large': EXIT_STATUS.badInput,
  'not-text': EXIT_STATUS.badInput,
  'unknown-kind': EXIT_STATUS.badInput,
  'no-output': EXIT_STATUS.usage,
  'nothing-laid': EXIT_STATUS.badInput,
  'not-possible-yet': EXIT_STATUS.badInput,
  'can-not-write': EXIT_STATUS.couldNotWrite,
};

/** The one error of this package. The message is one plain sentence without its place. */
export class CliError extends Error {
  override readonly name = 'CliError';
  readonly code: CliErrorCode;
  readonly place?: DiagnosticPlace;

  /** `cause`: what the system threw, where it did. */
  constructor(code: CliErrorCode, message: string, place?: DiagnosticPlace, options?: ErrorOptions) {
    super(message, options);
    this.code = code;
    if (place !== undefined) this.place = place;
  }

  get exitStatus(): ExitStatus {
    return STATUS_OF[this.code];
  }
}
