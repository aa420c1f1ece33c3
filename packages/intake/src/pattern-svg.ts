import { boxUnion, curveBox } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import type { Diagnostic, PatternPiece, PatternPieces, PatternReading } from '@hidebound/leather';
import { drawingToPieces } from './drawing/to-pieces.js';
import type { DrawnLine } from './drawing/drawn-line.js';
import { newFindings, summarizeIgnored, tell } from './findings.js';
import type { IgnoredElement } from './findings.js';
import { warnOfResolution } from './svg/guess-resolution.js';
import { readSvgDrawing } from './svg/read-drawing.js';
import type { FileScale } from './svg/scale.js';

/** What a pattern file holds. Lengths in mm in the file's own frame: origin at its top left corner, y down. */
export interface PatternRead extends PatternPieces {
  readonly pieces: readonly PatternPiece[];
  readonly diagnostics: readonly Diagnostic[];
  /** Every element that was left out. */
  readonly ignored: readonly IgnoredElement[];
  readonly scale: FileScale;
  /** Around all cut lines; absent without pieces. */
  readonly box?: Box;
  /** Lines that lie in no piece. */
  readonly strays: readonly DrawnLine[];
}

export interface PatternSvgOptions {
  /** The file's name, for messages and as the source of its pieces. */
  readonly file: string;
  /** What the order says of how to read it. */
  readonly reading?: PatternReading;
}

/**
 * Reads an SVG pattern file into pieces. What can't be read at all throws `IntakeError`; what was guessed, left out or
 * looks wrong stands in `diagnostics`, whose sentences are in `INTAKE_SENTENCES`. Curves are kept as curves, on the
 * 1 µm grid. An outline that crosses itself is given back with an `error` among the diagnostics.
 */
export function readPatternSvg(input: Uint8Array | string, options: PatternSvgOptions): PatternRead {
  const findings = newFindings(options.file);
  const drawing = readSvgDrawing(input, options.reading, findings);
  warnOfResolution(drawing, findings);
  const { pieces, strays } = drawingToPieces(drawing, options.reading?.roles ?? [], findings);
  summarizeIgnored(findings);
  if (pieces.length === 0) tell(findings, 'warning', 'no-pieces');
  const box = boxOf(pieces);
  return {
    pieces,
    diagnostics: findings.diagnostics,
    ignored: findings.ignored,
    scale: drawing.scale,
    ...(box === undefined ? {} : { box }),
    strays,
  };
}

function boxOf(pieces: readonly PatternPiece[]): Box | undefined {
  const boxes = pieces.map(({ piece }) => curveBox(piece.cut));
  return boxes.length === 0 ? undefined : boxes.reduce(boxUnion);
}
