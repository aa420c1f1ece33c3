import { checkAnswer, isProven } from '../check/index.js';
import { GeometryError } from '../error.js';
import { compareEntries } from '../number/compare-entries.js';
import { createRandom } from '../number/random.js';
import type { Random } from '../number/random.js';
import { contactShapes } from '../separate/exact-contacts.js';
import type { ContactShapes } from '../separate/exact-contacts.js';
import { adopt, findIn, isBetterFind, pursue, startHunt } from '../separate/hunt.js';
import type { Find, Hunt } from '../separate/hunt.js';
import type { PlaceOnSheet } from '../separate/places.js';
import { snapshotAt } from '../separate/places.js';
import { copiesFor, unitsOf } from '../separate/units.js';
import { snapshotAnswer, withBlocks } from '../separate/world-answer.js';
import { restoreSnapshot } from '../separate/world.js';
import { buildScene, sheetsForCopies, worldOf } from '../separate/world-of-layout.js';
import type { Scene } from '../separate/world-of-layout.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import type { Stream, StreamOutcome, StreamProgress } from '../types/stream.js';
import { answerOf } from './answer.js';
import { WORK_PER_JOIN } from './constants.js';
import type { Copy } from './demand.js';
import { refKey } from './demand.js';
import { layFirst } from './first-layout.js';
import type { InnerProblem } from './inner-problem.js';
import { innerProblem } from './inner-problem.js';
import { layRepeats, repeatedItems } from './lattice-layout.js';
import type { Layout } from './layout.js';
import { createLayout } from './layout.js';
import type { Reasons } from './reasons.js';
import { refuseUnsupported } from './refuse.js';
import { scoreAnswer } from './score.js';
import { scoreEntries } from './score-entries.js';

/** What a step of a search counts at least, of the work of a join: a fraction of what looking for one place takes. */
const LEAST_STEP_WORK = 200;

/** What one stream holds between joins. */
interface Searcher {
  readonly problem: NestProblem;
  readonly stream: number;
  readonly inner: InnerProblem;
  readonly layout: Layout;
  readonly reasons: Reasons;
  readonly random: Random;
  scene: Scene | undefined;
  contacts: ContactShapes | undefined;
  trail: Trail | undefined;
}

/** The hunt under way, and what is known for certain. */
interface Trail {
  readonly copies: readonly Copy[];
  readonly hunt: Hunt;
  readonly work: Generator<undefined, never>;
  /** The best outcome that was proven, and the layout that it stands for. */
  known: StreamOutcome;
  knownFind: Find;
  /** Layouts that had been found when it was proven. */
  foundThen: number;
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
  const answer = withBlocks(problem, { ...laid, lanes: inner.lanes });
  return { answer, score: scoreOf(problem, answer) };
}

function scoreOf(problem: NestProblem, answer: NestAnswer): number[] {
  return scoreEntries(scoreAnswer(problem, answer), problem.sheets.length);
}

/** One join's work: goes on with the hunt, from the best answer where it is better than this stream's own. */
function* improve(searcher: Searcher, best: NestAnswer, join: number): Generator<undefined, StreamOutcome> {
  searcher.scene ??= yield* buildScene(searcher.layout, searcher.problem.distances);
  yield;
  if (searcher.scene.eases.length > 1) searcher.contacts ??= contactShapes(searcher.scene);
  const start = searcher.trail === undefined ? yield* orRepeats(searcher, best) : best;
  const trail = takeUp(searcher, searcher.scene, start);
  yield;
  yield* searchOn(trail);
  prove(searcher, trail, join);
  return trail.known;
}

/** However little a step did, it counts for so much: a join comes, also where nothing can be moved. */
function* searchOn({ hunt: { world }, work }: Trail): Generator<undefined, void> {
  for (const until = world.work + WORK_PER_JOIN; world.work < until;) {
    const least = world.work + LEAST_STEP_WORK;
    work.next();
    world.work = Math.max(world.work, least);
    yield;
  }
}

/**
 * The stream that works beside the first one starts from repeats where many equal pieces are wanted, if that is better.
 */
