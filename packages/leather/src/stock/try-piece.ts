import { regionArea, regionsArea, runNest } from '@hidebound/geometry';
import { checkLayout } from '../layout/check-layout.js';
import { layoutFrom } from '../layout/layout-from.js';
import type { Hide } from '../model/hide.js';
import type { Layout } from '../model/layout.js';
import type { ResolvedOrder, ResolvedPiece } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import type { Workshop } from '../model/workshop.js';
import { nestProblemFor } from '../order/problem.js';
import type { NamedHide } from '../order/sheets.js';
import { leatherError } from '../words/refuse.js';
import { usableParts } from './stock-sizes.js';

export interface TryInput {
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  /** Its name; `article` where several articles have such a piece. */
  readonly piece: string;
  readonly article?: string | undefined;
  /** So many are wanted. */
  readonly count: number;
  readonly hides: readonly NamedHide[];
  readonly workshop: Workshop;
}

/** What came of laying a piece on one hide of the stock. */
export interface PieceTrial extends NamedHide {
  readonly fits: number;
  /** No more were tried, so that there may be room for more. */
  readonly isFull: boolean;
  readonly isEnough: boolean;
  readonly usableMm2: number;
  readonly remarks: readonly StockRemark[];
}

/** What of a leather is not as a piece asks, or not known. */
export type StockRemark =
  | { readonly kind: 'colour' | 'tannage'; readonly is: string; readonly wanted: string }
  | { readonly kind: 'thickness not known' | 'reserved' };

/** More of one piece are not looked for on one hide, unless more are wanted. */
const MOST_TRIED = 20;
/** The first layout: what is looked for is whether there is room, not the best place. */
const BUDGET = { seed: 1, streams: 1, joins: 0 } as const;

/**
 * Lays copies of one piece on each hide by itself, by all of its rules, and proves what was laid. The smallest hide that
 * holds the count comes first, then those that hold fewer; leather that is not as asked comes after what is.
 */
export function tryPiece(input: TryInput): PieceTrial[] {
  const { article, piece } = findPiece(input);
  const trials = input.hides
    .filter(({ hide }) => hide.state !== 'cut')
    .map((named) => tryOn(named, input, article, piece));
  return trials.sort(
    (a, b) =>
      Number(b.isEnough) - Number(a.isEnough) ||
      Number(a.remarks.length > 0) - Number(b.remarks.length > 0) ||
      (a.isEnough ? a.usableMm2 - b.usableMm2 : b.fits - a.fits || a.usableMm2 - b.usableMm2),
  );
}

function findPiece({ order, piece, article }: TryInput): {
  readonly article: string;
  readonly piece: ResolvedPiece;
} {
  const found = order.articles
    .filter(({ name }) => article === undefined || name === article)
    .flatMap(({ name, pieces }) =>
      pieces.filter((each) => each.name === piece).map((each) => ({ article: name, piece: each })),
    );
  const [first, second] = found;
  if (first === undefined) {
    const known = order.articles.flatMap(({ pieces }) => pieces.map(({ name }) => name));
    throw leatherError('stock-no-such-piece', { piece, known: [...new Set(known)].join(', ') });
  }
  if (second !== undefined) {
    throw leatherError('stock-piece-of-several', {
      piece,
      articles: found.map((each) => each.article).join(', '),
    });
  }
  return first;
}

function tryOn(named: NamedHide, input: TryInput, article: string, piece: ResolvedPiece): PieceTrial {
  const { hide } = named;
  const usableMm2 = regionsArea(usableParts(hide, { workshop: input.workshop }));
  const layable = input.pieces.find((each) => each.article === article && each.piece === piece.name);
  const areaMm2 = layable === undefined ? Infinity : regionArea(layable.region) * piece.layers;
  const most = Math.max(input.count, MOST_TRIED);
  // There can't be more than their area allows.
  const tried = Math.min(most, Math.floor(usableMm2 / areaMm2));
  const fits =
    tried === 0 ? 0 : copiesLaid(layPiece(named, input, article, { ...alone(piece), sets: tried }), piece);
  return {
    ...named,
    fits,
    isFull: fits === most,
    isEnough: fits >= input.count,
    usableMm2,
    remarks: leatherRemarks(hide, input.order, piece),
  };
}

/** One copy a set, by itself: no seam, no mirrored one, no lane of straps. */
function alone(piece: ResolvedPiece): { readonly piece: ResolvedPiece } {
  const { pair: _pair, ...rest } = piece;
  return { piece: { ...rest, count: 1, mirrored: 0, seams: [], inLane: false } };
}

function layPiece(
  named: NamedHide,
  { order, pieces, workshop }: TryInput,
  articleName: string,
  { piece, sets }: { readonly piece: ResolvedPiece; readonly sets: number },
): Layout | undefined {
  const articles = order.articles
    .filter(({ name }) => name === articleName)
    .map((article) => ({ ...article, sets, pieces: [piece], beside: [], keepTogether: 'nothing' as const }));
  const leathers = order.leathers
    .filter(({ name }) => name === piece.leather)
    .map((leather) => ({ ...leather, hides: [named.file] }));
  const input = {
    order: { ...order, articles, leathers, mode: 'place all' as const },
    pieces: pieces.filter((each) => each.article === articleName && each.piece === piece.name),
    hides: [named],
    workshop,
  };
  const problem = nestProblemFor({ ...input, budget: BUDGET });
  const { seed, streams, joins } = BUDGET;
  const layout = layoutFrom({
    ...input,
    problem,
    answer: runNest(problem.problem),
    origin: { version: '', seed, streams, effort: joins },
  });
  return checkLayout(layout, [named], { workshop }).proven ? layout : undefined;
}

function copiesLaid(layout: Layout | undefined, { layers }: ResolvedPiece): number {
  return Math.floor((layout?.placements.length ?? 0) / layers);
}

/** Only what both sides say is compared. */
function leatherRemarks({ leather, state }: Hide, order: ResolvedOrder, piece: ResolvedPiece): StockRemark[] {
  const asked = order.leathers.find(({ name }) => name === piece.leather);
  const differs = (kind: 'colour' | 'tannage'): StockRemark[] => {
    const [is, wanted] = [leather[kind], asked?.[kind]];
    const same = is?.trim().toLowerCase() === wanted?.trim().toLowerCase();
    return is === undefined || wanted === undefined || same ? [] : [{ kind, is, wanted }];
  };
  const isUnknown =
    piece.thickness !== undefined && leather.thickness === undefined && leather.readings.length === 0;
  return [
    ...differs('tannage'),
    ...differs('colour'),
    ...(isUnknown ? [{ kind: 'thickness not known' } as const] : []),
    ...(state === 'reserved' ? [{ kind: 'reserved' } as const] : []),
  ];
}
