import { GeometryError } from '../error.js';
import { createRandom } from '../number/random.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import { answerOf } from './answer.js';
import { STEPS_PER_JOIN } from './constants.js';
import { buildCostTables } from './cost.js';
import type { SetOfCopies } from './demand.js';
import type { Wanted } from './first-layout.js';
import { dropSet, isLaidBySets, layFirst, wantSet } from './first-layout.js';
import { improveStep, restore, startImprovement } from './improve.js';
import type { Improvement } from './improve.js';
import type { Layout } from './layout.js';
import { createLayout, relabel } from './layout.js';
import type { Reasons } from './reasons.js';
import { reasonFor } from './reasons.js';
import { refuseUnsupported } from './refuse.js';
import type { AnswerScore } from './score.js';
import { compareScores, scoreAnswer } from './score.js';

/** How far a search has come. */
export interface NestProgress {
  readonly phase: 'first-layout' | 'improving' | 'done';
  /** Joins that are complete; -1 before the first layout is. */
  readonly joins: number;
  /** Of the best answer so far; before the first join, of the layout under way. */
  readonly placedCount: number;
  /** Copies that are asked for by number. */
  readonly demandedCount: number;
  /** Used-up area of the best answer so far, in mm². */
  readonly usedUpMm2: number;
}

/** A search that is driven from outside, a little at a time, so that it can be stopped at any moment. */
export interface NestRun {
  /** Does one small unit of work: looks for the place of one piece. */
  advance(): NestProgress;
  /** The best answer of the last complete join; undefined before join 0, the first layout. */
  best(): NestAnswer | undefined;
  readonly done: boolean;
}

/** What the generator and the run share. */
interface SearchState {
  joins: number;
  answer: NestAnswer | undefined;
  score: AnswerScore | undefined;
}

/**
 * Starts a search. Throws `unsupported` for a problem that asks for what this engine can't do (see
 * `refuseUnsupported`). The same problem and number of joins give the same answer, to the byte.
 */
export function startNest(problem: NestProblem): NestRun {
  const refusals = refuseUnsupported(problem);
  if (refusals.length > 0) {
    const codes = [...new Set(refusals.map(({ code }) => code))].join(', ');
    throw new GeometryError('unsupported', `This search can't do what the problem asks for: ${codes}.`);
  }
  const layout = createLayout(problem);
  const state: SearchState = { joins: -1, answer: undefined, score: undefined };
  const work = search(layout, state);
  const demandedCount = layout.demand.copies.filter(
    ({ set }) => layout.demand.sets[set]!.kind.sets !== 'many',
  ).length;
  let done = false;
  const progress = (): NestProgress => ({
    phase: done ? 'done' : state.joins < 0 ? 'first-layout' : 'improving',
    joins: state.joins,
    placedCount: state.answer?.placements.length ?? layout.laid.filter((laid) => laid !== undefined).length,
    demandedCount,
    usedUpMm2: state.score?.usedUpMm2 ?? 0,
  });
  return {
    advance: () => {
      if (!done) done = work.next().done === true;
      return progress();
    },
    best: () => state.answer,
    get done() {
      return done;
    },
  };
}

/** The whole search; yields after each unit of work. */
function* search(layout: Layout, state: SearchState): Generator<undefined, void> {
  const { budget } = layout.problem;
  const wanted: Wanted = {
    copies: new Uint8Array(layout.demand.copies.length),
    sets: new Uint8Array(layout.demand.sets.length),
  };
  const reasons: Reasons = new Map();
  yield* layFirst(layout, wanted);
  join(layout, state, reasons);
  const mostJoins = budget.joins ?? Infinity;
  const random = createRandom(budget.seed);
  const tables = buildCostTables(layout);
  let improvement = startImprovement(layout, wanted, tables, random, hopelessItems(layout, reasons));
  while (state.joins < mostJoins) {
    for (let step = 0; step < STEPS_PER_JOIN; step++) yield* improveStep(improvement);
    // The search may stand on a worse layout than its best: the join looks at the best, and it goes on as it was.
    join(layout, state, reasons, improvement.bestLaid);
    improvement = nextGoal(improvement, state.joins);
    yield;
  }
}

/** Items that were missed by the first layout because they fit nowhere at all. */
function hopelessItems(layout: Layout, reasons: Reasons): Uint8Array {
  const hopeless = new Uint8Array(layout.prepared.items.length);
  for (const copy of layout.demand.copies) {
    const { index } = copy.prepared;
    if (layout.laid[copy.index] !== undefined || hopeless[index] === 1) continue;
    if (reasonFor(reasons, layout, copy.prepared) !== 'no-room') hopeless[index] = 1;
  }
  return hopeless;
}

