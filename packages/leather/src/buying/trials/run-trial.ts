import { ringArea, runNest } from '@hidebound/geometry';
import type { Budget, UnplacedReason } from '@hidebound/geometry';
import { hideRegion } from '../../hide/hide-region.js';
import { layoutFrom } from '../../layout/layout-from.js';
import type { Layout } from '../../model/layout.js';
import type { ResolvedOrder } from '../../model/order.js';
import type { LayablePiece } from '../../model/piece.js';
import type { CutSizeRule, Span } from '../../model/workshop-rules.js';
import { nestProblemFor } from '../../order/problem.js';
import type { NamedHide } from '../../order/sheets.js';
import type { EffectDefaults } from '../../parts/effects.js';
import { madeUpHide } from '../hides/made-up-hide.js';

/** What trial layouts of one purchase on one kind of hide need: plain data, the same for every trial. */
export interface TrialInput {
  /** Its leathers' own hides do not count. */
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly workshop: EffectDefaults;
  readonly rule: CutSizeRule;
  readonly areaMm2: Span;
  readonly usableShare?: Span;
  /** The same seed gives the same hides of chance. */
  readonly seed: number;
  /** Area of all pieces together, mm². */
  readonly piecesMm2: number;
}

/** What one trial came to. */
export interface TrialOutcome {
  readonly number: number;
  /** Areas of the hides of chance within their outlines, in the order in which they are used, mm². */
  readonly hidesMm2: readonly number[];
  /** How many of them were needed to lay every piece; absent where some piece found no place on any. */
  readonly needed?: number;
  /** The area that would have been enough, as far as the last hide tells, mm². */
  readonly needMm2: number;
  readonly missed: readonly MissedPiece[];
}

export interface MissedPiece {
  readonly article: string;
  readonly piece: string;
  readonly reason: UnplacedReason;
}

/** Trials of one kind of hide have numbers of their own for the hides of chance. */
const HIDES_A_TRIAL = 1000;
/** Less than this share of a hide in pieces is no use of leather: what does not fit then counts as missed. */
const POOREST_YIELD = 0.3;
/** A spare hide for jobs that are small against a hide. */
const SPARE_HIDES = 1;
/** The first layout of a search, with one stream: what more work gains is reckoned in afterwards. */
const TRIAL_BUDGET = { seed: 1, streams: 1, joins: 0 } as const;

/**
 * Lays a purchase's pieces on hides of chance of one kind, one after the other, until all lie or hides beyond reason
 * are used. All hides of a trial are of one lot. The same input and number give the same outcome, wherever it runs.
 */
export function runTrial(input: TrialInput, number: number): TrialOutcome {
  const meanMm2 = (input.areaMm2.min + input.areaMm2.max) / 2;
  const count = Math.ceil(input.piecesMm2 / POOREST_YIELD / meanMm2) + SPARE_HIDES;
  const hides = hidesOfTrial(input, number, count);
  return outcomeOf(number, hides, layOn(input, hides, TRIAL_BUDGET));
}

/** The first hides of chance of a trial. */
export function hidesOfTrial(
  { rule, areaMm2, usableShare, seed }: TrialInput,
  trial: number,
  count: number,
): NamedHide[] {
  return Array.from({ length: count }, (_, k) => {
    const number = trial * HIDES_A_TRIAL + k;
    const hide = madeUpHide(rule, {
      seed,
      number,
      areaMm2,
      ...(usableShare === undefined ? {} : { usableShare }),
    });
    const id = `trial hide ${k + 1}`;
    return { file: id, hide: { ...hide, id, lot: 'bought together' } };
  });
}

/** The purchase's order on given hides, in their order. */
export function orderOn(order: ResolvedOrder, hides: readonly NamedHide[]): ResolvedOrder {
  const files = hides.map(({ file }) => file);
  return { ...order, leathers: order.leathers.map((leather) => ({ ...leather, hides: files })) };
}

/** The pieces laid on these hides, with so much work. The layout's own yields tell what was used up. */
export function layOn(
  { order, pieces, workshop }: Pick<TrialInput, 'order' | 'pieces' | 'workshop'>,
  hides: readonly NamedHide[],
  budget: Budget & { readonly joins: number },
): Layout {
  const input = { order: orderOn(order, hides), pieces, hides, workshop };
  const problem = nestProblemFor({ ...input, budget });
  const answer = runNest(problem.problem);
  const { seed, streams } = budget;
  return layoutFrom({ ...input, problem, answer, origin: { version: '', seed, streams } });
}

function outcomeOf(number: number, hides: readonly NamedHide[], layout: Layout): TrialOutcome {
  const hidesMm2 = hides.map(({ hide }) => Math.abs(ringArea(hideRegion(hide).outer)));
  const yields = new Map(layout.yield.hides.map((own) => [own.hide, own]));
  const last = hides.reduce((at, { hide }, k) => (yields.has(hide.id) ? k : at), -1);
  const isComplete = layout.unplaced.length === 0;
  return {
    number,
    hidesMm2: isComplete ? hidesMm2.slice(0, last + 1) : hidesMm2,
    ...(isComplete ? { needed: last + 1 } : {}),
    needMm2: needOf(
      hides.slice(0, last + 1).map(({ hide }, k) => ({
        areaMm2: hidesMm2[k]!,
        piecesMm2: yields.get(hide.id)?.piecesMm2 ?? 0,
        usedUpMm2: yields.get(hide.id)?.usedUpMm2 ?? 0,
      })),
    ),
    missed: missedOf(layout),
  };
}

interface UsedHide {
  readonly areaMm2: number;
  readonly piecesMm2: number;
  readonly usedUpMm2: number;
}

/**
 * All hides but the last count whole. Of the last one counts what its pieces used up, or, where that is less, what they
 * would have taken at the yield of the hides before: a few pieces that are left over spread over a new hide's end.
 */
function needOf(used: readonly UsedHide[]): number {
  const last = used[used.length - 1];
  if (last === undefined) return 0;
  const full = used.slice(0, -1);
  const fullMm2 = full.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const fullPieces = full.reduce((sum, { piecesMm2 }) => sum + piecesMm2, 0);
  const atYield = fullPieces > 0 ? (last.piecesMm2 * fullMm2) / fullPieces : Infinity;
  return fullMm2 + Math.min(last.usedUpMm2, atYield, last.areaMm2);
}

function missedOf({ unplaced }: Layout): MissedPiece[] {
  const missed = new Map<string, MissedPiece>();
  for (const { article, piece, reason } of unplaced) {
    missed.set(JSON.stringify([article, piece, reason]), { article, piece, reason });
  }
  return [...missed.values()];
}
