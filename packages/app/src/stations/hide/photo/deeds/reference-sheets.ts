import {
  REFERENCE_SHEETS_FILE,
  barsOfSheet,
  parseMeasuredBars,
  parseReferenceSheets,
  withPrintedSheets,
  writeReferenceSheets,
} from '@hidebound/leather';
import type { ReferencePaper, ReferenceSheets } from '@hidebound/leather';
import type { App } from '../../../../app/app.js';
import { download } from '../../../../shell/download.js';
import { openPhotoSheets } from '../../../../work/photo-sheets.js';
import { toldError } from '../../../../words/told.js';

/** One for each corner of a hide and as many more, so that a large one is surrounded. */
const SHEETS: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8];

/** Where people measure in inches, their printers hold Letter. */
function paperOf(app: App): ReferencePaper {
  return app.prefs.get().lengths === 'in' ? 'Letter' : 'A4';
}

/** The reference sheets as a PDF file to print. */
export function makeSheets(app: App): void {
  const drawing = openPhotoSheets();
  const title = app.say('hide.sheets');
  drawing
    .ask('draw', { sheets: SHEETS, paper: paperOf(app), title })
    .then(
      (bytes) => download('reference-sheets.pdf', bytes, 'application/pdf'),
      (error: unknown) => app.tellFailure(error),
    )
    .finally(() => drawing.end());
}

export interface Lines {
  readonly acrossMm?: number | undefined;
  readonly downMm?: number | undefined;
}

/** One of two lines that was given, until the other one is. */
const HALF = new WeakMap<App, Lines>();

function known(app: App): ReferenceSheets {
  const file = app.job.get().files.get(REFERENCE_SHEETS_FILE);
  if (file?.kind !== 'text') return { printed: [] };
  return parseReferenceSheets(file.text, { file: REFERENCE_SHEETS_FILE });
}

/** How long the lines of the printed sheets came out, as far as it was told. */
export function sheetsAre(app: App): Lines {
  const half = HALF.get(app);
  if (half !== undefined) return half;
  try {
    return barsOfSheet(known(app), SHEETS[0]!) ?? {};
  } catch {
    // A file that can't be read is told of when a photo is traced.
    return {};
  }
}

/** Remembers the measured lines in the job once both are there. */
export function tellLines(app: App, lines: Lines): void {
  const now = { ...sheetsAre(app), ...lines };
  HALF.set(app, now);
  const { acrossMm, downMm } = now;
  if (acrossMm === undefined || downMm === undefined) return;
  try {
    const bars = parseMeasuredBars(`${acrossMm} x ${downMm}`);
    const sheets = withPrintedSheets(known(app), { sheets: SHEETS, paper: paperOf(app), ...bars });
    HALF.delete(app);
    const file = { kind: 'text', text: writeReferenceSheets(sheets) } as const;
    app.change(app.say('hide.undo.lines'), new Map([[REFERENCE_SHEETS_FILE, file]]));
  } catch (error) {
    app.tell({ tone: 'error', text: app.sentence(toldError(error)) });
  }
}
