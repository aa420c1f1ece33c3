import { workshopOfLayout } from '@hidebound/leather';
import type { Diagnostic, Hide, Layout, NamedHide, Workshop } from '@hidebound/leather';
import { PAGE_SIZES, drawCuttingSheets, drawLayoutTrueScale, writePdf, writeSvg } from '@hidebound/render';
import type { FontBook, HidePicture, HidePictures, PageName, SeenFrom } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { besideFile, loadLayout, loadLayoutHides } from '../io/load-files.js';
import { loadWorkshop } from '../io/load-workshop.js';
import { TRUE_SCALE_PIXELS, loadHidePictures, pagePixels } from '../io/hide-pictures.js';
import type { HideInFile } from '../io/hide-pictures.js';
import { fileWord, nameOneOf, refuseExtension } from '../io/output-names.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';

/** Makes the cutting sheet of a layout. */
export async function sheetCommand([path]: readonly string[], options: OptionValues): Promise<CommandResult> {
  const asked = askedFiles(options);
  const layout = loadLayout(path!);
  const named = loadLayoutHides(layout, path!);
  const hides = named.map(({ hide }) => hide);
  const ownWorkshop = textOption(options, 'workshop');
  const workshop = workshopOfLayout(layout) ?? loadWorkshop(ownWorkshop, path!)?.workshop;
  const job: SheetJob = {
    layout,
    hides,
    fonts: loadFontBook(),
    side: textOption(options, 'side') as SeenFrom,
    ...(workshop === undefined ? {} : { workshop }),
  };
  const page = textOption(options, 'page') as PageName;
  const shown = await sheetPictures(inFiles(named, path!), asked, page, options);
  const pages = await pageFiles({ ...job, pictures: shown.onPages }, asked, page);
  const trueScale = trueScaleFiles({ ...job, pictures: shown.atTrueScale }, asked.svg);
  const files = [...pages, ...trueScale];
  const written = files.map((file) => file.path);
  refuseOverwriting(written, [path!, ...layout.hides.map(({ file }) => besideFile(path!, file))]);
  writeFilesSafely(files);
  const isIdle = ownWorkshop !== undefined && layout.marks !== undefined;
  const diagnostics = [...(isIdle ? [workshopNotNeeded(ownWorkshop)] : []), ...shown.diagnostics];
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

function inFiles(named: readonly NamedHide[], layoutPath: string): readonly HideInFile[] {
  return named.map(({ file, hide }) => ({ file: besideFile(layoutPath, file), hide }));
}

interface SheetPictures {
  readonly onPages: HidePictures;
  readonly atTrueScale: HidePictures;
  readonly diagnostics: readonly Diagnostic[];
}

/** The hides' photos, each as fine as what is asked for can show. */
async function sheetPictures(
  hides: readonly HideInFile[],
  asked: AskedFiles,
  page: PageName,
  options: OptionValues,
): Promise<SheetPictures> {
  const none = { pictures: new Map<string, HidePicture>(), diagnostics: [] };
  const load = (isAsked: boolean, longestPx: number) =>
    isAsked && options['photo'] !== false ? loadHidePictures(hides, longestPx) : none;
  const hasPages = asked.pdf !== undefined || asked.pageSvg !== undefined;
  const onPages = await load(hasPages, pagePixels(PAGE_SIZES[page]));
  const atTrueScale = await load(asked.svg !== undefined, TRUE_SCALE_PIXELS);
  return {
    onPages: onPages.pictures,
    atTrueScale: atTrueScale.pictures,
    // Both tell the same.
    diagnostics: hasPages ? onPages.diagnostics : atTrueScale.diagnostics,
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
  readonly pictures?: HidePictures;
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
