import { readDxfDrawing } from './dxf/read-drawing.js';
import { newFindings } from './findings.js';
import { patternOfDrawing } from './pattern-read.js';
import type { PatternRead } from './pattern-read.js';
import type { PatternOptions } from './pattern-svg.js';

/**
 * Reads a pattern file in DXF (text form, release 12 to 2018) into pieces. What can't be read at all throws
 * `IntakeError`; what was guessed, left out or changed stands in `diagnostics`, `ignored` and `repairs`. A drawing
 * without a unit is refused unless the reading gives one.
 */
export function readPatternDxf(bytes: Uint8Array, options: PatternOptions): PatternRead {
  const findings = newFindings(options.file);
  const read = readDxfDrawing(bytes, options.reading, findings);
  return patternOfDrawing(read, options.reading, findings);
}
