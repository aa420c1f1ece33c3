import { existsSync, mkdirSync, readdirSync, unlinkSync } from 'node:fs';
import { basename, join } from 'node:path';
import { STOCK_JOURNAL_FILE, leatherError, unfinishedStep, writeStockJournal } from '@hidebound/leather';
import type { Diagnostic, HideInStock, StockChange, StockJournal, StockStep } from '@hidebound/leather';
import { removeStaleParts } from '../io/stale-parts.js';
import { NOBODY_WATCHES, removeFile, syncFolder, writeFilesSafely } from '../io/write-safely.js';
import type { DiskWatch } from '../io/write-safely.js';
import { loadStock } from './load-stock.js';
import type { LoadedStock } from './load-stock.js';
import { KEPT_FOLDER, hashOfFile, keptPath, keptText, readJournal, textOfFile } from './stock-files.js';
import { withStockLock } from './stock-lock.js';
import type { LockOptions } from './stock-lock.js';

/** A stock that nobody else changes now, as a step is planned from it. */
export interface LockedStock extends LoadedStock {
  /** Every hide file that can be read, also those that say the same id. */
  readonly files: readonly HideInStock[];
  /** Names of all that lies in the folder. */
  readonly names: readonly string[];
}

/**
 * Changes a stock by one step, all of it or nothing, whenever the process ends:
 *
 * 1. Under the lock, a step that was interrupted is completed first.
 * 2. The contents that the new step writes, and those that it takes away, are kept under their sums.
 * 3. The journal is written anew with the step in it, by one rename. This is the moment from which it counts.
 * 4. The hide files are written as the journal says, and the journal notes that they are.
 *
 * Whoever is ended before 3 leaves the stock as it was, with a few kept contents that nobody names; whoever is ended
 * after it leaves a step that the next command completes. `plan` throws to change nothing.
 */
export function changeStock<Step extends StockStep>(
  folder: string,
  plan: (stock: LockedStock) => Step,
  options: LockOptions = {},
): Promise<{ readonly step: Step; readonly diagnostics: readonly Diagnostic[] }> {
  const { watch = NOBODY_WATCHES } = options;
  const underLock = () => {
    const completed = completeStep(folder, watch);
    const stock = loadStock(folder);
    const files = stock.read.map(({ file, hide }) => ({
      file: basename(file),
      hide,
      text: textOfFile(file),
    }));
    const step = plan({ ...stock, files, names: readdirSync(folder) });
    removeUnnamed(folder, stock.journal, watch);
    keepContents(folder, step, watch);
    writeJournal(folder, { ...stock.journal, entries: [...stock.journal.entries, step.entry] }, watch);
    completeStep(folder, watch);
    return { step, diagnostics: [...completed, ...stock.diagnostics] };
  };
  return withStockLock(folder, underLock, options);
}

/** Completes a step that was interrupted, if there is one. Says so. */
export async function completeStock(
  folder: string,
  options: LockOptions = {},
): Promise<readonly Diagnostic[]> {
  if (unfinishedStep(readJournal(folder)) === undefined) return [];
  return withStockLock(folder, () => completeStep(folder, options.watch ?? NOBODY_WATCHES), options);
}

/** Writes the files of the last step as its entry says, then notes it. Doing it twice is the same as doing it once. */
function completeStep(folder: string, watch: DiskWatch): readonly Diagnostic[] {
  const journal = readJournal(folder);
  const step = unfinishedStep(journal);
  if (step === undefined) return [];
  const { number, date, changes } = step;
  const open = changes.filter((change) => isOpen(folder, change, number));
  for (const { file, before, after } of open) {
    const path = join(folder, file);
    if (after === undefined) removeFile(path, watch);
    else {
      const content = keptText(folder, after, file, number);
      writeFilesSafely([{ path, content, isNew: before === undefined }], watch);
    }
  }
  // Also where the file itself was whole already when its process ended.
  for (const { file } of changes) removeStaleParts(join(folder, file));
  writeJournal(folder, { ...journal, finished: number }, watch);
  return [{ code: 'stock-completed', severity: 'note', params: { number, date } }];
}

/** True if the file is still as it was before the step. Fails where it is neither that nor what the step makes of it. */
function isOpen(folder: string, { file, before, after }: StockChange, number: number): boolean {
  const now = hashOfFile(folder, file);
  if (now === after) return false;
  if (now === before) return true;
  throw leatherError('stock-in-the-way', { file, number }, { file: join(folder, STOCK_JOURNAL_FILE) });
}

function writeJournal(folder: string, journal: StockJournal, watch: DiskWatch): void {
  writeFilesSafely([{ path: join(folder, STOCK_JOURNAL_FILE), content: writeStockJournal(journal) }], watch);
}

function keepContents(folder: string, { contents }: StockStep, watch: DiskWatch): void {
  const kept = join(folder, KEPT_FOLDER);
  if (!existsSync(kept)) {
    watch('make folder', kept);
    mkdirSync(kept, { recursive: true });
    syncFolder(folder);
  }
  writeFilesSafely(
    contents
      .filter(({ hash }) => hashOfFile(kept, `${hash}.json`) !== hash)
      .map(({ hash, text }) => ({ path: keptPath(folder, hash), content: text })),
    watch,
  );
}

/** Removes kept contents that no step names: those of a step that was ended before it counted. */
function removeUnnamed(folder: string, { entries }: StockJournal, watch: DiskWatch): void {
  const kept = join(folder, KEPT_FOLDER);
  if (!existsSync(kept)) return;
  const named = new Set(
    entries.flatMap(({ changes }) =>
      changes.flatMap(({ before, after }) => [`${before}.json`, `${after}.json`]),
    ),
  );
  for (const name of readdirSync(kept)) {
    if (named.has(name) || !/^[0-9a-f]{64}\.json(?:\.\d+\.part)?$/.test(name)) continue;
    watch('remove', join(kept, name));
    unlinkSync(join(kept, name));
  }
}
