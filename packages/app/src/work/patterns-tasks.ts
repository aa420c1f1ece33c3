import type { Point } from '@hidebound/geometry';
import type { PatternRead, ReadPage } from '@hidebound/intake';
import type { FitKind, LayablePiece, PatternReading, ResolvedPiece, SuitRemark } from '@hidebound/leather';
import type { JobFile } from '../job/job.js';
import type { Told } from '../words/told.js';

/** A pattern file by a number: its bytes travel to the worker once only. */
export interface KnownPattern {
  readonly path: string;
  readonly number: number;
  readonly bytes?: Uint8Array;
}

export interface BoardInput {
  /** Of the order. */
  readonly path: string;
  /** All that the order may name but for patterns and pictures. */
  readonly files: ReadonlyMap<string, JobFile>;
  readonly patterns: readonly KnownPattern[];
}

/** A piece of the order as it comes out; `refused` says why it does not. */
export interface BoardPiece {
  readonly name: string;
  readonly shape?: LayablePiece;
  readonly resolved?: ResolvedPiece;
  readonly refused?: Told;
  readonly findings: readonly PatternFinding[];
}

/** Articles and pieces in the order's order. */
export interface Board {
  readonly articles: readonly BoardArticle[];
  /** Why the order as a whole can't be used yet. */
  readonly refused?: Told;
}

export interface BoardArticle {
  readonly name: string;
  /** Why the article can't be read. */
  readonly refused?: Told;
  readonly pieces: readonly BoardPiece[];
}

export interface PatternFinding extends Told {
  readonly tone: 'error' | 'warning' | 'note';
  /** Pieces that it names. */
  readonly pieces: readonly string[];
}

/** A page of a PDF as it lies in the whole, without what is drawn on it. */
export type ShownPage = Omit<ReadPage, 'lines' | 'marks'>;

/** What was read from a pattern, or why nothing was. */
export interface PatternShown {
  readonly read?: Omit<PatternRead, 'diagnostics' | 'pages'> & { readonly pages?: readonly ShownPage[] };
  readonly findings: readonly PatternFinding[];
  readonly failure?: Told & { readonly code: string };
}

export interface ShownFit {
  readonly hide: string;
  readonly file: string;
  readonly kind: FitKind;
  /** What it is skived to all over, mm. */
  readonly skiveTo?: { readonly minMm: number; readonly maxMm: number };
  readonly remarks: readonly SuitRemark[];
}

export interface ShownSuit {
  readonly article: string;
  readonly piece: string;
  readonly fits: readonly ShownFit[];
}

export interface PaintInput extends BoardInput {
  readonly article: number;
  readonly piece: number;
  /** Closed lines around what is seen, in the frame of the piece as the board has it, mm. */
  readonly rings: readonly (readonly Point[])[];
}

export type PatternTasks = {
  readBoard: { input: BoardInput; output: Board };
  readPattern: {
    input: { readonly pattern: KnownPattern; readonly reading?: PatternReading };
    output: PatternShown;
  };
  /** Which of the job's hides suits which piece. */
  suit: { input: BoardInput; output: readonly ShownSuit[] };
  /** The piece's pattern as a file of its own, with these lines as its face. */
  paintFace: { input: PaintInput; output: { readonly name: string; readonly svg: Uint8Array } };
};
