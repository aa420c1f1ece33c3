import { basename } from 'node:path';
import { openTakes, parseHide, sha256Hex } from '@hidebound/leather';
import type { Diagnostic, Hide, NamedHide, StockJournal } from '@hidebound/leather';
import { keptText, textOfFile } from './stock-files.js';

/**
 * Offcuts whose outline is no longer what a step left of their hide: their areas no longer add up to it. Places, notes
 * and prices may be written into a file as one likes.
 */
export function redrawnOffcuts(
  folder: string,
  hides: readonly NamedHide[],
  journal: StockJournal,
): readonly Diagnostic[] {
  return openTakes(journal)
    .filter(({ number }) => number <= journal.finished)
    .flatMap(({ number, offcuts, changes }) =>
      changes
        .filter(({ hide, file, after }) => {
          const found = hides.find((each) => each.hide.id === hide && basename(each.file) === file);
          if (!offcuts.includes(hide) || after === undefined || found === undefined) return false;
          if (sha256Hex(textOfFile(found.file)) === after) return false;
          const left = parseHide(keptText(folder, after, file, number), { file });
          return shapeOf(left) !== shapeOf(found.hide);
        })
        .map(({ hide }): Diagnostic => ({
          code: 'stock-shape-changed',
          severity: 'warning',
          params: { offcut: hide, number },
        })),
    );
}

function shapeOf({ outline, openings }: Hide): string {
  return JSON.stringify([outline, openings]);
}
