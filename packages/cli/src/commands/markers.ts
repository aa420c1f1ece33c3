import { existsSync } from 'node:fs';
import {
  BAR_MM,
  REFERENCE_SHEETS_FILE,
  formatLength,
  paperNamed,
  parseMeasuredBars,
  parseReferenceSheets,
  withPrintedSheets,
  writePageNumbers,
  writeReferenceSheets,
} from '@hidebound/leather';
import type { PrintedSheets, ReferencePaper, ReferenceSheets } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { readText } from '../io/load-files.js';
import { refuseExtension } from '../io/output-names.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';
import { sheetNumbers } from '../sheet-numbers.js';

/** Makes the reference sheets that lie beside a hide in a photo, and remembers how long their lines came out. */
export async function markersCommand(_: readonly string[], options: OptionValues): Promise<CommandResult> {
  const pdf = textOption(options, 'pdf');
  const measured = textOption(options, 'measured');
  if (pdf === undefined && measured === undefined) {
    throw new CliError(
      'no-output',
      'Nothing to do: give --pdf with a file name to make the sheets, or --measured with what your rule shows.',
    );
  }
  refuseExtension('--pdf', pdf, '.svg', '.pdf');
  const sheets = sheetNumbers(textOption(options, 'sheets')!);
  const paper = textOption(options, 'paper') as ReferencePaper;
  const words = writePageNumbers(sheets);
  const readings = textOption(options, 'readings') ?? REFERENCE_SHEETS_FILE;
  const printed = measured === undefined ? undefined : { sheets, paper, ...parseMeasuredBars(measured) };
  const files = [
    ...(pdf === undefined ? [] : [await sheetsFile(pdf, sheets, paper)]),
    ...(printed === undefined ? [] : [readingsFile(readings, printed)]),
  ];
  if (pdf !== undefined && printed !== undefined) refuseOverwriting([pdf], [readings]);
  writeFilesSafely(files);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...(pdf === undefined ? [] : [`The reference sheets (${words}, ${paper}) are in ${pdf}`]),
      ...(printed === undefined ? [] : [readingLine(printed, words, readings)]),
    ],
    data: {
      sheets,
      paper,
      ...(printed === undefined ? {} : { acrossMm: printed.acrossMm, downMm: printed.downMm }),
      written: files.map(({ path }) => path),
    },
    diagnostics: [],
  };
}

async function sheetsFile(
  path: string,
  sheets: readonly number[],
  paperName: ReferencePaper,
): Promise<FileToWrite> {
  // Drawing takes longest to load, and who only tells a reading does not draw.
  const { drawReferenceSheet, writePdf } = await import('@hidebound/render');
  const { loadFontBook } = await import('@hidebound/render/node');
  const fonts = loadFontBook();
  const paper = paperNamed(paperName);
  const pages = sheets.map((sheet) => drawReferenceSheet({ sheet, paper, fonts }));
  const title = `Reference sheets ${writePageNumbers(sheets)}`;
  return { path, content: await writePdf(pages, { fonts, title }) };
}

function readingsFile(path: string, printed: PrintedSheets): FileToWrite {
  const known: ReferenceSheets = existsSync(path)
    ? parseReferenceSheets(readText(path, 'reference-sheets'), { file: path })
    : { printed: [] };
  return { path, content: writeReferenceSheets(withPrintedSheets(known, printed)) };
}

function readingLine({ acrossMm, downMm, paper }: PrintedSheets, words: string, file: string): string {
  const across = readingWords(acrossMm, BAR_MM.across);
  const down = readingWords(downMm, BAR_MM.down);
  return `Remembered in ${file} for the sheets ${words} (${paper}): across ${across}, down ${down}`;
}

/** "159.2 mm (0.5 % short)". */
function readingWords(mm: number, drawnMm: number): string {
  const percent = Math.abs((mm / drawnMm - 1) * 100).toFixed(1);
  const off = percent === '0.0' ? 'as drawn' : `${percent} % ${mm < drawnMm ? 'short' : 'long'}`;
  return `${formatLength(mm, { unit: 'mm' })} (${off})`;
}
