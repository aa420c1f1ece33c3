import type { Point, Region, Ring, RuleName, UnplacedReason } from '@hidebound/geometry';
import type { FlawKind, Hide, ZoneKind } from './hide.js';
import type { Effect } from './marks.js';
import type { LayablePiece } from './piece.js';
import type { ResolvedOrder } from './order.js';

/** Where every piece lies on which hide, and all that is needed to prove it with the hides at hand. */
export interface Layout {
  readonly order: ResolvedOrder;
  readonly hides: readonly LayoutHide[];
  readonly pieces: readonly LayablePiece[];
  readonly placements: readonly PiecePlacement[];
  readonly lanes: readonly StrapLane[];
  readonly roughCuts: readonly RoughCutBlock[];
  readonly swatches: readonly Swatch[];
  readonly cuttingOrder: readonly CuttingStep[];
  readonly unplaced: readonly UnplacedCopy[];
  readonly yield: YieldReport;
  readonly offcuts: readonly Hide[];
  readonly origin: LayoutOrigin;
  /** What marks mean where a hide's file does not say; absent: the built-in meanings. */
  readonly marks?: MarkMeanings;
}

/** What flaws and zones of a kind do, as the layout took it, so that it can be proven without the workshop's file. */
export interface MarkMeanings {
  readonly flawDefaults: readonly { readonly kind: FlawKind; readonly effect: Effect }[];
  readonly zoneDefaults: readonly { readonly kind: ZoneKind; readonly effect: Effect }[];
  /** Flaws that nobody has confirmed yet were kept clear of, too. */
  readonly avoidCandidates: boolean;
}

export interface LayoutHide {
  readonly id: string;
  /** SHA-256 of the hide's canonical file content as hexadecimal digits. */
  readonly hash: string;
  /** Its file, relative to the layout's folder. */
  readonly file: string;
}

/** One copy of a piece. Plain and mirrored copies are numbered apart, each from 1 within its set. */
export interface PieceCopy {
  readonly article: string;
  readonly piece: string;
  readonly set: number;
  readonly copy: number;
  readonly mirrored: boolean;
}

/** A corner goes: x → -x if mirrored, turned clockwise about the origin, moved by (x, y). */
export interface PiecePlacement extends PieceCopy {
  readonly hide: string;
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: number;
  readonly locked: boolean;
  /** Rules that the user accepted to see broken here. */
  readonly accepted: readonly RuleName[];
  readonly state: 'planned' | 'cut' | 'spoiled';
}

/** Straps side by side: see `Lane` of geometry. */
export interface StrapLane {
  readonly id: string;
  readonly hide: string;
  readonly from: Point;
  readonly to: Point;
  readonly openAt: 'from' | 'to' | 'both';
  readonly kerfMm: number;
  readonly rows: readonly { readonly widthMm: number; readonly straps: readonly PieceCopy[] }[];
}

export interface RoughCutBlock {
  readonly id: string;
  readonly hide: string;
  readonly leather: string;
  readonly preparation?: string;
  readonly outline: Ring;
  readonly marginMm: number;
  readonly members: readonly PieceCopy[];
}

/** A test piece of the same leather, in the layout's waste. */
export interface Swatch {
  readonly id: string;
  readonly hide: string;
  /** The rough cut that it is a trial for; it lies beside it, or within its margin. Absent: for its whole hide. */
  readonly roughCut?: string;
  readonly outline: Ring;
}

export interface CuttingStep {
  readonly number: number;
  readonly kind: 'straight edge' | 'lane' | 'rough cut' | 'block' | 'piece';
  readonly hide: string;
  /** Id of the lane or rough cut. */
  readonly of?: string;
  readonly pieces: readonly PieceCopy[];
}

export interface UnplacedCopy extends PieceCopy {
  readonly reason: UnplacedReason;
}

/** All areas in mm². */
export interface YieldReport {
  readonly hides: readonly HideYield[];
  readonly total: AreaBalance;
}

export interface HideYield extends AreaBalance {
  readonly hide: string;
  /** The straight cut that frees the rest: two points on it, and the unit vector that points into the rest. */
  readonly freeingCut?: { readonly from: Point; readonly to: Point; readonly towards: Point };
}

/** Each part is computed on its own; they add up to the hide's gross area. */
export interface AreaBalance {
  readonly grossMm2: number;
  readonly netMm2: number;
  readonly usableMm2: number;
  /** Piece area, cut-outs not counted. */
  readonly piecesMm2: number;
  /** Openings of the hide. */
  readonly openingsMm2: number;
  /** Used up, not piece: void flaws … */
  readonly flawsMm2: number;
  /** … the strip along outline and openings that no piece reaches … */
  readonly edgeMm2: number;
  /** … and what lies between the pieces. */
  readonly betweenMm2: number;
  /** Worth keeping. */
  readonly offcutMm2: number;
  /** Pieces, flaws, edge, between: net area up to the freeing cut and leftovers too small to keep. */
  readonly usedUpMm2: number;
  /** Pieces over gross, over usable, and over used-up area, 0 to 1. */
  readonly grossYield: number;
  readonly usableYield: number;
  readonly usedUpYield: number;
}

export interface LayoutOrigin {
  readonly version: string;
  readonly seed: number;
  /** Joins that were asked for; absent: until stopped. */
  readonly effort?: number;
  readonly streams: number;
  /** Joins that were done. */
  readonly joins: number;
}

/** A piece's or rest's shape on the hide, for drawing. */
export interface PlacedRegion {
  readonly copy: PieceCopy;
  readonly region: Region;
}
