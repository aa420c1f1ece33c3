import type { Looks, Money, Side, ThicknessRange } from './marks.js';
import type { PatternReading } from './pattern-reading.js';
import type { StitchRule, StitchWish } from './stitch.js';
import type { ZoneKind } from './hide.js';
import type { LeatherWants } from './workshop-rules.js';

export const PARTS = [
  'strap',
  'front',
  'back',
  'gusset',
  'flap',
  'pocket',
  'lining',
  'stiffener',
  'moulded',
  'tab',
] as const;
export type Part = (typeof PARTS)[number];

/** What is to be made, as the order file says it, with every quantity in mm, mm² and degrees. */
export interface Order {
  readonly name: string;
  readonly version: string;
  /** ISO 8601 day. */
  readonly date: string;
  readonly articles: readonly OrderArticle[];
  readonly leathers: readonly OrderLeather[];
  readonly patterns: readonly PatternReading[];
  /** Cutting table, mm. */
  readonly table?: { readonly widthMm: number; readonly lengthMm: number };
  readonly useFrom: UseFrom;
  readonly mode: OrderMode;
  readonly cutting: Cutting;
  /** A leftover smaller than this, either way round, is not kept. */
  readonly keepMm: readonly [number, number];
  readonly threads: readonly ThreadLine[];
  readonly hardware: readonly HardwareLine[];
  readonly hours?: number;
  readonly notes?: string;
}

export type OrderMode = 'place all' | 'sets' | 'fill';

/** The end from which a hide is used up; a number is the angle of the way into the hide, clockwise from its x axis. */
export type UseFrom = 'tail' | 'head' | 'backbone' | 'belly' | number;

export interface Cutting {
  /** "hand knife", "strap cutter", "laser". */
  readonly method: string;
  /** Between two cut lines, mm. */
  readonly gapMm: number;
  /** To the outline and the openings, mm. */
  readonly edgeMm: number;
  /** To void flaws, mm; the photo's own error comes on top. */
  readonly voidMm: number;
  readonly kerfMm: number;
}

/** An article as an order holds it: written there, or taken from an article file. */
export interface OrderArticle extends ArticleBody {
  readonly sets: number | 'as many as fit';
  readonly for?: string;
  readonly value: number;
  readonly priority: number;
  readonly keepTogether: KeepTogether;
}

export type KeepTogether = 'hide' | 'lot' | 'faces on one lot' | 'nothing';

/** What an article is made of: the part that an article file and an order share. */
export interface ArticleBody {
  readonly name: string;
  /** What it is: "saddlebag". */
  readonly goods: string;
  /** What its leather has to be, where the table of goods does not fit. */
  readonly wants?: LeatherWants;
  readonly pieces: readonly OrderPiece[];
  /** Faces that end up side by side: pairs of piece names. */
  readonly beside: readonly (readonly [string, string])[];
  readonly hardware: readonly HardwareLine[];
  readonly threads: readonly ThreadLine[];
  /** How its pieces are sewn, where they do not say it themselves. */
  readonly stitch?: StitchWish;
  readonly hours?: number;
}

/** `*.article.yaml`: an article of its own, so that a repeat order is one line. */
export interface Article extends ArticleBody {
  readonly leathers: readonly ArticleLeather[];
  /** Yield of the last real run: piece area over the leather that was used up, 0 to 1. */
  readonly lastYield?: number;
  readonly notes?: string;
}

/** What an article asks of one leather, without naming hides. */
export interface ArticleLeather {
  readonly name: string;
  readonly tannage?: string;
  readonly temper?: string;
  readonly finish?: string;
  readonly colour?: string;
  readonly thickness?: ThicknessRange;
}

export interface OrderLeather extends ArticleLeather {
  /** Hide files in the order in which they are to be used. */
  readonly hides: readonly string[];
  readonly preparation?: Preparation;
}

export interface Preparation {
  readonly name: string;
  readonly condition?: string;
  readonly dye?: string;
  /** "spirit", "oil", "water", "pigment". */
  readonly dyeBase?: string;
  readonly coats?: number;
  /** Parts of thinner to one part of dye. */
  readonly thinnerParts?: number;
  /** The thinner that the dye’s own label names. */
  readonly thinner?: string;
  /** What keeps dye or antique out of places, put on before the finish. */
  readonly resist?: string;
  readonly finish?: string;
  readonly finishCoats?: number;
  readonly bothSides: boolean;
}

export interface ThreadLine {
  readonly name: string;
  readonly thicknessMm?: number;
  readonly lengthMm?: number;
  readonly price?: Money;
}

export interface HardwareLine {
  readonly name: string;
  readonly count: number;
  readonly price?: Money;
}

