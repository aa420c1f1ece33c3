import type { Diagnostic } from '../model/diagnostic.js';
import type { StockEntry, StockJournal, TakenEntry } from '../model/stock.js';
import type { NamedHide } from '../order/sheets.js';

/** Entries that were taken and are not undone, in order. */
export function openTakes({ entries }: StockJournal): TakenEntry[] {
  const undone = new Set(entries.flatMap((entry) => (entry.kind === 'undone' ? [entry.undoes] : [])));
  return entries.filter((entry): entry is TakenEntry => entry.kind === 'taken' && !undone.has(entry.number));
}

/** The step that cut a hide, if one did and is not undone. */
export function stepThatCut(hide: string, journal: StockJournal): TakenEntry | undefined {
  return openTakes(journal)
    .filter(({ hides }) => hides.some((each) => each.hide === hide))
    .at(-1);
}

/** The step whose files were not all written when it was interrupted. */
export function unfinishedStep({ finished, entries }: StockJournal): StockEntry | undefined {
  return finished < entries.length ? entries[finished] : undefined;
}

/**
 * Holds the hides of a stock against its journal. A hide that a step cut counts as cut whatever its file says. Of two
 * files with one id the first counts, since a piece of leather must not be counted twice.
 */
export function stockFindings<Filed extends NamedHide>(
  hides: readonly Filed[],
  journal: StockJournal,
): { readonly hides: Filed[]; readonly diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const warn = (code: string, params: Diagnostic['params']): void => {
    diagnostics.push({ code, severity: 'warning', params });
  };
  const known = new Map<string, Filed>();
  for (const filed of hides) {
    const { file, hide } = filed;
    const first = known.get(hide.id);
    if (first !== undefined) {
      warn('stock-id-twice', { hide: hide.id, first: first.file, second: file });
      continue;
    }
    const step = hide.state === 'cut' ? undefined : stepThatCut(hide.id, journal);
    if (step === undefined) known.set(hide.id, filed);
    else {
      warn('stock-says-whole', { hide: hide.id, number: step.number, date: step.date });
      known.set(hide.id, { ...filed, hide: { ...hide, state: 'cut' } });
    }
  }
  for (const { number, offcuts, changes } of openTakes(journal)) {
    for (const offcut of offcuts) {
      const file = changes.find(({ hide }) => hide === offcut)?.file;
      if (known.has(offcut) || file === undefined) continue;
      warn('stock-file-gone', { offcut, number, file });
    }
  }
  return { hides: [...known.values()], diagnostics };
}
