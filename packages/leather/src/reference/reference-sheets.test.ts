import { expect, test } from 'vitest';
import { parseReferenceSheets, writeReferenceSheets } from './reference-sheets-file.js';
import { barsOfSheet, withPrintedSheets } from './reference-sheets.js';
import type { PrintedSheets, ReferenceSheets } from './reference-sheets.js';
import { printStretch } from './sheet-plan.js';

const first: PrintedSheets = { sheets: [1, 2, 3, 4], paper: 'A4', acrossMm: 159.2, downMm: 218.9 };
const known: ReferenceSheets = { printed: [first] };

test('when a sheet was measured with its set, its bars are known', () => {
  expect(barsOfSheet(known, 3)).toEqual({ acrossMm: 159.2, downMm: 218.9 });
  expect(printStretch(barsOfSheet(known, 3)).x).toBeCloseTo(0.995, 12);
});

test('when nobody measured a sheet, it counts as drawn', () => {
  expect(barsOfSheet(known, 5)).toBeUndefined();
  expect(printStretch(barsOfSheet(known, 5))).toEqual({ x: 1, y: 1 });
});

test('when another set is measured, the first one stays', () => {
  const both = withPrintedSheets(known, { sheets: [10, 9], paper: 'Letter', acrossMm: 160, downMm: 220 });
  expect(both.printed).toEqual([first, { sheets: [9, 10], paper: 'Letter', acrossMm: 160, downMm: 220 }]);
});

test('when some sheets are printed and measured anew, only their old figures go', () => {
  const anew = withPrintedSheets(known, { sheets: [1, 2], paper: 'Letter', acrossMm: 161, downMm: 221 });
  expect(anew.printed.map(({ sheets, acrossMm }) => [sheets, acrossMm])).toEqual([
    [[1, 2], 161],
    [[3, 4], 159.2],
  ]);
  const all = withPrintedSheets(anew, { sheets: [1, 2, 3, 4], paper: 'A4', acrossMm: 160, downMm: 220 });
  expect(all.printed).toHaveLength(1);
});

test('when what is known is written and read, it is the same', () => {
  const both = withPrintedSheets(known, { sheets: [60], paper: 'Letter', acrossMm: 158.75, downMm: 219.075 });
  expect(parseReferenceSheets(writeReferenceSheets(both), { file: 'again' })).toEqual(both);
});
