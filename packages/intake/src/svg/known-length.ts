import type { PatternReading } from '@hidebound/leather';
import { extentOf, findByName } from '../drawing/named-line.js';
import { IntakeError } from '../error.js';
import { newFindings } from '../findings.js';
import { drawAll } from './read-drawing.js';
import type { SvgDrawing, SvgSource } from './read-drawing.js';

/** Each pass draws at a better scale, so that rounding to 1 µm costs nothing even if the first was far too small. */
const PASSES = 3;

/**
 * The drawing again at the scale at which the named element has its known length: an open line its length along the
 * line, a closed one the longer side of its upright box. Throws `known-length-missing`.
 */
export function scaleByKnownLength(
  source: SvgSource,
  reading: PatternReading,
  first: SvgDrawing,
): SvgDrawing {
  const { element, mm } = reading.knownLength!;
  let drawing = first;
  let scale = reading.scale ?? 1;
  for (let pass = 0; pass < PASSES; pass++) {
    const line = findByName(drawing.lines, element);
    const length = line === undefined ? 0 : extentOf(line);
    if (length === 0)
      throw new IntakeError('known-length-missing', { element }, { file: source.findings.file });
    scale *= mm / length;
    // What there is to say was said on the first pass.
    drawing = drawAll(source, { ...reading, scale }, newFindings(source.findings.file));
  }
  return { ...drawing, scale: { ...drawing.scale, source: 'known length' }, isInPx: false };
}
