import { serveStreams } from './serve-streams.js';
import type { ServeOptions } from './serve-streams.js';
import type { WorkerHandle } from './worker-port.js';
import type { StreamFactory } from '../types/stream.js';

/** A worker in the test's own thread: messages are cloned and come later, as between threads. */
export interface FakeWorker extends WorkerHandle {
  readonly isTerminated: boolean;
  /** What its owner posted. */
  readonly heard: readonly unknown[];
  /** Tells the owner something that no worker of ours would say. */
  say(message: unknown): void;
  /** As if the worker had broken. */
  breakWith(reason: unknown): void;
}

export interface FakeWorkerOptions extends ServeOptions {
  /** Absent: a worker that never answers. */
  readonly createStream?: StreamFactory;
  /** How long its messages take, in ms. */
  readonly delayMs?: number;
}

export function fakeWorker(options: FakeWorkerOptions = {}): FakeWorker {
  const { createStream, delayMs = 0 } = options;
  const heard: unknown[] = [];
  let isTerminated = false;
  let toOwner: (message: unknown) => void = () => undefined;
  let toWorker: (message: unknown) => void = () => undefined;
  let onFailure: (reason: unknown) => void = () => undefined;
  const later = (action: () => void): void => {
    setTimeout(() => {
      if (!isTerminated) action();
    }, delayMs);
  };
  const say = (message: unknown): void => {
    const cloned = structuredClone(message);
    later(() => toOwner(cloned));
  };
  if (createStream !== undefined) {
    serveStreams({ post: say, onMessage: (listener) => (toWorker = listener) }, createStream, options);
  }
  return {
    get isTerminated() {
      return isTerminated;
    },
    heard,
    say,
    breakWith: (reason) => later(() => onFailure(reason)),
    post: (message) => {
      heard.push(message);
      const cloned = structuredClone(message);
      later(() => toWorker(cloned));
    },
    onMessage: (listener) => (toOwner = listener),
    onFailure: (listener) => (onFailure = listener),
    terminate: () => (isTerminated = true),
  };
}
