import { goodsRowOf, partRowOf } from '../goods/find-goods.js';
import type { ThicknessRange } from '../model/marks.js';
import type { OrderArticle, OrderLeather, OrderPiece, Part, ResolvedPiece } from '../model/order.js';
import type { GoodsRule, LeatherNeed } from '../model/workshop-rules.js';
import type { Workshop } from '../model/workshop.js';
import { ruleOfPart } from '../parts/part-table.js';
import type { Want, WantOrigin, WantedLeather } from './suit-model.js';

/** A piece as the order has it, and what its rules make of it. */
export interface WantedFor {
  readonly article: Pick<OrderArticle, 'goods' | 'wants'>;
  readonly piece: Pick<OrderPiece, 'thickness'>;
  readonly resolved: Pick<ResolvedPiece, 'part' | 'tooThick' | 'layers' | 'bearsLoad' | 'isTooled'>;
  readonly leather: OrderLeather | undefined;
  readonly workshop: Pick<Workshop, 'goods' | 'parts'>;
}

/** What lies on what counts for every part of the goods: a sheath's lining touches the blade. */
const NEEDS_OF_EVERY_PART: readonly LeatherNeed[] = ['lying against steel', 'lying on skin'];

/** What a part bears of its goods' needs; a part that is not named bears all. */
const NEEDS_OF_PART: Partial<Record<Part, readonly LeatherNeed[]>> = {
  strap: ['tooling', 'burnished edges', 'turned edges', 'keeping its length'],
  gusset: ['burnished edges'],
  flap: ['tooling', 'moulding', 'burnished edges', 'turned edges'],
  pocket: ['burnished edges', 'turned edges'],
  lining: [],
  stiffener: [],
  tab: ['burnished edges'],
};

/** Parts that are of the goods' own leather. A strap is only where the goods are a strap themselves. */
const OWN_LEATHER: readonly Part[] = ['front', 'back', 'flap', 'pocket', 'moulded'];

/**
 * What a piece wants of its leather. Thickness: the piece's own word, then the article's `wants`, then the order's
 * leather, the row of the part, the row of the goods, the rule of the part; for a part that is skived where its leather
 * is too thick (gusset, lining), its own row counts before the order's leather. All else: `wants`, leather, rows.
 * Thickness of a row or of `wants` is that of all layers together; of all others, that of each layer, as it is laid.
 */
export function wantedLeather(input: WantedFor): WantedLeather {
  const { article, leather, resolved, workshop } = input;
  const partRow = partRowOf(article.goods, resolved.part, workshop);
  const goodsRow = ownRow(goodsRowOf(article.goods, workshop), resolved.part);
  const { wants } = article;
  const thickness = wantedThickness(input, partRow, goodsRow);
  const tannages = first<readonly string[]>([
    ['wants', wants?.tannages],
    ['leather', leather?.tannage === undefined ? undefined : [leather.tannage]],
    ['part row', someOf(partRow?.tannages)],
    ['goods row', someOf(goodsRow?.tannages)],
  ]);
  const tempers = first([
    ['wants', wants?.tempers],
    ['leather', temperOfLeather(leather)],
    ['part row', someOf(partRow?.tempers)],
    ['goods row', someOf(goodsRow?.tempers)],
  ]);
  const finish = first([
    ['wants', wants?.finish],
    ['leather', leather?.finish],
    ['part row', partRow?.finish],
    ['goods row', goodsRow?.finish],
  ]);
  return {
    ...(thickness === undefined ? {} : { thickness }),
    ...(tannages === undefined ? {} : { tannages }),
    ...(tempers === undefined ? {} : { tempers }),
    ...(finish === undefined ? {} : { finish }),
    ...(leather?.colour === undefined ? {} : { colour: leather.colour }),
    needs: neededOf(input, partRow),
    ...(partRow === undefined ? {} : { partRow }),
    ...(goodsRow === undefined ? {} : { goodsRow }),
  };
}

/** The row of the goods, where this part is of the goods' own leather. */
function ownRow(row: GoodsRule | undefined, part: Part): GoodsRule | undefined {
  if (OWN_LEATHER.includes(part)) return row;
  return part === 'strap' && row?.needs.includes('keeping its length') === true ? row : undefined;
}

function wantedThickness(
  { article, piece, leather, resolved, workshop }: WantedFor,
  partRow: GoodsRule | undefined,
  goodsRow: GoodsRule | undefined,
): Want<ThicknessRange> | undefined {
  const { layers } = resolved;
  const each = (range: ThicknessRange | undefined): ThicknessRange | undefined =>
    range && { minMm: range.minMm / layers, maxMm: range.maxMm / layers };
  const ofLeather: Said<ThicknessRange> = ['leather', leather?.thickness];
  const ofPart: Said<ThicknessRange> = ['part row', each(partRow?.thickness)];
  return first([
    ['piece', piece.thickness],
    ['wants', each(article.wants?.thickness)],
    ...(resolved.tooThick === 'skive' ? [ofPart, ofLeather] : [ofLeather, ofPart]),
    ['goods row', each(goodsRow?.thickness)],
    ['part rule', ruleOfPart(resolved.part, workshop).thickness],
  ]);
}

function neededOf(
  { article, resolved, workshop }: WantedFor,
  partRow: GoodsRule | undefined,
): readonly LeatherNeed[] {
  const ofGoods = article.wants?.needs ?? goodsRowOf(article.goods, workshop)?.needs ?? [];
  const borne = NEEDS_OF_PART[resolved.part];
  const needs = new Set<LeatherNeed>([
    ...ofGoods.filter((need) => borne === undefined || borne.includes(need)),
    ...ofGoods.filter((need) => NEEDS_OF_EVERY_PART.includes(need)),
    ...(article.wants?.needs === undefined ? (partRow?.needs ?? []) : []),
    ...(resolved.isTooled === true ? (['tooling'] as const) : []),
    ...(resolved.part === 'moulded' ? (['moulding'] as const) : []),
    ...(resolved.part === 'strap' && resolved.bearsLoad ? (['keeping its length'] as const) : []),
  ]);
  return [...needs];
}

function temperOfLeather(leather: OrderLeather | undefined): WantedTempers {
  const temper = leather?.temper === undefined ? undefined : temperOf(leather.temper);
  return temper && [temper];
}

type WantedTempers = NonNullable<WantedLeather['tempers']>['value'] | undefined;

const TEMPER_WORDS = [
  ['hard', 'hard'],
  ['firm', 'firm'],
  ['medium', 'medium'],
  ['mellow', 'medium'],
  ['soft', 'soft'],
] as const;

/** The temper that these words mean; absent where they say none, or two. */
export function temperOf(words: string): 'soft' | 'medium' | 'firm' | 'hard' | undefined {
  const found = new Set(
    TEMPER_WORDS.filter(([word]) => new RegExp(`\\b${word}\\b`, 'i').test(words)).map(([, temper]) => temper),
  );
  return found.size === 1 ? [...found][0] : undefined;
}

function someOf<Item>(items: readonly Item[] | undefined): readonly Item[] | undefined {
  return items === undefined || items.length === 0 ? undefined : items;
}

type Said<Value> = readonly [from: WantOrigin, value: Value | undefined];

function first<Value>(said: readonly Said<Value>[]): Want<Value> | undefined {
  for (const [from, value] of said) if (value !== undefined) return { from, value };
  return undefined;
}
