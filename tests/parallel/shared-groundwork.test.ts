import { expect, it, vi } from 'vitest';
import { runNest, sampleProblem } from '@hidebound/geometry';
import { runNestInThreads } from '@hidebound/geometry/node';

// The machine's speed is no part of these tests.
vi.setConfig({ testTimeout: 120_000 });

// Streams in one thread share what they work from; in threads of their own each has it to itself.
it('when streams share a thread or have one each, the answer has the same bytes', async () => {
  const problem = {
    ...sampleProblem(4, { pieces: 5, hides: 2, share: 0.4 }),
    budget: { seed: 5, streams: 3, joins: 3 },
  };
  const here = JSON.stringify(runNest(problem));
  expect(JSON.stringify(await runNestInThreads(problem, { threads: 3 }))).toBe(here);
});
