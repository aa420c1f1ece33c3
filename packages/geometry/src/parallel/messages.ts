import { GeometryError } from '../error.js';
import type { GeometryErrorCode } from '../error.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import type { StreamOutcome, StreamProgress } from '../types/stream.js';

/** What an owner tells a worker: first `start`, then `work` for each join. */
export type ToWorker = StartMessage | WorkMessage;

export interface StartMessage {
  readonly kind: 'start';
  readonly problem: NestProblem;
  /** Streams that live in this worker, ascending. */
  readonly streams: readonly number[];
  /** One number in shared memory: anything but 0 stops the work. Absent where memory can't be shared. */
  readonly stopFlag?: Int32Array;
}

export interface WorkMessage {
  readonly kind: 'work';
  readonly join: number;
  /** The best of the join before; absent for join 0. */
  readonly best?: NestAnswer;
}

/** What a worker tells its owner. */
export type FromWorker = ProgressMessage | OutcomeMessage | FailedMessage;

export interface ProgressMessage {
  readonly kind: 'progress';
  readonly stream: number;
  readonly join: number;
  readonly progress: StreamProgress;
}

export interface OutcomeMessage {
  readonly kind: 'outcome';
  readonly stream: number;
  readonly join: number;
  readonly outcome: StreamOutcome;
}

export interface FailedMessage {
  readonly kind: 'failed';
  /** Set where the worker threw an error of this package. */
  readonly code?: string;
  readonly message: string;
  readonly stack?: string;
}

export function isToWorker(message: unknown): message is ToWorker {
  if (!isRecord(message)) return false;
  if (message['kind'] === 'work') {
    const best = message['best'];
    return isCount(message['join']) && (message['join'] === 0 ? best === undefined : isAnswer(best));
  }
  const { kind, problem, streams, stopFlag } = message;
  return (
    kind === 'start' &&
    isRecord(problem) &&
    Array.isArray(streams) &&
    streams.every(isCount) &&
    (stopFlag === undefined || stopFlag instanceof Int32Array)
  );
}

export function isFromWorker(message: unknown): message is FromWorker {
  if (!isRecord(message)) return false;
  if (message['kind'] === 'failed') return typeof message['message'] === 'string';
  if (!isCount(message['stream']) || !isCount(message['join'])) return false;
  if (message['kind'] === 'progress') {
    const { progress } = message;
    return isRecord(progress) && isCount(progress['placedCount']);
  }
  return message['kind'] === 'outcome' && isOutcome(message['outcome']);
}

function isOutcome(value: unknown): boolean {
  if (!isRecord(value)) return false;
  const { answer, score } = value;
  return isAnswer(answer) && Array.isArray(score) && score.every((entry) => typeof entry === 'number');
}

function isAnswer(value: unknown): boolean {
  return (
    isRecord(value) &&
    ['placements', 'lanes', 'roughCuts', 'unplaced'].every((key) => Array.isArray(value[key]))
  );
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}

function isCount(value: unknown): value is number {
  return Number.isInteger(value) && (value as number) >= 0;
}

/** What went wrong in a worker, as a message to its owner. */
export function failedMessage(error: unknown): FailedMessage {
  if (!(error instanceof Error)) return { kind: 'failed', message: String(error) };
  return {
    kind: 'failed',
    message: error.message,
    ...(error.stack === undefined ? {} : { stack: error.stack }),
    ...(error instanceof GeometryError ? { code: error.code } : {}),
  };
}

/** Codes that a worker's error keeps on its way to the owner: those that say something of the problem. */
const CODES_OF_PROBLEMS: readonly GeometryErrorCode[] = [
  'empty-shape',
  'not-closed',
  'bad-argument',
  'unsupported',
];

/** The error that the owner throws: of the same code where the problem is at fault, else `worker-failed`. */
export function errorFromMessage({ code, message, stack }: FailedMessage): GeometryError {
  const own = CODES_OF_PROBLEMS.find((known) => known === code);
  const error =
    own === undefined
      ? new GeometryError('worker-failed', `A worker of the search failed: ${message}`)
      : new GeometryError(own, message);
  if (stack !== undefined) error.cause = stack;
  return error;
}
