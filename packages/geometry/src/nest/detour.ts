import { checkAnswer, isProven } from '../check/index.js';
import { copiesFor } from '../separate/units.js';
import { withBlocks } from '../separate/world-answer.js';
import type { NestAnswer } from '../types/problem.js';
import type { StreamOutcome } from '../types/stream.js';
import { answerOf } from './answer.js';
import { DETOUR_EVERY, DETOUR_JOINS, FIRST_DETOUR } from './constants.js';
import { refKey } from './demand.js';
import type { FewerSheets } from './fewer-sheets.js';
import { fewerSheets } from './fewer-sheets.js';
import { layFirst } from './first-layout.js';
import type { Layout } from './layout.js';
import { layCopy, liftCopy, variantOf } from './layout.js';
import type { Surroundings, Trail } from './trail.js';
import { isBetterOutcome, outcomeOf, prove, searchOn, startTrail } from './trail.js';

/**
 * Tries to do with one sheet fewer. A layout on fewer sheets is so different that small changes don't lead there: it is
 * laid from the start on the sheets that could hold it, and what finds no room at first is worked in.
 */
export interface Detours {
  /** Tries since one came to something. */
  tries: number;
  /** The join from which on the next one may begin. */
  next: number;
  under: { readonly around: Surroundings; readonly trail: Trail; readonly until: number } | undefined;
}

export function noDetours(): Detours {
  return { tries: 0, next: FIRST_DETOUR, under: undefined };
}

/** True if this join belongs to a detour, or one may begin. */
export function detourAt({ next, under }: Detours, join: number): boolean {
  return under !== undefined || join >= next;
}

/**
 * One join's work on a detour. Gives what is best then: what it came to if that is better than `best`, which ends it.
 * Undefined if there is none to take.
 */
export function* takeDetour(
  around: Surroundings,
  detours: Detours,
  best: StreamOutcome,
  join: number,
): Generator<undefined, StreamOutcome | undefined> {
  if (detours.under === undefined) {
    putOff(detours, join);
    const way = mayShrink(best.answer)
      ? fewerSheets(around.scene.layout, best.answer, around.random, detours.tries)
      : undefined;
    if (way === undefined) return undefined;
    const set = yield* setOut(around, way, best.answer);
    detours.tries++;
    if (set === undefined) return undefined;
    detours.under = { ...set, until: join + DETOUR_JOINS };
  }
  const { around: own, trail, until } = detours.under;
  if (!isBetterOutcome(trail.known, best) && join <= until) {
    yield* searchOn(trail, join);
    prove(own, trail, join);
  }
  const isDone =
    isBetterOutcome(trail.known, best) && isProven(checkAnswer(around.problem, trail.known.answer));
  if (isDone || join >= until) {
    detours.under = undefined;
    if (isDone) detours.tries = 0;
    putOff(detours, join);
  }
  return isDone ? trail.known : best;
}

/** Tries in vain are farther and farther apart. */
function putOff(detours: Detours, join: number): void {
  detours.next = join + DETOUR_EVERY * (1 + detours.tries);
}

/** While anything is missing, more sheets are what is wanted. */
function mayShrink({ unplaced }: NestAnswer): boolean {
  return unplaced.every(({ reason }) => reason === 'no-sheet-allowed');
}

/** Undefined where something fits on none of the sheets that are kept. */
function* setOut(
  around: Surroundings,
  way: FewerSheets,
  from: NestAnswer,
): Generator<undefined, { around: Surroundings; trail: Trail } | undefined> {
  const { problem, inner, scene } = around;
  const layout = layoutOn(scene.layout, way);
  // Why a piece can't lie on these sheets is no reason on the others.
  const own = { ...around, reasons: new Map(inner.reasons), scene: { ...scene, layout } };
  layAsIn(layout, way, from);
  yield* layFirst(layout);
  const laid = answerOf(layout, layout.laid, own.reasons, from.joins);
  const start = outcomeOf(problem, withBlocks(problem, { ...laid, lanes: inner.lanes }));
  if (copiesFor(layout, start.answer).length < copiesFor(scene.layout, from).length) return undefined;
  return { around: own, trail: startTrail(own, start) };
}

/** The same layout, where pieces may lie on the kept sheets alone. */
function layoutOn(layout: Layout, { together, kept }: FewerSheets): Layout {
  const mayUse = (s: number): boolean => !together.has(s) || kept.has(s);
  return { ...layout, allowed: layout.allowed.map((sheets) => sheets.filter(mayUse)) };
}

/** Only what lies on other sheets stays where the answer has it. */
function layAsIn(layout: Layout, { together }: FewerSheets, answer: NestAnswer): void {
  const byKey = new Map(layout.demand.copies.map((copy) => [refKey(copy.ref), copy]));
  for (const { index, isFixed } of layout.demand.copies) {
    if (!isFixed && layout.laid[index] !== undefined) liftCopy(layout, index);
  }
  for (const one of answer.placements) {
    const copy = byKey.get(refKey(one))!;
    const sheet = layout.sheetIndex.get(one.sheet)!;
    if (copy.isFixed || together.has(sheet)) continue;
    const variant = variantOf(layout, copy.prepared, sheet, one.rotationDeg);
    layCopy(layout, copy.index, { variant, sheet, x: one.x, y: one.y });
  }
}
