import type { Curve, Point, Region } from '@hidebound/geometry';

/** What a line in a pattern is. One table decides, the same for every file format. */
export const LINE_ROLES = [
  'cut',
  'cut-out',
  'punch',
  'notch',
  'stitch',
  'fold',
  'skive',
  'cement',
  'face',
  'direction',
  'mirror',
  'text',
  'ignore',
] as const;
export type LineRole = (typeof LINE_ROLES)[number];

/** One pattern piece, seen from its seen side; mm, y down. */
export interface Piece {
  readonly name: string;
  /** Closed. */
  readonly cut: Curve;
  /** Closed, inside the cut line. */
  readonly cutOuts: readonly Curve[];
  readonly punches: readonly Punch[];
  readonly notches: readonly Notch[];
  readonly stitchLines: readonly MarkLine[];
  readonly foldLines: readonly MarkLine[];
  readonly skiveLines: readonly MarkLine[];
  readonly cementLines: readonly MarkLine[];
  /** Towards the tail. Absent: the long axis is taken, and said. */
  readonly direction?: DirectionArrow;
  /** Closed outlines of what is seen. None: all of it is face. */
  readonly face: readonly Curve[];
}

export interface Punch {
  readonly at: Point;
  readonly diameterMm: number;
}

/** A small mark on the edge: at the edge, pointing into the piece. */
export interface Notch {
  readonly at: Point;
  readonly angleDeg: number;
  readonly depthMm: number;
}

/** A line drawn on the piece; the name is what a seam refers to. */
export interface MarkLine {
  readonly name?: string;
  readonly curve: Curve;
}

export interface DirectionArrow {
  readonly from: Point;
  readonly to: Point;
}

/** A piece as found in a pattern file, in the file's own frame, with what the file says of it. */
export interface PatternPiece {
  readonly piece: Piece;
  readonly source: { readonly file: string; readonly element?: string };
  /** What the file's labels or data attributes say; the order may say otherwise. */
  readonly count?: number;
  readonly mirrored?: number;
  readonly material?: string;
  /** The one of several graded sizes in the file; its name has it too. */
  readonly size?: string;
}

/** What `readPattern` of an order's reader gives back for one file. */
export interface PatternPieces {
  readonly pieces: readonly PatternPiece[];
}

/**
 * A piece made ready to be laid: in its own frame (origin: centre of the smallest enclosing circle of its cut ring),
 * with the rings that stand for its curves. Its shape is the one seen from the grain side: a piece whose seen side is
 * the flesh is the mirror image (x → -x) of its drawing.
 */
export interface LayablePiece {
  readonly article: string;
  readonly piece: string;
  /** SHA-256 of the piece's shape (its curves, rounded) as hexadecimal digits. */
  readonly hash: string;
  readonly shape: Piece;
  /** Contains the true cut line (allowance included), within 0.05 mm; openings lie inside the true cut-outs. */
  readonly region: Region;
  /** The face, clipped to the region; the whole region where no face is drawn. */
  readonly face: readonly Region[];
  /** Direction of the arrow in the own frame, clockwise from the x axis. */
  readonly arrowDeg: number;
  /** The arrow was not drawn: it follows the long axis. */
  readonly arrowIsGuessed: boolean;
}
