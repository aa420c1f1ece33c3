import type { HideCut, ZoneKind } from './hide.js';
import type { Money, ThicknessRange } from './marks.js';
import type { SourceMark } from './workshop.js';

/** What leather may have to do in a piece of goods. */
export const LEATHER_NEEDS = [
  'tooling',
  'moulding',
  'burnished edges',
  'turned edges',
  'standing up',
  'keeping its length',
  'lying against steel',
  'lying on skin',
] as const;
export type LeatherNeed = (typeof LEATHER_NEEDS)[number];

/** From the softest to the hardest. */
export const TEMPERS = ['soft', 'medium', 'firm', 'hard'] as const;
export type Temper = (typeof TEMPERS)[number];

/** From least to most; both ends belong to it. */
export interface Span {
  readonly min: number;
  readonly max: number;
}

/** What a kind of goods, or a part that many goods have (gusset, lining), wants of its leather. */
export interface GoodsRule {
  readonly goods: string;
  /** Other names that an order may use. */
  readonly alsoCalled: readonly string[];
  /** Absent: any. */
  readonly thickness?: ThicknessRange;
  /** Tannages that suit, the usual one first; none: any. */
  readonly tannages: readonly string[];
  /** Tempers that suit, the usual one first; none: any. */
  readonly tempers: readonly Temper[];
  readonly finish?: string;
  /** Zones that it usually comes from; absent: any. */
  readonly zones?: readonly ZoneKind[];
  readonly needs: readonly LeatherNeed[];
  readonly source: SourceMark;
}

/** The same, where an order or article overrules its goods' row; what is absent comes from the row. */
export type LeatherWants = Partial<Omit<GoodsRule, 'goods' | 'alsoCalled' | 'source'>>;

/** What leather of one tannage can do. */
export interface TannageRule {
  readonly tannage: string;
  readonly alsoCalled: readonly string[];
  /** Needs that are not named are met. */
  readonly meets: Readonly<Partial<Record<LeatherNeed, 'yes' | 'no' | 'with care'>>>;
  readonly source: SourceMark;
}

/** How large a cut or skin is, as the trade sells it. */
export interface CutSizeRule {
  /** "side", "calf skin". */
  readonly name: string;
  readonly cut: HideCut;
  readonly areaMm2: Span;
  /** Along the backbone, and across it. */
  readonly lengthMm: Span;
  readonly widthMm: Span;
  readonly source: SourceMark;
}

/** How much of a hide of a grade is free of flaws. */
export interface GradeRule {
  readonly grade: string;
  /** Share of the area, 0 to 1. */
  readonly usableShare: Span;
  readonly source: SourceMark;
}

export const FIGURE_UNITS = ['mm', 'h', 'min', '%', 'mL/m²', '°C', 'times', 'coats'] as const;
export type FigureUnit = (typeof FIGURE_UNITS)[number];

/** One figure of the trade that a user may know better: a shrinkage, a rest, a loss. */
export interface Figure {
  /** "shrinkage, tooled": its key in the workshop file. */
  readonly name: string;
  /** What it is, in a sentence without its full stop. */
  readonly words: string;
  readonly value: Span;
  readonly unit: FigureUnit;
  readonly source: SourceMark;
}

/** Leather as it can be bought, so that what to buy can be reckoned before there is a hide. */
export interface Offer {
  readonly name: string;
  /** A row of the table of cuts, by name. */
  readonly cut: string;
  readonly tannage?: string;
  readonly temper?: string;
  readonly finish?: string;
  readonly colour?: string;
  readonly thickness?: ThicknessRange;
  readonly grade?: string;
  /** Of one hide; absent: as the table of cuts says. */
  readonly areaMm2?: Span;
  readonly price: Money;
  readonly per: 'hide' | 'ft2' | 'm2' | 'dm2';
  readonly source: SourceMark;
}

/** How a price is rounded: to whole multiples of an amount. */
export interface PriceRounding {
  readonly to: Money;
  readonly way: 'up' | 'nearest';
}
