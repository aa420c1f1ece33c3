import type { Money } from '../../model/marks.js';
import type { Span } from '../../model/workshop-rules.js';
import type { Workshop } from '../../model/workshop.js';
import { mm2ToSquareFeet } from '../../units/area.js';
import {
  compareMoney,
  exactMoney,
  overMoney,
  sumPlacedMoney,
  timesMoney,
  toCoins,
} from '../../units/exact-money.js';
import type { ExactMoney } from '../../units/exact-money.js';
import { quoteValue } from '../../words/sentence.js';
import { figureOf, middleOf } from '../../workshop/figures.js';
import type { NeedLosses, QuickNeed } from '../estimate/quick-need.js';
import type { Buyable } from './buyable.js';
import { chanceOfCount, countFor, inHundred, sizeClasses } from './chances.js';
import { areaForChance, chanceOfEnough, needAfter } from './need.js';
import type { Need, NeedBeliefs } from './need.js';
import type { Purchase } from './purchase.js';
import type { MissedPiece, TrialOutcome } from './run-trial.js';

/** How sure a buyer may want to be: enough in so many of 100. */
export const LEVELS = [50, 90, 95] as const;
/** The one by which offers are compared. */
export const USUAL_LEVEL = 90;

/** What to buy for one purchase: every kind of hide with what it takes of it. */
export interface PurchaseAnswer {
  readonly leathers: readonly string[];
  readonly copies: number;
  readonly piecesMm2: number;
  /** The one to take first: cheapest where prices are known, else the least leather. */
  readonly kinds: readonly KindAnswer[];
}

/** One kind of hide, and how many of it are enough. */
export interface KindAnswer {
  readonly name: string;
  readonly cut: string;
  readonly grade?: string;
  readonly areaMm2: Span;
  readonly price?: Money & { readonly per: 'hide' | 'ft2' | 'm2' | 'dm2' };
  /** How many trial layouts it rests on. */
  readonly trials: number;
  /** Area needed: enough in 10, 50 and 90 of 100, mm². */
  readonly needMm2: { readonly low: number; readonly likely: number; readonly high: number };
  /** What becomes of the likely need, mm². */
  readonly losses: NeedLosses;
  /** For each of `LEVELS`: how many hides; without a count where no number of hides is enough so often. */
  readonly levels: readonly LevelAnswer[];
  /** The chance for numbers of hides, and by size where that makes a difference. */
  readonly counts: readonly CountAnswer[];
  /** How often so much area is enough, whatever the number of hides: points of a rising line. */
  readonly curve: readonly { readonly areaMm2: number; readonly inHundred: number }[];
  /** What a square foot costs that ends up in pieces. */
  readonly truePricePerFt2?: Money;
  /** Pieces that found no place in some of the trials, however many hides there were. */
  readonly missed: readonly (MissedPiece & { readonly trials: number })[];
  /** It holds the pieces: none was missed in half of the trials or more. */
  readonly holdsAll: boolean;
}

export interface LevelAnswer {
  readonly inHundred: number;
  readonly hides?: number;
  readonly areaMm2?: Span;
  readonly cost?: CostRange;
}

export interface CountAnswer {
  readonly hides: number;
  readonly inHundred: number;
  readonly bySize: readonly { readonly areaMm2: Span; readonly inHundred: number }[];
}

export interface CostRange {
  readonly from: Money;
  readonly to: Money;
}

/** What the workshop's figures say of needs beside the trials. */
export function needBeliefs(workshop: Workshop): NeedBeliefs {
  const share = (name: string): number => middleOf(figureOf(workshop, name).value) / 100;
  return {
    gain: share('gain of a longer search'),
    usualSpread: share('spread of needs'),
    unknown: share('spread beyond trial hides'),
  };
}

/**
 * The answer for one purchase after some trials of each kind of hide; the quick needs stand where there is none yet.
 * @throws LeatherError `mixed-currencies` for offers that can't be compared
 */
export function purchaseAnswer(
  purchase: Purchase,
  kinds: readonly {
    readonly buyable: Buyable;
    readonly outcomes: readonly TrialOutcome[];
    readonly quick: QuickNeed;
  }[],
  workshop: Workshop,
): PurchaseAnswer {
  refuseMixedCurrencies(kinds.map(({ buyable }) => buyable));
  const beliefs = needBeliefs(workshop);
  const answers = kinds.map(({ buyable, outcomes, quick }) => ({
    answer: kindAnswer(purchase, buyable, outcomes, quick, beliefs),
    buyable,
  }));
  const { leathers, copies, piecesMm2 } = purchase;
  return {
    leathers,
    copies,
    piecesMm2,
    kinds: answers.sort(byCost).map(({ answer }) => answer),
  };
}

