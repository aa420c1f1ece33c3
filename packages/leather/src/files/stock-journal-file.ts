import * as v from 'valibot';
import type { StockJournal } from '../model/stock.js';
import { leatherError } from '../words/refuse.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { placeOf } from './explain.js';
import { group, listOf, optional, requiredList } from './schema/group.js';
import { day, exactly, filePath, hash, name, serial, wholeNumber } from './schema/leaves.js';
import type { WhereOf } from './validate-hide.js';
import { writeStored } from './write-stored.js';
import { JSON_SYNTAX } from './text/json-text.js';

export const STOCK_JOURNAL_FORMAT = 'hidebound/stock-journal@1';

/** The journal's file within the folder of the stock. */
export const STOCK_JOURNAL_FILE = 'stock.journal.json';

/** As most file systems allow. */
const LONGEST_FILE_NAME = 255;
const MOST_ENTRIES = 1_000_000;
const finishedCount = wholeNumber(0, MOST_ENTRIES);

const FILE_WORDS = 'the name of a hide file within the stock, such as "side-7a.hide.json"';
/** No folder in it: a journal must never lead outside the stock. */
const stockFileName = v.pipe(
  v.string(FILE_WORDS),
  v.maxLength(LONGEST_FILE_NAME, FILE_WORDS),
  v.regex(/^[^/\\\u0000-\u001f\u007f]+\.hide\.json$/, FILE_WORDS),
);

const change = group({
  hide: [name, 'Id of the hide or offcut.'],
  file: [stockFileName, 'Its file in the folder of the stock.'],
  before: [optional(hash), 'SHA-256 of the file as it was; absent: there was none.'],
  after: [optional(hash), 'SHA-256 of the file as it became; absent: it was taken away.'],
});

const NUMBER_FIELD = [serial, 'Entries are numbered from 1 without a gap.'] as const;
const CHANGES_FIELD = [
  requiredList(change),
  'What it does to the hide files; the contents are kept in the folder "stock.kept", under their sums.',
] as const;

const entry = v.variant('kind', [
  group({
    kind: [exactly('taken'), 'A layout was cut.'],
    number: NUMBER_FIELD,
    date: [day, 'Its day.'],
    layout: [filePath, 'The layout file.'],
    layoutHash: [hash, 'SHA-256 of the layout’s file.'],
    hides: [
      requiredList(
        group({
          hide: [name, 'Id of the hide.'],
          hash: [hash, 'SHA-256 of the hide as the layout knows it.'],
        }),
      ),
      'The hides that were cut.',
    ],
    offcuts: [listOf(name), 'Ids of the offcuts that came of it.'],
    changes: CHANGES_FIELD,
  }),
  group({
    kind: [exactly('undone'), 'An earlier entry was undone.'],
    number: NUMBER_FIELD,
    date: [day, 'Its day.'],
    undoes: [serial, 'Number of the entry that it undoes.'],
    changes: CHANGES_FIELD,
  }),
]);

export const stockJournalFileSchema = group({
  format: [exactly(STOCK_JOURNAL_FORMAT), 'What this file is.'],
  finished: [
    finishedCount,
    'So many entries have their hide files all written; one more entry was interrupted, and the next command completes it.',
  ],
  entries: [listOf(entry), 'What was taken from which hide, in order. Entries are only ever added.'],
});

const format: FileFormat<typeof stockJournalFileSchema> = {
  kind: 'stock-journal',
  syntax: JSON_SYNTAX,
  schema: stockJournalFileSchema,
  upgrades: [],
};

/**
 * Reads a stock journal and proves that its entries follow on each other.
 * @throws LeatherError
 */
export function parseStockJournal(text: string, options: { readonly file: string }): StockJournal {
  const opened = openFile(text, options.file, format);
  const { format: _, ...journal } = opened.value;
  validateJournal(journal, (path) => placeOf(opened, path));
  return journal;
}

function validateJournal(journal: StockJournal, where: WhereOf): void {
  const { finished, entries } = journal;
  if (finished !== entries.length && finished !== entries.length - 1) {
    throw leatherError('journal-finished', { finished, entries: entries.length }, where(['finished']));
  }
  const open = new Set<number>();
  journal.entries.forEach((line, i) => {
    if (line.number !== i + 1) {
      const place = where(['entries', i, 'number']);
      throw leatherError('journal-number', { found: line.number, wanted: i + 1 }, place);
    }
    line.changes.forEach((each, k) => {
      if (each.before !== undefined || each.after !== undefined) return;
      throw leatherError('journal-change', { file: each.file }, where(['entries', i, 'changes', k]));
    });
    if (line.kind === 'taken') open.add(line.number);
    else if (!open.delete(line.undoes)) {
      throw leatherError('journal-undo', { number: line.undoes }, where(['entries', i, 'undoes']));
    }
  });
}

export function writeStockJournal(journal: StockJournal): string {
  return writeStored(stockJournalFileSchema, { format: STOCK_JOURNAL_FORMAT, ...journal });
}
