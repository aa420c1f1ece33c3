import { boxUnion, curveBox } from '@hidebound/geometry';
import type { Affine, Box, Point } from '@hidebound/geometry';
import type { Diagnostic, PatternPiece, PatternPieces, PatternReading } from '@hidebound/leather';
import { drawingToPieces } from './drawing/to-pieces.js';
import type { DrawnLine, Drawing } from './drawing/drawn-line.js';
import { summarizeIgnored, tell } from './findings.js';
import type { Findings, IgnoredElement } from './findings.js';
import type { Repair } from './repairs.js';

export const PATTERN_FORMATS = ['SVG', 'PDF', 'DXF'] as const;
export type PatternFormat = (typeof PATTERN_FORMATS)[number];

/** Where the size of a drawing comes from. */
export type ScaleSource =
  'units' | 'viewBox' | '96 px per inch' | 'dpi' | 'scale' | 'known length' | 'asked units';

export interface FileScale {
  /** mm of one unit of the file's own coordinates. */
  readonly mmPerUnit: number;
  readonly source: ScaleSource;
}

/** What a pattern file holds. Lengths in mm, y down, in the file's own frame (of tiled pages, in that of the whole). */
export interface PatternRead extends PatternPieces {
  readonly format: PatternFormat;
  readonly pieces: readonly PatternPiece[];
  readonly diagnostics: readonly Diagnostic[];
  /** Every element that was left out. */
  readonly ignored: readonly IgnoredElement[];
  /** Every change that was made to what is drawn. */
  readonly repairs: readonly Repair[];
  readonly scale: FileScale;
  /** Around all cut lines; absent without pieces. */
  readonly box?: Box;
  /** Lines that lie in no piece. */
  readonly strays: readonly DrawnLine[];
  /** Of a PDF: its pages, and how they were put together. */
  readonly pages?: readonly ReadPage[];
}

/** One page of a pattern as it lies in the whole. */
export interface ReadPage {
  /** From 1. */
  readonly number: number;
  /** As one looks at it: cropped, turned. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** From the page's frame (mm, y down from its top left corner) to that of the whole; absent: the page is left out. */
  readonly toWhole?: Affine;
  /** What its place rests on. */
  readonly joinedBy: 'marks' | 'lines' | 'grid' | 'alone' | 'left out';
  /** How far marks and lines miss each other where this page meets its neighbours, at the worst, mm. */
  readonly missMm?: number;
  /** Its lines in its own frame, for the picture. */
  readonly lines: readonly DrawnLine[];
  /** Where it says something: a mark that was used, in the page's frame. */
  readonly marks: readonly Point[];
}

/** A read drawing with what its reader says of it. */
export interface DrawingRead {
  readonly format: PatternFormat;
  readonly drawing: Drawing;
  readonly scale: FileScale;
  readonly pages?: readonly ReadPage[];
}

/** The last steps, the same for every format: lines and texts → pieces. `reading`: what the order says of this file. */
export function patternOfDrawing(
  { format, drawing, scale, pages }: DrawingRead,
  reading: PatternReading | undefined,
  findings: Findings,
): PatternRead {
  const { pieces, strays } = drawingToPieces(drawing, reading, findings);
  summarizeIgnored(findings);
  if (pieces.length === 0) tell(findings, 'warning', 'no-pieces');
  const box = boxOf(pieces);
  return {
    format,
    pieces,
    diagnostics: findings.diagnostics,
    ignored: findings.ignored,
    repairs: findings.repairs,
    scale,
    ...(box === undefined ? {} : { box }),
    strays,
    ...(pages === undefined ? {} : { pages }),
  };
}

function boxOf(pieces: readonly PatternPiece[]): Box | undefined {
  const boxes = pieces.map(({ piece }) => curveBox(piece.cut));
  return boxes.length === 0 ? undefined : boxes.reduce(boxUnion);
}
