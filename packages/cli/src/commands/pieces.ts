import { resolve } from 'node:path';
import { gaveWords } from '@hidebound/leather';
import type { PatternPiece, StitchRule } from '@hidebound/leather';
import { CliError } from '../cli-error.js';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { loadPattern } from '../io/load-pattern.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { fileTable, pageTable, pieceTable, repairTable } from '../patterns/pattern-tables.js';
import { hundredths, pageData, pieceData, repairData, thousandths } from '../patterns/piece-data.js';
import type { ReadFile } from '../patterns/read-file.js';
import { readingsWithOrder } from '../patterns/reading-of-order.js';
import { savedPattern } from '../patterns/save-pattern.js';
import { pictureFile } from '../picture.js';
import { readingFrom } from '../reading-options.js';
import { markedLines, stitchRuleFrom } from '../stitch-options.js';
import type { MarkedLine } from '../stitch-options.js';
import { textTable } from '../text-table.js';

/** Shows what is read from pattern files, and saves it as a clean pattern. */
export async function piecesCommand(files: readonly string[], options: OptionValues): Promise<CommandResult> {
  const readingOf = readingsWithOrder(textOption(options, 'order'), readingFrom(options));
  const reads: ReadFile[] = [];
  for (const file of files) reads.push({ file, read: await loadPattern(file, readingOf(file)) });
  const rule = stitchRuleFrom(options);
  const sewn = sewnPieces(reads, rule);
  const written = await writeAsked({ files, reads, sewn, rule, options });
  const findings = reads.flatMap(({ read }) => read.diagnostics);
  const isComplete =
    reads.every(({ read }) => read.pieces.length > 0) &&
    findings.every(({ severity }) => severity !== 'error');
  return {
    exitStatus: isComplete ? EXIT_STATUS.done : EXIT_STATUS.answerIsNo,
    lines: [
      ...fileTable(reads),
      ...pageTable(reads),
      ...pieceTable(reads),
      ...stitchTable(sewn),
      ...repairTable(reads),
      ...findingLines(findings),
      ...(written.picture === undefined ? [] : [`The picture is in ${written.picture}`]),
      ...(written.saved === undefined ? [] : [`The pattern is in ${written.saved}`]),
    ],
    data: { files: reads.map((each) => fileData(each, sewn)), ...written },
    diagnostics: findings,
  };
}

interface Asked {
  readonly files: readonly string[];
  readonly reads: readonly ReadFile[];
  readonly sewn: readonly SewnPiece[];
  readonly rule: StitchRule | undefined;
  readonly options: OptionValues;
}

interface Written {
  readonly picture?: string;
  readonly saved?: string;
}

/** Writes the picture and the saved pattern, both or none. */
async function writeAsked({ files, reads, sewn, rule, options }: Asked): Promise<Written> {
  const picture = textOption(options, 'picture');
  const save = textOption(options, 'save');
  const asked = [picture, save].filter((path) => path !== undefined);
  const order = textOption(options, 'order');
  refuseOverwriting(asked, order === undefined ? files : [...files, order]);
  if (asked.length === 2) refuseSameFile(picture!, save!);
  const saved = save === undefined ? undefined : await savedPattern(save, reads);
  const drawn = picture === undefined ? undefined : await pictureFile(picture, pictured(reads, sewn, rule));
  writeFilesSafely([drawn, saved].filter((file) => file !== undefined));
  return {
    ...(drawn === undefined ? {} : { picture: drawn.path }),
    ...(saved === undefined ? {} : { saved: saved.path }),
  };
}

function refuseSameFile(picture: string, save: string): void {
  if (resolve(picture) !== resolve(save)) return;
  throw new CliError(
    'bad-use',
    `Both --picture and --save would write ${save}; give each a name of its own.`,
  );
}

function pictured(reads: readonly ReadFile[], sewn: readonly SewnPiece[], rule: StitchRule | undefined) {
  const pieces = reads.flatMap(({ read }) => read.pieces);
  const stitches = sewn.map(({ lines }) => ({
    with: rule!.with,
    holes: lines.flatMap(({ marks }) => marks.holes),
  }));
  const tiled = reads.flatMap(({ file, read: { pages = [] } }) =>
    pages.length > 1 ? [{ file, pages }] : [],
  );
  return { pieces, tiled, ...(rule === undefined ? {} : { stitches }) };
}

function fileData({ file, read }: ReadFile, sewn: readonly SewnPiece[]) {
  return {
    file,
    format: read.format,
    scale: read.scale,
    pieces: read.pieces.map((found) => ({ ...pieceData(found), ...stitchData(found, sewn) })),
    ignored: read.ignored,
    repairs: read.repairs.map(repairData),
    ...(read.pages === undefined ? {} : { pages: read.pages.map(pageData) }),
  };
}

/** A piece with the holes of its stitch lines. */
interface SewnPiece {
  readonly found: PatternPiece;
  readonly lines: readonly MarkedLine[];
}

/** Every piece in order; none where no pitch was given. */
function sewnPieces(reads: readonly ReadFile[], rule: StitchRule | undefined): readonly SewnPiece[] {
  if (rule === undefined) return [];
  return reads.flatMap(({ read }) =>
    read.pieces.map((found) => ({ found, lines: markedLines(found, rule) })),
  );
}

function stitchTable(sewn: readonly SewnPiece[]): readonly string[] {
  const rows = sewn.flatMap(({ found, lines }) =>
    lines.map(({ line, marks }) => [
      found.piece.name,
      line,
      marks.lengthMm.toFixed(1),
      marks.usedPitchMm.mean.toFixed(2),
      String(marks.holes.length),
      gaveWords(marks) ?? '',
    ]),
  );
  const head = ['piece', 'stitch line', 'mm', 'pitch', 'holes', 'what gave'];
  return rows.length === 0 ? [] : [...textTable(head, rows, [2, 3, 4]), ''];
}

function stitchData(found: PatternPiece, sewn: readonly SewnPiece[]) {
  const own = sewn.find((each) => each.found === found);
  if (own === undefined) return {};
  return {
    stitches: own.lines.map(({ line, marks }) => ({
      line,
      lengthMm: hundredths(marks.lengthMm),
      pitchMm: hundredths(marks.usedPitchMm.mean),
      gave: marks.gave.what,
      changeMm: hundredths(marks.gave.changeMm),
      holes: marks.holes.map(({ at, angleDeg }) => [
        thousandths(at.x),
        thousandths(at.y),
        thousandths(angleDeg),
      ]),
    })),
  };
}
