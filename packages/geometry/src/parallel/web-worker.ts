import type { OwnerPort, WorkerHandle } from './worker-port.js';

/** As much of a browser's `Worker` as is used here; core code has no types of the DOM. */
export interface WebWorkerLike {
  postMessage(message: unknown): void;
  addEventListener(type: string, listener: (event: object) => void): void;
  terminate(): void;
}

/** As much of a worker's own global scope. */
export interface WebWorkerScopeLike {
  postMessage(message: unknown): void;
  addEventListener(type: string, listener: (event: object) => void): void;
}

/** A browser's worker, as its owner sees it. */
export function webWorkerHandle(worker: WebWorkerLike): WorkerHandle {
  return {
    post: (message) => worker.postMessage(message),
    onMessage: (listener) => {
      worker.addEventListener('message', (event) => listener(dataOf(event)));
    },
    onFailure: (listener) => {
      worker.addEventListener('error', (event) => listener(wordsOf(event)));
      worker.addEventListener('messageerror', () => listener('a message of it could not be read'));
    },
    terminate: () => worker.terminate(),
  };
}

/** The owner, as a browser's worker sees it; `scope` is the worker's `globalThis`. */
export function webWorkerOwner(scope: WebWorkerScopeLike): OwnerPort {
  return {
    post: (message) => scope.postMessage(message),
    onMessage: (listener) => {
      scope.addEventListener('message', (event) => listener(dataOf(event)));
    },
  };
}

function dataOf(event: { readonly data?: unknown }): unknown {
  return event.data;
}

/** A script that can't be loaded gives no words. */
function wordsOf(event: { readonly message?: unknown }): string {
  return typeof event.message === 'string' ? event.message : 'its script could not be loaded';
}
