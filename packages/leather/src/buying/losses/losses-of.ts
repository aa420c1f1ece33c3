import type { Span } from '../../model/workshop-rules.js';
import type { Workshop } from '../../model/workshop.js';
import { figureOf, middleOf } from '../../workshop/figures.js';
import { areaToBuy } from './area-to-buy.js';
import type { AreaToBuy, LossShares } from './area-to-buy.js';
import { lossAtEdge } from './loss-at-edge.js';
import { lossBetween } from './loss-between.js';
import type { RepeatedPiece } from './loss-between.js';
import { FLAWS_DOUBLE_WIDTH, FLAWS_FROM_WIDTH, STRIP_AT_EDGE } from './losses-figures.js';

/** A kind of piece with all that its losses follow from. */
export interface LossPiece extends RepeatedPiece {
  /** The shorter side of the narrowest box around it, mm. */
  readonly widthMm: number;
}

export interface LossesInput {
  readonly pieces: readonly LossPiece[];
  /** The hide as it is bought: its area, and the length of its outline. */
  readonly hide: { readonly areaMm2: number; readonly outlineMm: number };
  /** Of the hide's grade, 0 to 1. */
  readonly usableShare: Span;
  /** Distance that pieces keep from the edge, mm. */
  readonly edgeMm: number;
  readonly workshop: Pick<Workshop, 'figures'>;
}

/** The losses, and the area that they lead to. */
export interface Losses extends LossShares, AreaToBuy {}

/** With the least loss that the figures allow, with the likely one, and with the most. */
export interface LossesSpan {
  readonly low: Losses;
  readonly likely: Losses;
  readonly high: Losses;
}

/**
 * The three losses of leather, apart, without a trial layout: between pieces, at the edge, by flaws, and the area to
 * buy. What stands in `inRepeatMm2` is taken as it is; edge and flaws follow from the workshop's figures, low, middle
 * and high. Pieces of no area take nothing.
 */
export function lossesOf(input: LossesInput): LossesSpan {
  const strip = figureOf(input.workshop, STRIP_AT_EDGE).value;
  const from = figureOf(input.workshop, FLAWS_FROM_WIDTH).value;
  const double = figureOf(input.workshop, FLAWS_DOUBLE_WIDTH).value;
  const share = input.usableShare;
  return {
    low: losses(input, { strip: strip.min, from: from.max, double: double.max, share: share.max }),
    likely: losses(input, {
      strip: middleOf(strip),
      from: middleOf(from),
      double: middleOf(double),
      share: middleOf(share),
    }),
    high: losses(input, { strip: strip.max, from: from.min, double: double.min, share: share.min }),
  };
}

interface Case {
  readonly strip: number;
  readonly from: number;
  readonly double: number;
  readonly share: number;
}

function losses({ pieces, hide, edgeMm }: LossesInput, { strip, from, double, share }: Case): Losses {
  const netMm2 = pieces.reduce((sum, { copies, netMm2: net }) => sum + copies * net, 0);
  const widthMm = meanWidth(pieces);
  const shares: LossShares = {
    between: lossBetween(pieces),
    edge: lossAtEdge(hide, { widthMm, strip, edgeMm }),
    usable: usableFor(widthMm, { from, double, share }),
  };
  return { ...shares, ...areaToBuy(netMm2, shares) };
}

/** Every copy counts once: at the edge and between flaws there is room for the small ones. */
function meanWidth(pieces: readonly LossPiece[]): number {
  const copies = pieces.reduce((sum, piece) => sum + piece.copies, 0);
  if (copies === 0) return 0;
  return pieces.reduce((sum, piece) => sum + piece.copies * piece.widthMm, 0) / copies;
}

/** However wide a piece, some of a hide is good for it, or it would not be bought. */
const LEAST_USABLE = 0.2;

/**
 * What of a hide is good for pieces of a width: as its grade says for small ones, and less by as much again for each
 * further width `double`, because good leather that is narrower than the piece is lost beside the flaw.
 */
export function usableFor(widthMm: number, { from, double, share }: Omit<Case, 'strip'>): number {
  const times = 1 + Math.max(0, widthMm - from) / double;
  return Math.max(Math.min(share, LEAST_USABLE), 1 - (1 - share) * times);
}
