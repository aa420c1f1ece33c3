import {
  STOCK_JOURNAL_FILE,
  leatherError,
  listStock,
  openTakes,
  parseHide,
  parseStockJournal,
  planTake,
  planUndo,
  sha256Hex,
  writeHide,
  writeLayout,
  writeStockJournal,
} from '@hidebound/leather';
import type { HideInStock, StockJournal, StockRow, StockStep } from '@hidebound/leather';
import type { JobFile } from '../../job/job.js';
import { pathBeside } from '../../job/job.js';
import { workshopOf } from '../desk/read-order.js';
import { hidesOf } from './cards.js';

type Files = ReadonlyMap<string, JobFile>;
type EditList = readonly (readonly [string, JobFile | undefined])[];

/** Contents of hide files before and after each step, by their sums, beside the journal. */
const KEPT_FOLDER = 'stock.kept';

export interface StockSeen {
  readonly rows: readonly StockRow[];
  /** The layout whose leather was taken last and not put back. */
  readonly lastTaken: string | undefined;
  /** Names of the offcuts that came of it. */
  readonly lastOffcuts: readonly string[];
}

/** The hides and offcuts of a job that are not cut. */
export function seeStock(files: Files): StockSeen {
  const rows = listStock({ hides: hidesOf(files), workshop: workshopOf(files), order: 'size' });
  const taken = [...journalsIn(files)].flatMap((journal) => openTakes(journal)).at(-1);
  return { rows, lastTaken: taken?.layout, lastOffcuts: taken?.offcuts ?? [] };
}

function journalsIn(files: Files): StockJournal[] {
  return [...files.keys()]
    .filter((path) => path === STOCK_JOURNAL_FILE || path.endsWith(`/${STOCK_JOURNAL_FILE}`))
    .map((path) => journalAt(files, folderOf(path)));
}

/**
 * What becomes of the job's files when a layout's leather is taken out of stock and its offcuts are kept. The stock is
 * the folder that the layout's hides lie in.
 * @throws LeatherError as `planTake` does
 */
export function takeFromStock(
  files: Files,
  layoutPath: string,
  { date, place }: { readonly date: string; readonly place?: string },
): EditList {
  const file = files.get(layoutPath);
  if (file?.kind !== 'layout') throw leatherError('missing-file', { file: layoutPath });
  const { layout } = file;
  const folder = folderOf(pathBeside(layoutPath, layout.hides[0]?.file ?? ''));
  const journal = journalAt(files, folder);
  const plan = planTake({
    hides: hidesIn(files, folder),
    fileNames: namesIn(files, folder),
    journal,
    layout,
    layoutFile: within(folder, layoutPath),
    layoutHash: sha256Hex(writeLayout(layout)),
    date,
    workshop: workshopOf(files),
    ...(place === undefined ? {} : { place }),
  });
  return editsOf(plan, journal, folder);
}

/**
 * The last taking undone.
 * @throws LeatherError as `planUndo` does
 */
export function putBackIntoStock(files: Files, date: string): EditList {
  const path = [...files.keys()].find(
    (each) => each === STOCK_JOURNAL_FILE || each.endsWith(`/${STOCK_JOURNAL_FILE}`),
  );
  const folder = folderOf(path ?? '');
  const journal = journalAt(files, folder);
  const plan = planUndo({
    hides: hidesIn(files, folder),
    journal,
    date,
    kept: (hash, file, number) => {
      const kept = files.get(keptPath(folder, hash));
      if (kept?.kind === 'text' && sha256Hex(kept.text) === hash) return kept.text;
      throw leatherError('stock-kept-missing', { file, number });
    },
  });
  return editsOf(plan, journal, folder);
}

/** All files of a step at once: the hides, the journal with the step done, and the contents that it names. */
function editsOf({ entry, contents }: StockStep, journal: StockJournal, folder: string): EditList {
  const texts = new Map(contents.map(({ hash, text }) => [hash, text]));
  const entries = [...journal.entries, entry];
  return [
    ...entry.changes.map(({ file, after }) => {
      const path = `${folder}${file}`;
      const text = after === undefined ? undefined : texts.get(after);
      return [
        path,
        text === undefined ? undefined : ({ kind: 'hide', hide: parseHide(text, { file: path }) } as const),
      ] as const;
    }),
    ...contents.map(({ hash, text }) => [keptPath(folder, hash), { kind: 'text', text } as const] as const),
    [
      `${folder}${STOCK_JOURNAL_FILE}`,
      { kind: 'text', text: writeStockJournal({ finished: entries.length, entries }) },
    ],
  ];
}

/** With the stroke behind it; empty for the job's own folder. */
function folderOf(path: string): string {
  return path.slice(0, path.lastIndexOf('/') + 1);
}

function keptPath(folder: string, hash: string): string {
  return `${folder}${KEPT_FOLDER}/${hash}.json`;
}

function within(folder: string, path: string): string {
  return path.startsWith(folder)
    ? path.slice(folder.length)
    : `${'../'.repeat(folder.split('/').length - 1)}${path}`;
}

function namesIn(files: Files, folder: string): string[] {
  return [...files.keys()]
    .filter((path) => folderOf(path) === folder)
    .map((path) => path.slice(folder.length));
}

function hidesIn(files: Files, folder: string): HideInStock[] {
  return hidesOf(files)
    .filter(({ file }) => folderOf(file) === folder)
    .map(({ file, hide }) => ({ file: file.slice(folder.length), hide, text: writeHide(hide) }));
}

function journalAt(files: Files, folder: string): StockJournal {
  const file = `${folder}${STOCK_JOURNAL_FILE}`;
  const found = files.get(file);
  return found?.kind === 'text' ? parseStockJournal(found.text, { file }) : { finished: 0, entries: [] };
}
