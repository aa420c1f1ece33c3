import { toldError } from '../words/told.js';
import type { TaskReply, TaskRequest, TaskTable, WorkFailure } from './task.js';

export interface TaskTools<P> {
  readonly progress: (progress: P) => void;
  /** Buffers that move with the output instead of being copied. */
  readonly handOver: (buffers: readonly ArrayBuffer[]) => void;
}

export type TaskDoers<T extends TaskTable> = {
  readonly [K in keyof T]: (
    input: T[K]['input'],
    tools: TaskTools<T[K]['progress']>,
  ) => T[K]['output'] | Promise<T[K]['output']>;
};

/** As much of a worker's own scope as is used here. */
interface WorkerScope {
  addEventListener(type: 'message', listener: (event: { readonly data: TaskRequest }) => void): void;
  postMessage(message: TaskReply, transfer?: readonly ArrayBuffer[]): void;
}

/** Does what is asked, one task after another, for as long as the worker lives. */
export function serveTasks<T extends TaskTable>(doers: TaskDoers<T>): void {
  const scope = globalThis as unknown as WorkerScope;
  let last: Promise<void> = Promise.resolve();
  scope.addEventListener('message', ({ data }) => {
    last = last.then(() => doTask(scope, doers, data));
  });
}

async function doTask<T extends TaskTable>(
  scope: WorkerScope,
  doers: TaskDoers<T>,
  { id, task, input }: TaskRequest,
): Promise<void> {
  const moved: ArrayBuffer[] = [];
  try {
    const output = await doers[task]!(input, {
      progress: (progress) => scope.postMessage({ id, kind: 'progress', progress }),
      handOver: (buffers) => moved.push(...buffers),
    });
    scope.postMessage({ id, kind: 'done', output }, moved);
  } catch (error) {
    scope.postMessage({ id, kind: 'failed', failure: failureOf(error) });
  }
}

const OWN_ERRORS = new Set(['LeatherError', 'IntakeError', 'RenderError', 'GeometryError']);

function failureOf(error: unknown): WorkFailure {
  if (!(error instanceof Error)) return { code: 'unknown', sentence: String(error), isRefusal: false };
  const { code } = error as { code?: unknown };
  return {
    code: typeof code === 'string' ? code : error.name,
    ...toldError(error),
    isRefusal: OWN_ERRORS.has(error.name),
  };
}
