import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { barsOfSheet, parseReferenceSheets } from '@hidebound/leather';
import { expect, test } from 'vitest';
import { hidebound, hideboundHere, testFolder } from './cli-support.js';

const folder = testFolder();

function known(file: string) {
  return parseReferenceSheets(readFileSync(file, 'utf8'), { file });
}

test('when one sheet of a set is measured, all of the set are known, and sets before it stay', async () => {
  const file = join(folder, 'readings.json');
  const first = await hideboundHere(['markers', '--measured', '159.2 x 218.9', '--readings', file]);
  expect(first).toMatchObject({ status: 0, stderr: '' });
  expect(first.stdout).toContain('across 159.2 mm (0.5 % short), down 218.9 mm (0.5 % short)');
  await hideboundHere([
    ...['markers', '--measured', '6 5/16 in x 8 11/16 in', '--sheets', '9-12', '--paper', 'Letter'],
    ...['--readings', file],
  ]);
  const sheets = known(file);
  expect(sheets.printed.map(({ paper }) => paper)).toEqual(['A4', 'Letter']);
  expect(barsOfSheet(sheets, 8)).toEqual({ acrossMm: 159.2, downMm: 218.9 });
  // 6.3125 in and 8.6875 in of 25.4 mm, to 0.001 mm.
  expect(barsOfSheet(sheets, 12)!.acrossMm).toBeCloseTo(160.338, 2);
  expect(barsOfSheet(sheets, 12)!.downMm).toBeCloseTo(220.663, 2);
  expect(readdirSync(folder)).toEqual(['readings.json']);
});

test('when no file is named, the readings are kept in the folder that one works in', () => {
  const run = hidebound(['markers', '--measured', '160 x 220'], { cwd: folder });
  expect(run).toMatchObject({ status: 0 });
  expect(existsSync(join(folder, 'reference-sheets.json'))).toBe(true);
});

test.each([
  ['143 x 220', 3, /The line across is drawn 160 mm long and reads 143 mm, more than 10 % off/],
  ['220 x 160', 3, /looks like the two swapped/],
  ['160', 3, /are no two lengths; write the line across and then the one down, such as "159\.2 x 218\.9"/],
])('when the rule shows %s, it ends with %i and nothing is written', async (written, status, words) => {
  const file = join(folder, 'none.json');
  const run = await hideboundHere(['markers', '--measured', written, '--readings', file]);
  expect(run.status).toBe(status);
  expect(run.stderr).toMatch(words);
  expect(existsSync(file)).toBe(false);
});

test('when the file of readings is damaged, it is refused and stays as it is', async () => {
  const file = join(folder, 'damaged.json');
  writeFileSync(file, '{ "format": "hidebound/reference-sheets@1", "printed": [');
  const run = await hideboundHere(['markers', '--measured', '160 x 220', '--readings', file]);
  expect(run.status).toBe(3);
  expect(readFileSync(file, 'utf8')).toMatch(/\[$/);
});

test.each([
  [['--sheets', '0-3'], /--sheets can't be "0-3"; write numbers of sheets from 1 to 60/],
  [['--sheets', '1-61'], /from 1 to 60/],
  [['--sheets', '1, 1'], /each once/],
  [['--sheets', 'all'], /such as "1-8"/],
])('when sheets are asked for with %j, it ends with 2 and says what is right', async (options, words) => {
  const pdf = join(folder, 'none.pdf');
  const run = await hideboundHere(['markers', '--pdf', pdf, ...options]);
  expect(run.status).toBe(2);
  expect(run.stderr).toMatch(words);
  expect(existsSync(pdf)).toBe(false);
});

test('when nothing is asked for, the sentence says what can be', async () => {
  const run = await hideboundHere(['markers']);
  expect(run.status).toBe(2);
  expect(run.stderr).toMatch(/give --pdf with a file name to make the sheets, or --measured/);
});
