import type { PatternReading } from '@hidebound/leather';
import { newFindings } from './findings.js';
import { patternOfDrawing } from './pattern-read.js';
import type { PatternRead } from './pattern-read.js';
import { warnOfResolution } from './svg/guess-resolution.js';
import { readSvgDrawing } from './svg/read-drawing.js';

export interface PatternOptions {
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
export function readPatternSvg(input: Uint8Array | string, options: PatternOptions): PatternRead {
  const findings = newFindings(options.file);
  const drawing = readSvgDrawing(input, options.reading, findings);
  warnOfResolution(drawing, findings);
  const { scale } = drawing;
  return patternOfDrawing({ format: 'SVG', drawing, scale }, options.reading, findings);
}
