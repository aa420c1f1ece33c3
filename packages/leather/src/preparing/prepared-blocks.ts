import { intersectRegions, regionArea, subtractRegions } from '@hidebound/geometry';
import type { Region } from '@hidebound/geometry';
import { hideRegion } from '../hide/hide-region.js';
import { startedRoughCuts, withoutSpoiledSeats } from '../layout/seats.js';
import type { Hide } from '../model/hide.js';
import type { Layout, PieceCopy, RoughCutBlock } from '../model/layout.js';
import type { OrderLeather, ResolvedArticle, ResolvedOrder, ResolvedPiece } from '../model/order.js';
import type { PatternPiece } from '../model/piece.js';
import { partOfHide } from '../offcuts/offcuts-of.js';
import type { NamedHide } from '../order/sheets.js';
import { mirrorPiece } from '../pieces/piece-shape.js';
import { layoutOfBlock } from './layout-of-block.js';

/** A rough cut once it is prepared: a hide of its own, with what is needed to lay its pieces on it again. */
export interface PreparedRoughCut {
  readonly id: string;
  /** Letters, digits and dashes: names its files. */
  readonly fileName: string;
  readonly hide: Hide;
  readonly order: ResolvedOrder;
  /** The pieces where they lay, locked; it is kept where the block kept its form. */
  readonly layout: Layout;
  /** The pieces as a pattern, by the names that the order uses. */
  readonly pieces: readonly PatternPiece[];
}

/**
 * Each rough cut of a leather with a preparation as a hide of its own (a child of the hide that it comes from, in the
 * parent’s frame, with what of its marks lies on it) and an order that asks for its own pieces only. Leather moves when it
 * is prepared: photograph the block again where the last millimetres count. Rough cuts of which a piece is cut are left out.
 */
export function preparedRoughCuts(given: Layout, hides: readonly NamedHide[]): PreparedRoughCut[] {
  const layout = { ...given, ...withoutSpoiledSeats(given) };
  const started = startedRoughCuts(given);
  return layout.roughCuts.flatMap((block) => {
    const leather = layout.order.leathers.find(({ name }) => name === block.leather);
    const parent = hides.find(({ hide }) => hide.id === block.hide)?.hide;
    if (leather?.preparation === undefined || parent === undefined || started.has(block.id)) return [];
    return [preparedRoughCut(block, leather, parent, layout)];
  });
}

function preparedRoughCut(
  block: RoughCutBlock,
  leather: OrderLeather,
  parent: Hide,
  layout: Layout,
): PreparedRoughCut {
  const fileName = `${parent.id}-${block.id}`.replace(/[^\p{L}\p{N}]+/gu, '-');
  const hide = preparedHide(block, leather, parent, fileName);
  const order = orderOfBlock(block, leather, layout, fileName);
  const pieces = patternOfBlock(block, layout);
  return {
    id: block.id,
    fileName,
    hide,
    order,
    pieces,
    layout: layoutOfBlock({ block, order, hide, pieces, layout }),
  };
}

function preparedHide(block: RoughCutBlock, { preparation }: OrderLeather, parent: Hide, id: string): Hide {
  const region = hideRegion(parent);
  const { photo: _, ...part } = partOfHide(parent, region, partOf(block, region), id);
  const { dye, finish } = preparation!;
  return {
    ...part,
    leather: {
      ...part.leather,
      ...(dye === undefined ? {} : { colour: dye }),
      ...(finish === undefined ? {} : { finish }),
    },
    notes: `Rough cut "${block.id}" of ${parent.id}, prepared: ${preparation!.name}`,
  };
}

/** The block less the openings of its hide; its own outline to the last digit where there are none. */
function partOf({ outline }: RoughCutBlock, hide: Region): Region {
  const whole: Region = { outer: outline, openings: [] };
  const openings = hide.openings.map((outer): Region => ({ outer, openings: [] }));
  if (intersectRegions(openings, [whole]).length === 0) return whole;
  const parts = subtractRegions([whole], openings);
  return [...parts].sort((a, b) => regionArea(b) - regionArea(a))[0] ?? whole;
}

