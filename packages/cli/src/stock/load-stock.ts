import { join } from 'node:path';
import { parseHide, stockFindings } from '@hidebound/leather';
import type { Diagnostic, NamedHide, StockJournal } from '@hidebound/leather';
import { describeFailure } from '../describe-failure.js';
import { refuseTooDetailed } from '../io/refuse-too-detailed.js';
import { readText } from '../io/load-files.js';
import { redrawnOffcuts } from './redrawn-offcuts.js';
import { hideFileNames, keptText, readJournal } from './stock-files.js';

/** A folder of hides and offcuts, as its journal knows it. */
export interface LoadedStock {
  readonly folder: string;
  /** With the paths of their files. Also those that are cut; `hide.state` tells. In the order of their files. */
  readonly hides: readonly NamedHide[];
  /** Every hide file that can be read, as it says itself, also a second one of the same id. */
  readonly read: readonly NamedHide[];
  readonly journal: StockJournal;
  /** Files that are left out because they are broken, ids that stand twice, and what was changed behind the journal. */
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads every `*.hide.json` of a folder, and its journal. A file that can't be read becomes a warning. Nothing is
 * written: where a step was interrupted, its files are taken as the journal says they are to be, so that what is read is
 * always the stock before a step or after it. Fails for what is no folder, for a broken journal, and for too many files.
 */
export function loadStock(folder: string): LoadedStock {
  const journal = readJournal(folder);
  const names = new Set(hideFileNames(folder));
  const open = journal.finished < journal.entries.length ? journal.entries[journal.finished] : undefined;
  const meant = new Map<string, string>();
  for (const { file, after } of open?.changes ?? []) {
    if (after === undefined) names.delete(file);
    else {
      names.add(file);
      meant.set(file, keptText(folder, after, file, open!.number));
    }
  }
  const hides: NamedHide[] = [];
  const broken: Diagnostic[] = [];
  for (const name of [...names].sort()) {
    const file = join(folder, name);
    try {
      const text = meant.get(name) ?? readText(file, 'hide');
      refuseTooDetailed(text, file);
      hides.push({ file, hide: parseHide(text, { file }) });
    } catch (error) {
      broken.push(brokenFile(file, error));
    }
  }
  const found = stockFindings(hides, journal);
  return {
    folder,
    hides: found.hides,
    read: hides,
    journal,
    diagnostics: [...broken, ...found.diagnostics, ...redrawnOffcuts(folder, hides, journal)],
  };
}

function brokenFile(file: string, error: unknown): Diagnostic {
  const { exitStatus, sentence } = describeFailure(error, file);
  // A mistake in the program itself is no broken file.
  if (exitStatus > 4) throw error;
  const problem = sentence.startsWith(file) ? sentence.slice(file.length).replace(/^[:,]\s*/, '') : sentence;
  return { code: 'stock-broken-file', severity: 'warning', params: { file, problem } };
}
