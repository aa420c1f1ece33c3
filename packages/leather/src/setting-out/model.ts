import type { Point } from '@hidebound/geometry';
import type { FlawKind } from '../model/hide.js';
import type { Side } from '../model/marks.js';
import type { PieceCopy } from '../model/layout.js';
import type { Measure, SettingFrame } from './frame.js';

/** How the layout of one hide gets onto the leather with chalk, square and tape. Places are in the hide's frame. */
export interface SettingOut {
  readonly hide: string;
  readonly baseLine: BaseLine;
  /** In the order of cutting. */
  readonly steps: readonly SettingStep[];
  /** No corner of a piece comes out farther than this from its place in the layout, because of the rounding. */
  readonly offByMm: number;
}

/** The line that everything is measured from. */
export interface BaseLine {
  /** Along the squared back edge; down the middle; along another straight edge; down the middle of what has neither. */
  readonly kind: 'back edge' | 'backbone' | 'straight edge' | 'long axis';
  /** Zero lies at `start`. Of lines at an edge `out` points into the hide, of others to the right of the line. */
  readonly frame: SettingFrame;
  readonly start: LineEnd;
  readonly end: LineEnd;
  readonly lengthMm: number;
}

/** An end of the base line: on the hide's edge, so far (by tape, straight) from a corner that can be found. */
export interface LineEnd {
  readonly at: Point;
  readonly corner: OutlineCorner;
  /** 0: the end is the corner itself. */
  readonly fromCornerMm: number;
}

export interface OutlineCorner {
  readonly at: Point;
  /** A turn of the outline that catches the eye; where there is none, the outermost point one way. */
  readonly kind: 'corner' | 'outermost point';
}

/** A chalk mark: its exact place, and the rounded measure that is printed. */
export interface ChalkMark {
  readonly at: Point;
  readonly measure: Measure;
}

export type SettingStep =
  | { readonly kind: 'lane'; readonly number: number; readonly lane: LaneSetting }
  | { readonly kind: 'rough cut'; readonly number: number; readonly roughCut: RoughCutSetting }
  /** Cut free first, because it fits the table. */
  | { readonly kind: 'block'; readonly number: number; readonly pieces: readonly PieceCopy[] }
  | { readonly kind: 'piece'; readonly number: number; readonly piece: PieceSetting };

/** Where one piece goes. */
export interface PieceSetting {
  readonly copy: PieceCopy;
  /** As the order of cutting numbers it: "12", "3.2". */
  readonly number: string;
  /** Its card is laid on; or it is cut by its size alone. */
  readonly by:
    | { readonly kind: 'card' }
    /** A and B are the ends of the long side that lies nearer to the line (nearer to its zero where it runs across). */
    | { readonly kind: 'rectangle'; readonly widthMm: number; readonly lengthMm: number }
    /** A is the centre. */
    | { readonly kind: 'disc'; readonly diameterMm: number };
  readonly a: ChalkMark;
  /** A disc has none. */
  readonly b?: ChalkMark;
  /** The direction arrow against the line, clockwise as seen from the grain side, in (-180, 180], to half a degree. */
  readonly turnDeg: number;
  readonly flaws: readonly FlawBeside[];
}

export interface FlawBeside {
  readonly id: string;
  readonly kind?: FlawKind;
  readonly side: Side;
  /** From edge to edge, whole mm; 0: it reaches under the piece. */
  readonly distanceMm: number;
  /** Unit vector from the piece to it; none where it reaches under it. */
  readonly towards?: Point;
}

/** The straps of a lane are measured along and across its first cut. */
export interface LaneSetting {
  readonly id: string;
  /** Two marks on the first cut; straps are measured from `p` towards `q`. */
  readonly p: ChalkMark;
  readonly q: ChalkMark;
  readonly rows: readonly LaneRowSetting[];
}

export interface LaneRowSetting {
  readonly widthMm: number;
  /** From the first cut to the row's nearer side; the kerf of the cuts between is in it. */
  readonly acrossMm: number;
  readonly straps: readonly LaneStrapSetting[];
}

export interface LaneStrapSetting {
  readonly copy: PieceCopy;
  readonly number: string;
  /** Nearer end, from `p` along the first cut; below zero before `p`. */
  readonly startMm: number;
  readonly lengthMm: number;
  /** Its arrow points from `p` to `q`. */
  readonly isForward: boolean;
}

/** A rough cut is set out by its corners; its pieces are measured from its own longest side, once it is prepared. */
export interface RoughCutSetting {
  readonly id: string;
  readonly corners: readonly ChalkMark[];
  /** The corners at zero and at the other end of that side. */
  readonly baseSide: readonly [number, number];
  readonly pieces: readonly PieceSetting[];
}
