import { atan2Deg, normalizeDeg } from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import type { FileScale, ScaleSource } from '@hidebound/intake';
import { textTable } from '../text-table.js';
import { pieceData } from './piece-data.js';
import type { ReadFile } from './read-file.js';

/** Repairs that are listed for a person; a bad drawing has thousands, and `--json` has them all. */
const LISTED_REPAIRS = 20;
const MM2_PER_CM2 = 100;

/** Each file: what kind it is, and where its size comes from. */
export function fileTable(reads: readonly ReadFile[]): readonly string[] {
  const rows = reads.map(({ file, read }) => [
    file,
    read.format,
    String(read.pieces.length),
    unitWords(read.scale),
    SCALE_WORDS[read.scale.source],
  ]);
  return [...textTable(['file', 'kind', 'pieces', 'a unit is', 'by'], rows, [2]), ''];
}

const SCALE_WORDS: Readonly<Record<ScaleSource, string>> = {
  units: 'what the file says',
  viewBox: 'its view box, at 96 to the inch',
  '96 px per inch': '96 px to the inch',
  dpi: 'the px to the inch that were asked for',
  scale: 'the scale that was asked for',
  'known length': 'the length that is known',
  'asked units': 'the unit that was asked for',
};

function unitWords({ mmPerUnit }: FileScale): string {
  return `${Number(mmPerUnit.toPrecision(5))} mm`;
}

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

/** Columns of counts stand there only where some piece has something to count. */
export function pieceTable(reads: readonly ReadFile[]): readonly string[] {
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

/** Where each page of a file of several pages lies. */
export function pageTable(reads: readonly ReadFile[]): readonly string[] {
  const rows = reads.flatMap(({ file, read }) =>
    (read.pages ?? []).map((page) => [
      file,
      String(page.number),
      `${tenths(page.widthMm)} × ${tenths(page.heightMm)}`,
      page.joinedBy,
      page.missMm === undefined ? '' : page.missMm.toFixed(2),
      page.toWhole === undefined ? '' : placeWords(page.toWhole),
      page.toWhole === undefined ? '' : turnWords(page.toWhole),
    ]),
  );
  if (rows.length < 2) return [];
  const head = ['file', 'page', 'mm', 'joined by', 'misses mm', 'its corner, mm', 'turned'];
  return [...textTable(head, rows, [1, 2, 4, 5, 6]), ''];
}

function placeWords({ e, f }: Affine): string {
  return `${tenths(e)}, ${tenths(f)}`;
}

function turnWords({ a, b }: Affine): string {
  const deg = (Math.round(normalizeDeg(atan2Deg(b, a)) * 10) / 10) % 360;
  return deg === 0 ? '' : `${deg}°`;
}

function tenths(mm: number): string {
  return String(Math.round(mm * 10) / 10 + 0);
}

/** What was changed in the drawings, the first few, and how many more. */
export function repairTable(reads: readonly ReadFile[]): readonly string[] {
  const all = reads.flatMap(({ file, read }) => read.repairs.map((repair) => ({ file, repair })));
  if (all.length === 0) return [];
  const rows = all
    .slice(0, LISTED_REPAIRS)
    .map(({ file, repair: { kind, element, at, sizeMm } }) => [
      file,
      kind,
      element,
      `${tenths(at.x)}, ${tenths(at.y)}`,
      sizeMm.toFixed(3),
    ]);
  const more = all.length - rows.length;
  return [
    ...textTable(['file', 'mended', 'where', 'at, mm', 'by mm'], rows, [3, 4]),
    ...(more === 0 ? [] : [`and ${more} more (--json lists all ${all.length})`]),
    '',
  ];
}
