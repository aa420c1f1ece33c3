import { composeAffine, scaling, transformCurveToGrid } from '@hidebound/geometry';
import type { PatternReading } from '@hidebound/leather';
import { scaleDrawing } from './drawing/scale-drawing.js';
import { newFindings, tell } from './findings.js';
import type { Findings } from './findings.js';
import { putPagesTogether } from './pages/put-together.js';
import { patternOfDrawing } from './pattern-read.js';
import type { FileScale, PatternRead, ReadPage } from './pattern-read.js';
import type { PatternOptions } from './pattern-svg.js';
import { MM_PER_POINT } from './pdf/limits.js';
import { readPdfPages } from './pdf/read-pages.js';

/**
 * Reads the pages of a PDF into pieces. What can't be read at all rejects with `IntakeError`; what was guessed, left out
 * or looks wrong stands in `diagnostics`. Curves are kept as curves, on the 1 µm grid. A PDF says its size in real
 * units, so only `scale` and `knownLength` of the reading change it.
 */
export async function readPatternPdf(bytes: Uint8Array, options: PatternOptions): Promise<PatternRead> {
  const findings = newFindings(options.file);
  const { reading } = options;
  const found = await readPdfPages(bytes, reading, findings);
  warnOfUnits(reading, findings);
  const together = putPagesTogether(found, reading?.pages, findings);
  const { drawing, scale, factor } = scaleDrawing(together.drawing, FILE_SCALE, reading, options.file);
  const pages = factor === 1 ? together.pages : together.pages.map((page) => scaledPage(page, factor));
  return patternOfDrawing({ format: 'PDF', drawing, scale, pages }, reading, findings);
}

const FILE_SCALE: FileScale = { mmPerUnit: MM_PER_POINT, source: 'units' };

function warnOfUnits(reading: PatternReading | undefined, findings: Findings): void {
  if (reading?.dpi !== undefined) tell(findings, 'warning', 'pdf-scale-in-file', { name: 'dpi' });
  if (reading?.units !== undefined) tell(findings, 'warning', 'pdf-scale-in-file', { name: 'units' });
}

/** A page of a drawing that is read larger is larger, and so is the way to its place. */
function scaledPage(page: ReadPage, factor: number): ReadPage {
  const larger = scaling(factor);
  const { toWhole, missMm } = page;
  return {
    ...page,
    widthMm: page.widthMm * factor,
    heightMm: page.heightMm * factor,
    ...(toWhole === undefined
      ? {}
      : { toWhole: composeAffine(larger, composeAffine(toWhole, scaling(1 / factor))) }),
    ...(missMm === undefined ? {} : { missMm: missMm * factor }),
    lines: page.lines.map((line) => ({
      ...line,
      curve: transformCurveToGrid(larger, line.curve),
      widthMm: line.widthMm * factor,
    })),
    marks: page.marks.map(({ x, y }) => ({ x: x * factor, y: y * factor })),
  };
}
