import type {
  Budget,
  FixedPlacement,
  Item,
  NestProblem,
  Objective,
  Placement,
  Region,
  RuleName,
  SetKind,
} from '@hidebound/geometry';
import { MIRROR_X, transformRegion } from '@hidebound/geometry';
import type { Diagnostic } from '../model/diagnostic.js';
import type { Layout, PiecePlacement } from '../model/layout.js';
import type { KeepTogether, OrderMode, ResolvedArticle, ResolvedOrder } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import { nearestParams } from '../words/nearest.js';
import { leatherErrorAs } from '../words/refuse.js';
import { bareCopy, itemId, pieceCopyKey } from './item-id.js';
import type { ItemMeaning } from './item-id.js';
import { copiesPerSet, itemsOfPiece, laneWidthMm } from './items.js';
import { sheetsOfOrder } from './sheets.js';
import type { NamedHide, SheetOptions } from './sheets.js';

export interface ProblemInput extends SheetOptions {
  readonly order: ResolvedOrder;
  readonly pieces: readonly LayablePiece[];
  readonly hides: readonly NamedHide[];
  /** Its locked, cut and spoiled placements stay where they are. */
  readonly keep?: KeptLayout;
  readonly budget: Budget;
}

/** What of a layout is kept. Its lanes are read for the seats of spoiled straps alone. */
export type KeptLayout = Pick<Layout, 'placements'> & Partial<Pick<Layout, 'lanes'>>;

