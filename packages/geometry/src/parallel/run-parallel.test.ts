import { afterEach, describe, expect, it, vi } from 'vitest';
import { GeometryError } from '../error.js';
import type { NestProgress } from '../nest/run.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import type { StartMessage } from './messages.js';
import { startStreams } from './run-here.js';
import { runNestParallel } from './run-parallel.js';
import type { ParallelOptions } from './run-parallel.js';
import { fakeWorker } from './test-fake-worker.js';
import type { FakeWorker, FakeWorkerOptions } from './test-fake-worker.js';
import { createToyStream, toyProblem } from './test-toy-stream.js';

/** The answer as one thread gives it. */
function textHere(problem: NestProblem): string {
  const run = startStreams(problem, createToyStream);
  while (!run.done) run.advance();
  return JSON.stringify(run.best());
}

/** Makes workers and keeps them; `optionsOf` may differ from worker to worker. */
function workshop(
  optionsOf: (index: number) => FakeWorkerOptions = () => ({ createStream: createToyStream }),
) {
  const made: FakeWorker[] = [];
  const createWorker = (): FakeWorker => {
    const worker = fakeWorker(optionsOf(made.length));
    made.push(worker);
    return worker;
  };
  return { made, createWorker };
}

async function failure(problem: NestProblem, options: ParallelOptions): Promise<GeometryError> {
  const error: unknown = await runNestParallel(problem, options).then(
    () => 'it did not fail',
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(GeometryError);
  return error as GeometryError;
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('streams in workers', () => {
  it.each([1, 2, 3, 5, 9])(
    'when there are %i workers, slow and quick ones, the bytes are the same',
    async (workers) => {
      const problem = toyProblem({ joins: 6 });
      const here = textHere(problem);
      for (const slow of [0, 1]) {
        const { made, createWorker } = workshop((index) => ({
          createStream: createToyStream,
          delayMs: index % 2 === slow ? 4 : 0,
        }));
        const answer = await runNestParallel(problem, { workers, createWorker });
        expect(JSON.stringify(answer)).toBe(here);
        expect(made).toHaveLength(Math.min(workers, 5));
        expect(made.every(({ isTerminated }) => isTerminated)).toBe(true);
      }
    },
  );

  it('when there are 2 workers for 5 streams, stream s lives in worker s mod 2', async () => {
    const { made, createWorker } = workshop();
    await runNestParallel(toyProblem({ joins: 1 }), { workers: 2, createWorker });
    expect(made.map(({ heard }) => (heard[0] as StartMessage).streams)).toEqual([
      [0, 2, 4],
      [1, 3],
    ]);
    expect(
      made.map(({ heard }) => heard.slice(1).map((message) => (message as { join: number }).join)),
    ).toEqual([[0, 1], [1]]);
  });

  it('when only the first layout is asked for, one worker is made', async () => {
    const { made, createWorker } = workshop();
    const problem = toyProblem({ joins: 0 });
    expect(JSON.stringify(await runNestParallel(problem, { workers: 5, createWorker }))).toBe(
      textHere(problem),
    );
    expect(made).toHaveLength(1);
  });

  it('when joins are complete, progress and each better answer are posted', async () => {
    const { createWorker } = workshop();
    const posted: NestAnswer[] = [];
    const progress: NestProgress[] = [];
    const answer = await runNestParallel(toyProblem({ joins: 8 }), {
      workers: 3,
      createWorker,
      onBest: (best) => posted.push(best),
      onProgress: (state) => progress.push(state),
    });
    for (const { joins, placements } of posted) {
      expect(JSON.parse(textHere(toyProblem({ joins })))).toEqual({ ...answer, joins, placements });
    }
    expect(posted.at(-1)?.placements).toEqual(answer.placements);
    expect(progress[0]).toMatchObject({
      phase: 'first-layout',
      joins: -1,
      placedCount: 4,
      demandedCount: 12,
    });
    expect(progress.at(-1)).toMatchObject({ phase: 'done', joins: 8, placedCount: 12 });
    const numbers = progress.map(({ joins }) => joins);
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
  });
});

describe('stopping streams in workers', () => {
  it('when the signal comes in the midst of a join, it does not wait for the workers', async () => {
    // Worker 1 never answers: join 1 would never be complete.
    const { made, createWorker } = workshop((index) =>
      index === 1 ? {} : { createStream: createToyStream },
    );
    const stop = new AbortController();
    const onBest = (): void => {
      setTimeout(() => stop.abort(), 20);
    };
    const options = { workers: 2, createWorker, signal: stop.signal, onBest };
    const answer = await runNestParallel(toyProblem(), options);
    expect(JSON.stringify(answer)).toBe(textHere(toyProblem({ joins: 0 })));
    expect(made.every(({ isTerminated }) => isTerminated)).toBe(true);
    const flag = (made[0]!.heard[0] as StartMessage).stopFlag;
    expect(flag?.buffer).toBeInstanceOf(SharedArrayBuffer);
    expect(flag?.[0]).toBe(1);
  });

  it.each([1, 3, 4])(
    'when it is stopped at join %i, the bytes are those of a search for so many joins',
    async (joins) => {
      for (const way of ['signal', 'question'] as const) {
        const { createWorker } = workshop();
        const stop = new AbortController();
        let isAsked = false;
        const onProgress = (progress: NestProgress): void => {
          if (progress.joins < joins) return;
          if (way === 'signal') stop.abort();
          isAsked = true;
        };
        const answer = await runNestParallel(toyProblem(), {
          workers: 3,
          createWorker,
          onProgress,
          ...(way === 'signal' ? { signal: stop.signal } : { shouldStop: () => isAsked }),
        });
        expect(JSON.stringify(answer)).toBe(textHere(toyProblem({ joins })));
      }
    },
  );

  it.each(['before', 'after'])(
    'when it is stopped %s its start, the first layout is finished',
    async (when) => {
      const { createWorker } = workshop();
      const stop = new AbortController();
      if (when === 'before') stop.abort();
      const search = runNestParallel(toyProblem(), { workers: 2, createWorker, signal: stop.signal });
      stop.abort();
      expect(JSON.stringify(await search)).toBe(textHere(toyProblem({ joins: 0 })));
    },
  );

  it('when memory can not be shared, the answer and a stop are the same', async () => {
    vi.stubGlobal('SharedArrayBuffer', undefined);
    const { made, createWorker } = workshop((index) =>
      index === 1 ? {} : { createStream: createToyStream },
    );
    const stop = new AbortController();
    const onBest = (): void => stop.abort();
    const options = { workers: 2, createWorker, signal: stop.signal, onBest };
    const answer = await runNestParallel(toyProblem(), options);
    expect(JSON.stringify(answer)).toBe(textHere(toyProblem({ joins: 0 })));
    expect(made[0]!.heard[0]).not.toHaveProperty('stopFlag');
    expect(made.every(({ isTerminated }) => isTerminated)).toBe(true);
  });
});

describe('when something breaks', () => {
  it('when a stream throws, all workers end and the error says why', async () => {
    const { made, createWorker } = workshop(() => ({
      createStream: (problem, stream) => ({
        ...createToyStream(problem, stream),
        advance: () => {
          if (stream === 3) throw new RangeError('out of everything');
          return true;
        },
      }),
    }));
    const error = await failure(toyProblem({ joins: 4 }), { workers: 4, createWorker });
    expect([error.code, error.message]).toEqual([
      'worker-failed',
      'A worker of the search failed: out of everything',
    ]);
    expect(String(error.cause)).toContain('RangeError: out of everything');
    expect(made.every(({ isTerminated }) => isTerminated)).toBe(true);
  });

  it('when the problem itself is refused, the error keeps its code', async () => {
    const { createWorker } = workshop(() => ({
      createStream: () => {
        throw new GeometryError('unsupported', 'This can not be laid.');
      },
    }));
    const error = await failure(toyProblem({ joins: 4 }), { workers: 2, createWorker });
    expect([error.code, error.message]).toEqual(['unsupported', 'This can not be laid.']);
  });

  it.each([
    ['breaks', (worker: FakeWorker) => worker.breakWith(new Error('no memory')), /no memory/],
    ['ends', (worker: FakeWorker) => worker.breakWith('it ended with status 7'), /status 7/],
    ['says what nobody can read', (worker: FakeWorker) => worker.say({ kind: 'hello' }), /can not be read/],
    [
      'speaks of a stream that is not its own',
      (worker: FakeWorker) =>
        worker.say({ kind: 'progress', stream: 0, join: 0, progress: { placedCount: 0 } }),
      /spoke of stream 0/,
    ],
  ] as const)(
    'when a worker %s, the search fails with one error and leaves no worker',
    async (_, act, words) => {
      const { made, createWorker } = workshop(() => ({}));
      const failing = failure(toyProblem({ joins: 4 }), { workers: 2, createWorker });
      act(made[1]!);
      act(made[1]!);
      const error = await failing;
      expect(error.code).toBe('worker-failed');
      expect(error.message).toMatch(words);
      expect(made.every(({ isTerminated }) => isTerminated)).toBe(true);
    },
  );

  it('when a worker can not be made, those that were made end', async () => {
    const { made, createWorker } = workshop();
    const search = runNestParallel(toyProblem({ joins: 1 }), {
      workers: 3,
      createWorker: () => {
        if (made.length === 2) throw new Error('too many threads');
        return createWorker();
      },
    });
    await expect(search).rejects.toThrow('too many threads');
    expect(made.map(({ isTerminated }) => isTerminated)).toEqual([true, true]);
  });

  it('when the caller itself throws on hearing of a best, its own error comes out', async () => {
    const { made, createWorker } = workshop();
    const onBest = (): void => {
      throw new TypeError("the caller's own");
    };
    const search = runNestParallel(toyProblem({ joins: 1 }), { workers: 2, createWorker, onBest });
    await expect(search).rejects.toThrow(TypeError);
    expect(made.every(({ isTerminated }) => isTerminated)).toBe(true);
  });

  it('when there is no end, or no worker, it is refused', async () => {
    const { createWorker } = workshop();
    expect((await failure(toyProblem(), { workers: 2, createWorker })).code).toBe('bad-argument');
    expect((await failure(toyProblem({ joins: 1 }), { workers: 0, createWorker })).code).toBe('bad-argument');
  });
});
