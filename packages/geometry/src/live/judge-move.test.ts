import { describe, expect, test } from 'vitest';
import { copy, makeItem, makeJob, makeSheet, place, rectangle, turnJob } from '../check/test-jobs.js';
import { LIMIT_CASES } from '../check/test-limit-cases.js';
import { GeometryError } from '../error.js';
import { createRandom } from '../number/random.js';
import type { NestProblem } from '../types/problem.js';
import { movePiece, openBench } from './bench.js';
import { judgeMove } from './judge-move.js';
import { checkedAlone, laidSample, movedAnswer, randomPlace } from './test-benches.js';
import type { LaidJob } from './test-benches.js';

const JOBS: readonly (readonly [string, number, () => LaidJob])[] = [
  ['shapes alone', 1, () => laidSample(1, { pieces: 12, rules: 'plain', share: 0.5 })],
  [
    'strokes, readings and flaws',
    2,
    () => laidSample(2, { pieces: 12, share: 0.35, hide: { strokes: 4, readings: 6, flaws: 20 } }),
  ],
  [
    'three hides',
    3,
    () => laidSample(3, { pieces: 12, hides: 3, share: 0.2, hide: { cut: 'shoulder', readings: 3 } }),
  ],
  ['whole sets', 4, () => laidSample(4, { pieces: 12, mode: 'sets', share: 0.2 })],
  [
    'pieces that may touch',
    5,
    () => {
      const { problem, answer } = laidSample(5, { pieces: 12, share: 0.4 });
      return { problem: { ...problem, distances: { gap: 0, edge: 0, void: 0 } }, answer };
    },
  ],
];
const MOVES = 120;

/** Jobs at the limit of each rule that a place can break. */
const PLACE_CASES = LIMIT_CASES.filter(({ rule }) => rule !== 'mirrored');

describe('a judged move, beside the exact check of the whole layout', () => {
  const broken = new Set<string>();
  let valid = 0;

  test.each(JOBS)('when pieces are moved at random (%s), both find the same', (_, seed, lay) => {
    const { problem, answer } = lay();
    const random = createRandom(seed);
    let bench = openBench(problem, answer.placements);
    let now = answer;
    for (let i = 0; i < MOVES; i++) {
      const from = now.placements[random.integer(now.placements.length)]!;
      const to = randomPlace(random, problem, from);
      const moved = movedAnswer(now, from, to);
      const found = judgeMove(bench, from, to);
      expect(found, JSON.stringify({ from, to })).toEqual(checkedAlone(problem, moved, from));
      for (const { rule } of found) broken.add(rule);
      if (found.length === 0) valid += 1;
      // Now and then a move is done, valid or not, so that benches out of order are met too.
      if (found.length > 0 && random.next() < 0.95) continue;
      bench = movePiece(bench, from, to);
      now = moved;
    }
  });

  test('when all those moves are done, they broke the rules of a place and often broke none', () => {
    for (const rule of ['gap', 'edge', 'void', 'looks', 'strength', 'zone', 'angle', 'thickness', 'pair'])
      expect(broken).toContain(rule);
    expect(valid).toBeGreaterThan(60);
  });

  test.each(PLACE_CASES)(
    'when $name, both find the same of every copy, whatever the turn',
    ({ build, ...limit }) => {
      for (const turnDeg of [0, 33.7]) {
        for (const off of [0, limit.within, limit.beyond]) {
          const { problem, answer } = turnJob(build(off), turnDeg, 12.5, -3);
          const bench = openBench(problem, answer.placements, answer);
          const findings = answer.placements.map((placement) => {
            const found = judgeMove(bench, placement, placement);
            expect(found).toEqual(checkedAlone(problem, answer, placement));
            // From anywhere else the verdict is the same, and so it is of a copy that did not lie yet.
            const away = movePiece(bench, placement, { ...placement, x: placement.x + 400 });
            expect(judgeMove(away, placement, placement)).toEqual(found);
            return found;
          });
          if (limit.at === undefined) continue;
          const rules = findings.flat().map(({ rule }) => rule);
          expect([...new Set(rules)]).toEqual(off === limit.beyond ? [limit.rule] : []);
        }
      }
    },
  );
});

