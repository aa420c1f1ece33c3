import { describe, expect, it } from 'vitest';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import { runNestHere, startStreams } from './run-here.js';
import { createToyStream, toyProblem } from './test-toy-stream.js';

const pause = (): Promise<void> => Promise.resolve();

function textOf(problem: NestProblem): string {
  const run = startStreams(problem, createToyStream);
  while (!run.done) run.advance();
  return JSON.stringify(run.best());
}

describe('streams in one thread', () => {
  it('when it runs, it goes from the first layout to the last join, and tells how far it is', () => {
    const run = startStreams(toyProblem({ joins: 2 }), createToyStream);
    const [first, ...others] = ['first-layout', 'improving', 'done'].map(() => run.advance());
    expect(first).toEqual({
      phase: 'first-layout',
      joins: -1,
      placedCount: 1,
      demandedCount: 12,
      usedUpMm2: 0,
    });
    expect(others[1]?.placedCount).toBe(3);
    expect([run.best(), run.done]).toEqual([undefined, false]);
    while (run.best() === undefined) run.advance();
    // The row of squares reaches to x = 11 * 20 + 16 mm of a sheet 100 mm high.
    expect(run.advance()).toMatchObject({ phase: 'improving', joins: 0, placedCount: 12, usedUpMm2: 23_600 });
    while (!run.done) run.advance();
    expect(run.best()?.joins).toBe(2);
    expect(run.advance()).toMatchObject({ phase: 'done', joins: 2 });
  });

  it('when streams share their finds, they come further than one alone, and seeds and joins differ', () => {
    const widest = (text: string): number =>
      Math.max(...(JSON.parse(text) as NestAnswer).placements.map(({ x }) => x));
    const together = textOf(toyProblem({ joins: 6 }));
    expect(widest(together)).toBeLessThan(widest(textOf(toyProblem({ joins: 6, streams: 1 }))));
    expect(together).not.toBe(textOf(toyProblem({ joins: 6, seed: 4 })));
    expect(together).not.toBe(textOf(toyProblem({ joins: 5 })));
  });

  it('when it is stopped in the midst of a join, it returns what asking for the last whole one gives', async () => {
    for (const after of [0, 1, 2, 4]) {
      let left = 3;
      const answer = await runNestHere(toyProblem(), {
        createStream: createToyStream,
        pause,
        shouldStop: () => false,
        signal: signalFrom(() => left <= 0),
        onProgress: ({ joins }) => {
          if (joins >= after) left--;
        },
      });
      expect(JSON.stringify(answer)).toBe(textOf(toyProblem({ joins: after })));
    }
  });

  it('when a stop is asked for from the start, the first layout is finished all the same', async () => {
    const options = { createStream: createToyStream, pause, shouldStop: () => true };
    expect(JSON.stringify(await runNestHere(toyProblem(), options))).toBe(textOf(toyProblem({ joins: 0 })));
  });

  it('when answers get better, each is posted once, and other work gets its turn', async () => {
    const posted: NestAnswer[] = [];
    let pauses = 0;
    const answer = await runNestHere(toyProblem({ joins: 8 }), {
      createStream: createToyStream,
      pause: () => {
        pauses++;
        return Promise.resolve();
      },
      onBest: (best) => posted.push(best),
    });
    expect(pauses).toBeGreaterThan(10);
    expect(posted.length).toBeGreaterThan(3);
    expect(new Set(posted.map(({ joins }) => joins)).size).toBe(posted.length);
    expect(posted.at(-1)?.placements).toEqual(answer.placements);
  });

  it('when the search would never end, it is refused', async () => {
    await expect(runNestHere(toyProblem(), { createStream: createToyStream, pause })).rejects.toMatchObject({
      code: 'bad-argument',
    });
  });

  it('when joins are asked for, the streams are not told how many', () => {
    const seen: NestProblem['budget'][] = [];
    const run = startStreams(toyProblem({ joins: 1 }), (problem, stream) => {
      seen.push(problem.budget);
      return createToyStream(problem, stream);
    });
    while (!run.done) run.advance();
    expect(seen).toEqual(Array.from({ length: 5 }, () => ({ seed: 3, streams: 5 })));
  });
});

function signalFrom(isAborted: () => boolean) {
  return {
    get aborted() {
      return isAborted();
    },
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
  };
}
