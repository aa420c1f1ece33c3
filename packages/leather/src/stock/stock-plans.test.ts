import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseHide, writeHide } from '../files/hide-file.js';
import { hashHide, sha256Hex } from '../hash/index.js';
import type { StockJournal } from '../model/stock.js';
import { planUndo } from './plan-undo.js';
import { openTakes, stepThatCut, stockFindings, unfinishedStep } from './stock-findings.js';

const DEMO = new URL('../../../../fixtures/demo/', import.meta.url);
const side = parseHide(readFileSync(new URL('side.hide.json', DEMO), 'utf8'), { file: 'side.hide.json' });
const before = writeHide(side);
const after = writeHide({ ...side, state: 'cut' });
const offcut = { ...side, id: 'side-a', parent: side.id, cut: 'offcut' as const };

function taken(): StockJournal {
  return {
    finished: 1,
    entries: [
      {
        kind: 'taken',
        number: 1,
        date: '2026-03-02',
        layout: 'bags.layout.json',
        layoutHash: sha256Hex('layout'),
        hides: [{ hide: side.id, hash: hashHide(side) }],
        offcuts: ['side-a'],
        changes: [
          { hide: side.id, file: 'side.hide.json', before: sha256Hex(before), after: sha256Hex(after) },
          { hide: 'side-a', file: 'side-a.hide.json', after: sha256Hex(writeHide(offcut)) },
        ],
      },
    ],
  };
}

const filed = (hide: typeof side, file: string) => ({ hide, file, text: writeHide(hide) });

const undoInput = (hides: readonly ReturnType<typeof filed>[], journal = taken()) => ({
  hides,
  journal,
  date: '2026-03-03',
  kept: () => before,
});

describe('undoing', () => {
  const cut = filed({ ...side, state: 'cut' as const }, 'side.hide.json');

  test('when nothing was changed since, the hide has its own bytes again and the offcut goes', () => {
    const { entry, back } = planUndo(undoInput([cut, filed(offcut, 'side-a.hide.json')]));
    expect(entry.changes).toEqual([
      { hide: side.id, file: 'side.hide.json', before: sha256Hex(after), after: sha256Hex(before) },
      { hide: 'side-a', file: 'side-a.hide.json', before: sha256Hex(writeHide(offcut)) },
    ]);
    expect(back.map(({ state }) => state)).toEqual(['on hand']);
  });

  test('when a note was written into the cut hide since, it stays', () => {
    const noted = filed({ ...side, state: 'cut' as const, notes: 'look for the scar' }, 'side.hide.json');
    const { back } = planUndo(undoInput([noted, filed(offcut, 'side-a.hide.json')]));
    expect(back[0]).toMatchObject({ state: 'on hand', notes: 'look for the scar' });
  });

  test('when the offcut is cut, gone or taken by a later step, it is refused', () => {
    expect(() => planUndo(undoInput([cut, filed({ ...offcut, state: 'cut' }, 'side-a.hide.json')]))).toThrow(
      /marked as cut/,
    );
    expect(() => planUndo(undoInput([cut]))).toThrow(/no longer in the stock/);
    const first = taken().entries[0]!;
    if (first.kind !== 'taken') throw new Error('A taken entry was made.');
    const later = { ...first, number: 2, hides: [{ hide: 'side-a', hash: hashHide(offcut) }], offcuts: [] };
    const journal = { finished: 2, entries: [first, later] };
    const input = undoInput([cut, filed({ ...offcut, state: 'cut' }, 'side-a.hide.json')], journal);
    expect(() => planUndo({ ...input, step: 1 })).toThrow(/was cut by step 2/);
  });

  test('when there is no such step, or it is undone, it says so', () => {
    expect(() => planUndo({ ...undoInput([cut]), step: 7 })).toThrow(
      /There is no step 7; the steps go from 1 to 1/,
    );
    const entries = [
      ...taken().entries,
      { kind: 'undone', number: 2, date: '2026-03-03', undoes: 1, changes: [] } as const,
    ];
    const journal = { finished: 2, entries };
    expect(() => planUndo({ ...undoInput([cut], journal), step: 1 })).toThrow(/undone already/);
    expect(() => planUndo(undoInput([cut], journal))).toThrow(/Nothing was taken/);
  });
});

describe('a stock held against its journal', () => {
  test('when a hide file says that it is whole though a step cut it, it counts as cut and is told', () => {
    const { hides, diagnostics } = stockFindings(
      [
        { file: 'side.hide.json', hide: side },
        { file: 'side-a.hide.json', hide: offcut },
      ],
      taken(),
    );
    expect(hides.map(({ hide }) => hide.state)).toEqual(['cut', 'on hand']);
    expect(diagnostics.map(({ code }) => code)).toEqual(['stock-says-whole']);
  });

  test('when two files have one id, the first counts; when an offcut has no file, it is told', () => {
    const { hides, diagnostics } = stockFindings(
      [
        { file: 'a.hide.json', hide: { ...side, state: 'cut' } },
        { file: 'b.hide.json', hide: { ...side, state: 'cut' } },
      ],
      taken(),
    );
    expect(hides.map(({ file }) => file)).toEqual(['a.hide.json']);
    expect(diagnostics.map(({ code }) => code)).toEqual(['stock-id-twice', 'stock-file-gone']);
  });

  test('when the last step was interrupted, it is known', () => {
    expect(unfinishedStep({ ...taken(), finished: 0 })?.number).toBe(1);
    expect(unfinishedStep(taken())).toBeUndefined();
    expect(openTakes(taken())).toHaveLength(1);
    expect(stepThatCut(side.id, taken())?.number).toBe(1);
    expect(stepThatCut('side-a', taken())).toBeUndefined();
  });
});
