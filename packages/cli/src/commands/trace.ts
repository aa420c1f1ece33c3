import { basename } from 'node:path';
import type { TraceOptions, TraceRead } from '@hidebound/intake/photo';
import { withFilesNamed, writeHide } from '@hidebound/leather';
import type { Hide, HideCut, Side } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { textOption } from '../command-context.js';
import type { CommandContext, CommandResult, OptionValues } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { pagePixels } from '../io/hide-pictures.js';
import { writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';
import { pictureFile } from '../picture.js';
import { leatherFrom } from '../trace/leather-options.js';
import { loadPhotos } from '../trace/load-photos.js';
import { knownBars } from '../trace/reference-bars.js';
import type { KnownBars } from '../trace/reference-bars.js';
import { besideHide, hideStem, hintsInUse, traceFiles } from '../trace/trace-files.js';
import type { HintsInUse, TraceFiles } from '../trace/trace-files.js';
import { nextStep, traceLines } from '../trace/trace-lines.js';
import { tellStages } from '../trace/trace-progress.js';

/** Makes a hide file from photos. */
export async function traceCommand(
  photos: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  if (options['pieces'] === true && options['scraps'] === true) {
    throw new CliError('bad-use', '--pieces and --scraps do not go together; trace one kind at a time.');
  }
  if (options['pieces'] === true) {
    const { traceCardPieces } = await import('../trace/trace-cards.js');
    return traceCardPieces(photos, options, context);
  }
  refuseTogether(options);
  if (options['scraps'] === true) {
    const { traceScrapHides } = await import('../trace/trace-scraps.js');
    return traceScrapHides(photos, options, context);
  }
  return traceOneHide(photos, options, context);
}

function refuseTogether(options: OptionValues): void {
  if (options['up'] === undefined) {
    throw new CliError(
      'bad-use',
      'Which side of the leather does the photo show? Give --up grain or --up flesh; a photo alone does not tell it.',
    );
  }
  if (options['moved'] === true && options['raking'] !== undefined) {
    throw new CliError(
      'bad-use',
      '--moved and --raking do not go together; trace a hide that lies still with --raking.',
    );
  }
}

async function traceOneHide(
  photos: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  const files = traceFiles(photos, options);
  const hints = hintsInUse(files, options);
  const bars = knownBars(textOption(options, 'bars'), photos[0]!);
  const stage = tellStages(context);
  stage('load');
  const { loadVision, traceHide } = await import('@hidebound/intake/photo');
  const loaded = {
    photos: await loadPhotos(files.photos),
    raking: await loadPhotos(files.raking),
    otherSide: await loadPhotos(files.otherSide),
  };
  const { vision } = await loadVision();
  const read = traceHide(
    loaded.photos,
    { ...askedOf(files, options, hints, bars), ...loaded, onStage: stage },
    vision,
  );
  const hide = namedFromHide(read.hide, files);
  const written = await filesOf(files, { ...read, hide }, hints);
  writeFilesSafely(written);
  return resultOf(files, { ...read, hide }, { written, bars, soughtPossible: soughtPossible(options) });
}

function askedOf(
  files: TraceFiles,
  options: OptionValues,
  hints: HintsInUse | undefined,
  bars: KnownBars | undefined,
): TraceOptions {
  const cut = textOption(options, 'cut');
  return {
    id: textOption(options, 'id') ?? basename(hideStem(files.hide)),
    sideUp: textOption(options, 'up') as Side,
    pictureFile: besideHide(files.hide, files.straight),
    ...(hints === undefined ? {} : { hints: hints.hints, hintsFile: hints.name }),
    ...(cut === undefined ? {} : { cut: cut as HideCut }),
    ...(bars === undefined ? {} : { barsOf: bars.barsOf }),
    isMoved: options['moved'] === true,
    findCandidates: soughtPossible(options),
    ...leatherFrom(options),
  };
}

function soughtPossible(options: OptionValues): boolean {
  return options['candidates'] !== false;
}

/** The photos as the hide file names them: from its own folder. */
function namedFromHide(hide: Hide, files: TraceFiles): Hide {
  const taken = new Set(hide.photo?.takenFrom ?? []);
  return withFilesNamed(hide, (file) => (taken.has(file) ? besideHide(files.hide, file) : file));
}

async function filesOf(
  files: TraceFiles,
  { hide, picture }: TraceRead,
  hints: HintsInUse | undefined,
): Promise<readonly FileToWrite[]> {
  const { USUAL_JPEG_QUALITY, encodeJpeg } = await import('@hidebound/intake/node');
  const straight = await encodeJpeg(picture, USUAL_JPEG_QUALITY);
  return [
    { path: files.hide, content: writeHide(hide) },
    { path: files.straight, content: straight },
    ...(hints?.copy === undefined ? [] : [hints.copy]),
    ...(files.picture === undefined ? [] : [await drawnOver(files.picture, hide, straight)]),
  ];
}

/** The hide over its own photo, which lies in memory still. */
async function drawnOver(path: string, hide: Hide, straight: Uint8Array): Promise<FileToWrite> {
  const { faintHidePicture } = await import('@hidebound/intake/node');
  const { PAGE_SIZES } = await import('@hidebound/render');
  const photo = hide.photo!;
  const { jpeg, box } = await faintHidePicture(
    straight,
    photo.file,
    { ...hide, photo },
    pagePixels(PAGE_SIZES.A4),
  );
  const shown = { file: { type: 'image/jpeg', bytes: jpeg } as const, box };
  return pictureFile(path, { hide, pictures: new Map([[hide.id, shown]]) });
}

interface Written {
  readonly written: readonly FileToWrite[];
  readonly bars: KnownBars | undefined;
  readonly soughtPossible: boolean;
}

function resultOf(
  files: TraceFiles,
  read: TraceRead,
  { written, bars, soughtPossible }: Written,
): CommandResult {
  const { hide, diagnostics, report } = read;
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...traceLines(hide, report, {
        soughtPossible,
        leavesPicture: diagnostics.some(({ code }) => code === 'hide-leaves-picture'),
      }),
      ...(bars?.file === undefined ? [] : [`The sheets' lines are as long as ${bars.file} says.`]),
      ...findingLines(diagnostics),
      `The hide file is in ${files.hide}`,
      `The straightened photo is in ${files.straight}`,
      ...written.slice(2).map(({ path }) => `Written, too: ${path}`),
      ...nextStep(hide, files.hide, files.picture),
    ],
    data: {
      files: files.photos,
      hide,
      report,
      ...(bars?.file === undefined ? {} : { bars: bars.file }),
      written: written.map(({ path }) => path),
    },
    diagnostics,
  };
}
