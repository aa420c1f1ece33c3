import { buildContext } from '../check/context.js';
import type { CheckContext, Placed, PlacedNeed } from '../check/context.js';
import { deepPoints } from '../check/deep-points.js';
import { demandByItem } from '../check/demand.js';
import type { Demand } from '../check/demand.js';
import { findProblemFaults } from '../check/rule-finite-problem.js';
import { splitSaneAnswer } from '../check/rule-finite-answer.js';
import { copyKey, copyRef } from '../check/violation.js';
import { GeometryError } from '../error.js';
import type { CopyRef, Lane, NestAnswer, NestProblem, Placement, RoughCut } from '../types/problem.js';

/** Where a copy is to lie: mm and degrees clockwise, as in a placement. */
export type SheetPlace = Omit<Placement, keyof CopyRef>;

/** What goes with the placements of a layout. */
export interface BenchExtras {
  readonly lanes?: readonly Lane[];
  readonly roughCuts?: readonly RoughCut[];
}

/**
 * A layout laid open for moves by hand: what lies where, with the measures and indexes of the exact check at hand.
 * Plain data that nobody changes: a move gives a new bench, which shares all that stayed.
 */
export interface Bench {
  readonly problem: NestProblem;
  readonly answer: NestAnswer;
  /** All that depends on the problem alone. */
  readonly stage: Stage;
  /** In the order of the answer. */
  readonly placed: readonly Placed[];
  readonly byCopy: ReadonlyMap<string, Placed>;
  /** Place of each copy in the order of the answer. */
  readonly rank: ReadonlyMap<string, number>;
}

/** Sheets as the check measures them, and what is asked for: once per problem, since hides don't change under a drag. */
export interface Stage {
  readonly context: CheckContext;
  readonly demands: ReadonlyMap<string, Demand>;
  /** The items that are the mirror image of an item and form pairs with it. */
  readonly partners: ReadonlyMap<string, readonly string[]>;
}

/**
 * Opens a layout. The placements may break rules (that is what judging is for), but the problem must be sane
 * and every placement must name a known item and sheet and come once: else `bad-argument`.
 */
export function openBench(
  problem: NestProblem,
  placements: readonly Placement[],
  extras: BenchExtras = {},
): Bench {
  const faults = findProblemFaults(problem);
  if (faults.length > 0) {
    const names = faults.map(({ other }) => partyName(other)).join(', ');
    throw new GeometryError('bad-argument', `A bench needs a sane problem; not sane: ${names}.`);
  }
  const answer = answerWith(placements, extras);
  const [strange] = splitSaneAnswer(problem, answer).findings;
  if (strange !== undefined) {
    const name = partyName(strange.at ?? strange.other);
    throw new GeometryError('bad-argument', `${name} has a number that is not sane, or an unknown name.`);
  }
  const context = buildContext(problem, answer);
  // What the check works out of a region when it first meets it: not to be waited for in the middle of a drag.
  for (const { qualities } of context.sheets.values()) {
    for (const { areas } of qualities) areas.forEach(deepPoints);
  }
  const stage = { context, demands: demandByItem(problem), partners: partnersOf(problem) };
  return withPlaced({ problem, answer, stage }, context.placed);
}

/**
 * The bench after one copy has come to lie at a place, valid or not. A copy that is not on the bench yet comes last.
 * Throws `bad-argument` for an unknown item or sheet, or numbers that are not sane.
 */
export function movePiece(bench: Bench, copy: CopyRef, place: SheetPlace): Bench {
  const { problem } = bench;
  const placement = placementOf(copy, place);
  if (splitSaneAnswer(problem, answerWith([placement], {})).findings.length > 0) {
    throw new GeometryError('bad-argument', `${nameOf(copy)} can't be put there: unknown, or not a number.`);
  }
  const moved = placeOnStage(bench.stage, placement);
  const at = bench.rank.get(copyKey(copy));
  const placed =
    at === undefined ? [...bench.placed, moved] : bench.placed.map((one, i) => (i === at ? moved : one));
  return withPlaced(bench, placed);
}

/** The bench without one copy; the same bench where it did not lie. */
export function liftPiece(bench: Bench, copy: CopyRef): Bench {
  const at = bench.rank.get(copyKey(copy));
  if (at === undefined) return bench;
  return withPlaced(
    bench,
    bench.placed.filter((_, i) => i !== at),
  );
}

/** A copy where it would lie, measured as the check measures it; the placement must be sane. */
export function placeOnStage({ context }: Stage, placement: Placement): Placed {
  const item = context.items.get(placement.item)!;
  // The sheets are measured already: only the item is to be placed here.
  const alone = { ...context.problem, items: [item], sheets: [], fixed: [] };
  const [placed] = buildContext(alone, answerWith([placement], {})).placed;
  return { ...placed!, sheet: context.sheets.get(placement.sheet)! };
}

/** What a copy needs of the leather where it lies, and where. Nothing of it is remembered. */
export function needsOfPlaced({ context }: Stage, placed: Placed): readonly PlacedNeed[] {
  return buildContext({ ...context.problem, items: [], sheets: [] }, answerWith([], {})).needsOf(placed);
}

export function placementOf(copy: CopyRef, { sheet, x, y, rotationDeg }: SheetPlace): Placement {
  return { ...copyRef(copy), sheet, x, y, rotationDeg };
}

export function answerWith(
  placements: readonly Placement[],
  { lanes = [], roughCuts = [] }: BenchExtras,
): NestAnswer {
  return { placements, lanes, roughCuts, unplaced: [], joins: 0 };
}

function partyName(party: CopyRef | string | undefined): string {
  return typeof party === 'object' ? nameOf(party) : (party ?? 'the problem');
}

function nameOf({ item, set, copy }: CopyRef): string {
  return `Copy ${copy} of ${item} in set ${set}`;
}

function withPlaced(
  { problem, answer, stage }: Pick<Bench, 'problem' | 'answer' | 'stage'>,
  placed: readonly Placed[],
): Bench {
  const byCopy = new Map<string, Placed>();
  const rank = new Map<string, number>();
  for (const [i, one] of placed.entries()) {
    const key = copyKey(one.copy);
    if (byCopy.has(key)) throw new GeometryError('bad-argument', `${nameOf(one.copy)} is placed twice.`);
    byCopy.set(key, one);
    rank.set(key, i);
  }
  const placements = placed.map(({ placement }) => placement);
  return { problem, answer: { ...answer, placements }, stage, placed, byCopy, rank };
}

function partnersOf(problem: NestProblem): ReadonlyMap<string, readonly string[]> {
  const partners = new Map<string, string[]>();
  for (const { id, mirrorOf, pair } of problem.items) {
    if (mirrorOf === undefined || pair === undefined) continue;
    partners.set(mirrorOf, [...(partners.get(mirrorOf) ?? []), id]);
  }
  return partners;
}
