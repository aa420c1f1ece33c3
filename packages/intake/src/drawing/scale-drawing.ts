import { scaling, transformCurveToGrid } from '@hidebound/geometry';
import type { PatternReading } from '@hidebound/leather';
import { IntakeError } from '../error.js';
import type { FileScale } from '../pattern-read.js';
import type { Drawing } from './drawn-line.js';
import { extentOf, findByName } from './named-line.js';

/**
 * A drawing in mm at the scale that the reading asks for: times its factor, then so that the named line has its known
 * length. Lengths of texts and strokes follow. Throws `bad-reading`, `known-length-missing`.
 */
export function scaleDrawing<Any extends Drawing>(
  drawing: Any,
  fileScale: FileScale,
  reading: PatternReading | undefined,
  file: string,
): { readonly drawing: Any; readonly scale: FileScale; readonly factor: number } {
  const asked = positive('scale', reading?.scale ?? 1, file);
  const known = reading?.knownLength;
  const factor =
    known === undefined
      ? asked
      : positive('known length', known.mm, file) / lengthOf(drawing, known.element, file);
  const source =
    known !== undefined ? 'known length' : reading?.scale !== undefined ? 'scale' : fileScale.source;
  const scale = { mmPerUnit: fileScale.mmPerUnit * factor, source };
  return { drawing: factor === 1 ? drawing : scaled(drawing, factor), scale, factor };
}

function positive(name: string, value: number, file: string): number {
  if (value > 0 && Number.isFinite(value)) return value;
  throw new IntakeError('bad-reading', { name, value }, { file });
}

function lengthOf({ lines }: Drawing, element: string, file: string): number {
  const line = findByName(lines, element);
  const length = line === undefined ? 0 : extentOf(line);
  if (length === 0) throw new IntakeError('known-length-missing', { element }, { file });
  return length;
}

function scaled<Any extends Drawing>(drawing: Any, factor: number): Any {
  const matrix = scaling(factor);
  return {
    ...drawing,
    lines: drawing.lines.map((line) => ({
      ...line,
      curve: transformCurveToGrid(matrix, line.curve),
      widthMm: line.widthMm * factor,
    })),
    texts: drawing.texts.map((text) => ({
      ...text,
      at: { x: text.at.x * factor, y: text.at.y * factor },
      ...(text.sizeMm === undefined ? {} : { sizeMm: text.sizeMm * factor }),
    })),
  };
}
