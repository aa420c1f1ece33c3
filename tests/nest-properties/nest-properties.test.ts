/**
 * Whole problems at random, laid through the public door and judged twice: by the exact check, and by jsts alone.
 * `node bench/nest-properties.mjs --problems 1000` has more of them laid; a fault names the number of its problem.
 */
import { isDeepStrictEqual } from 'node:util';
import { createRandom, runNest } from '@hidebound/geometry';
import type { NestAnswer, Random } from '@hidebound/geometry';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loadJudge } from '../../packages/geometry/src/check/test-judge.js';
import type { Judge } from '../../packages/geometry/src/check/test-judge.js';
import { brokenByCheck, brokenOutside, judgeProblem, layProblem } from './judged-problem.js';
import type { Judged } from './judged-problem.js';

const FIRST = Number(process.env['HIDEBOUND_NEST_FROM'] ?? 1);
const COUNT = Number(process.env['HIDEBOUND_NEST_PROBLEMS'] ?? 50);
/** For the long run: joins of every problem, instead of its own number of them. */
const JOINS = process.env['HIDEBOUND_NEST_JOINS'];
const PER_TEST = 10;
const TIMEOUT_MS = 3_600_000;

/** Every tenth problem is laid twice, and every third answer is disturbed. */
const TWICE_EVERY = 10;
const DISTURB_EVERY = 3;

const ranges = Array.from({ length: Math.ceil(COUNT / PER_TEST) }, (_, i) => {
  const from = FIRST + i * PER_TEST;
  return { from, to: Math.min(from + PER_TEST, FIRST + COUNT) - 1 };
});

const seen = { laid: 0, pieces: 0, unplaced: 0, disturbed: 0, broken: 0 };
const refused = new Map<string, number>();
let judge: Judge;

beforeAll(async () => {
  judge = await loadJudge();
});

afterAll(() => {
  const codes = [...refused].map(([code, count]) => `${code} ${count}`).join(', ');
  console.log(
    `${COUNT} random problems from number ${FIRST}: ${seen.laid} laid (${seen.pieces} pieces laid, ` +
      `${seen.unplaced} not), ${COUNT - seen.laid} refused (${codes || 'none'}); ` +
      `${seen.disturbed} disturbed layouts, ${seen.broken} of them faulty.`,
  );
});

describe('random problems', () => {
  test.each(ranges)(
    'when problems $from to $to are laid, neither judge finds a fault',
    ({ from, to }) => {
      const faults: string[] = [];
      for (let number = from; number <= to; number++) {
        const judged = judgeProblem(judge, number, JOINS === undefined ? undefined : Number(JOINS));
        const found = [
          ...judged.faults,
          ...(judged.answer === undefined ? [] : furtherFaults(judged, judged.answer)),
        ];
        faults.push(...found.map((fault) => `problem ${number}, ${judged.kind}: ${fault}`));
        if (judged.answer === undefined) noteRefusal(judged);
      }
      expect(faults).toEqual([]);
    },
    TIMEOUT_MS,
  );

  test('when all of them are done, most were laid, and with pieces', () => {
    expect(seen.laid).toBeGreaterThan(0.5 * COUNT);
    expect(seen.pieces).toBeGreaterThan(2 * seen.laid);
  });
});

/** A refusal is no silent skip: the engine says so itself when it is asked all the same. */
function noteRefusal({ problem, refused: codes }: Judged): void {
  for (const code of codes) {
    refused.set(code, (refused.get(code) ?? 0) + 1);
    expect(() => runNest(problem)).toThrow(code);
  }
}

/** Counts the layout; now and then it is laid again, and its pieces are thrown off their places. */
function furtherFaults(judged: Judged, answer: NestAnswer): string[] {
  seen.laid += 1;
  seen.pieces += answer.placements.length;
  seen.unplaced += answer.unplaced.length;
  const { number, problem } = judged;
  const isTwice = number % TWICE_EVERY !== 0 || isDeepStrictEqual(layProblem(problem), answer);
  const isAgreed = number % DISTURB_EVERY !== 0 || agreeOnDisturbed(judged, answer);
  return [
    ...(isTwice ? [] : ['laid twice, it differs']),
    ...(isAgreed ? [] : ['disturbed, the judges differ']),
  ];
}

/** Pieces thrown off their places, a little or far: both judges must blame the same copies for the same. */
function agreeOnDisturbed(judged: Judged, answer: NestAnswer): boolean {
  const thrown = throwPieces(createRandom(judged.number), answer);
  const broken = brokenByCheck(judged, thrown);
  seen.disturbed += 1;
  if (broken.length > 0) seen.broken += 1;
  return isDeepStrictEqual(brokenOutside(judge, judged, thrown), broken);
}

function throwPieces(random: Random, answer: NestAnswer): NestAnswer {
  const placements = answer.placements.map((one) => {
    if (random.next() < 0.7) return one;
    const step = 60 * 1e-4 ** random.next();
    const [dx, dy] = [random.between(-step, step), random.between(-step, step)];
    const turnDeg = random.next() < 0.5 ? 0 : random.between(-5, 5);
    return { ...one, x: one.x + dx, y: one.y + dy, rotationDeg: one.rotationDeg + turnDeg };
  });
  return { ...answer, placements };
}
