import { checkAnswer, isProven } from '../check/index.js';
import { GeometryError } from '../error.js';
import { createRandom } from '../number/random.js';
import type { Random } from '../number/random.js';
import { withBlocks } from '../separate/world-answer.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import type { Stream, StreamFactory, StreamOutcome, StreamProgress } from '../types/stream.js';
import { answerOf } from './answer.js';
import type { Detours } from './detour.js';
import { detourAt, noDetours, takeDetour } from './detour.js';
import { layFirst } from './first-layout.js';
import type { Groundwork } from './groundwork.js';
import { groundworkOf, sceneOf } from './groundwork.js';
import { layRepeats, repeatedItems } from './lattice-layout.js';
import { createLayout } from './layout.js';
import type { Reasons } from './reasons.js';
import { refuseUnsupported } from './refuse.js';
import type { Surroundings, Trail } from './trail.js';
import { goOn, isBetterOutcome, outcomeOf, prove, searchOn, startTrail } from './trail.js';

/** What one stream holds between joins. */
interface Searcher {
  readonly groundwork: Groundwork;
  readonly stream: number;
  readonly reasons: Reasons;
  readonly random: Random;
  readonly detours: Detours;
  trail: Trail | undefined;
}

/**
 * Makes streams. Those of one problem share what does not depend on what they do: they live in one thread, and it takes
 * as long to make as a first layout.
 */
export function streamFactory(): StreamFactory {
  let shared: Groundwork | undefined;
  return (problem, stream) =>
    createStream(problem, stream, () => {
      if (shared?.problem !== problem) shared = groundworkOf(problem);
      return shared;
    });
}

/**
 * One stream of the search: the first layout at join 0, then ever better ones. Throws `unsupported` for a problem that
 * asks for what this engine can't do (see `refuseUnsupported`).
 */
export function createStream(
  problem: NestProblem,
  stream: number,
  groundwork: () => Groundwork = () => groundworkOf(problem),
): Stream {
  refuse(problem);
  let searcher: Searcher | undefined;
  let work: Generator<undefined, StreamOutcome> | undefined;
  let outcome: StreamOutcome | undefined;
  let phase: StreamProgress['phase'] = 'first-layout';
  const ready = (): Searcher => (searcher ??= createSearcher(groundwork(), stream));
  return {
    prepare: () => {
      const making = sceneOf(ready().groundwork);
      while (making.next().done !== true);
    },
    begin: (join, best) => {
      phase = best === undefined ? 'first-layout' : 'improving';
      outcome = undefined;
      work = best === undefined ? firstLayout(ready()) : improve(ready(), best, join);
    },
    advance: () => {
      if (outcome !== undefined) return true;
      const step = work!.next();
      if (step.done === true) outcome = step.value;
      return step.done === true;
    },
    outcome: () => outcome!,
    progress: () => ({ phase, placedCount: searcher === undefined ? 0 : laidCount(searcher) }),
  };
}

function refuse(problem: NestProblem): void {
  const refusals = refuseUnsupported(problem);
  if (refusals.length === 0) return;
  const codes = [...new Set(refusals.map(({ code }) => code))].join(', ');
  throw new GeometryError('unsupported', `This search can't do what the problem asks for: ${codes}.`);
}

function createSearcher(groundwork: Groundwork, stream: number): Searcher {
  return {
    groundwork,
    stream,
    reasons: new Map(groundwork.inner.reasons),
    random: createRandom(groundwork.problem.budget.seed).fork(stream),
    detours: noDetours(),
    trail: undefined,
  };
}

function laidCount({ groundwork, trail }: Searcher): number {
  if (trail !== undefined) return trail.known.answer.placements.length;
  return groundwork.layout.laid.reduce((count, laid) => (laid === undefined ? count : count + 1), 0);
}

function* firstLayout({ groundwork, reasons }: Searcher): Generator<undefined, StreamOutcome> {
  const { problem, layout, inner } = groundwork;
  yield* layFirst(layout);
  const laid = answerOf(layout, layout.laid, reasons, 0);
  return outcomeOf(problem, withBlocks(problem, { ...laid, lanes: inner.lanes }));
}

/**
 * One join's work: goes on with the hunt, from the best answer where it is better than this stream's own. The stream
 * that laid the first layout only gets ready in join 1 if there are others, which could do so beside it.
 */
function* improve(searcher: Searcher, best: NestAnswer, join: number): Generator<undefined, StreamOutcome> {
  const { stream, groundwork } = searcher;
  const around = yield* surroundingsOf(searcher);
  const outcome = outcomeOf(groundwork.problem, best);
  if (join === 1 && stream === 0 && groundwork.problem.budget.streams > 1) return outcome;
  if (stream === 0 && detourAt(searcher.detours, join)) {
    const found = yield* takeDetour(around, searcher.detours, outcome, join);
    if (found !== undefined) return found;
  }
  searcher.trail =
    searcher.trail === undefined
      ? startTrail(around, yield* orRepeats(searcher, outcome))
      : goOn(around, searcher.trail, outcome);
  yield;
  yield* searchOn(searcher.trail, join);
  prove(around, searcher.trail, join);
  return searcher.trail.known;
}

function* surroundingsOf({ groundwork, reasons, random }: Searcher): Generator<undefined, Surroundings> {
  const { problem, inner } = groundwork;
  const { scene, contacts } = yield* sceneOf(groundwork);
  yield;
  return { problem, inner, reasons, scene, contacts, random };
}

/**
 * The stream that works beside the first one starts from repeats where many equal pieces are wanted, if that is better.
 */
function* orRepeats(searcher: Searcher, best: StreamOutcome): Generator<undefined, StreamOutcome> {
  const { stream, groundwork, reasons } = searcher;
  const { problem, inner } = groundwork;
  const isOwnTask = stream === Math.min(1, problem.budget.streams - 1);
  const items = isOwnTask ? repeatedItems(groundwork.layout) : [];
  if (items.length === 0) return best;
  const layout = stream === 0 ? groundwork.layout : createLayout(inner.problem);
  yield* layRepeats(layout, items);
  const laid = answerOf(layout, layout.laid, reasons, best.answer.joins);
  const outcome = outcomeOf(problem, withBlocks(problem, { ...laid, lanes: inner.lanes }));
  const isBetter = isBetterOutcome(outcome, best);
  return isBetter && isProven(checkAnswer(problem, outcome.answer)) ? outcome : best;
}
