import { parseHide, writeHide } from '../files/hide-file.js';
import { sha256Hex } from '../hash/index.js';
import type { Hide } from '../model/hide.js';
import type { StockChange, StockJournal, TakenEntry } from '../model/stock.js';
import { leatherError } from '../words/refuse.js';
import type { HideInStock } from './plan-take.js';
import { openTakes } from './stock-findings.js';
import { changesWithContents } from './stock-step.js';
import type { FileChange, StockStep } from './stock-step.js';

export interface UndoInput {
  readonly hides: readonly HideInStock[];
  readonly journal: StockJournal;
  /** Number of the step; absent: the last one that is not undone. */
  readonly step?: number | undefined;
  /** ISO 8601 day. */
  readonly date: string;
  /** The content of a sum that the step names, from where it is kept. */
  readonly kept: (hash: string, file: string, number: number) => string;
}

export interface UndoPlan extends StockStep {
  readonly undone: TakenEntry;
  readonly back: readonly Hide[];
}

/**
 * What it takes to undo a step: its hides are as they were before, its offcuts are gone. What was written into a hide's
 * file since (a place, a note) stays; what was written into an offcut's is kept beside the journal.
 * @throws LeatherError where an offcut of it was cut since or is no longer there.
 */
export function planUndo(input: UndoInput): UndoPlan {
  const undone = stepToUndo(input);
  const offcuts = new Set(undone.offcuts);
  const changes = undone.changes.map((change) =>
    offcuts.has(change.hide) ? offcutAway(change, undone, input) : hideBack(change, undone, input),
  );
  const step = changesWithContents(changes);
  return {
    entry: {
      kind: 'undone',
      number: input.journal.entries.length + 1,
      date: input.date,
      undoes: undone.number,
      changes: step.changes,
    },
    contents: step.contents,
    undone,
    back: changes.flatMap(({ after, file }) => (after === undefined ? [] : [parseHide(after, { file })])),
  };
}

function stepToUndo({ journal, step }: UndoInput): TakenEntry {
  const open = openTakes(journal);
  if (step === undefined) {
    const last = open.at(-1);
    if (last === undefined) throw leatherError('stock-nothing-to-undo', {});
    return last;
  }
  if (step > journal.entries.length) {
    throw leatherError('stock-no-such-step', { number: step, last: journal.entries.length });
  }
  const found = open.find(({ number }) => number === step);
  if (found === undefined) throw leatherError('stock-undone-already', { number: step });
  return found;
}

function offcutAway(change: StockChange, { number }: TakenEntry, input: UndoInput): FileChange {
  const { hide: offcut, file } = change;
  const by = openTakes(input.journal).find(({ hides }) => hides.some(({ hide }) => hide === offcut));
  if (by !== undefined) throw leatherError('stock-offcut-cut-since', { number, offcut, by: by.number });
  const found = input.hides.find(({ hide }) => hide.id === offcut);
  if (found === undefined) throw leatherError('stock-offcut-gone', { number, offcut, file });
  if (found.hide.state === 'cut') throw leatherError('stock-offcut-marked-cut', { number, offcut });
  return { hide: offcut, file: found.file, before: found.text };
}

function hideBack(change: StockChange, { number }: TakenEntry, input: UndoInput): FileChange {
  const { hide: id, file, before, after } = change;
  const found = input.hides.find(({ hide }) => hide.id === id);
  if (found === undefined || before === undefined) {
    throw leatherError('stock-hide-gone', { number, hide: id, file });
  }
  const old = input.kept(before, file, number);
  const isAsLeft = sha256Hex(found.text) === after;
  const { state } = parseHide(old, { file });
  return {
    hide: id,
    file: found.file,
    before: found.text,
    after: isAsLeft ? old : writeHide({ ...found.hide, state }),
  };
}
