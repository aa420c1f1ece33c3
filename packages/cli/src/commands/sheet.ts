import type { Diagnostic, Hide, Layout, Workshop } from '@hidebound/leather';
import { drawCuttingSheets, drawLayoutTrueScale, writePdf, writeSvg } from '@hidebound/render';
import type { FontBook, PageName, SeenFrom } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { besideFile, loadLayout, loadLayoutHides } from '../io/load-files.js';
import { loadWorkshop } from '../io/load-workshop.js';
import { fileWord, nameOneOf, refuseExtension } from '../io/output-names.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';
import { workshopOfLayout } from '../workshop-of-layout.js';

/** Makes the cutting sheet of a layout. */
export async function sheetCommand([path]: readonly string[], options: OptionValues): Promise<CommandResult> {
  const asked = askedFiles(options);
  const layout = loadLayout(path!);
  const hides = loadLayoutHides(layout, path!).map(({ hide }) => hide);
  const named = textOption(options, 'workshop');
  const workshop = workshopOfLayout(layout) ?? loadWorkshop(named, path!)?.workshop;
  const job: SheetJob = {
    layout,
    hides,
    fonts: loadFontBook(),
    side: textOption(options, 'side') as SeenFrom,
    ...(workshop === undefined ? {} : { workshop }),
  };
  const pages = await pageFiles(job, asked, textOption(options, 'page') as PageName);
  const trueScale = trueScaleFiles(job, asked.svg);
  const files = [...pages, ...trueScale];
  const written = files.map((file) => file.path);
  refuseOverwriting(written, [path!, ...layout.hides.map(({ file }) => besideFile(path!, file))]);
  writeFilesSafely(files);
  const diagnostics = named !== undefined && layout.marks !== undefined ? [workshopNotNeeded(named)] : [];
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(diagnostics),
      ...pages.map((file) => `The cutting sheet is in ${file.path}`),
      ...trueScale.map((file) => `The layout at true scale is in ${file.path}`),
    ],
    data: { file: path, written },
    diagnostics,
  };
}

interface AskedFiles {
  readonly pdf: string | undefined;
  readonly pageSvg: string | undefined;
  readonly svg: string | undefined;
}

function askedFiles(options: OptionValues): AskedFiles {
  const pdf = textOption(options, 'pdf');
  const pageSvg = textOption(options, 'pageSvg');
  const svg = textOption(options, 'svg');
  if (pdf === undefined && pageSvg === undefined && svg === undefined) {
    throw new CliError('no-output', 'Nothing to write: give --pdf, --page-svg or --svg with a file name.');
  }
  refuseExtension('--pdf', pdf, '.svg', '.pdf');
  refuseExtension('--page-svg', pageSvg, '.pdf', '.svg');
  refuseExtension('--svg', svg, '.pdf', '.svg');
  return { pdf, pageSvg, svg };
}

interface SheetJob {
  readonly layout: Layout;
  readonly hides: readonly Hide[];
  readonly fonts: FontBook;
  readonly side: SeenFrom;
  readonly workshop?: Workshop;
}

async function pageFiles(
  job: SheetJob,
  { pdf, pageSvg }: AskedFiles,
  page: PageName,
): Promise<readonly FileToWrite[]> {
  if (pdf === undefined && pageSvg === undefined) return [];
  const pages = drawCuttingSheets({ ...job, page });
  const names = pages.map((_, index) => String(index + 1));
  const title = `Cutting sheet: ${job.layout.order.name}`;
  return [
    ...(pdf === undefined
      ? []
      : [{ path: pdf, content: await writePdf(pages, { fonts: job.fonts, title }) }]),
    ...(pageSvg === undefined
      ? []
      : pages.map((drawing, index) => ({
          path: nameOneOf(pageSvg, names, index),
          content: writeSvg(drawing),
        }))),
  ];
}

function trueScaleFiles({ hides, ...job }: SheetJob, svg: string | undefined): readonly FileToWrite[] {
  if (svg === undefined) return [];
  const names = hides.map(({ id }) => fileWord(id));
  return hides.map((hide, index) => ({
    path: nameOneOf(svg, names, index),
    content: writeSvg(drawLayoutTrueScale({ ...job, hide })),
  }));
}

function workshopNotNeeded(file: string): Diagnostic {
  return { code: 'workshop-not-needed', severity: 'note', params: {}, place: { file } };
}
