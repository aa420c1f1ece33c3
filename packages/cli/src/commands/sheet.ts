import { extname } from 'node:path';
import { drawCuttingSheets, drawLayoutTrueScale, writePdf, writeSvg } from '@hidebound/render';
import type { PageName, SeenFrom } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { loadLayout, loadLayoutHides } from '../io/load-files.js';
import { writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';

/** Makes the cutting sheet of a layout. */
export async function sheetCommand([path]: readonly string[], options: OptionValues): Promise<CommandResult> {
  const pdf = textOption(options, 'pdf');
  const pageSvg = textOption(options, 'pageSvg');
  const svg = textOption(options, 'svg');
  if (pdf === undefined && pageSvg === undefined && svg === undefined) {
    throw new CliError('no-output', 'Nothing to write: give --pdf, --page-svg or --svg with a file name.');
  }
  const layout = loadLayout(path!);
  const hides = loadLayoutHides(layout, path!).map(({ hide }) => hide);
  const fonts = loadFontBook();
  const side = textOption(options, 'side') as SeenFrom;
  const files: FileToWrite[] = [];
  if (pdf !== undefined || pageSvg !== undefined) {
    const pages = drawCuttingSheets({
      layout,
      hides,
      fonts,
      side,
      page: textOption(options, 'page') as PageName,
    });
    if (pdf !== undefined)
      files.push({
        path: pdf,
        content: await writePdf(pages, { fonts, title: `Cutting sheet: ${layout.order.name}` }),
      });
    if (pageSvg !== undefined) {
      const names = pages.map((_, index) => String(index + 1));
      files.push(
        ...pages.map((page, index) => ({ path: nameOneOf(pageSvg, names, index), content: writeSvg(page) })),
      );
    }
  }
  if (svg !== undefined) {
    const names = hides.map(({ id }) => fileWord(id));
    files.push(
      ...hides.map((hide, index) => ({
        path: nameOneOf(svg, names, index),
        content: writeSvg(drawLayoutTrueScale({ layout, hide, fonts, side })),
      })),
    );
  }
  writeFilesSafely(files);
  const written = files.map((file) => file.path);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: written.map((file) => `The sheet is in ${file}`),
    data: { file: path, written },
    diagnostics: [],
  };
}

/** "sheet.svg" as it is if there is one, "sheet.NAME.svg" where there are several. */
function nameOneOf(path: string, names: readonly string[], index: number): string {
  if (names.length === 1) return path;
  const extension = extname(path);
  return `${path.slice(0, path.length - extension.length)}.${names[index]!}${extension}`;
}

/** A hide's id as a part of a file name. */
function fileWord(id: string): string {
  return id.replace(/[^\p{L}\p{N}._-]+/gu, '-');
}
