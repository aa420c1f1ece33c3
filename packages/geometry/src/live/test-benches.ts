/** Layouts of the search, moves at random, and what the exact check says of them, for the tests of the live bench. */
import { checkAnswer } from '../check/index.js';
import type { FoundViolation } from '../check/index.js';
import { copyKey } from '../check/violation.js';
import { runNest } from '../nest/run.js';
import type { Random } from '../number/random.js';
import { roundCoordinate } from '../point.js';
import { sampleProblem } from '../sample/sample-problem.js';
import type { SampleProblemOptions } from '../sample/sample-problem.js';
import { regionBox } from '../shape/ring.js';
import type { CopyRef, NestAnswer, NestProblem, Placement } from '../types/problem.js';
import type { SheetPlace } from './bench.js';

export interface LaidJob {
  readonly problem: NestProblem;
  readonly answer: NestAnswer;
}

export function laidSample(seed: number, options: SampleProblemOptions): LaidJob {
  const problem = sampleProblem(seed, options);
  return { problem, answer: runNest(problem) };
}

/** Near where it lies (micrometres to a hand's breadth), or anywhere on any sheet; turned a little, much or not at all. */
export function randomPlace(random: Random, problem: NestProblem, from: Placement): SheetPlace {
  const step = 200 * 1e-5 ** random.next();
  const turn = [0, 0, random.between(-0.01, 0.01), random.between(-20, 20), random.between(0, 360)];
  const rotationDeg = Math.round((from.rotationDeg + turn[random.integer(turn.length)]!) * 1e6) / 1e6;
  if (random.next() < 0.7) {
    const x = roundCoordinate(from.x + random.between(-step, step));
    const y = roundCoordinate(from.y + random.between(-step, step));
    return { sheet: from.sheet, x, y, rotationDeg };
  }
  const sheet = problem.sheets[random.integer(problem.sheets.length)]!;
  const box = regionBox(sheet.region);
  const x = roundCoordinate(random.between(box.minX, box.maxX));
  const y = roundCoordinate(random.between(box.minY, box.maxY));
  return { sheet: sheet.id, x, y, rotationDeg };
}

/** The answer after the move; a copy that did not lie comes last. */
export function movedAnswer(answer: NestAnswer, copy: CopyRef, place: SheetPlace): NestAnswer {
  const key = copyKey(copy);
  const moved = { item: copy.item, set: copy.set, copy: copy.copy, ...place };
  const placements = answer.placements.some((one) => copyKey(one) === key)
    ? answer.placements.map((one) => (copyKey(one) === key ? moved : one))
    : [...answer.placements, moved];
  return { ...answer, placements };
}

/** Rules on which the place of one copy does not decide; nor does it on whether all copies are accounted for. */
const NOT_OF_A_PLACE: readonly string[] = ['set', 'mirrored'];

/** What the exact check says of one copy in an answer, of all that its place can break. */
export function checkedAlone(
  problem: NestProblem,
  answer: NestAnswer,
  copy: CopyRef,
): readonly FoundViolation[] {
  const key = copyKey(copy);
  return checkAnswer(problem, answer).filter(
    ({ rule, at, other }) =>
      !NOT_OF_A_PLACE.includes(rule) &&
      !(rule === 'count' && typeof other === 'string') &&
      [at, other].some((party) => typeof party === 'object' && copyKey(party) === key),
  );
}
