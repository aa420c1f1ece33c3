import type { Diagnostic } from '../model/diagnostic.js';
import type { Money } from '../model/marks.js';
import type { CoinSpan, QuantitySpan } from './cost-span.js';

/** What is bought or done for an article; all else is reckoned on top of these. */
export const MATERIAL_KINDS = ['leather', 'thread', 'hardware', 'liquid'] as const;
export type MaterialKind = (typeof MATERIAL_KINDS)[number];

export type CostKind =
  | MaterialKind
  | 'supplies'
  /** Sum of the materials … */
  | 'materials'
  | 'return on materials'
  /** … and with the return on them. */
  | 'materials with return'
  | 'work'
  | 'overhead'
  | 'profit'
  /** What rounding adds to the price before tax, or takes off. */
  | 'rounding'
  | 'before tax'
  | 'tax'
  | 'price';

/** Rows that are sums of others. */
export const SUM_KINDS: ReadonlySet<CostKind> = new Set([
  'materials',
  'materials with return',
  'before tax',
  'price',
]);

export type CostUnit = 'mm²' | 'mm' | 'mL' | 'each' | 'h';

/** One line of a cost sheet, for one set. */
export interface CostRow {
  readonly kind: CostKind;
  /** "body", "linen 18/3"; the sums have none. */
  readonly name?: string;
  readonly quantity?: QuantitySpan;
  readonly unit?: CostUnit;
  /** Of what it is reckoned on. */
  readonly percent?: QuantitySpan;
  /** Absent: nobody gave a price. */
  readonly cost?: CoinSpan;
}

/** What one article costs, and its price. */
export interface ArticleCost {
  readonly article: string;
  readonly goods: string;
  readonly for?: string;
  readonly sets: number;
  /** For one set, in the order in which they are reckoned. */
  readonly rows: readonly CostRow[];
  /** Price of one set, tax included, rounded as the workshop does. */
  readonly price: CoinSpan;
  /** So many times that; the tax in it, and what is left without. */
  readonly sum: CoinSpan;
  readonly taxInSum: CoinSpan;
  readonly beforeTax: CoinSpan;
  /** Leather of each piece, with its share of the waste. */
  readonly pieces: readonly PieceCost[];
}

export interface PieceCost {
  readonly piece: string;
  readonly leather: string;
  /** In a set. */
  readonly copies: number;
  readonly areaMm2: number;
  /** Of one copy; absent: no price. */
  readonly cost?: CoinSpan;
}

/** A hide of the layout, with what it costs. */
export interface HideCostLine {
  readonly hide: string;
  readonly grossMm2: number;
  readonly usableMm2: number;
  readonly usedUpMm2: number;
  readonly piecesMm2: number;
  readonly leftMm2: number;
  readonly price?: Money;
  /** The area that the price is of, where it is a price per area. */
  readonly pricedMm2?: number;
  readonly usedUp?: Money;
  readonly left?: Money;
  readonly piecesOnly?: Money;
  readonly byUsable?: Money;
  readonly perUsableFt2?: Money;
  readonly perUsableDm2?: Money;
}

/** A leather of which there is no hide yet, as it is likely to be bought. */
export interface LeatherCostLine {
  readonly leather: string;
  readonly piecesMm2: number;
  readonly areaMm2: QuantitySpan;
  /** The offer that it is reckoned with: the one that comes out cheapest. */
  readonly offer?: string;
  readonly cost?: CoinSpan;
}

export interface CustomerCost {
  /** Absent: nobody was named. */
  readonly for?: string;
  readonly articles: readonly string[];
  readonly sum: CoinSpan;
  readonly taxInSum: CoinSpan;
  readonly beforeTax: CoinSpan;
}

/** One kind of cost over all articles and sets: where the money goes. */
export interface KindTotal {
  readonly kind: Exclude<CostKind, 'materials' | 'materials with return' | 'before tax' | 'price'>;
  readonly cost: CoinSpan;
}

/** Something that a price is missing for. */
export interface MissingPrice {
  readonly kind: MaterialKind | 'work';
  readonly name: string;
  /** What it is missing for. */
  readonly unit: CostUnit;
}

/** What an order costs. All sums are exact and rounded once, where they are told. */
export interface CostSheet {
  readonly currency: string;
  readonly articles: readonly ArticleCost[];
  readonly customers: readonly CustomerCost[];
  readonly kinds: readonly KindTotal[];
  readonly sum: CoinSpan;
  readonly taxInSum: CoinSpan;
  readonly beforeTax: CoinSpan;
  readonly taxPercent?: number;
  /** Of a layout: its hides. */
  readonly hides: readonly HideCostLine[];
  /** Before there is a hide: its leathers. */
  readonly leathers: readonly LeatherCostLine[];
  readonly withoutPrice: readonly MissingPrice[];
  readonly diagnostics: readonly Diagnostic[];
}
