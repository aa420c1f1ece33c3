import { availableParallelism } from 'node:os';
import { Worker, parentPort } from 'node:worker_threads';
import type { WorkerOptions } from 'node:worker_threads';
import { GeometryError } from '../error.js';
import type { OwnerPort, WorkerHandle } from '../parallel/worker-port.js';

/** Starts a thread that runs this script, which is to call `serveStreams` with `nodeWorkerOwner()`. */
export function createNodeWorker(script: URL | string, options: WorkerOptions = {}): WorkerHandle {
  const worker = new Worker(script, options);
  return {
    post: (message) => worker.postMessage(message),
    onMessage: (listener) => {
      worker.on('message', listener);
    },
    onFailure: (listener) => {
      worker.on('error', listener);
      worker.on('messageerror', listener);
      worker.on('exit', (status) => listener(`it ended with status ${status}`));
    },
    terminate: () => {
      void worker.terminate();
    },
  };
}

/** The owner, as a thread sees it. Throws `bad-argument` outside a thread. */
export function nodeWorkerOwner(): OwnerPort {
  const port = parentPort;
  if (port === null) {
    throw new GeometryError(
      'bad-argument',
      'This script is for a worker thread; it is not to be run by itself.',
    );
  }
  return {
    post: (message) => port.postMessage(message),
    onMessage: (listener) => {
      port.on('message', listener);
    },
  };
}

/** How many workers this machine bears. */
export function workersOfMachine(): number {
  return availableParallelism();
}