/** Completes a join: the better of the answer so far and the present layout. */
function join(layout: Layout, state: SearchState, reasons: Reasons, laid = layout.laid): void {
  state.joins++;
  const answer = answerOf(layout, laid, reasons, state.joins);
  const score = scoreAnswer(layout.problem, answer);
  if (state.score === undefined || compareScores(score, state.score) < 0) {
    state.answer = answer;
    state.score = score;
  } else {
    state.answer = { ...state.answer!, joins: state.joins };
  }
}

/** Joins spent on one more set before the search turns to saving leather, and joins spent on that. */
const JOINS_FOR_A_SET = 3;
const JOINS_FOR_LEATHER = 1;

/** Where sets are laid one by one: what to try next, starting from the best layout so far. */
function nextGoal(one: Improvement, joins: number): Improvement {
  const { layout, wanted, tables, random } = one;
  const { sets } = layout.demand;
  if (!sets.some((set) => isLaidBySets(layout, set))) return one;
  restore(layout, one.bestLaid);
  relabel(layout);
  const open = sets.filter((set) => isLaidBySets(layout, set) && wanted.sets[set.index] === 0);
  const unfinished = sets.filter((set) => isUnfinished(layout, wanted, set));
  const phase = joins % (JOINS_FOR_A_SET + JOINS_FOR_LEATHER);
  if (phase >= JOINS_FOR_A_SET) for (const set of unfinished) dropSet(layout, wanted, set);
  else if (unfinished.length === 0 && open.length > 0) wantSet(wanted, nextSet(open));
  return startImprovement(layout, wanted, tables, random, one.hopeless);
}

function nextSet(open: readonly SetOfCopies[]): SetOfCopies {
  const order = [...open].sort(
    (a, b) => b.kind.priority - a.kind.priority || b.kind.value - a.kind.value || a.index - b.index,
  );
  return order[0]!;
}

/** Wanted, laid by sets, and not whole. */
function isUnfinished(layout: Layout, wanted: Wanted, set: SetOfCopies): boolean {
  if (wanted.sets[set.index] === 0 || !isLaidBySets(layout, set)) return false;
  if (set.copies.some((copy) => layout.demand.copies[copy]!.isFixed)) return false;
  return set.copies.some((copy) => layout.laid[copy] === undefined);
}

/** What a driver of a search may be told. */
export interface RunOptions {
  /** Asked after every unit of work, from join 0 on: true ends the search. */
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: NestProgress) => void;
}

/**
 * Searches until the budget's joins are done or it is told to stop, and returns the best answer of the last
 * complete join. The first layout is always finished, so there is an answer. Without a budget of joins and
 * without `shouldStop` it would never end: that is refused with `bad-argument`.
 */
export function runNest(problem: NestProblem, options: RunOptions = {}): NestAnswer {
  refuseEndless(problem, options);
  const run = startNest(problem);
  while (!isOver(run, options)) {
    const progress = run.advance();
    options.onProgress?.(progress);
  }
  return run.best()!;
}

/** What the caller of a search beside other work may be told. */
export interface AsyncRunOptions extends RunOptions {
  /** Lets other work go on; the caller's own (a timer, a message), because core code has no clock. */
  readonly pause: () => Promise<void>;
  /** Units of work between two pauses; default 4. */
  readonly pauseEvery?: number;
}

const UNITS_BETWEEN_PAUSES = 4;

/** The same as `runNest`, and the same answer, but pauses now and then. */
export async function runNestAsync(problem: NestProblem, options: AsyncRunOptions): Promise<NestAnswer> {
  refuseEndless(problem, options);
  const run = startNest(problem);
  const every = options.pauseEvery ?? UNITS_BETWEEN_PAUSES;
  for (let unit = 1; !isOver(run, options); unit++) {
    const progress = run.advance();
    options.onProgress?.(progress);
    if (unit % every === 0) await options.pause();
  }
  return run.best()!;
}

function isOver(run: NestRun, { shouldStop }: RunOptions): boolean {
  return run.done || (run.best() !== undefined && shouldStop?.() === true);
}

function refuseEndless(problem: NestProblem, { shouldStop }: RunOptions): void {
  if (problem.budget.joins === undefined && shouldStop === undefined) {
    throw new GeometryError('bad-argument', 'A search needs a number of joins, or a way to be stopped.');
  }
}
