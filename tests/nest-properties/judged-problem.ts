import { refuseUnsupported, runNest } from '@hidebound/geometry';
import type { NestAnswer, NestProblem, RuleName } from '@hidebound/geometry';
import { checkAnswer } from '@hidebound/geometry/check';
import type { Judge } from '../../packages/geometry/src/check/test-judge.js';
import { nameOf, outsideFaults } from '../support/outside-faults.js';
import { randomProblem } from './random-problem.js';
import type { RandomProblem } from './random-problem.js';

/** What came of one random problem. */
export interface Judged extends RandomProblem {
  /** Codes of what the engine can't do yet; then there is no answer. */
  readonly refused: readonly string[];
  readonly answer?: NestAnswer;
  /** Faults in words, by the exact check and by the outside judge. */
  readonly faults: readonly string[];
}

/** A join takes some thousand units of work, and some hundred thousand small ones where hardly anything can lie. */
const MOST_UNITS = 1_000_000;

/** Has the problem laid, but not for ever: a search that never comes to its last join is stopped. */
export function layProblem(problem: NestProblem): NestAnswer {
  let units = 0;
  return runNest(problem, { shouldStop: () => ++units > MOST_UNITS });
}

/** Has a problem laid through the public door, and has both judges look at the answer. */
export function judgeProblem(judge: Judge, number: number, joins?: number): Judged {
  const random = randomProblem(number, joins);
  const { problem } = random;
  const refused = [...new Set(refuseUnsupported(problem).map(({ code }) => code))];
  if (refused.length > 0) return { ...random, refused, faults: [] };
  const answer = layProblem(problem);
  const late =
    answer.joins === problem.budget.joins ? [] : [`search: it did not come to join ${problem.budget.joins}`];
  const checked = checkAnswer(problem, answer)
    .filter(({ accepted }) => !accepted)
    .map(({ rule, at, other, measured, required }) => {
      const parties = [at, other].map((one) => (typeof one === 'object' ? nameOf(one) : (one ?? '')));
      return `check: ${rule} of ${parties.join(' and ')}, ${measured ?? '?'} for ${required ?? '?'}`;
    });
  const outside = outsideFaults(judge, problem, answer).map(
    ({ rule, at, other }) => `jsts: ${rule} of ${at} and ${other}`,
  );
  return { ...random, refused, answer, faults: [...late, ...checked, ...outside] };
}

/** Rules on which both judges have a say. */
export const SHARED_RULES: readonly RuleName[] = ['gap', 'edge', 'void', 'looks', 'strength', 'zone'];

/** Each copy with each of those rules that it breaks, sorted: alike for both judges if they agree. */
export function brokenByCheck({ problem }: RandomProblem, answer: NestAnswer): readonly string[] {
  const broken = checkAnswer(problem, answer)
    .filter(({ rule, accepted }) => !accepted && SHARED_RULES.includes(rule))
    .map(({ rule, at }) => `${rule} of ${nameOf(at!)}`);
  return [...new Set(broken)].sort();
}

export function brokenOutside(
  judge: Judge,
  { problem }: RandomProblem,
  answer: NestAnswer,
): readonly string[] {
  const broken = outsideFaults(judge, problem, answer)
    .filter(({ rule }) => SHARED_RULES.includes(rule))
    .map(({ rule, at }) => `${rule} of ${at}`);
  return [...new Set(broken)].sort();
}
