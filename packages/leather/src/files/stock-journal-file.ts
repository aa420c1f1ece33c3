import * as v from 'valibot';
import type { StockJournal } from '../model/stock.js';
import { leatherError } from '../words/refuse.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { placeOf } from './explain.js';
import { group, listOf } from './schema/group.js';
import { day, exactly, filePath, hash, name, serial } from './schema/leaves.js';
import type { WhereOf } from './validate-hide.js';
import { writeStored } from './write-stored.js';

export const STOCK_JOURNAL_FORMAT = 'hidebound/stock-journal@1';

const entry = v.variant('kind', [
  group({
    kind: [exactly('taken'), 'Pieces were taken from a hide.'],
    number: [serial, 'Entries are numbered from 1 without a gap.'],
    date: [day, 'Its day.'],
    hide: [name, 'Id of the hide.'],
    hideHash: [hash, 'SHA-256 of the hide’s file as it was then.'],
    layout: [filePath, 'The layout file.'],
    layoutHash: [hash, 'SHA-256 of the layout’s file.'],
    offcuts: [listOf(name), 'Ids of the offcuts that came of it.'],
  }),
  group({
    kind: [exactly('undone'), 'An earlier entry was undone.'],
    number: [serial, 'Entries are numbered from 1 without a gap.'],
    date: [day, 'Its day.'],
    undoes: [serial, 'Number of the entry that it undoes.'],
  }),
]);

export const stockJournalFileSchema = group({
  format: [exactly(STOCK_JOURNAL_FORMAT), 'What this file is.'],
  entries: [listOf(entry), 'What was taken from which hide, in order. Entries are only ever added.'],
});

const format: FileFormat<typeof stockJournalFileSchema> = {
  kind: 'stock-journal',
  syntax: 'json',
  schema: stockJournalFileSchema,
  upgrades: [],
};

/**
 * Reads a stock journal and proves that its entries follow on each other.
 * @throws LeatherError
 */
export function parseStockJournal(text: string, options: { readonly file: string }): StockJournal {
  const opened = openFile(text, options.file, format);
  const journal = { entries: opened.value.entries };
  validateJournal(journal, (path) => placeOf(opened, path));
  return journal;
}

function validateJournal(journal: StockJournal, where: WhereOf): void {
  const open = new Set<number>();
  journal.entries.forEach((line, i) => {
    if (line.number !== i + 1) {
      const place = where(['entries', i, 'number']);
      throw leatherError('journal-number', { found: line.number, wanted: i + 1 }, place);
    }
    if (line.kind === 'taken') open.add(line.number);
    else if (!open.delete(line.undoes)) {
      throw leatherError('journal-undo', { number: line.undoes }, where(['entries', i, 'undoes']));
    }
  });
}

export function writeStockJournal(journal: StockJournal): string {
  return writeStored(stockJournalFileSchema, { format: STOCK_JOURNAL_FORMAT, ...journal });
}