const square = makeItem('square', rectangle(-50, -50, 50, 50), { sheets: ['hide', 'second'] });
const disc = makeItem('disc', rectangle(-20, -20, 20, 20), { sheets: ['hide', 'second', 'third'] });
const JOB = makeJob({
  items: [square, disc],
  sheets: [makeSheet(), makeSheet({ id: 'second', lot: 'lot 2' }), makeSheet({ id: 'third', lot: 'lot 2' })],
  placements: [place('square', 200, 200), place('disc', 500, 300)],
});

function rulesBroken(problem: NestProblem, item: string, sheet: string, x = 300): string[] {
  const bench = openBench(problem, JOB.answer.placements);
  const to = { sheet, x, y: 200, rotationDeg: 0 };
  const found = judgeMove(bench, copy(item), to);
  expect(found).toEqual(checkedAlone(problem, movedAnswer(JOB.answer, copy(item), to), copy(item)));
  return found.map(({ rule }) => rule);
}

function keeping(keep: NestProblem['setKinds'][number]['keep']): NestProblem {
  return { ...JOB.problem, setKinds: JOB.problem.setKinds.map((kind) => ({ ...kind, keep })) };
}

describe('a piece that is moved to another hide', () => {
  test('when its set stays on one hide or lot, that is broken, whichever of the set it is', () => {
    expect(rulesBroken(keeping('sheet'), 'disc', 'second')).toEqual(['sheet']);
    expect(rulesBroken(keeping('sheet'), 'square', 'second')).toEqual(['sheet']);
    expect(rulesBroken(keeping('lot'), 'disc', 'third')).toEqual(['lot']);
    expect(rulesBroken(keeping('faceLot'), 'square', 'second')).toEqual(['lot']);
    expect(rulesBroken(keeping('nothing'), 'square', 'second')).toEqual([]);
  });

  test('when it may not lie there, its sheet is wrong', () => {
    expect(rulesBroken(JOB.problem, 'square', 'third')).toEqual(['sheet']);
  });

  test('when nobody knows the sheet, or the place is no number, that is told and nothing else', () => {
    expect(rulesBroken(JOB.problem, 'square', 'fourth')).toEqual(['finite']);
    expect(rulesBroken(JOB.problem, 'square', 'hide', Number.NaN)).toEqual(['finite']);
  });
});

describe('a piece that is fixed', () => {
  const fixed = [{ ...JOB.answer.placements[0]!, accepted: ['edge' as const] }];

  test('when it leaves its place, that is told', () => {
    const found = judgeMove(openBench({ ...JOB.problem, fixed }, JOB.answer.placements), copy('square'), {
      ...fixed[0]!,
      x: 210,
    });
    expect(found.map(({ rule }) => rule)).toEqual(['locked']);
  });

  test('when it breaks a rule that was accepted by hand, the finding says so', () => {
    const problem = { ...JOB.problem, fixed: [{ ...fixed[0]!, x: 20 }] };
    const bench = openBench(problem, JOB.answer.placements);
    const found = judgeMove(bench, copy('square'), problem.fixed[0]!);
    expect(found.map(({ rule, accepted }) => [rule, accepted])).toEqual([['edge', true]]);
  });
});

describe('a piece from the tray', () => {
  test('when a copy that does not lie yet is asked for, it is judged like any other', () => {
    const bench = openBench(JOB.problem, JOB.answer.placements.slice(1));
    const to = { sheet: 'hide', x: 500, y: 300, rotationDeg: 0 };
    expect(judgeMove(bench, copy('square'), to).map(({ rule, other }) => [rule, other])).toEqual([
      ['gap', copy('square')],
    ]);
    expect(judgeMove(bench, copy('square'), { ...to, x: 200 })).toEqual([]);
  });

  test('when nobody asked for the copy, that is told', () => {
    const bench = openBench(JOB.problem, []);
    const to = { sheet: 'hide', x: 500, y: 300, rotationDeg: 0 };
    expect(judgeMove(bench, copy('square', 1, 2), to).map(({ rule }) => rule)).toEqual(['count']);
  });

  test('when the problem has no such item, that is an error of the caller', () => {
    const to = { sheet: 'hide', x: 500, y: 300, rotationDeg: 0 };
    expect(() => judgeMove(openBench(JOB.problem, []), copy('triangle'), to)).toThrow(GeometryError);
  });
});
