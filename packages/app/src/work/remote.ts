import type { Told } from '../words/told.js';
import { WorkError } from './task.js';
import type { TaskReply, TaskRequest, TaskTable } from './task.js';

export interface AskOptions<P> {
  readonly onProgress?: (progress: P) => void;
  /** Ends the worker in the middle of its work; the promise is rejected with a `stopped` failure. */
  readonly signal?: AbortSignal;
  /** Buffers and ports that move to the worker instead of being copied. */
  readonly handOver?: readonly Transferable[];
}

/** A worker from the side of those who ask it. It is made when it is first needed, and made anew after it ended. */
export interface Remote<T extends TaskTable> {
  ask<K extends keyof T & string>(
    task: K,
    input: T[K]['input'],
    options?: AskOptions<T[K]['progress']>,
  ): Promise<T[K]['output']>;
  /** Ends the worker; what is under way is rejected with `stopped`. */
  end(): void;
}

interface Pending {
  readonly resolve: (output: never) => void;
  readonly reject: (error: WorkError) => void;
  readonly onProgress: ((progress: never) => void) | undefined;
}

const STOPPED = { code: 'stopped', sentence: 'Stopped by hand.', isRefusal: true } as const;

export function remote<T extends TaskTable>(makeWorker: () => Worker): Remote<T> {
  const pending = new Map<number, Pending>();
  let worker: Worker | undefined;
  let lastId = 0;

  const rejectAll = (error: WorkError): void => {
    worker?.terminate();
    worker = undefined;
    const waiting = [...pending.values()];
    pending.clear();
    for (const { reject } of waiting) reject(error);
  };
  const hear = ({ data }: MessageEvent<TaskReply>): void => {
    const asked = pending.get(data.id);
    if (asked === undefined) return;
    if (data.kind === 'progress') {
      asked.onProgress?.(data.progress as never);
      return;
    }
    pending.delete(data.id);
    if (data.kind === 'done') asked.resolve(data.output as never);
    else asked.reject(new WorkError(data.failure));
  };
  const ready = (): Worker => {
    if (worker !== undefined) return worker;
    worker = makeWorker();
    worker.addEventListener('message', hear);
    worker.addEventListener('error', (event) => {
      const code = 'worker-failed';
      const told: Told =
        event.message === '' || event.message === undefined
          ? { sentence: 'A part of the app could not be loaded.', finding: { of: 'app', code, params: {} } }
          : { sentence: event.message };
      rejectAll(new WorkError({ code, ...told, isRefusal: false }));
    });
    return worker;
  };

  return {
    ask: (task, input, { onProgress, signal, handOver = [] } = {}) =>
      new Promise((resolve, reject) => {
        if (signal?.aborted === true) {
          reject(new WorkError(STOPPED));
          return;
        }
        const id = ++lastId;
        const stop = (): void => rejectAll(new WorkError(STOPPED));
        signal?.addEventListener('abort', stop, { once: true });
        const settled = (): void => signal?.removeEventListener('abort', stop);
        pending.set(id, {
          resolve: (output) => {
            settled();
            resolve(output);
          },
          reject: (error) => {
            settled();
            reject(error);
          },
          onProgress,
        });
        ready().postMessage({ id, task, input } satisfies TaskRequest, [...handOver]);
      }),
    end: () => rejectAll(new WorkError(STOPPED)),
  };
}