/** What a leather is called after it was prepared: it has no preparation any more. */
function orderOfBlock(
  block: RoughCutBlock,
  { preparation, hides: _, ...leather }: OrderLeather,
  { order }: Layout,
  fileName: string,
): ResolvedOrder {
  const { dye, finish } = preparation!;
  const { edgeMm } = order.cutting;
  return {
    name: `${order.name}: ${block.id}`,
    version: order.version,
    date: order.date,
    articles: order.articles.flatMap((article) => articleOfBlock(article, block, fileName)),
    leathers: [
      {
        ...leather,
        ...(dye === undefined ? {} : { colour: dye }),
        ...(finish === undefined ? {} : { finish }),
        hides: [`${fileName}.hide.json`],
      },
    ],
    patterns: [],
    ...(order.table === undefined ? {} : { table: order.table }),
    useFrom: order.useFrom,
    mode: 'place all',
    // The block has no more room than its margin.
    cutting: { ...order.cutting, edgeMm: Math.min(edgeMm, block.marginMm) },
    keepMm: order.keepMm,
    threads: [],
    hardware: [],
  };
}

function articleOfBlock(article: ResolvedArticle, block: RoughCutBlock, fileName: string): ResolvedArticle[] {
  const own = block.members.filter((copy) => copy.article === article.name);
  if (own.length === 0) return [];
  const names = new Set(own.map(({ piece }) => piece));
  return [
    {
      name: article.name,
      goods: article.goods,
      ...(article.wants === undefined ? {} : { wants: article.wants }),
      pieces: article.pieces
        .filter(({ name }) => names.has(name))
        .map((piece) => pieceOfBlock(article, piece, own, names, fileName)),
      beside: article.beside.filter(([a, b]) => names.has(a) && names.has(b)),
      hardware: [],
      threads: [],
      sets: 1,
      value: article.value,
      priority: article.priority,
      keepTogether: 'nothing',
    },
  ];
}

/** Copies of all sets are copies of one set here. Plain and mirrored ones are pairs only where there is one for each. */
function pieceOfBlock(
  article: ResolvedArticle,
  resolved: ResolvedPiece,
  members: readonly PieceCopy[],
  names: ReadonlySet<string>,
  fileName: string,
): ResolvedPiece {
  const own = members.filter(({ piece }) => piece === resolved.name);
  const mirrored = own.filter((copy) => copy.mirrored).length;
  const { pair, marginMm: _, face: __, ...piece } = resolved;
  return {
    ...piece,
    from: { kind: 'pattern', file: `${fileName}.svg`, piece: patternName(article.name, resolved.name) },
    count: own.length,
    mirrored,
    ...(pair !== undefined && isAllPairs(own) ? { pair } : {}),
    layers: 1,
    allowanceMm: 0,
    seams: piece.seams.filter(({ to }) => names.has(to.piece)),
    inLane: false,
  };
}

/** Whether each copy has its other hand in the block: pairs are numbered alike. */
function isAllPairs(members: readonly PieceCopy[]): boolean {
  const keys = (mirrored: boolean): string[] =>
    members
      .filter((copy) => copy.mirrored === mirrored)
      .map(({ set, copy }) => `${set} ${copy}`)
      .sort();
  return keys(true).join() === keys(false).join();
}

function patternName(article: string, piece: string): string {
  return `${article}: ${piece}`;
}

/** The shapes that the layout holds, allowance and all; a layout holds what is seen from the flesh side as a mirror image. */
function patternOfBlock(block: RoughCutBlock, { order, pieces }: Layout): PatternPiece[] {
  return order.articles.flatMap(({ name: article, pieces: asked }) =>
    asked
      .filter(({ name }) => block.members.some((copy) => copy.article === article && copy.piece === name))
      .flatMap(({ name, side }): PatternPiece[] => {
        const found = pieces.find((piece) => piece.article === article && piece.piece === name);
        if (found === undefined) return [];
        const drawn = side === 'flesh' ? mirrorPiece(found.shape) : found.shape;
        return [{ piece: { ...drawn, name: patternName(article, name) }, source: { file: '' } }];
      }),
  );
}
