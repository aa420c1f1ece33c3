import { regionArea } from '@hidebound/geometry';
import type { Layout, PiecePlacement } from '../model/layout.js';
import { shareOfMoney } from '../units/exact-money.js';
import type { ExactMoney } from '../units/exact-money.js';
import { quoteValue } from '../words/sentence.js';
import { certain, sumSpans } from './cost-span.js';
import type { CostSpan } from './cost-span.js';
import type { HideCost } from './hide-cost.js';

/** What one piece of an article takes of one hide, its share of the waste included. */
export interface LeatherShare {
  readonly article: string;
  readonly piece: string;
  readonly leather: string;
  readonly hide: string;
  readonly copies: number;
  /** Of the pieces alone, mm². */
  readonly piecesMm2: number;
  /** With the share of what lies between pieces, at the edge and under flaws. */
  readonly usedUpMm2: number;
  readonly cost?: ExactMoney;
}

/** Areas are shared by thousandths of a mm², as whole numbers: so shares add up exactly. */
const STEPS_PER_MM2 = 1000;

/**
 * The used-up leather of every hide, shared among the pieces on it by their area: waste is borne by all that lie on
 * the hide, whoever they are for. Spoiled copies are waste as well.
 */
export function leatherShares(
  layout: Layout,
  hides: readonly Pick<HideCost, 'hide' | 'areas' | 'usedUp'>[],
): LeatherShare[] {
  const areaOf = areasOfPieces(layout);
  return hides.flatMap(({ hide, areas, usedUp }) => {
    const here = layout.placements.filter((placement) => placement.hide === hide);
    const good = here.filter(({ state }) => state !== 'spoiled');
    const counted = good.length === 0 ? here : good;
    const whole = counted.reduce((sum, placement) => sum + areaOf(placement), 0);
    return groupByPiece(counted).map((copies): LeatherShare => {
      const { article, piece } = copies[0]!;
      const part = areaOf(copies[0]!) * copies.length;
      return {
        article,
        piece,
        leather: leatherOf(layout, article, piece),
        hide,
        copies: copies.length,
        piecesMm2: part / STEPS_PER_MM2,
        usedUpMm2: (areas.usedUpMm2 * part) / whole,
        ...(usedUp === undefined ? {} : { cost: shareOfMoney(usedUp, part, whole) }),
      };
    });
  });
}

function areasOfPieces({ pieces }: Layout): (of: Pick<PiecePlacement, 'article' | 'piece'>) => number {
  const areas = new Map(
    pieces.map(({ article, piece, region }) => [
      JSON.stringify([article, piece]),
      Math.round(regionArea(region) * STEPS_PER_MM2),
    ]),
  );
  return ({ article, piece }) => areas.get(JSON.stringify([article, piece])) ?? 0;
}

function groupByPiece(placements: readonly PiecePlacement[]): PiecePlacement[][] {
  const groups = new Map<string, PiecePlacement[]>();
  for (const placement of placements) {
    const key = JSON.stringify([placement.article, placement.piece]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [placement]);
    else group.push(placement);
  }
  return [...groups.values()];
}

function leatherOf({ order }: Layout, article: string, piece: string): string {
  const found = order.articles.find(({ name }) => name === article);
  return found?.pieces.find(({ name }) => name === piece)?.leather ?? '';
}

/** Together, of those that have a price. */
export function costOfShares(shares: readonly LeatherShare[]): CostSpan | undefined {
  return sumSpans(
    shares.flatMap(({ cost, hide }) =>
      cost === undefined ? [] : [{ cost: certain(cost), place: `the price of hide ${quoteValue(hide)}` }],
    ),
  );
}
