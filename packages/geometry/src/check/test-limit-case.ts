import type { CopyRef, RuleName } from '../types/problem.js';
import type { Job } from './test-jobs.js';

/** One small job that can break one rule by as much as is asked for. */
export interface LimitCase {
  readonly name: string;
  readonly rule: RuleName;
  readonly at: CopyRef | undefined;
  readonly other: CopyRef | string | undefined;
  /** What must pass and what must fail: 1 µm and 10 µm, or 0.001° and 0.01°. */
  readonly within: number;
  readonly beyond: number;
  /** The job with the limit exceeded by so much; 0 lies exactly on it. */
  readonly build: (off: number) => Job;
}

export const MM = { within: 0.001, beyond: 0.01 };
export const DEG = { within: 0.001, beyond: 0.01 };