function refuseMixedCurrencies(buyables: readonly Buyable[]): void {
  sumPlacedMoney(
    buyables.flatMap(({ offer }) =>
      offer === undefined
        ? []
        : [{ money: exactMoney(offer.price), place: `the price of the offer ${quoteValue(offer.name)}` }],
    ),
  );
}

function kindAnswer(
  purchase: Purchase,
  buyable: Buyable,
  outcomes: readonly TrialOutcome[],
  quick: QuickNeed,
  beliefs: NeedBeliefs,
): KindAnswer {
  const { name, rule, areaMm2, offer } = buyable;
  const complete = outcomes.filter(({ needed }) => needed !== undefined);
  const need = needAfter(
    complete.map(({ needMm2 }) => needMm2),
    quick.likelyMm2,
    beliefs,
  );
  const holds = outcomes.length === 0 ? 1 : complete.length / outcomes.length;
  const likely = areaForChance(need, 0.5);
  const levels = LEVELS.map((level) => levelAnswer(buyable, need, holds, level));
  return {
    name,
    cut: rule.name,
    ...(offer?.grade === undefined ? {} : { grade: offer.grade }),
    areaMm2,
    ...(offer === undefined ? {} : { price: { ...offer.price, per: offer.per } }),
    trials: outcomes.length,
    needMm2: { low: areaForChance(need, 0.1), likely, high: areaForChance(need, 0.9) },
    losses: lossesOfNeed(quick.losses, likely),
    levels,
    counts: countAnswers(need, holds, areaMm2, levels),
    curve: curveOf(need, holds),
    ...truePrice(buyable, likely, purchase.piecesMm2),
    missed: missedOf(outcomes),
    holdsAll: holds > 0.5,
  };
}

function levelAnswer(buyable: Buyable, need: Need, holds: number, level: number): LevelAnswer {
  const { areaMm2 } = buyable;
  // Where a share of the trials failed whatever was bought, the others have to make up for it.
  const hides = holds * 100 <= level ? undefined : countFor(need, level / holds, areaMm2);
  if (hides === undefined) return { inHundred: level };
  const together = { min: hides * areaMm2.min, max: hides * areaMm2.max };
  return { inHundred: level, hides, areaMm2: together, ...costOf(buyable, hides) };
}

/** The cost of so many hides, from the smallest to the largest of their kind. */
function costOf({ offer, areaMm2 }: Buyable, hides: number): { readonly cost?: CostRange } {
  if (offer === undefined) return {};
  const price = exactMoney(offer.price);
  const of = (mm2: number): Money =>
    toCoins(timesMoney(price, offer.per === 'hide' ? hides : inUnit(mm2, offer.per)));
  return { cost: { from: of(hides * areaMm2.min), to: of(hides * areaMm2.max) } };
}

const MM2_OF = { m2: 1e6, dm2: 1e4 } as const;

/** Areas are invoiced to a hundredth of their unit. */
function inUnit(mm2: number, unit: 'ft2' | 'm2' | 'dm2'): number {
  const value = unit === 'ft2' ? mm2ToSquareFeet(mm2) : mm2 / MM2_OF[unit];
  return Math.round(value * 100) / 100;
}

/** Exact price of a square millimetre; a price by the hide is shared over a hide of middle size. */
export function pricePerMm2({ offer, areaMm2 }: Buyable): ExactMoney | undefined {
  if (offer === undefined) return undefined;
  const price = exactMoney(offer.price);
  if (offer.per === 'hide') return overMoney(price, Math.round(middleOf(areaMm2)));
  return overMoney(price, offer.per === 'ft2' ? SQUARE_FOOT_TEXT : MM2_OF[offer.per]);
}

/** 304.8², exactly. */
const SQUARE_FOOT_TEXT = '92903.04';

function truePrice(
  buyable: Buyable,
  needMm2: number,
  piecesMm2: number,
): { readonly truePricePerFt2?: Money } {
  const price = pricePerMm2(buyable);
  if (price === undefined || piecesMm2 <= 0) return {};
  const times = Math.round((needMm2 / piecesMm2) * 1e4) / 1e4;
  return { truePricePerFt2: toCoins(timesMoney(timesMoney(price, SQUARE_FOOT_TEXT), times)) };
}

