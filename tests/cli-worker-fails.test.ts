import { readFileSync } from 'node:fs';
import { GeometryError, runNest } from '@hidebound/geometry';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { runNestInThreads } from '@hidebound/geometry/node';
import { expectOneSentence, hideboundHere, OLD_LAYOUT, smallJob, testFolder } from './cli-support.js';

type Search = typeof runNestInThreads;

const search: { run: Search | undefined } = vi.hoisted(() => ({ run: undefined }));
vi.mock('@hidebound/geometry/node', async (original) => ({
  ...(await original<object>()),
  runNestInThreads: (...args: Parameters<Search>) => search.run!(...args),
}));

const folder = testFolder();

/** A search that fails after so many better layouts. */
function failsAfter(layouts: number, error: Error): Search {
  return (problem, { onBest }) => {
    for (let joins = 0; joins < layouts; joins++)
      onBest!(runNest({ ...problem, budget: { ...problem.budget, joins } }));
    return Promise.reject(error);
  };
}

const BROKEN = new GeometryError('worker-failed', 'A worker of the search failed: out of memory.');

describe('a search of which a worker fails', () => {
  afterEach(() => {
    search.run = undefined;
  });

  it('when there was a layout before, the last one is saved, and standard error says so in one sentence', async () => {
    const { order, layout } = smallJob(folder);
    search.run = failsAfter(2, BROKEN);
    const run = await hideboundHere(['lay', order, '--seconds', '5', '--out', layout]);
    expect(expectOneSentence(run)).toBe(
      'hidebound: The search ended early (A worker of the search failed: out of memory); ' +
        'the best layout up to then, with 2 pieces laid, is kept.',
    );
    expect(run.status).toBe(0);
    expect(run.stdout).toContain(`The search ended early; the best so far is in ${layout}`);
    expect(JSON.parse(readFileSync(layout, 'utf8'))).toMatchObject({
      format: 'hidebound/layout@1',
      origin: { joins: 1 },
    });
    expect((await hideboundHere(['check', layout])).status).toBe(0);
  });

  it('when JSON is asked for, the warning is part of the result', async () => {
    const { order, layout } = smallJob(folder);
    search.run = failsAfter(1, BROKEN);
    const run = await hideboundHere(['lay', order, '--seconds', '5', '--out', layout, '--json']);
    expect(JSON.parse(run.stdout)).toMatchObject({
      ok: true,
      result: { stopped: false, placed: 2 },
      diagnostics: [{ code: 'search-ended-early', severity: 'warning' }],
    });
  });

  it('when --debug is given, it says where the worker failed', async () => {
    const { order, layout } = smallJob(folder);
    const error = new GeometryError('worker-failed', 'A worker of the search failed: no.');
    error.cause = 'Error: no\n    at someone';
    search.run = failsAfter(1, error);
    const run = await hideboundHere(['lay', order, '--seconds', '5', '--out', layout, '--debug']);
    expect(run.stderr).toContain('at someone');
    expect(run.status).toBe(0);
  });

  it('when there was no layout yet, it is a mistake of the program, and the old file stays', async () => {
    const { order, layout } = smallJob(folder);
    search.run = failsAfter(0, BROKEN);
    const run = await hideboundHere(['lay', order, '--seconds', '5', '--out', layout]);
    expect(run.status).toBe(70);
    expect(run.stderr).toMatch(
      /this should not have happened \(A worker of the search failed: out of memory/,
    );
    expect(readFileSync(layout, 'utf8')).toBe(OLD_LAYOUT);
  });

  it('when something else fails after a layout, it is not taken for a worker', async () => {
    const { order, layout } = smallJob(folder);
    search.run = failsAfter(1, new Error('something else'));
    const run = await hideboundHere(['lay', order, '--seconds', '5', '--out', layout]);
    expect(run.status).toBe(70);
    expect(readFileSync(layout, 'utf8')).toBe(OLD_LAYOUT);
  });
});
