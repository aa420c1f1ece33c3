import type { Effect, Looks, Money } from './marks.js';
import type { DirectionWish, Cutting, Part } from './order.js';
import type { FlawKind, ZoneKind } from './hide.js';
import type { ThicknessRange } from './marks.js';
import type { Iron, StitchWish } from './stitch.js';
import type {
  CutSizeRule,
  Figure,
  GoodsRule,
  GradeRule,
  Offer,
  PriceRounding,
  TannageRule,
} from './workshop-rules.js';

/** Where a value comes from: a source mark of docs, "common practice, no source", "from memory", or "own". */
export type SourceMark = string;

/** `workshop.yaml`: the user's own defaults. What is absent keeps the built-in value. */
export interface Workshop {
  readonly name?: string;
  readonly parts: readonly PartRule[];
  readonly flawDefaults: readonly {
    readonly kind: FlawKind;
    readonly effect: Effect;
    readonly source: SourceMark;
  }[];
  readonly zoneDefaults: readonly {
    readonly kind: ZoneKind;
    readonly effect: Effect;
    readonly source: SourceMark;
  }[];
  readonly cuttingMethods: readonly (Cutting & { readonly source: SourceMark })[];
  readonly keepMm: readonly [number, number];
  readonly irons: readonly Iron[];
  /** How seams are sewn where neither piece nor article says it. */
  readonly stitch?: StitchWish;
  readonly goods: readonly GoodsRule[];
  readonly tannages: readonly TannageRule[];
  readonly cuts: readonly CutSizeRule[];
  readonly grades: readonly GradeRule[];
  readonly figures: readonly Figure[];
  readonly offers: readonly Offer[];
  readonly coverages: readonly Coverage[];
  readonly prices: readonly PriceLine[];
  readonly hourlyRate?: Money;
  readonly overheadPercent?: number;
  readonly profitPercent?: number;
  readonly taxPercent?: number;
  /** Absent: to the currency’s smallest coin. */
  readonly rounding?: PriceRounding;
}

/** What a part means where the order is silent. */
export interface PartRule {
  readonly part: Part;
  readonly looks: { readonly face: Looks; readonly rest: Looks };
  readonly bearsLoad: boolean;
  /** Absent: any zone. */
  readonly zones?: readonly ZoneKind[];
  readonly direction: DirectionWish;
  readonly thickness?: ThicknessRange;
  readonly tooThick: 'refuse' | 'skive';
  readonly source: SourceMark;
}

/** How much of a liquid a coat takes, mL per m². */
export interface Coverage {
  readonly product: string;
  readonly minMlPerM2: number;
  readonly maxMlPerM2: number;
  /** How it was measured, where it was. */
  readonly weighed?: WeighedCoverage;
  readonly source: SourceMark;
}

/** A bottle weighed before and after one coat over a known area. */
export interface WeighedCoverage {
  readonly beforeG: number;
  readonly afterG: number;
  readonly overMm2: number;
  /** What a mL weighs; absent: 1 g. */
  readonly gPerMl?: number;
}

export interface PriceLine {
  readonly name: string;
  readonly price: Money;
  /** "each", "m", "L", "hide", "m2". */
  readonly per: string;
}
