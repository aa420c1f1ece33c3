import { ownerWords, usedHides } from '@hidebound/leather';
import type { CutChoice, CutFile, CutFileOptions, Hide, Layout, LeadInKind } from '@hidebound/leather';
import { makeCutFile, writeCutSvg, writeDxf } from '@hidebound/render';
import type { DxfVersion, MadeCutFile } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { askedHide } from '../asked-hide.js';
import { CliError } from '../cli-error.js';
import { numberOption, textOption } from '../command-context.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { countWords } from '../count-words.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { besideFile, loadLayout, loadLayoutHides } from '../io/load-files.js';
import { fileWord, nameOneOf, refuseExtension } from '../io/output-names.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';

/** Makes the files for a cutting machine, one for each hide. */
export function cutfileCommand([path]: readonly string[], options: OptionValues): CommandResult {
  const asked = askedFiles(options);
  const layout = loadLayout(path!);
  const all = loadLayoutHides(layout, path!).map(({ hide }) => hide);
  const hides = askedHides(layout, all, textOption(options, 'hide'));
  const cutOptions = cutOptionsFrom(options, layout);
  const fonts = cutOptions.labels ? loadFontBook() : undefined;
  const made = hides.map((hide) => makeCutFile(layout, hide, cutOptions, fonts));
  const files = filesOf(made, asked);
  const written = files.map((file) => file.path);
  refuseOverwriting(written, [path!, ...layout.hides.map(({ file }) => besideFile(path!, file))]);
  writeFilesSafely(files);
  const diagnostics = made.flatMap((one) => one.diagnostics);
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...findingLines(diagnostics),
      ...made.map(({ file }) => fileWords(file)),
      ...written.map((file) => `The cut file is in ${file}`),
    ],
    data: { file: path, written, hides: made.map(({ file }) => fileData(file)) },
    diagnostics,
  };
}

interface AskedFiles {
  readonly svg: string | undefined;
  readonly dxf: string | undefined;
  readonly version: DxfVersion;
}

function askedFiles(options: OptionValues): AskedFiles {
  const svg = textOption(options, 'svg');
  const dxf = textOption(options, 'dxf');
  if (svg === undefined && dxf === undefined) {
    throw new CliError('no-output', 'Nothing to write: give --svg or --dxf with a file name.');
  }
  refuseExtension('--svg', svg, '.dxf', '.svg');
  refuseExtension('--dxf', dxf, '.svg', '.dxf');
  return { svg, dxf, version: textOption(options, 'dxfVersion') as DxfVersion };
}

/** The hide of that id or number; without one, all on which something lies. */
function askedHides(layout: Layout, hides: readonly Hide[], asked: string | undefined): readonly Hide[] {
  if (asked === undefined) return usedHides(layout, hides);
  return [askedHide(hides, asked)];
}

function cutOptionsFrom(options: OptionValues, layout: Layout): CutFileOptions {
  const number = (name: string): number => numberOption(options, name) ?? 0;
  const leadInMm = number('leadIn');
  const bridges = number('bridges');
  return {
    choice: textOption(options, 'cut') as CutChoice,
    kerfMm: numberOption(options, 'kerf') ?? layout.order.cutting.kerfMm,
    overcutMm: number('overcut'),
    marks: options['marks'] !== false,
    frame: options['frame'] === true,
    labels: textOption(options, 'text') === 'outlines',
    side: textOption(options, 'side') as CutFileOptions['side'],
    ...(leadInMm > 0
      ? { leadIn: { kind: textOption(options, 'leadInShape') as LeadInKind, lengthMm: leadInMm } }
      : {}),
    ...(bridges > 0 ? { bridges: { count: bridges, widthMm: number('bridgeWidth') } } : {}),
  };
}

function filesOf(made: readonly MadeCutFile[], { svg, dxf, version }: AskedFiles): FileToWrite[] {
  const names = made.map(({ file }) => fileWord(file.hide));
  return made.flatMap(({ drawing }, i) => [
    ...(svg === undefined ? [] : [{ path: nameOneOf(svg, names, i), content: writeCutSvg(drawing) }]),
    ...(dxf === undefined ? [] : [{ path: nameOneOf(dxf, names, i), content: writeDxf(drawing, version) }]),
  ]);
}

/** What a file holds, in one line for a person. */
function fileWords(file: CutFile): string {
  const counts = kindCounts(file).filter(([kind]) => kind !== 'frame');
  const listed = counts
    .map(([kind, count]) => countWords(count, KIND_WORDS[kind] ?? `${kind} line`))
    .join(', ');
  const { minX, minY, maxX, maxY } = file.frame;
  return (
    `${file.hide}: ${listed}; ${(file.cutMm / 1000).toFixed(1)} m to cut with a kerf of ${file.kerfMm} mm,` +
    ` within ${maxX - minX} × ${maxY - minY} mm.`
  );
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  notch: 'notch line',
  punch: 'hole',
  opening: 'opening',
  cut: 'outline',
  'rough cut': 'rough cut',
};

function kindCounts(file: CutFile): [string, number][] {
  const counts = new Map<string, number>();
  for (const { kind } of file.paths) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts];
}

function fileData(file: CutFile): Record<string, unknown> {
  const { hide, side, kerfMm, frame, cutMm, moveMm, paths } = file;
  return {
    hide,
    side,
    kerfMm,
    frame,
    cutMm: Math.round(cutMm),
    moveMm: Math.round(moveMm),
    counts: Object.fromEntries(kindCounts(file)),
    paths: paths.map((path) => ({
      number: path.number,
      kind: path.kind,
      of: ownerWords(path.of),
      lengthMm: Math.round(path.lengthMm * 10) / 10,
      bridges: path.bridges,
      leadIn: path.hasLeadIn,
    })),
  };
}
