import type { Box, Curve, Region } from '@hidebound/geometry';
import type { Diagnostic } from '../model/diagnostic.js';
import type { PieceCopy } from '../model/layout.js';

/**
 * What a line in a cut file is, in the order in which a machine should work: marks while the leather lies whole, holes
 * and openings before the outline around them. An opening in which another piece lies goes with the outlines, after
 * that piece.
 */
export const CUT_KINDS = [
  'frame',
  'stitch',
  'fold',
  'skive',
  'cement',
  'notch',
  'punch',
  'opening',
  'cut',
  'rough cut',
] as const;
export type CutKind = (typeof CUT_KINDS)[number];

/** Kinds that mark the leather and do not cut through it. */
export const MARK_KINDS: readonly CutKind[] = ['stitch', 'fold', 'skive', 'cement', 'notch'];

/** What of a layout goes into the file. */
export const CUT_CHOICES = ['pieces', 'rough-cuts-first', 'both'] as const;
/**
 * Pieces: every piece, no rough cut. Rough cuts first: the rough cuts whole, and the pieces that lie in none. Both:
 * every piece and the rough cuts around them.
 */
export type CutChoice = (typeof CUT_CHOICES)[number];

export type LeadInKind = 'straight' | 'arc';

export interface CutFileOptions {
  readonly choice: CutChoice;
  /** Width of the cut, mm; outlines move outwards and openings inwards by half of it. */
  readonly kerfMm: number;
  /** The way from the waste to the line: straight and at 45° to it, or a quarter of a circle of that radius. */
  readonly leadIn?: { readonly kind: LeadInKind; readonly lengthMm: number };
  /** So many for each outline, each so wide when the cut has taken its kerf. */
  readonly bridges?: { readonly count: number; readonly widthMm: number };
  /** How far a closed cut runs on past its start, mm. */
  readonly overcutMm: number;
  /** Stitch, fold, skive and cement lines, and notches. */
  readonly marks: boolean;
  /** A rectangle around everything, to find the machine's zero by. */
  readonly frame: boolean;
  /** Where pieces may be named is worked out too. */
  readonly labels: boolean;
  /** Which side of the leather lies up; from the flesh side everything is mirrored. */
  readonly side: 'grain' | 'flesh';
}

/** Whose line it is. */
export type CutOwner =
  | { readonly kind: 'piece'; readonly copy: PieceCopy }
  | { readonly kind: 'lane'; readonly id: string }
  | { readonly kind: 'rough cut'; readonly id: string }
  | { readonly kind: 'swatch'; readonly id: string }
  | { readonly kind: 'hide'; readonly id: string };

/** One cut or mark: what the tool does between two moves through the air, but for bridges. */
export interface CutPath {
  /** In the order of cutting, from 1. */
  readonly number: number;
  readonly kind: CutKind;
  readonly of: CutOwner;
  /** The tool's way in the hide's frame, mm; lead-in and overcut are part of it. Several where bridges part it. */
  readonly strokes: readonly Curve[];
  /** Lead-in and overcut counted, bridges not. */
  readonly lengthMm: number;
  /** Where the line is interrupted so that it holds. */
  readonly bridges: number;
  /** The tool starts in the waste. */
  readonly hasLeadIn: boolean;
}

/** Where a piece may be named: its number and name, and the leather that is free for them, in the hide's frame. */
export interface CutLabel {
  readonly copy: PieceCopy;
  /** Its holes, slots and marks are openings. */
  readonly region: Region;
  /** The way its arrow points, clockwise from the x axis. */
  readonly arrowDeg: number;
}

/** All that a cut file of one hide holds, as plain data. Mirrored already where the flesh side lies up. */
export interface CutFile {
  readonly hide: string;
  readonly side: 'grain' | 'flesh';
  readonly kerfMm: number;
  /** Around the hide and every path, on whole mm: its lower left corner is the machine's zero. */
  readonly frame: Box;
  /** In the order of cutting. */
  readonly paths: readonly CutPath[];
  /** None if they were not asked for. */
  readonly labels: readonly CutLabel[];
  /** What is cut through, along the lines; and the way between them, mm. */
  readonly cutMm: number;
  readonly moveMm: number;
}

export interface CutFileResult {
  readonly file: CutFile;
  readonly diagnostics: readonly Diagnostic[];
}
