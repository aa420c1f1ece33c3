import * as v from 'valibot';
import { openFile } from '../files/envelope.js';
import type { FileFormat } from '../files/envelope.js';
import { placeOf } from '../files/explain.js';
import { group, requiredList } from '../files/schema/group.js';
import { exactly, numberLeaf, oneOf, roundTo, wholeNumber } from '../files/schema/leaves.js';
import { writeStored } from '../files/write-stored.js';
import { leatherError } from '../words/refuse.js';
import { MOST_PRINT_OFF } from './measured-bars.js';
import { REFERENCE_PAPERS } from './reference-sheets.js';
import type { ReferenceSheets } from './reference-sheets.js';
import { BAR_MM, MOST_SHEETS } from './sheet-plan.js';
import { JSON_SYNTAX } from '../files/text/json-text.js';

export const REFERENCE_SHEETS_FORMAT = 'hidebound/reference-sheets@1';

/** Where measured bars are kept, unless another name is given. */
export const REFERENCE_SHEETS_FILE = 'reference-sheets.json';

/** Decimals of a measured bar, in mm: finer than any rule reads. */
const BAR_DECIMALS = 3;

function barLength(drawnMm: number) {
  const from = Math.round(drawnMm * (1 - MOST_PRINT_OFF));
  const to = Math.round(drawnMm * (1 + MOST_PRINT_OFF));
  return numberLeaf(`a length in mm from ${from} to ${to}`, { from, to, round: roundTo(BAR_DECIMALS) });
}

const SHEETS_WORDS = 'a list of at least one number of a sheet';

const printedSheets = group({
  sheets: [
    v.pipe(v.array(wholeNumber(1, MOST_SHEETS), SHEETS_WORDS), v.minLength(1, SHEETS_WORDS)),
    'Numbers of the sheets that were printed together.',
  ],
  paper: [oneOf(REFERENCE_PAPERS), 'What they are printed on.'],
  acrossMm: [barLength(BAR_MM.across), `The line across, drawn ${BAR_MM.across} mm long, as measured.`],
  downMm: [barLength(BAR_MM.down), `The line down, drawn ${BAR_MM.down} mm long, as measured.`],
});

export const referenceSheetsFileSchema = group({
  format: [exactly(REFERENCE_SHEETS_FORMAT), 'What this file is.'],
  printed: [requiredList(printedSheets), 'What was printed and measured; no sheet stands here twice.'],
});

const format: FileFormat<typeof referenceSheetsFileSchema> = {
  kind: 'reference-sheets',
  syntax: JSON_SYNTAX,
  schema: referenceSheetsFileSchema,
  upgrades: [],
};

/**
 * Reads what is known of printed reference sheets.
 * @throws LeatherError
 */
export function parseReferenceSheets(text: string, options: { readonly file: string }): ReferenceSheets {
  const opened = openFile(text, options.file, format);
  const seen = new Set<number>();
  opened.value.printed.forEach(({ sheets }, i) => {
    sheets.forEach((sheet, k) => {
      if (seen.has(sheet)) {
        throw leatherError('sheet-twice', { sheet }, placeOf(opened, ['printed', i, 'sheets', k]));
      }
      seen.add(sheet);
    });
  });
  return { printed: opened.value.printed };
}

export function writeReferenceSheets(sheets: ReferenceSheets): string {
  return writeStored(referenceSheetsFileSchema, { format: REFERENCE_SHEETS_FORMAT, ...sheets });
}