/** A piece as the order file asks for it. What is absent comes from its part, then from the general default. */
export interface OrderPiece {
  readonly name: string;
  readonly leather: string;
  readonly part: Part;
  readonly from: PieceSource;
  /** Per set, mirrored copies included. */
  readonly count: number;
  /** Of these, so many mirrored. */
  readonly mirrored: number;
  readonly pair?: PairWish;
  readonly looks?: Partial<{ readonly face: Looks; readonly rest: Looks }>;
  readonly bearsLoad?: boolean;
  readonly zones?: readonly ZoneKind[];
  readonly side?: Side;
  readonly direction?: DirectionWish;
  /** Arrow in the pattern's own frame, clockwise from its x axis; overrules the drawn one. */
  readonly arrowDeg?: number;
  /** `all`, or the name of the line that bounds the face; overrules the drawn one. */
  readonly face?: string;
  readonly thickness?: ThicknessRange;
  readonly tooThick?: 'refuse' | 'skive';
  /** It is carved or stamped wet, and shrinks by it. */
  readonly isTooled?: boolean;
  readonly layers: number;
  /** Room around it in its rough cut, mm. */
  readonly marginMm?: number;
  /** Added around the cut line, mm; counts as rest, not as face. */
  readonly allowanceMm: number;
  readonly seams: readonly Seam[];
  readonly stitch?: StitchWish;
  readonly priority: number;
  /** To be cut with its neighbours in a lane of straps. */
  readonly inLane: boolean;
}

export type PieceSource =
  | { readonly kind: 'pattern'; readonly file: string; readonly piece: string }
  | { readonly kind: 'strap'; readonly strap: StrapNumbers }
  | {
      readonly kind: 'rectangle';
      readonly widthMm: number;
      readonly lengthMm: number;
      readonly cornerRadiusMm: number;
    }
  | { readonly kind: 'disc'; readonly diameterMm: number };

export const STRAP_ENDS = ['square', 'round', 'oval', 'pointed', 'arched point', 'clipped'] as const;
export type StrapEnd = (typeof STRAP_ENDS)[number];

/** A strap by numbers: it runs along x, its hole end at greater x, which is also where its arrow points. */
export interface StrapNumbers {
  readonly widthMm: number;
  readonly lengthMm: number;
  /** Form of the hole end and of the other end. */
  readonly holeEnd: StrapEnd;
  readonly buckleEnd: StrapEnd;
  readonly holes?: StrapHoles;
  readonly slot?: { readonly widthMm: number; readonly lengthMm: number; readonly fromEndMm: number };
}

/** A row of punched holes on the strap's axis. */
export interface StrapHoles {
  readonly count: number;
  readonly spacingMm: number;
  readonly diameterMm: number;
  /** From the tip of the hole end to the nearest hole's centre. */
  readonly fromEndMm: number;
}

export interface PairWish {
  readonly toleranceDeg: number;
  readonly distanceMm: number;
}

export interface DirectionWish {
  readonly rule: 'along' | 'across' | 'free' | 'fixed';
  /** For `fixed`: the arrow's angle to the local direction, clockwise. */
  readonly angleDeg: number;
  readonly toleranceDeg: number;
  /** A half turn is as good. */
  readonly halfTurn: boolean;
}

/** This piece's line is sewn to another piece's line. */
export interface Seam {
  readonly line: string;
  readonly to: { readonly piece: string; readonly line: string };
  /** Whether it is sewn to all of the other line, or to a part of it; absent: to all of it. */
  readonly covers?: 'all' | 'part';
}

/** A piece with every rule filled in from its part: nothing is left to a default. */
export interface ResolvedPiece {
  readonly name: string;
  readonly leather: string;
  readonly part: Part;
  readonly from: PieceSource;
  readonly count: number;
  readonly mirrored: number;
  readonly pair?: PairWish;
  readonly looks: { readonly face: Looks; readonly rest: Looks };
  readonly bearsLoad: boolean;
  readonly zones?: readonly ZoneKind[];
  readonly side: Side;
  readonly direction: DirectionWish;
  readonly arrowDeg?: number;
  readonly face?: string;
  readonly thickness?: ThicknessRange;
  readonly tooThick: 'refuse' | 'skive';
  readonly isTooled?: boolean;
  readonly layers: number;
  readonly marginMm?: number;
  readonly allowanceMm: number;
  readonly seams: readonly Seam[];
  /** Absent: nobody gave a pitch, so that its lines get no holes. */
  readonly stitch?: StitchRule;
  readonly priority: number;
  readonly inLane: boolean;
}

export interface ResolvedArticle extends Omit<OrderArticle, 'pieces' | 'stitch'> {
  readonly pieces: readonly ResolvedPiece[];
}

/** The order as a layout holds it: article files read, parts applied. */
export interface ResolvedOrder extends Omit<Order, 'articles'> {
  readonly articles: readonly ResolvedArticle[];
}
