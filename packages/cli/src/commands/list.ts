import { pieceList, writePieceListCsv, writePieceListJson } from '@hidebound/leather';
import type { Layout, ListedPiece } from '@hidebound/leather';
import type { CommandResult, OptionValues } from '../command-context.js';
import { textOption } from '../command-context.js';
import { EXIT_STATUS } from '../exit-status.js';
import { besideFile, loadLayout } from '../io/load-files.js';
import { refuseExtension } from '../io/output-names.js';
import { refuseOverwriting, writeFilesSafely } from '../io/write-safely.js';
import { textTable } from '../text-table.js';

/** Lists the pieces of a layout: on the screen, for a spreadsheet, for a program. */
export function listCommand([path]: readonly string[], options: OptionValues): CommandResult {
  const csv = textOption(options, 'csv');
  const jsonFile = textOption(options, 'jsonFile');
  refuseExtension('--csv', csv, '.json', '.csv');
  refuseExtension('--json-file', jsonFile, '.csv', '.json');
  const layout = loadLayout(path!);
  const files = [
    ...(csv === undefined ? [] : [{ path: csv, content: writePieceListCsv(layout) }]),
    ...(jsonFile === undefined ? [] : [{ path: jsonFile, content: writePieceListJson(layout) }]),
  ];
  const written = files.map((file) => file.path);
  refuseOverwriting(written, [path!, ...layout.hides.map(({ file }) => besideFile(path!, file))]);
  writeFilesSafely(files);
  const pieces = pieceList(layout);
  return {
    exitStatus: EXIT_STATUS.done,
    lines:
      written.length === 0
        ? listLines(layout, pieces)
        : written.map((file) => `The piece list is in ${file}`),
    data: { file: path, pieces, written },
    diagnostics: [],
  };
}

const HEAD = ['number', 'piece', 'article', 'set', 'copy', '', 'leather', 'along', 'across', 'hide'];
/** Columns of figures. */
const RIGHT = [3, 4, 7, 8];

function listLines({ order }: Layout, pieces: readonly ListedPiece[]): string[] {
  const rows = pieces.map((row) => [
    row.number ?? '-',
    row.piece,
    row.article,
    String(row.set),
    String(row.copy),
    row.mirrored ? 'mirrored' : '',
    row.leather ?? '',
    sizeWords(row.lengthMm),
    sizeWords(row.widthMm),
    row.state === 'planned' ? (row.hide ?? '') : [row.hide, row.state].filter(Boolean).join(', '),
  ]);
  return [
    `${order.name}, version ${order.version}, ${order.date} (sizes along and across the direction arrow)`,
    '',
    ...textTable(HEAD, rows, RIGHT),
  ];
}

function sizeWords(mm: number | undefined): string {
  return mm === undefined ? '' : `${mm.toFixed(1)} mm`;
}
