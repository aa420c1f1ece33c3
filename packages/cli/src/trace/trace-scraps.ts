import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Photo, ScrapsRead } from '@hidebound/intake/photo';
import { formatArea, writeHide } from '@hidebound/leather';
import type { Side } from '@hidebound/leather';
import { textOption } from '../command-context.js';
import type { CommandContext, CommandResult, OptionValues } from '../command-context.js';
import { countWords } from '../count-words.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { fileWord } from '../io/output-names.js';
import { writeFilesSafely } from '../io/write-safely.js';
import type { FileToWrite } from '../io/write-safely.js';
import { textTable } from '../text-table.js';
import { leatherFrom } from './leather-options.js';
import { loadPhotos } from './load-photos.js';
import { knownBars } from './reference-bars.js';
import { tellStages } from './trace-progress.js';

/** What the numbers of scraps follow where nobody says it. */
const USUAL_PREFIX = 'scrap';

/** Makes a hide file of every scrap of leather in one picture, and a picture that tells which is which. */
export async function traceScrapHides(
  files: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  const prefix = textOption(options, 'id') ?? USUAL_PREFIX;
  const folder = dirname(files[0]!);
  const firstNumber = nextNumber(folder, prefix);
  const stage = tellStages(context);
  stage('load');
  const { loadVision, traceScraps } = await import('@hidebound/intake/photo');
  const photos: readonly Photo[] = await loadPhotos(files);
  const bars = knownBars(textOption(options, 'bars'), files[0]!);
  const { vision } = await loadVision();
  const read = traceScraps(
    photos,
    {
      id: prefix,
      firstNumber,
      sideUp: textOption(options, 'up') as Side,
      pictureFileOf: (id) => `${fileWord(id)}.straight.jpg`,
      ...(bars === undefined ? {} : { barsOf: bars.barsOf }),
      ...leatherFrom(options),
      onStage: stage,
    },
    vision,
  );
  const written = await filesOf(read, folder, `${fileWord(prefix)}-${firstNumber}`);
  writeFilesSafely(written);
  return resultOf(files, read, written);
}

/** Goes on after the scraps that lie in the folder already. */
function nextNumber(folder: string, prefix: string): number {
  const start = `${fileWord(prefix)}-`;
  const numbers = readdirSync(folder === '' ? '.' : folder).flatMap((name) => {
    const number = name.startsWith(start) ? /^(\d+)\.hide\.json$/.exec(name.slice(start.length)) : null;
    return number === null ? [] : [Number(number[1])];
  });
  return Math.max(0, ...numbers) + 1;
}

async function filesOf(read: ScrapsRead, folder: string, first: string): Promise<readonly FileToWrite[]> {
  const { encodeJpeg, USUAL_JPEG_QUALITY } = await import('@hidebound/intake/node');
  const files: FileToWrite[] = [];
  for (const { hide, picture } of read.scraps) {
    const photo = { ...hide.photo!, takenFrom: (hide.photo!.takenFrom ?? []).map((file) => basename(file)) };
    const path = join(folder, `${fileWord(hide.id)}.hide.json`);
    files.push({ path, content: writeHide({ ...hide, photo }) });
    files.push({ path: join(folder, photo.file), content: await encodeJpeg(picture, USUAL_JPEG_QUALITY) });
  }
  return [...files, await numberedPicture(read, join(folder, `${first}.scraps.pdf`))];
}

async function numberedPicture({ scraps, picture }: ScrapsRead, path: string): Promise<FileToWrite> {
  const { encodeJpeg } = await import('@hidebound/intake/node');
  const { drawScraps, writePdf } = await import('@hidebound/render');
  const { loadFontBook } = await import('@hidebound/render/node');
  const fonts = loadFontBook();
  const { origin, width, height, pxPerMm } = picture;
  const box = {
    minX: origin.x,
    minY: origin.y,
    maxX: origin.x + width / pxPerMm,
    maxY: origin.y + height / pxPerMm,
  };
  const bytes = await encodeJpeg(picture, NUMBERED_QUALITY);
  const title = 'Scraps: chalk each number on its back';
  const drawing = drawScraps({
    scraps: scraps.map(({ number, onFloor }) => ({ number, ...onFloor })),
    photo: { file: { type: 'image/jpeg', bytes }, box },
    fonts,
    title,
  });
  return { path, content: await writePdf([drawing], { fonts, title }) };
}

/** It only tells which scrap is which. */
const NUMBERED_QUALITY = 60;

function resultOf(
  files: readonly string[],
  { scraps, references, diagnostics }: ScrapsRead,
  written: readonly FileToWrite[],
): CommandResult {
  const rows = scraps.map(({ number, hide }) => [
    String(number),
    hide.id,
    formatArea(hide.area.measuredMm2!, { unit: 'dm2' }),
    formatArea(hide.area.measuredMm2!, { unit: 'ft2' }),
    `${(100 * hide.photo!.areaErrorShare!).toFixed(1)} %`,
  ]);
  const picture = written[written.length - 1]!.path;
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      ...textTable(['number', 'hide', 'area', '', 'off by at most'], rows, [0, 2, 3, 4]),
      '',
      ...findingLines(diagnostics),
      `${countWords(scraps.length, 'hide file')} written; which number is which, ${picture} shows.`,
      'Next: chalk the numbers on the backs of the scraps, then name their files in an order.',
    ],
    data: {
      files,
      references,
      hides: scraps.map(({ hide }) => hide),
      written: written.map(({ path }) => path),
    },
    diagnostics,
  };
}