/** The formula's losses in their shares, as large together as the need leaves beside the pieces. */
function lossesOfNeed({ piecesMm2, betweenMm2, edgeMm2, flawsMm2 }: NeedLosses, needMm2: number): NeedLosses {
  const lost = betweenMm2 + edgeMm2 + flawsMm2;
  const scale = lost === 0 ? 0 : Math.max(0, needMm2 - piecesMm2) / lost;
  return {
    piecesMm2,
    betweenMm2: betweenMm2 * scale,
    edgeMm2: edgeMm2 * scale,
    flawsMm2: flawsMm2 * scale,
  };
}

/** Counts that tell nothing are left out: those that are never, and those that are always enough. */
const HOPELESS = 1;
const SURE = 99;
const SIZES_MATTER = { from: 3, to: 98 } as const;

function countAnswers(
  need: Need,
  holds: number,
  areaMm2: Span,
  levels: readonly LevelAnswer[],
): CountAnswer[] {
  const last = levels.reduce((most, { hides }) => Math.max(most, hides ?? 0), 1) + 1;
  const answers: CountAnswer[] = [];
  const chance = (hides: number, of: Span): number => inHundred(holds * chanceOfCount(need, hides, of));
  for (let hides = 1; hides <= last; hides++) {
    const own = chance(hides, areaMm2);
    const isTelling = own >= SIZES_MATTER.from && own <= SIZES_MATTER.to;
    const classes = isTelling ? sizeClasses(areaMm2) : [];
    const bySize = classes.length < 2 ? [] : classes;
    answers.push({
      hides,
      inHundred: own,
      bySize: bySize.map((size) => ({ areaMm2: size, inHundred: chance(hides, size) })),
    });
    if (own >= SURE) break;
  }
  const firstTelling = Math.max(0, answers.findIndex(({ inHundred: own }) => own > HOPELESS) - 1);
  return answers.slice(firstTelling);
}

const CURVE_POINTS = 40;
/** The line is drawn from hardly ever to nearly always. */
const CURVE_ENDS = { from: 0.01, to: 0.99 } as const;

function curveOf(need: Need, holds: number): KindAnswer['curve'] {
  const from = areaForChance(need, CURVE_ENDS.from);
  const to = areaForChance(need, CURVE_ENDS.to);
  return Array.from({ length: CURVE_POINTS + 1 }, (_, i) => {
    const areaMm2 = from + ((to - from) * i) / CURVE_POINTS;
    return { areaMm2, inHundred: Math.round(1000 * holds * chanceOfEnough(need, areaMm2)) / 10 };
  });
}

function missedOf(outcomes: readonly TrialOutcome[]): (MissedPiece & { readonly trials: number })[] {
  const counts = new Map<string, MissedPiece & { readonly trials: number }>();
  for (const missed of outcomes.flatMap((outcome) => outcome.missed)) {
    const key = JSON.stringify([missed.article, missed.piece, missed.reason]);
    counts.set(key, { ...missed, trials: (counts.get(key)?.trials ?? 0) + 1 });
  }
  return [...counts.values()];
}

type Compared = { readonly answer: KindAnswer; readonly buyable: Buyable };

/** What holds all pieces first, then by the middle of the cost, then by the leather that it takes. */
function byCost(a: Compared, b: Compared): number {
  if (a.answer.holdsAll !== b.answer.holdsAll) return a.answer.holdsAll ? -1 : 1;
  const [first, second] = [middleCost(a), middleCost(b)];
  if (first !== undefined && second !== undefined && compareMoney(first, second) !== 0) {
    return compareMoney(first, second);
  }
  return middleArea(a.answer) - middleArea(b.answer);
}

function levelOf({ levels }: KindAnswer): LevelAnswer | undefined {
  return levels.find(({ inHundred: own }) => own === USUAL_LEVEL);
}

function middleCost({ answer, buyable }: Compared): ExactMoney | undefined {
  const hides = levelOf(answer)?.hides;
  const price = pricePerMm2(buyable);
  if (hides === undefined || price === undefined) return undefined;
  return timesMoney(price, Math.round(hides * middleOf(buyable.areaMm2)));
}

function middleArea(answer: KindAnswer): number {
  const area = levelOf(answer)?.areaMm2;
  return area === undefined ? Infinity : middleOf(area);
}
