import { GeometryError } from '@hidebound/geometry';
import type { StopSignal, WorkerHandle } from '@hidebound/geometry/parallel';
import type { TrialInput, TrialOutcome } from './run-trial.js';
import type { FromTrialWorker, ToTrialWorker } from './trial-messages.js';

/** Outcomes of every input, from trial 1 on without a gap. */
export type TrialRounds = readonly (readonly TrialOutcome[])[];

export interface TrialsOptions {
  readonly inputs: readonly TrialInput[];
  readonly workers: number;
  /** Each is to call `serveTrials`. */
  readonly createWorker: () => WorkerHandle;
  /** So many of each input; absent: until stopped. */
  readonly trials?: number;
  /** Ends the trials; what is done by then counts. */
  readonly signal?: StopSignal;
  /** Whenever one more trial is done. */
  readonly onTrial?: (rounds: TrialRounds) => void;
}

/**
 * Runs trial 1 of every input, then trial 2 of every input, and so on, shared among workers. An
 * outcome counts once all trials of its input before it are done, so the answer depends on the number of trials alone,
 * whoever was faster. Rejects with a GeometryError: `bad-argument` for
 * trials without an end, `worker-failed` for a worker that breaks. No worker is left behind.
 */
export function runTrials(options: TrialsOptions): Promise<TrialRounds> {
  if (options.trials === undefined && options.signal === undefined) {
    return Promise.reject(
      new GeometryError('bad-argument', 'Trials need a number of them, or a way to be stopped.'),
    );
  }
  return new Promise((resolve, reject) => startPool(options, resolve, reject));
}

function startPool(
  options: TrialsOptions,
  resolve: (rounds: TrialRounds) => void,
  reject: (error: Error) => void,
): void {
  const { inputs, signal, trials = Infinity } = options;
  const jobs = trials * inputs.length;
  const record = recordRounds(inputs.length);
  const workers: WorkerHandle[] = [];
  let next = 0;
  let isOver = false;
  const end = (): boolean => {
    if (isOver) return false;
    isOver = true;
    signal?.removeEventListener('abort', finish);
    for (const worker of workers) worker.terminate();
    return true;
  };
  const finish = (): void => {
    if (end()) resolve(record.rounds());
  };
  const fail = (reason: unknown): void => {
    const words = reason instanceof Error ? reason.message : String(reason);
    if (end()) reject(new GeometryError('worker-failed', `A worker of the trials failed: ${words}`));
  };
  const giveWork = (worker: WorkerHandle): void => {
    if (next >= jobs) return;
    const job: ToTrialWorker = {
      kind: 'trial',
      input: next % inputs.length,
      number: Math.floor(next / inputs.length) + 1,
    };
    next++;
    worker.post(job);
  };
  const hear = (worker: WorkerHandle, message: FromTrialWorker): void => {
    if (isOver) return;
    if (message.kind === 'failed') return fail(message.message);
    record.add(message.input, message.outcome);
    options.onTrial?.(record.rounds());
    if (record.count() >= jobs) finish();
    else giveWork(worker);
  };
  signal?.addEventListener('abort', finish);
  if (jobs === 0 || signal?.aborted === true) return finish();
  try {
    for (let i = 0; i < Math.max(1, Math.min(options.workers, jobs)); i++) {
      const worker = options.createWorker();
      workers.push(worker);
      worker.onMessage((message) => hear(worker, message as FromTrialWorker));
      worker.onFailure(fail);
      worker.post({ kind: 'start', inputs } satisfies ToTrialWorker);
      giveWork(worker);
    }
  } catch (error) {
    fail(error);
  }
}

interface RoundsRecord {
  add(input: number, outcome: TrialOutcome): void;
  /** Outcomes so far, those behind a gap too. */
  count(): number;
  rounds(): TrialRounds;
}

/** Outcomes may come in any order. */
function recordRounds(inputs: number): RoundsRecord {
  const done = Array.from({ length: inputs }, (): (TrialOutcome | undefined)[] => []);
  let count = 0;
  return {
    add: (input, outcome) => {
      done[input]![outcome.number - 1] = outcome;
      count++;
    },
    count: () => count,
    rounds: () =>
      done.map((own) => {
        const gap = own.findIndex((outcome) => outcome === undefined);
        return own.slice(0, gap < 0 ? own.length : gap) as TrialOutcome[];
      }),
  };
}
