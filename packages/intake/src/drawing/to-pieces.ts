import type { PatternReading } from '@hidebound/leather';
import { newFindings, tell } from '../findings.js';
import type { Findings } from '../findings.js';
import { MAX_SIZED_LINES, MAX_SIZES } from '../limits.js';
import { closeOnMirrors } from '../lines/close-on-mirror.js';
import { gatherPieces } from '../pieces/gather.js';
import type { Gathered } from '../pieces/gather.js';
import { tellStrays } from '../pieces/place-lines.js';
import { decideSizes } from '../roles/decide-size.js';
import type { SizedLines } from '../roles/decide-size.js';
import { gatherSizes } from './by-size.js';
import type { GatherSize } from './by-size.js';
import type { Drawing } from './drawn-line.js';
import { prepareLines } from './prepare-lines.js';

/** A drawing in mm, of whatever format, → pieces: sizes, roles, joining, duplicates, then what lies within what. */
export function drawingToPieces(
  drawing: Drawing,
  reading: PatternReading | undefined,
  findings: Findings,
): Gathered {
  const gather: GatherSize = ({ lines, texts }, run, found) => {
    const told = run.isQuiet === true ? newFindings(found.file) : found;
    const prepared = prepareLines(lines, reading?.roles ?? [], told);
    const options = { unfolds: reading?.unfold !== false, ...run };
    return gatherPieces(closeOnMirrors(prepared), texts, options, found);
  };
  const sized = decideSizes(drawing.lines, reading);
  const gathered = canBeApart(sized, findings)
    ? gatherSizes(drawing, sized, gather, findings)
    : gather(drawing, {}, findings);
  tellStrays(gathered.strays, findings);
  return gathered;
}

/** True if there are sizes, and few enough: each is read together with all lines of no size. */
function canBeApart({ sizes, found }: SizedLines, findings: Findings): boolean {
  const count = found.length;
  const lines = sizes.filter((size) => size === undefined).length;
  const isTooMuch = count > MAX_SIZES || count * lines > MAX_SIZED_LINES;
  if (isTooMuch) tell(findings, 'warning', 'too-many-sizes', { count, lines });
  return count > 0 && !isTooMuch;
}
