import { paperNamed, writePageNumbers } from '@hidebound/leather';
import { drawReferenceSheet, writePdf } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { refuseExtension } from '../io/output-names.js';
import { writeFilesSafely } from '../io/write-safely.js';
import { sheetNumbers } from '../sheet-numbers.js';

/** Makes the reference sheets that lie beside a hide in a photo. */
export async function markersCommand(_: readonly string[], options: OptionValues): Promise<CommandResult> {
  const pdf = textOption(options, 'pdf');
  const sheets = sheetNumbers(textOption(options, 'sheets')!);
  const paper = paperNamed(textOption(options, 'paper')!);
  refuseExtension('--pdf', pdf, '.svg', '.pdf');
  if (pdf === undefined) {
    throw new CliError('no-output', 'Nothing to write: give --pdf with a file name.');
  }
  const fonts = loadFontBook();
  const pages = sheets.map((sheet) => drawReferenceSheet({ sheet, paper, fonts }));
  const words = writePageNumbers(sheets);
  const content = await writePdf(pages, { fonts, title: `Reference sheets ${words}` });
  writeFilesSafely([{ path: pdf, content }]);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [`The reference sheets (${words}) are in ${pdf}`],
    data: { sheets, paper: paper.name, written: [pdf] },
    diagnostics: [],
  };
}