export interface LayoutProblem {
  readonly problem: NestProblem;
  /** What each item stands for. */
  readonly items: ReadonlyMap<string, ItemMeaning>;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The nesting problem of an order. Item ids are `article/piece` and `article/piece~mirrored`, set kinds are articles.
 * Of a layout to keep, locked and cut placements are fixed, matched by article, piece, set, copy and mirrored; a
 * spoiled one keeps its place as an item of its own (`spoiled/1`), so that its gap holds and its copy is asked for
 * again. Throws `LeatherError` for hides that are not given and kept pieces that the order no longer has.
 */
export function nestProblemFor(input: ProblemInput): LayoutProblem {
  const { order, pieces, budget } = input;
  const { sheets, ofLeather, diagnostics } = sheetsOfOrder(order, input.hides, input);
  const items = order.articles.flatMap((article) => articleItems(article, pieces, ofLeather));
  const meanings = new Map<string, ItemMeaning>(order.articles.flatMap(articleMeanings));
  const kept = (input.keep?.placements ?? []).filter(
    (placement) => placement.locked || placement.state !== 'planned' || placement.accepted.length > 0,
  );
  const spoiled = spoiledItems(kept, input);
  for (const { meaning, item } of spoiled) meanings.set(item.id, meaning);
  const problem: NestProblem = {
    items: [...items, ...spoiled.map(({ item }) => item)],
    setKinds: [...order.articles.map(setKindOf), ...spoiled.map(({ item }) => ownSetKind(item))],
    sheets,
    fixed: [
      ...kept
        .filter(({ state }) => state !== 'spoiled')
        .map((placement) => fixedPlacement(placement, meanings)),
      ...spoiled.map(({ placement }) => ({ ...placement, accepted: SPENT_RULES })),
    ],
    distances: {
      // Two cut lines are never nearer than what the blade or beam takes away.
      gap: Math.max(order.cutting.gapMm, order.cutting.kerfMm),
      edge: order.cutting.edgeMm,
      void: order.cutting.voidMm,
      ...(order.cutting.kerfMm > 0 ? { kerf: order.cutting.kerfMm } : {}),
    },
    objective: { mode: MODES[order.mode], keepMm: order.keepMm },
    budget,
  };
  return { problem, items: meanings, diagnostics };
}

const MODES: Readonly<Record<OrderMode, Objective['mode']>> = {
  'place all': 'placeAll',
  sets: 'sets',
  fill: 'fill',
};

const KEEPS: Readonly<Record<KeepTogether, SetKind['keep']>> = {
  hide: 'sheet',
  lot: 'lot',
  'faces on one lot': 'faceLot',
  nothing: 'nothing',
};

function articleItems(
  article: ResolvedArticle,
  pieces: readonly LayablePiece[],
  ofLeather: ReadonlyMap<string, readonly string[]>,
): Item[] {
  return article.pieces.flatMap((orderPiece) =>
    itemsOfPiece({
      article,
      orderPiece,
      piece: layableOf(article.name, orderPiece.name, pieces),
      sheets: ofLeather.get(orderPiece.leather) ?? [],
    }),
  );
}

function articleMeanings(article: ResolvedArticle): [string, ItemMeaning][] {
  return article.pieces.flatMap(({ name }) =>
    [false, true].map((mirrored): [string, ItemMeaning] => [
      itemId(article.name, name, mirrored),
      { kind: 'piece', article: article.name, piece: name, mirrored },
    ]),
  );
}

function setKindOf(article: ResolvedArticle): SetKind {
  const members = article.pieces.flatMap((piece) => {
    const { plain, mirrored } = copiesPerSet(piece);
    return [
      { item: itemId(article.name, piece.name, false), count: plain },
      { item: itemId(article.name, piece.name, true), count: mirrored },
    ].filter(({ count }) => count > 0);
  });
  const firstItem = (name: string): string | undefined =>
    [itemId(article.name, name, false), itemId(article.name, name, true)].find((id) =>
      members.some(({ item }) => item === id),
    );
  return {
    id: article.name,
    sets: article.sets === 'as many as fit' ? 'many' : article.sets,
    members,
    value: article.value,
    priority: article.priority,
    keep: KEEPS[article.keepTogether],
    beside: article.beside.flatMap(([first, second]): [string, string][] => {
      const a = firstItem(first);
      const b = firstItem(second);
      return a === undefined || b === undefined ? [] : [[a, b]];
    }),
  };
}

/** The set kind of something that is there once and belongs to no article. */
export function ownSetKind(item: Item): SetKind {
  return {
    id: item.id,
    sets: 1,
    members: [{ item: item.id, count: 1 }],
    value: 0,
    priority: item.priority,
    keep: 'nothing',
    beside: [],
  };
}

/** Something that only takes up room: any angle, any leather. */
export function plainObstacle(id: string, region: Region, sheet: string): Item {
  return {
    id,
    region,
    need: { maxGrade: 2, strong: false },
    parts: [],
    angleRule: { frame: 'free', arrowDeg: 0, targetsDeg: [], toleranceDeg: 180, modulo: 360 },
    value: 0,
    priority: 0,
    sheets: [sheet],
    isFace: false,
  };
}

/** What leather lies under a spoiled copy is all one: often it is spoiled because of a flaw there. */
export const SPENT_RULES: readonly RuleName[] = ['void', 'edge'];

interface SpoiledItem {
  readonly item: Item;
  readonly meaning: ItemMeaning;
  readonly placement: Placement;
}

/** A spoiled copy still takes up its room, also in its rough cut (by its group) and in its lane (by its width). */
function spoiledItems(kept: readonly PiecePlacement[], { order, pieces, keep }: ProblemInput): SpoiledItem[] {
  const seats = new Set(
    (keep?.lanes ?? []).flatMap(({ rows }) => rows.flatMap(({ straps }) => straps.map(pieceCopyKey))),
  );
  return kept
    .filter(({ state }) => state === 'spoiled')
    .map((placement, i) => {
      const { hide, x, y, rotationDeg } = placement;
      const orderPiece = order.articles
        .find(({ name }) => name === placement.article)
        ?.pieces.find(({ name }) => name === placement.piece);
      const { region } = layableOf(placement.article, placement.piece, pieces);
      const id = `spoiled/${i + 1}`;
      const isStrap = orderPiece?.inLane === true && seats.has(pieceCopyKey(placement));
      return {
        item: {
          ...plainObstacle(id, placement.mirrored ? transformRegion(MIRROR_X, region) : region, hide),
          ...(orderPiece === undefined ? {} : { group: orderPiece.leather }),
          ...(isStrap ? { lane: { widthMm: laneWidthMm(orderPiece), firmEnd: 0 } } : {}),
        },
        meaning: { kind: 'spoiled', copy: bareCopy(placement) },
        placement: { item: id, set: 1, copy: 1, sheet: hide, x, y, rotationDeg },
      };
    });
}

function fixedPlacement(placement: PiecePlacement, items: ReadonlyMap<string, ItemMeaning>): FixedPlacement {
  const item = itemId(placement.article, placement.piece, placement.mirrored);
  if (!items.has(item)) {
    const { piece, article } = placement;
    throw leatherErrorAs('unknown-piece', 'keep-piece-unknown', { piece, article });
  }
  return { ...placementOf(placement, item), accepted: placement.accepted };
}

/** A layout's placement as nesting writes it. */
export function placementOf(placement: PiecePlacement, item: string): Placement {
  const { set, copy, hide, x, y, rotationDeg } = placement;
  return { item, set, copy, sheet: hide, x, y, rotationDeg };
}

function layableOf(article: string, piece: string, pieces: readonly LayablePiece[]): LayablePiece {
  const found = pieces.find((p) => p.article === article && p.piece === piece);
  if (found !== undefined) return found;
  const near = nearestParams(
    piece,
    pieces.filter((p) => p.article === article).map((p) => p.piece),
  );
  throw leatherErrorAs('unknown-piece', 'piece-not-ready', { piece, article, ...near });
}