function* orRepeats(searcher: Searcher, best: NestAnswer): Generator<undefined, NestAnswer> {
  const { problem, layout, reasons, inner } = searcher;
  const isOwnTask = searcher.stream === Math.min(1, problem.budget.streams - 1);
  const items = isOwnTask ? repeatedItems(layout) : [];
  if (items.length === 0) return best;
  yield* layRepeats(layout, items);
  const laid = answerOf(layout, layout.laid, reasons, best.joins);
  const answer = withBlocks(problem, { ...laid, lanes: inner.lanes });
  const isBetter = compareEntries(scoreOf(problem, answer), scoreOf(problem, best)) < 0;
  return isBetter && isProven(checkAnswer(problem, answer)) ? answer : best;
}

/** Goes on with this stream's own hunt, told of the best answer, or starts one anew where other copies are to be laid. */
function takeUp(searcher: Searcher, scene: Scene, best: NestAnswer): Trail {
  const { problem, layout, trail } = searcher;
  const outcome = { answer: best, score: scoreOf(problem, best) };
  if (trail === undefined) return startTrail(searcher, scene, outcome);
  if (compareEntries(outcome.score, trail.known.score) >= 0) {
    return isSameCopies(trail, copiesFor(layout, trail.known.answer))
      ? trail
      : startTrail(searcher, scene, trail.known);
  }
  if (!isSameCopies(trail, copiesFor(layout, best))) return startTrail(searcher, scene, outcome);
  const find = findAt(scene, trail.hunt, trail.copies, best);
  if (find.missing < trail.hunt.best.missing) return startTrail(searcher, scene, outcome);
  if (isBetterFind(find, trail.hunt.best)) adopt(trail.hunt, find);
  return Object.assign(trail, { known: outcome, knownFind: find, foundThen: trail.hunt.found });
}

function isSameCopies({ copies }: Trail, others: readonly Copy[]): boolean {
  return copies.length === others.length && copies.every(({ index }, i) => index === others[i]!.index);
}

function startTrail(searcher: Searcher, scene: Scene, known: StreamOutcome): Trail {
  const { layout } = searcher;
  const copies = copiesFor(layout, known.answer);
  const still = new Set(copies.filter(({ isFixed }) => isFixed).map(({ index }) => index));
  const world = worldOf(scene, copies, still, searcher.random);
  restoreSnapshot(world, snapshotAt(world, placesOf(layout, copies, known.answer)));
  world.mayLie.splice(0, world.count, ...sheetsForCopies(scene, copies, world.sheetOf));
  const hunt = startHunt(scene, world, searcher.contacts, unitsOf(layout, copies));
  const trail = { copies, hunt, work: pursue(hunt), known, knownFind: hunt.best, foundThen: 0 };
  searcher.trail = trail;
  return trail;
}

function placesOf(layout: Layout, copies: readonly Copy[], answer: NestAnswer): (PlaceOnSheet | undefined)[] {
  const placed = new Map(answer.placements.map((one) => [refKey(one), one]));
  return copies.map(({ ref }) => {
    const one = placed.get(refKey(ref));
    if (one === undefined) return undefined;
    const { x, y, rotationDeg } = one;
    return { sheet: layout.sheetIndex.get(one.sheet)!, x, y, rotationDeg };
  });
}

function findAt(scene: Scene, hunt: Hunt, copies: readonly Copy[], answer: NestAnswer): Find {
  const snapshot = snapshotAt(hunt.world, placesOf(scene.layout, copies, answer));
  hunt.world.mayLie.splice(0, copies.length, ...sheetsForCopies(scene, copies, snapshot.sheetOf));
  return findIn(hunt, snapshot);
}

/** Proves the best layout found in this join; one that does not stand is given up for the last that did. */
function prove(searcher: Searcher, trail: Trail, joins: number): void {
  const { problem, layout, reasons, inner } = searcher;
  const { hunt, copies } = trail;
  if (hunt.found === trail.foundThen) return;
  trail.foundThen = hunt.found;
  const parts = { problem, reasons, lanes: inner.lanes, joins };
  const answer = snapshotAnswer(layout, hunt.world, copies, hunt.best.snapshot, parts);
  if (answer === undefined || !isProven(checkAnswer(problem, answer))) {
    adopt(hunt, trail.knownFind);
    return;
  }
  const score = scoreOf(problem, answer);
  trail.knownFind = hunt.best;
  if (compareEntries(score, trail.known.score) < 0) trail.known = { answer, score };
}
