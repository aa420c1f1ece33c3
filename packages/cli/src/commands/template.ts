import {
  LeatherError,
  holePlaces,
  paperNamed,
  parseLengthMm,
  planStitches,
  refuseUnprintable,
  rollOf,
  setsOfLayout,
  workshopOfLayout,
} from '@hidebound/leather';
import type { LayablePiece, Layout, PageSettings, Paper } from '@hidebound/leather';
import {
  drawHideTemplate,
  drawPieceTemplates,
  drawRoughCutTemplates,
  writePdf,
  writeSvg,
} from '@hidebound/render';
import type { SeenFrom, TemplateOptions, TemplatePages } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { askedHide } from '../asked-hide.js';
import { CliError } from '../cli-error.js';
import { numberOption, textOption } from '../command-context.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { countWords } from '../count-words.js';
import { EXIT_STATUS } from '../exit-status.js';
import { besideFile, loadLayout, loadLayoutHides } from '../io/load-files.js';
import { fileWord, nameOneOf, refuseExtension } from '../io/output-names.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';

/** Makes templates at full scale: of single pieces, of one hide's whole layout, or of the rough cuts. */
export async function templateCommand(
  [path]: readonly string[],
  options: OptionValues,
): Promise<CommandResult> {
  const { pdf, svg } = askedFiles(options);
  const kind = askedKind(options);
  const settings = askedSettings(options);
  const layout = loadLayout(path!);
  const job: TemplateOptions = {
    layout,
    ...settings,
    fonts: loadFontBook(),
    side: textOption(options, 'side') as SeenFrom,
    stitchHoles: holePlaces(planStitches({ ...layout, setsOf: setsOfLayout(layout) })),
  };
  const made = drawTemplates(job, kind, path!, options);
  const title = `Templates: ${layout.order.name}`;
  const files: FileToWrite[] = [
    ...(pdf === undefined
      ? []
      : [{ path: pdf, content: await writePdf(made.pages, { fonts: job.fonts, title }) }]),
    ...(svg === undefined ? [] : svgFiles(svg, made)),
  ];
  refuseOverwriting(
    files.map((file) => file.path),
    [path!, ...layout.hides.map(({ file }) => besideFile(path!, file))],
  );
  writeFilesSafely(files);
  return toResult(path!, kind, settings.paper, made, files);
}

type TemplateKind = 'pieces' | 'hide' | 'rough cuts';

function askedKind(options: OptionValues): TemplateKind {
  const asked: TemplateKind[] = [
    ...(options['pieces'] === true || options['piece'] !== undefined ? (['pieces'] as const) : []),
    ...(options['hide'] === undefined ? [] : (['hide'] as const)),
    ...(options['roughCuts'] === true ? (['rough cuts'] as const) : []),
  ];
  if (asked.length > 1) {
    throw new CliError(
      'bad-use',
      'One file holds one kind of template: give one of --pieces, --hide and --rough-cuts.',
    );
  }
  return asked[0] ?? 'pieces';
}

/** Paper, overlap and margin as they were given: what can't be printed is a slip in the command, not in a file. */
function askedSettings(options: OptionValues): PageSettings {
  try {
    const settings = {
      paper: askedPaper(options),
      overlapMm: numberOption(options, 'overlap')!,
      marginMm: numberOption(options, 'margin')!,
    };
    refuseUnprintable(settings);
    return settings;
  } catch (error) {
    if (error instanceof LeatherError) throw new CliError('bad-use', error.message);
    throw error;
  }
}

function askedPaper(options: OptionValues): Paper {
  const roll = textOption(options, 'roll');
  return roll === undefined ? paperNamed(textOption(options, 'paper')!) : rollOf(rollWidthMm(roll));
}

function rollWidthMm(text: string): number {
  try {
    return Number.isFinite(Number(text)) ? Number(text) : parseLengthMm(text);
  } catch {
    throw new CliError('bad-use', `--roll can't be "${text}"; give a width such as 914 or "36 in".`);
  }
}

function askedFiles(options: OptionValues): { readonly pdf?: string; readonly svg?: string } {
  const pdf = textOption(options, 'pdf');
  const svg = textOption(options, 'svg');
  if (pdf === undefined && svg === undefined) {
    throw new CliError('no-output', 'Nothing to write: give --pdf or --svg with a file name.');
  }
  refuseExtension('--pdf', pdf, '.svg', '.pdf');
  refuseExtension('--svg', svg, '.pdf', '.svg');
  return { ...(pdf === undefined ? {} : { pdf }), ...(svg === undefined ? {} : { svg }) };
}

function drawTemplates(
  job: TemplateOptions,
  kind: TemplateKind,
  path: string,
  options: OptionValues,
): TemplatePages {
  const { layout } = job;
  if (kind === 'pieces') return drawPieceTemplates({ ...job, pieces: askedPieces(layout, options) });
  const hides = loadLayoutHides(layout, path).map(({ hide }) => hide);
  if (kind === 'rough cuts') return drawRoughCutTemplates({ ...job, hides });
  const workshop = workshopOfLayout(layout);
  return drawHideTemplate({
    ...job,
    hide: askedHide(hides, textOption(options, 'hide')!),
    ...(workshop === undefined ? {} : { workshop }),
  });
}

/** All pieces that are laid, or those of the names that were given: "front", or "saddlebag/front". */
function askedPieces(layout: Layout, options: OptionValues): readonly LayablePiece[] {
  const names = options['piece'];
  if (!Array.isArray(names)) return layout.pieces;
  const wanted = new Set<LayablePiece>();
  for (const name of names as readonly string[]) {
    const found = layout.pieces.filter(
      ({ article, piece }) => piece === name || `${article}/${piece}` === name,
    );
    if (found.length === 0) {
      const known = [...new Set(layout.pieces.map(({ piece }) => piece))].join(', ');
      throw new CliError('bad-use', `The layout has no piece "${name}"; it has: ${known}.`);
    }
    for (const piece of found) wanted.add(piece);
  }
  return layout.pieces.filter((piece) => wanted.has(piece));
}

function svgFiles(svg: string, made: TemplatePages): FileToWrite[] {
  const names = made.names.map(fileWord);
  return made.pages.map((drawing, index) => ({
    path: nameOneOf(svg, names, index),
    content: writeSvg(drawing),
  }));
}

function toResult(
  path: string,
  kind: TemplateKind,
  paper: Paper,
  made: TemplatePages,
  files: readonly FileToWrite[],
): CommandResult {
  const written = files.map((file) => file.path);
  const what = kind === 'rough cuts' ? 'rough cut' : 'piece';
  const reach = made.cutApart === 1 ? 'reaches' : 'reach';
  const cutApart =
    made.cutApart === 0 ? [] : [`${countWords(made.cutApart, what)} ${reach} over several pages.`];
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      `${countWords(made.pages.length, 'page')} of ${paper.name}.`,
      ...cutApart,
      ...written.map((file) => `Templates are in ${file}`),
      'Print at 100 % without fitting, and hold a rule to the check bars of every page.',
    ],
    data: {
      file: path,
      kind,
      paper: paper.name,
      pages: made.pages.map(({ widthMm, heightMm }, i) => ({ name: made.names[i]!, widthMm, heightMm })),
      cutApart: made.cutApart,
      written,
    },
    diagnostics: [],
  };
}
