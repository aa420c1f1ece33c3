import { readFileSync } from 'node:fs';
import { runNest } from '@hidebound/geometry';
import type { runNestInThreads } from '@hidebound/geometry/node';
import { describe, expect, it, vi } from 'vitest';
import { hideboundHere, smallJob, testFolder } from './cli-support.js';

type Search = typeof runNestInThreads;

/** A search that is wrong: its second piece lies on the first one. */
const wrongSearch: Search = (problem) => {
  const answer = runNest({ ...problem, budget: { ...problem.budget, joins: 0 } });
  const [first, second] = answer.placements;
  const { x, y } = first!;
  return Promise.resolve({ ...answer, placements: [first!, { ...second!, x: x + 1, y }] });
};

vi.mock('@hidebound/geometry/node', async (original) => ({
  ...(await original<object>()),
  runNestInThreads: (...args: Parameters<Search>) => wrongSearch(...args),
}));

const folder = testFolder();

describe('a search that is wrong', () => {
  it('when pieces of its layout overlap, lay says which, calls the layout not proven and ends with 1', async () => {
    const { order, layout } = smallJob(folder);
    const run = await hideboundHere(['lay', order, '--seconds', '1', '--out', layout]);
    expect(run.status).toBe(1);
    expect(run.stdout).toMatch(/error: .*"plate" of tag, set 1, copy 1.*"plate" of tag, set 2, copy 1/);
    expect(run.stdout).toContain('2 of 2 pieces are laid, and the layout is NOT proven.');
    // What was found is not thrown away, and whoever checks the file is told the same.
    expect(JSON.parse(readFileSync(layout, 'utf8'))).toMatchObject({ format: 'hidebound/layout@1' });
    expect((await hideboundHere(['check', layout])).status).toBe(1);
  });
});
