import { checkAnswer, isProven } from '../check/index.js';
import { GeometryError } from '../error.js';
import { createRandom } from '../number/random.js';
import type { Random } from '../number/random.js';
import { contactShapes } from '../separate/exact-contacts.js';
import type { ContactShapes } from '../separate/exact-contacts.js';
import { withBlocks } from '../separate/world-answer.js';
import { buildScene } from '../separate/world-of-layout.js';
import type { Scene } from '../separate/world-of-layout.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import type { Stream, StreamOutcome, StreamProgress } from '../types/stream.js';
import { answerOf } from './answer.js';
import type { Detours } from './detour.js';
import { detourAt, noDetours, takeDetour } from './detour.js';
import { layFirst } from './first-layout.js';
import type { InnerProblem } from './inner-problem.js';
import { innerProblem } from './inner-problem.js';
import { layRepeats, repeatedItems } from './lattice-layout.js';
import type { Layout } from './layout.js';
import { createLayout } from './layout.js';
import type { Reasons } from './reasons.js';
import { refuseUnsupported } from './refuse.js';
import type { Surroundings, Trail } from './trail.js';
import { goOn, isBetterOutcome, outcomeOf, prove, searchOn, startTrail } from './trail.js';

/** What one stream holds between joins. */
interface Searcher {
  readonly problem: NestProblem;
  readonly stream: number;
  readonly inner: InnerProblem;
  readonly layout: Layout;
  readonly reasons: Reasons;
  readonly random: Random;
  readonly detours: Detours;
  scene: Scene | undefined;
  contacts: ContactShapes | undefined;
  trail: Trail | undefined;
}

/**
 * One stream of the search: the first layout at join 0, then ever better ones. Throws `unsupported` for a problem that
 * asks for what this engine can't do (see `refuseUnsupported`).
 */
export function createStream(problem: NestProblem, stream: number): Stream {
  refuse(problem);
  let searcher: Searcher | undefined;
  let work: Generator<undefined, StreamOutcome> | undefined;
  let outcome: StreamOutcome | undefined;
  let phase: StreamProgress['phase'] = 'first-layout';
  return {
    begin: (join, best) => {
      searcher ??= createSearcher(problem, stream);
      phase = best === undefined ? 'first-layout' : 'improving';
      outcome = undefined;
      work = best === undefined ? firstLayout(searcher) : improve(searcher, best, join);
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

function createSearcher(problem: NestProblem, stream: number): Searcher {
  const inner = innerProblem(problem);
  return {
    problem,
    stream,
    inner,
    layout: createLayout(inner.problem),
    reasons: new Map(inner.reasons),
    random: createRandom(problem.budget.seed).fork(stream),
    detours: noDetours(),
    scene: undefined,
    contacts: undefined,
    trail: undefined,
  };
}

function laidCount({ layout, trail }: Searcher): number {
  if (trail !== undefined) return trail.known.answer.placements.length;
  return layout.laid.reduce((count, laid) => (laid === undefined ? count : count + 1), 0);
}

function* firstLayout(searcher: Searcher): Generator<undefined, StreamOutcome> {
  const { problem, layout, reasons, inner } = searcher;
  yield* layFirst(layout);
  const laid = answerOf(layout, layout.laid, reasons, 0);
  return outcomeOf(problem, withBlocks(problem, { ...laid, lanes: inner.lanes }));
}

/** One join's work: goes on with the hunt, from the best answer where it is better than this stream's own. */
function* improve(searcher: Searcher, best: NestAnswer, join: number): Generator<undefined, StreamOutcome> {
  const around = yield* surroundingsOf(searcher);
  const outcome = outcomeOf(searcher.problem, best);
  if (searcher.stream === 0 && detourAt(searcher.detours, join)) {
    const found = yield* takeDetour(around, searcher.detours, outcome, join);
    if (found !== undefined) return found;
  }
  searcher.trail =
    searcher.trail === undefined
      ? startTrail(around, yield* orRepeats(searcher, outcome))
      : goOn(around, searcher.trail, outcome);
  yield;
  yield* searchOn(searcher.trail);
  prove(around, searcher.trail, join);
  return searcher.trail.known;
}

function* surroundingsOf(searcher: Searcher): Generator<undefined, Surroundings> {
  const { problem, inner, reasons, layout, random } = searcher;
  searcher.scene ??= yield* buildScene(layout, problem.distances);
  yield;
  const { scene } = searcher;
  if (scene.eases.length > 1) searcher.contacts ??= contactShapes(scene);
  return { problem, inner, reasons, scene, contacts: searcher.contacts, random };
}

/**
 * The stream that works beside the first one starts from repeats where many equal pieces are wanted, if that is better.
 */
function* orRepeats(searcher: Searcher, best: StreamOutcome): Generator<undefined, StreamOutcome> {
  const { problem, layout, reasons, inner } = searcher;
  const isOwnTask = searcher.stream === Math.min(1, problem.budget.streams - 1);
  const items = isOwnTask ? repeatedItems(layout) : [];
  if (items.length === 0) return best;
  yield* layRepeats(layout, items);
  const laid = answerOf(layout, layout.laid, reasons, best.answer.joins);
  const outcome = outcomeOf(problem, withBlocks(problem, { ...laid, lanes: inner.lanes }));
  const isBetter = isBetterOutcome(outcome, best);
  return isBetter && isProven(checkAnswer(problem, outcome.answer)) ? outcome : best;
}
