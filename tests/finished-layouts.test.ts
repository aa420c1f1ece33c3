/**
 * Finished layouts of the search, judged by jsts 2.12.1 (the JTS Topology Suite in JavaScript) alone: nothing of the
 * exact check takes part in the verdict, nor do the project's own booleans and distances.
 */
import { readFileSync } from 'node:fs';
import { runNest, sampleProblem } from '@hidebound/geometry';
import type { NestAnswer, NestProblem } from '@hidebound/geometry';
import { checkAnswer, isProven } from '@hidebound/geometry/check';
import { readPatternSvg } from '@hidebound/intake';
import {
  DEFAULT_WORKSHOP,
  completeOrder,
  nestProblemFor,
  parseArticle,
  parseHide,
  parseOrder,
  resolveOrder,
  resolvePieces,
} from '@hidebound/leather';
import { beforeAll, describe, expect, test } from 'vitest';
import { turnJob } from '../packages/geometry/src/check/test-jobs.js';
import { loadJudge } from '../packages/geometry/src/check/test-judge.js';
import type { Judge } from '../packages/geometry/src/check/test-judge.js';
import { outsideFaults } from './support/outside-faults.js';
import type { OutsideFault } from './support/outside-faults.js';

interface Finished {
  readonly name: string;
  readonly problem: NestProblem;
  readonly answer: NestAnswer;
}

let judge: Judge;
let jobs: readonly Finished[];

beforeAll(async () => {
  judge = await loadJudge();
  const problems: [string, NestProblem][] = [
    ['the demo order', demoProblem()],
    ['seed 1', sampleProblem(1, { pieces: 30, share: 0.45, joins: 1 })],
    ['seed 2, three hides', sampleProblem(2, { pieces: 30, hides: 3, share: 0.3, joins: 1 })],
    ['seed 3, sets', sampleProblem(3, { pieces: 12, mode: 'sets', share: 0.3, joins: 1 })],
    ['seed 4, shapes alone', sampleProblem(4, { pieces: 40, rules: 'plain', share: 0.6, joins: 1 })],
    ['seed 5, no distances', touching(sampleProblem(5, { pieces: 24, share: 0.4 }))],
    [
      'seed 6, strokes and readings',
      sampleProblem(6, { pieces: 24, share: 0.3, hide: { cut: 'side', strokes: 5, readings: 6, flaws: 20 } }),
    ],
  ];
  jobs = problems.map(([name, problem]) => ({ name, problem, answer: runNest(problem) }));
});

function touching(problem: NestProblem): NestProblem {
  return { ...problem, distances: { gap: 0, edge: 0, void: 0 } };
}

function demoProblem(): NestProblem {
  const folder = new URL('../fixtures/demo/', import.meta.url);
  const file = 'bicycle-goods.order.yaml';
  const textOf = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
  const written = parseOrder(textOf(file), { file });
  const readArticle = (name: string): ReturnType<typeof parseArticle> =>
    parseArticle(textOf(name), { file: name });
  const order = resolveOrder(completeOrder(written, DEFAULT_WORKSHOP, readArticle, { file }));
  const { pieces } = resolvePieces(order, (name) =>
    readPatternSvg(textOf(name), { file: name, reading: { file: name, roles: [] } }),
  );
  const names = [...new Set(order.leathers.flatMap(({ hides }) => hides))];
  const hides = names.map((name) => ({ file: name, hide: parseHide(textOf(name), { file: name }) }));
  return nestProblemFor({ order, pieces, hides, budget: { seed: 1, streams: 1, joins: 1 } }).problem;
}

/** Every fault that the judge finds. */
function faultsOf({ problem, answer }: Finished): readonly OutsideFault[] {
  return outsideFaults(judge, problem, answer);
}

describe('finished layouts', () => {
  test('when the search has laid them, the outside judge finds no fault', () => {
    for (const job of jobs) expect(faultsOf(job), job.name).toEqual([]);
  });

  test('when the demo order is laid, nothing is missing and every leather is in use', () => {
    const { problem, answer } = jobs[0]!;
    expect(answer.unplaced).toEqual([]);
    expect(answer.placements).toHaveLength(110);
    expect(new Set(answer.placements.map(({ sheet }) => sheet)).size).toBe(problem.sheets.length);
  });

  test('when a piece goes on a twentieth of a mm the way it was slid, the judge tells for most pieces', () => {
    const job = jobs[4]!;
    const { placements } = job.answer;
    const told = placements.filter((_, i) => {
      const moved = placements.map((one, k) => {
        const { useFrom } = job.problem.sheets.find(({ id }) => id === one.sheet)!;
        return k === i ? { ...one, x: one.x - 0.05 * useFrom.x, y: one.y - 0.05 * useFrom.y } : one;
      });
      return faultsOf({ ...job, answer: { ...job.answer, placements: moved } }).length > 0;
    });
    expect(placements.length).toBeGreaterThan(30);
    expect(told.length).toBeGreaterThan(0.8 * placements.length);
  });

  test('when every other piece is thrown off its place, the judge tells of every kind of fault', () => {
    const kinds = new Set(
      jobs.slice(1, 4).flatMap((job) => {
        const placements = job.answer.placements.map((one, i) =>
          i % 2 === 0 ? { ...one, x: one.x + 160, y: one.y + 240 } : one,
        );
        return faultsOf({ ...job, answer: { ...job.answer, placements } }).map(({ rule }) => rule);
      }),
    );
    expect([...kinds].sort()).toEqual(['edge', 'gap', 'looks', 'strength', 'void', 'zone']);
  });

  test('when a whole job is turned and moved, its answer stays proven, to the exact check and to the judge', () => {
    jobs.forEach((job, i) => {
      expect(isProven(checkAnswer(job.problem, job.answer)), job.name).toBe(true);
      const turned = turnJob(job, 37.3 + 71 * i, 250 * i, -125);
      expect(isProven(checkAnswer(turned.problem, turned.answer)), `${job.name}, turned`).toBe(true);
      if (i > 0) expect(faultsOf({ ...job, ...turned }), `${job.name}, turned`).toEqual([]);
    });
  });
});
