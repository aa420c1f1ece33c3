import { GeometryError } from '@hidebound/geometry';
import type { NestAnswer, NestProblem, NestProgress } from '@hidebound/geometry';
import { runNestHere, runNestParallel, streamFactory, webWorkerHandle } from '@hidebound/geometry/parallel';

export interface SearchWish {
  readonly workers: number;
  readonly signal: AbortSignal;
  readonly onBest: (best: NestAnswer) => void;
  readonly onProgress: (progress: NestProgress) => void;
}

export interface SearchEnd {
  readonly answer: NestAnswer;
  readonly endedEarly: boolean;
}

/**
 * Searches until the signal, with workers of this worker where the browser lets them be made, else in this one. The
 * answer after so many joins is the same either way. A stop does not wait for the inner workers: they are ended.
 */
export async function search(problem: NestProblem, wish: SearchWish): Promise<SearchEnd> {
  let best: NestAnswer | undefined;
  const options = {
    signal: wish.signal,
    onProgress: wish.onProgress,
    onBest: (answer: NestAnswer): void => {
      best = answer;
      wish.onBest(answer);
    },
  };
  if (typeof Worker === 'function') {
    try {
      const answer = await runNestParallel(problem, { ...options, workers: wish.workers, createWorker });
      return { answer, endedEarly: false };
    } catch (error) {
      if (!(error instanceof GeometryError) || error.code !== 'worker-failed') throw error;
      if (best !== undefined) return { answer: best, endedEarly: true };
    }
  }
  const answer = await runNestHere(problem, { ...options, createStream: streamFactory(), pause });
  return { answer, endedEarly: false };
}

function createWorker() {
  return webWorkerHandle(
    new Worker(new URL('../lay-stream-worker.ts', import.meta.url), { type: 'module', name: 'lay-stream' }),
  );
}

/** Lets a stop be heard. */
function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
