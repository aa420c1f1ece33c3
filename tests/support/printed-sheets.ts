import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import type { SheetPicture } from '../camera/index.js';
import { hideboundHere } from '../cli-support.js';
import { outsideProgram } from '../tools/outside.js';
import { readPgm } from '../tools/pixels.js';

export const poppler = outsideProgram('pdftoppm');

const SHEET_PX_PER_MM = 5;

/** Sheets as `hidebound markers` prints them, seen by poppler; the PDF is kept in the folder. */
export async function printedSheets(
  folder: string,
  paper: 'A4' | 'Letter',
  count: number,
): Promise<(sheet: number) => SheetPicture> {
  const pdf = join(folder, `${paper}.pdf`);
  if (!existsSync(pdf)) {
    const run = await hideboundHere(['markers', '--paper', paper, '--sheets', `1-${count}`, '--pdf', pdf]);
    expect(run, run.stderr).toMatchObject({ status: 0 });
  }
  const pages = Array.from({ length: count }, (_, i): SheetPicture => {
    const name = join(folder, `${paper}-${i + 1}`);
    const page = ['-f', String(i + 1), '-l', String(i + 1), '-singlefile'];
    poppler.run(['-r', String(SHEET_PX_PER_MM * 25.4), '-gray', ...page, pdf, name]);
    const { width, height, pixels } = readPgm(readFileSync(`${name}.pgm`));
    return { width, height, grey: pixels, pxPerMm: SHEET_PX_PER_MM };
  });
  return (sheet) => pages[sheet - 1]!;
}
