import type { GeometryError } from '@hidebound/geometry';
import { runNestParallel } from '@hidebound/geometry/parallel';
import type { WorkerHandle } from '@hidebound/geometry/parallel';
import type { Mischief } from './mischief.js';
import { problemUnderTest } from './streams-under-test.js';
import type { StreamsUnderTest } from './streams-under-test.js';

/** A search as both Node and a page run it: plain data in and out. */
export interface TestSearch {
  /** Absent: the toy. */
  readonly streams?: StreamsUnderTest;
  readonly workers: number;
  readonly mischief: Mischief;
  /** Joins that are asked for, or at which a search without an end is stopped. */
  readonly joins: number;
  readonly end: 'asked' | 'stopped';
  /** A script that is not there. */
  readonly isLost?: boolean;
}

export interface TestFinding {
  readonly answer?: string;
  readonly failure?: { readonly code: string; readonly message: string };
  /** Joins whose best was posted. */
  readonly posted: readonly number[];
}

export async function searchInTest(
  { streams = 'toy', workers, joins, end }: TestSearch,
  createWorker: () => WorkerHandle,
): Promise<TestFinding> {
  const posted: number[] = [];
  const stop = new AbortController();
  const stopAt = (done: number): void => {
    if (end === 'stopped' && done >= joins) setTimeout(() => stop.abort());
  };
  try {
    const answer = await runNestParallel(problemUnderTest(streams, end === 'asked' ? { joins } : {}), {
      workers,
      createWorker,
      signal: stop.signal,
      onBest: (best) => posted.push(best.joins),
      onProgress: (progress) => stopAt(progress.joins),
    });
    return { answer: JSON.stringify(answer), posted };
  } catch (error) {
    const { code, message } = error as GeometryError;
    return { failure: { code, message }, posted };
  }
}
