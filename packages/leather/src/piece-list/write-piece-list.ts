import type { Layout } from '../model/layout.js';
import { csvText } from './csv-text.js';
import type { CsvValue } from './csv-text.js';
import { pieceList } from './piece-list.js';
import type { ListedPiece } from './piece-list.js';

const MM2_PER_CM2 = 100;

/** The columns of the list as a table, with their units. */
const COLUMNS: readonly (readonly [string, (row: ListedPiece) => CsvValue])[] = [
  ['number', ({ number }) => number],
  ['piece', ({ piece }) => piece],
  ['article', ({ article }) => article],
  ['set', ({ set }) => set],
  ['copy', ({ copy }) => copy],
  ['mirrored', ({ mirrored }) => (mirrored ? 'yes' : 'no')],
  ['count', ({ count }) => count],
  ['leather', ({ leather }) => leather],
  ['colour', ({ colour }) => colour],
  ['thickness from (mm)', ({ thickness }) => thickness?.minMm],
  ['thickness to (mm)', ({ thickness }) => thickness?.maxMm],
  ['length along arrow (mm)', ({ lengthMm }) => lengthMm],
  ['width across arrow (mm)', ({ widthMm }) => widthMm],
  ['area (cm2)', ({ areaMm2 }) => (areaMm2 === undefined ? undefined : areaMm2 / MM2_PER_CM2)],
  [
    'state',
    ({ state, reason }) => (reason === undefined ? state : `${state}: ${reason.replaceAll('-', ' ')}`),
  ],
  ['hide', ({ hide }) => hide],
  ['x (mm)', ({ x }) => x],
  ['y (mm)', ({ y }) => y],
  ['turn (degrees)', ({ rotationDeg }) => rotationDeg],
];

/** The piece list of a layout as CSV, a row for each copy. */
export function writePieceListCsv(layout: Layout): string {
  return csvText(
    COLUMNS.map(([name]) => name),
    pieceList(layout).map((row) => COLUMNS.map(([, value]) => value(row))),
  );
}

/** The same as JSON, with the layout's order, version and date. */
export function writePieceListJson(layout: Layout): string {
  const { name, version, date } = layout.order;
  const list = {
    format: 'hidebound/piece-list@1',
    order: { name, version, date },
    pieces: pieceList(layout),
  };
  return `${JSON.stringify(list, null, 2)}\n`;
}
