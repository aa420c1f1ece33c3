import { changedHides, workshopOfLayout } from '@hidebound/leather';
import type { Layout, NamedHide } from '@hidebound/leather';
import { drawSettingOut, writePdf, writeSvg } from '@hidebound/render';
import type { PageName, SeenFrom } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { besideFile, loadLayout, loadLayoutHides } from '../io/load-files.js';
import { nameOneOf, refuseExtension } from '../io/output-names.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';

/** Makes the sheet that a layout is chalked onto the leather from. */
export async function setoutCommand(
  [path]: readonly string[],
  options: OptionValues,
): Promise<CommandResult> {
  const asked = askedFiles(options);
  const layout = loadLayout(path!);
  const named = loadLayoutHides(layout, path!);
  refuseNothingLaid(layout, path!);
  const files = await pageFiles(layout, named, asked, options);
  refuseOverwriting(
    files.map((file) => file.path),
    [path!, ...layout.hides.map(({ file }) => besideFile(path!, file))],
  );
  writeFilesSafely(files);
  // The measures are taken from the hide's outline.
  const diagnostics = changedHides(layout, named, path!);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(diagnostics),
      ...files.map((file) => `The sheet for setting out is in ${file.path}`),
    ],
    data: { file: path, written: files.map((file) => file.path) },
    diagnostics,
  };
}

interface AskedFiles {
  readonly pdf: string | undefined;
  readonly pageSvg: string | undefined;
}

function askedFiles(options: OptionValues): AskedFiles {
  const pdf = textOption(options, 'pdf');
  const pageSvg = textOption(options, 'pageSvg');
  if (pdf === undefined && pageSvg === undefined) {
    throw new CliError('no-output', 'Nothing to write: give --pdf or --page-svg with a file name.');
  }
  refuseExtension('--pdf', pdf, '.svg', '.pdf');
  refuseExtension('--page-svg', pageSvg, '.pdf', '.svg');
  return { pdf, pageSvg };
}

/** A PDF without a page would be no file at all. */
function refuseNothingLaid({ hides }: Layout, file: string): void {
  if (hides.length > 0) return;
  throw new CliError(
    'nothing-laid',
    'Nothing is laid in this layout, so there is nothing to set out; lay the order anew.',
    {
      file,
    },
  );
}

async function pageFiles(
  layout: Layout,
  named: readonly NamedHide[],
  { pdf, pageSvg }: AskedFiles,
  options: OptionValues,
): Promise<FileToWrite[]> {
  const fonts = loadFontBook();
  const workshop = workshopOfLayout(layout);
  const pages = drawSettingOut({
    layout,
    hides: named.map(({ hide }) => hide),
    page: textOption(options, 'page') as PageName,
    side: textOption(options, 'side') as SeenFrom,
    fonts,
    ...(workshop === undefined ? {} : { workshop }),
  });
  const names = pages.map((_, index) => String(index + 1));
  const title = `Setting out: ${layout.order.name}`;
  return [
    ...(pdf === undefined ? [] : [{ path: pdf, content: await writePdf(pages, { fonts, title }) }]),
    ...(pageSvg === undefined
      ? []
      : pages.map((drawing, index) => ({
          path: nameOneOf(pageSvg, names, index),
          content: writeSvg(drawing),
        }))),
  ];
}
