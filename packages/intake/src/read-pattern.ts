import { readPatternSvg } from './pattern-svg.js';
import type { PatternOptions } from './pattern-svg.js';
import type { PatternRead } from './pattern-read.js';
import { patternFormatOf } from './pattern-format.js';

/**
 * Reads a pattern file of any format that is known, told by its first bytes and never by its name. Readers other than
 * that of SVG are loaded when they are needed. Rejects with `IntakeError` for what can't be read at all.
 */
export async function readPattern(bytes: Uint8Array, options: PatternOptions): Promise<PatternRead> {
  switch (patternFormatOf(bytes)) {
    case 'PDF': {
      const { readPatternPdf } = await import('./pattern-pdf.js');
      return readPatternPdf(bytes, options);
    }
    case 'DXF': {
      const { readPatternDxf } = await import('./pattern-dxf.js');
      return readPatternDxf(bytes, options);
    }
    default:
      return Promise.resolve(readPatternSvg(bytes, options));
  }
}
