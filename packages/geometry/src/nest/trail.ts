import { checkAnswer, isProven } from '../check/index.js';
import { compareEntries } from '../number/compare-entries.js';
import type { Random } from '../number/random.js';
import type { ContactShapes } from '../separate/exact-contacts.js';
import { adopt, findIn, isBetterFind, pursue, startHunt } from '../separate/hunt.js';
import type { Find, Hunt } from '../separate/hunt.js';
import type { PlaceOnSheet } from '../separate/places.js';
import { snapshotAt } from '../separate/places.js';
import { copiesFor, unitsOf } from '../separate/units.js';
import { snapshotAnswer } from '../separate/world-answer.js';
import { restoreSnapshot } from '../separate/world.js';
import { sheetsForCopies, worldOf } from '../separate/world-of-layout.js';
import type { Scene } from '../separate/world-of-layout.js';
import type { NestAnswer, NestProblem } from '../types/problem.js';
import type { StreamOutcome } from '../types/stream.js';
import { SHORT_JOINS, WORK_PER_JOIN } from './constants.js';
import type { Copy } from './demand.js';
import { refKey } from './demand.js';
import type { InnerProblem } from './inner-problem.js';
import type { Layout } from './layout.js';
import type { Reasons } from './reasons.js';
import { scoreAnswer } from './score.js';
import { scoreEntries } from './score-entries.js';

/** What a step of a search counts at least, of the work of a join: a fraction of what looking for one place takes. */
const LEAST_STEP_WORK = 200;

/** What a trail is laid in. */
export interface Surroundings {
  readonly problem: NestProblem;
  readonly inner: InnerProblem;
  readonly reasons: Reasons;
  readonly scene: Scene;
  readonly contacts: ContactShapes | undefined;
  readonly random: Random;
}

/** A hunt under way, and what is known for certain. */
export interface Trail {
  readonly scene: Scene;
  readonly copies: readonly Copy[];
  readonly hunt: Hunt;
  readonly work: Generator<undefined, never>;
  /** The best outcome that was proven, and the layout that it stands for. */
  known: StreamOutcome;
  knownFind: Find;
  /** Layouts that had been found when it was proven. */
  foundThen: number;
}

export function scoreOf(problem: NestProblem, answer: NestAnswer): number[] {
  return scoreEntries(scoreAnswer(problem, answer), problem.sheets.length);
}

export function outcomeOf(problem: NestProblem, answer: NestAnswer): StreamOutcome {
  return { answer, score: scoreOf(problem, answer) };
}

export function isBetterOutcome(a: StreamOutcome, b: StreamOutcome): boolean {
  return compareEntries(a.score, b.score) < 0;
}

/** A hunt that starts from an answer. */
export function startTrail({ scene, contacts, random }: Surroundings, known: StreamOutcome): Trail {
  const { layout } = scene;
  const copies = copiesFor(layout, known.answer);
  const still = new Set(copies.filter(({ isFixed }) => isFixed).map(({ index }) => index));
  const world = worldOf(scene, copies, still, random);
  restoreSnapshot(world, snapshotAt(world, placesOf(layout, copies, known.answer)));
  world.mayLie.splice(0, world.count, ...sheetsForCopies(scene, copies, world.sheetOf));
  const hunt = startHunt(scene, world, contacts, unitsOf(layout, copies));
  return { scene, copies, hunt, work: pursue(hunt), known, knownFind: hunt.best, foundThen: 0 };
}

/**
 * Goes on with a stream's own trail, told of the best answer of all, or starts one anew where other copies are to be
 * laid.
 */
export function goOn(around: Surroundings, trail: Trail, best: StreamOutcome): Trail {
  const { layout } = around.scene;
  if (!isBetterOutcome(best, trail.known)) {
    return isSameCopies(trail, copiesFor(layout, trail.known.answer))
      ? trail
      : startTrail(around, trail.known);
  }
  if (!isSameCopies(trail, copiesFor(layout, best.answer))) return startTrail(around, best);
  const find = findAt(trail, best.answer);
  if (find.missing < trail.hunt.best.missing) return startTrail(around, best);
  if (isBetterFind(find, trail.hunt.best)) adopt(trail.hunt, find);
  return Object.assign(trail, { known: best, knownFind: find, foundThen: trail.hunt.found });
}

function isSameCopies({ copies }: Trail, others: readonly Copy[]): boolean {
  return copies.length === others.length && copies.every(({ index }, i) => index === others[i]!.index);
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

function findAt({ scene, hunt, copies }: Trail, answer: NestAnswer): Find {
  const snapshot = snapshotAt(hunt.world, placesOf(scene.layout, copies, answer));
  hunt.world.mayLie.splice(0, copies.length, ...sheetsForCopies(scene, copies, snapshot.sheetOf));
  return findIn(hunt, snapshot);
}

/** One join's work. However little a step did, it counts for so much: a join comes, also where nothing can be moved. */
export function* searchOn({ hunt: { world }, work }: Trail, join: number): Generator<undefined, void> {
  const share = Math.min(1, join / SHORT_JOINS);
  for (const until = world.work + WORK_PER_JOIN * share; world.work < until;) {
    const least = world.work + LEAST_STEP_WORK;
    work.next();
    world.work = Math.max(world.work, least);
    yield;
  }
}

/** Proves the best layout found in this join; one that does not stand is given up for the last that did. */
export function prove({ problem, inner, reasons }: Surroundings, trail: Trail, joins: number): void {
  const { hunt, copies, scene } = trail;
  if (hunt.found === trail.foundThen) return;
  trail.foundThen = hunt.found;
  const parts = { problem, reasons, lanes: inner.lanes, joins };
  const answer = snapshotAnswer(scene.layout, hunt.world, copies, hunt.best.snapshot, parts);
  if (answer === undefined || !isProven(checkAnswer(problem, answer))) {
    adopt(hunt, trail.knownFind);
    return;
  }
  const outcome = outcomeOf(problem, answer);
  trail.knownFind = hunt.best;
  if (isBetterOutcome(outcome, trail.known)) trail.known = outcome;
}
