import type { NestProblem } from '@hidebound/geometry';
import type { Diagnostic } from '../../model/diagnostic.js';
import type { LayablePiece } from '../../model/piece.js';
import type { Workshop } from '../../model/workshop.js';
import { nestProblemFor } from '../../order/problem.js';
import { usableShareOf } from '../estimate/quick-estimate.js';
import { lossPiecesOf, quickNeed } from '../estimate/quick-need.js';
import type { QuickNeed } from '../estimate/quick-need.js';
import { buyablesFor } from './buyable.js';
import type { Buyable } from './buyable.js';
import { purchaseAnswer } from './buying-answer.js';
import type { PurchaseAnswer } from './buying-answer.js';
import { purchasesOf } from './purchase.js';
import type { Purchase } from './purchase.js';
import { hidesOfTrial, orderOn } from './run-trial.js';
import type { TrialInput } from './run-trial.js';
import type { TrialRounds } from './run-trials.js';

/** One kind of hide that is tried for one purchase. */
export interface BuyingTry {
  readonly purchase: number;
  readonly buyable: Buyable;
  readonly input: TrialInput;
  readonly quick: QuickNeed;
}

/** All that is tried for one order. */
export interface BuyingJob {
  readonly purchases: readonly Purchase[];
  readonly tries: readonly BuyingTry[];
  readonly diagnostics: readonly Diagnostic[];
}

export interface BuyingInput {
  readonly order: Purchase['order'];
  readonly pieces: readonly LayablePiece[];
  readonly workshop: Workshop;
  /** Which hides of chance: another number, other hides. */
  readonly seed: number;
}

/** What is to be bought for an order, and each kind of hide that may be bought for it. Throws as `purchasesOf`. */
export function buyingJob({ order, pieces, workshop, seed }: BuyingInput): BuyingJob {
  const { purchases, diagnostics } = purchasesOf(order, pieces);
  const found = purchases.map((purchase) => buyablesFor(purchase, workshop));
  const lossPieces = purchases.map((purchase) => lossPiecesOf(purchase, pieces));
  const tries = purchases.flatMap((purchase, index) =>
    found[index]!.buyables.map((buyable): BuyingTry => {
      const usableShare = usableShareOf(buyable, workshop);
      const { areaMm2, rule } = buyable;
      const quick = quickNeed(purchase, lossPieces[index]!, { rule, areaMm2, usableShare }, workshop);
      const input: TrialInput = {
        order: purchase.order,
        pieces: pieces.filter(({ article, piece }) => isOf(purchase, article, piece)),
        workshop: { flawDefaults: workshop.flawDefaults, zoneDefaults: workshop.zoneDefaults },
        rule,
        areaMm2,
        usableShare,
        seed,
        piecesMm2: purchase.piecesMm2,
      };
      return { purchase: index, buyable, input, quick };
    }),
  );
  return { purchases, tries, diagnostics: [...diagnostics, ...found.flatMap((own) => own.diagnostics)] };
}

function isOf({ order }: Purchase, article: string, piece: string): boolean {
  return order.articles.some(
    ({ name, pieces }) => name === article && pieces.some((own) => own.name === piece),
  );
}

/** The problem of a kind's first trial, on one hide: it tells what can't be laid at all before any trial. */
export function firstTrialProblem(input: TrialInput): NestProblem {
  const hides = hidesOfTrial(input, 1, 1);
  const order = orderOn(input.order, hides);
  return nestProblemFor({ ...input, order, hides, budget: { seed: 1, streams: 1 } }).problem;
}

/** An answer for each purchase, from the trials so far; with none, from the quick estimate alone. */
export function buyingAnswers(
  { purchases, tries }: BuyingJob,
  rounds: TrialRounds,
  workshop: Workshop,
): PurchaseAnswer[] {
  return purchases.map((purchase, index) => {
    const kinds = tries.flatMap((one, i) =>
      one.purchase === index ? [{ buyable: one.buyable, quick: one.quick, outcomes: rounds[i] ?? [] }] : [],
    );
    return purchaseAnswer(purchase, kinds, workshop);
  });
}
