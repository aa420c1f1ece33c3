import { curveArea, curveBox } from '@hidebound/geometry';
import type { PatternRead } from '@hidebound/intake';
import { gaveWords } from '@hidebound/leather';
import type { PatternPiece, StitchRule } from '@hidebound/leather';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { findingLines } from '../finding-words.js';
import { loadPattern } from '../io/load-pattern.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { pictureFile } from '../picture.js';
import { readingFrom } from '../reading-options.js';
import { markedLines, stitchRuleFrom } from '../stitch-options.js';
import type { MarkedLine } from '../stitch-options.js';
import { textTable } from '../text-table.js';

interface ReadFile {
  readonly file: string;
  readonly read: PatternRead;
}

/** Shows what is read from pattern files. */
export async function piecesCommand(files: readonly string[], options: OptionValues): Promise<CommandResult> {
  const reading = readingFrom(options);
  const reads: ReadFile[] = [];
  for (const file of files) reads.push({ file, read: await loadPattern(file, reading) });
  const rule = stitchRuleFrom(options);
  const sewn = sewnPieces(reads, rule);
  const picture = textOption(options, 'picture');
  if (picture !== undefined) {
    refuseOverwriting([picture], files);
    const pieces = reads.flatMap(({ read }) => read.pieces);
    const stitches = sewn.map(({ lines }) => ({
      with: rule!.with,
      holes: lines.flatMap(({ marks }) => marks.holes),
    }));
    const marked = rule === undefined ? {} : { stitches };
    writeFilesSafely([await pictureFile(picture, { pieces, ...marked })]);
  }
  const findings = reads.flatMap(({ read }) => read.diagnostics);
  const isComplete =
    reads.every(({ read }) => read.pieces.length > 0) &&
    findings.every(({ severity }) => severity !== 'error');
  return {
    exitStatus: isComplete ? EXIT_STATUS.done : EXIT_STATUS.answerIsNo,
    lines: [
      ...pieceTable(reads),
      ...stitchTable(sewn),
      ...findingLines(findings),
      ...(picture === undefined ? [] : [`The picture is in ${picture}`]),
    ],
    data: {
      files: reads.map(({ file, read }) => ({
        file,
        format: read.format,
        scale: read.scale,
        pieces: read.pieces.map((found) => ({ ...pieceData(found), ...stitchData(found, sewn) })),
        ignored: read.ignored,
      })),
      ...(picture === undefined ? {} : { picture }),
    },
    diagnostics: findings,
  };
}

/** Columns of counts stand there only where some piece has something to count. */
function pieceTable(reads: readonly ReadFile[]): readonly string[] {
  const rows = reads.flatMap(({ file, read }) =>
    read.pieces.map((found) => ({ file, data: pieceData(found) })),
  );
  const counted = COUNTED.filter(([, key]) => rows.some(({ data }) => data[key] > 0));
  const head = ['file', 'piece', 'mm', 'cm²', ...counted.map(([name]) => name), 'direction', 'face'];
  const cells = rows.map(({ file, data }) => [
    file,
    data.name,
    `${data.widthMm} × ${data.heightMm}`,
    (data.areaMm2 / MM2_PER_CM2).toFixed(1),
    ...counted.map(([, key]) => String(data[key])),
    data.direction,
    data.face,
  ]);
  const right = [2, 3, ...counted.map((_, index) => index + FIRST_COUNT)];
  return rows.length === 0 ? [] : [...textTable(head, cells, right), ''];
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

const MM2_PER_CM2 = 100;
const FIRST_COUNT = 4;
const COUNTED = [
  ['cut-outs', 'cutOuts'],
  ['punches', 'punches'],
  ['notches', 'notches'],
  ['stitch', 'stitchLines'],
  ['fold', 'foldLines'],
  ['skive', 'skiveLines'],
  ['cement', 'cementLines'],
] as const;

function pieceData({ piece, count, mirrored, material }: PatternPiece) {
  const box = curveBox(piece.cut);
  return {
    name: piece.name,
    widthMm: hundredths(box.maxX - box.minX),
    heightMm: hundredths(box.maxY - box.minY),
    areaMm2: hundredths(Math.abs(curveArea(piece.cut))),
    cutOuts: piece.cutOuts.length,
    punches: piece.punches.length,
    notches: piece.notches.length,
    stitchLines: piece.stitchLines.length,
    foldLines: piece.foldLines.length,
    skiveLines: piece.skiveLines.length,
    cementLines: piece.cementLines.length,
    direction: piece.direction === undefined ? 'long axis' : 'drawn',
    face: piece.face.length === 0 ? 'all' : 'drawn',
    ...(count === undefined ? {} : { count }),
    ...(mirrored === undefined ? {} : { mirrored }),
    ...(material === undefined ? {} : { material }),
  };
}

function thousandths(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
