import { answerOf } from '../nest/answer.js';
import type { Copy } from '../nest/demand.js';
import type { Layout } from '../nest/layout.js';
import type { Reasons } from '../nest/reasons.js';
import type { Laid } from '../nest/sheet-state.js';
import { drawRoughCuts } from '../rough/drawn-rough-cuts.js';
import type { Lane, NestAnswer, NestProblem, Unplaced } from '../types/problem.js';
import { placeIn } from './places.js';
import type { Snapshot, World } from './world.js';

/** What an answer holds beside the places. */
export interface AnswerParts {
  /** As it was asked, with lanes and rough cuts. */
  readonly problem: NestProblem;
  readonly reasons: Reasons;
  readonly lanes: readonly Lane[];
  readonly joins: number;
}

/**
 * The answer that a snapshot stands for in which nothing meets; undefined where rough cuts can't be drawn around what
 * lies there.
 */
export function snapshotAnswer(
  layout: Layout,
  world: World,
  copies: readonly Copy[],
  snapshot: Snapshot,
  { problem, reasons, lanes, joins }: AnswerParts,
): NestAnswer | undefined {
  const laid: (Laid | undefined)[] = layout.demand.copies.map(() => undefined);
  copies.forEach((copy, i) => {
    const place = placeIn(world, snapshot, i);
    if (place === undefined) return;
    const { sheet, x, y, rotationDeg } = place;
    const variant = { rotationDeg, prepared: copy.prepared };
    // What turns places into an answer looks at nothing else of them.
    laid[copy.index] = { copy: copy.index, sheet, x, y, variant } as Laid;
  });
  const answer = { ...answerOf(layout, laid, reasons, joins), lanes };
  const drawn = drawRoughCuts(problem, answer.placements);
  if (drawn.lifted.length > 0 || drawn.conflicts.length > 0) return undefined;
  return { ...answer, roughCuts: drawn.roughCuts };
}

/** An answer with rough cuts drawn; what is in their way is taken off. */
export function withBlocks(problem: NestProblem, answer: NestAnswer): NestAnswer {
  const { placements, roughCuts, lifted } = drawRoughCuts(problem, answer.placements);
  const unplaced = lifted.map(({ item, set, copy }): Unplaced => ({ item, set, copy, reason: 'no-room' }));
  return { ...answer, placements, roughCuts, unplaced: [...answer.unplaced, ...unplaced] };
}
