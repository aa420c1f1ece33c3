import { basename, extname } from 'node:path';
import type { CardsRead } from '@hidebound/intake/photo';
import { parsePhotoHints } from '@hidebound/leather';
import type { PatternPiece } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import { numberOption, textOption } from '../command-context.js';
import type { CommandContext, CommandResult, OptionValues } from '../command-context.js';
import { countWords } from '../count-words.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { readText } from '../io/load-files.js';
import { SIZE_LIMIT_MB, readFileLimited } from '../io/read-file.js';
import { ensureWritable, writeFilesSafely } from '../io/write-safely.js';
import { pieceData } from '../patterns/piece-data.js';
import { pictureFile } from '../picture.js';
import { knownBars } from './reference-bars.js';
import { withoutEnding } from './trace-files.js';
import { tellStages } from './trace-progress.js';

/** Reads card or paper templates of one photo or scan and writes them as a pattern. */
export async function traceCardPieces(
  files: readonly string[],
  options: OptionValues,
  context: CommandContext,
): Promise<CommandResult> {
  const [file, another] = files;
  if (another !== undefined) {
    throw new CliError('bad-use', `With --pieces one picture is read at a time, so leave out ${another}.`);
  }
  const out = textOption(options, 'out') ?? `${withoutEnding(file!)}.pieces.svg`;
  if (extname(out).toLowerCase() !== '.svg') {
    throw new CliError('bad-use', `The pattern ${out} must be named .svg, which is what it is saved as.`);
  }
  const picture = textOption(options, 'picture');
  for (const path of [out, ...(picture === undefined ? [] : [picture])]) ensureWritable(path, [file!]);
  tellStages(context)('load');
  const read = await readOne(file!, options);
  const { writePatternSvg } = await import('@hidebound/render');
  const content = writePatternSvg(read.pieces, { title: basename(out, extname(out)) });
  writeFilesSafely([
    { path: out, content },
    ...(picture === undefined ? [] : [await pictureFile(picture, { pieces: read.pieces })]),
  ]);
  return resultOf(file!, out, read);
}

async function readOne(file: string, options: OptionValues): Promise<CardsRead> {
  const { loadVision, traceCards, tracePdfCards } = await import('@hidebound/intake/photo');
  const { decodePhoto, statedDpi } = await import('@hidebound/intake/node');
  const bytes = readFileLimited(file, SIZE_LIMIT_MB.photo);
  const names = namesFrom(textOption(options, 'names'));
  const named = names === undefined ? {} : { names };
  if (isPdf(bytes)) return tracePdfCards(bytes, file, named, await loadVision());
  const photo = await decodePhoto(bytes, file);
  const fromFile = await statedDpi(bytes, file);
  const dpi = numberOption(options, 'dpi');
  const hints = textOption(options, 'hints');
  const bars = knownBars(textOption(options, 'bars'), file);
  const { vision } = await loadVision();
  return traceCards(
    photo,
    {
      ...(dpi === undefined ? {} : { dpi }),
      ...(fromFile === undefined ? {} : { statedDpi: fromFile }),
      ...named,
      ...(bars === undefined ? {} : { barsOf: bars.barsOf }),
      ...(hints === undefined
        ? {}
        : { hints: parsePhotoHints(readText(hints, 'photo-hints'), { file: hints }) }),
    },
    vision,
  );
}

/** By its first bytes, which may have some others in front of them. */
function isPdf(bytes: Uint8Array): boolean {
  return new TextDecoder('latin1').decode(bytes.subarray(0, PDF_HEAD_BYTES)).includes('%PDF-');
}

const PDF_HEAD_BYTES = 1024;

function namesFrom(text: string | undefined): readonly string[] | undefined {
  return text
    ?.split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '');
}

function resultOf(file: string, out: string, { pieces, diagnostics, scaledBy }: CardsRead): CommandResult {
  return {
    exitStatus: EXIT_STATUS.done,
    lines: [
      `${countWords(pieces.length, 'piece')} read, to size by ${scaledBy}: ${namesOf(pieces)}.`,
      ...findingLines(diagnostics),
      `The pattern is in ${out}`,
      `Next: compare it with the cards: hidebound pieces ${out} --picture ${withoutEnding(out)}.pdf`,
    ],
    data: { file, out, scaledBy, pieces: pieces.map(pieceData) },
    diagnostics,
  };
}

function namesOf(pieces: readonly PatternPiece[]): string {
  return pieces.map(({ piece }) => piece.name).join(', ');
}
