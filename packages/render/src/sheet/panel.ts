import type { Box } from '@hidebound/geometry';
import { line } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, textLine } from '../text/measure-text.js';
import { HAIRLINE_MM, INK, RULE } from './palette.js';

/** Sizes of the tables on a page. */
export interface PanelStyle {
  readonly textMm: number;
  readonly titleMm: number;
  readonly rowMm: number;
  readonly columnMm: number;
  readonly gutterMm: number;
}

/** One row of a table; `draw` sets it with its top left corner at (x, y). */
export interface PanelRow {
  readonly heightMm: number;
  /** Only room between rows: left out at the foot of a column. */
  readonly isSpace?: boolean;
  draw(x: number, y: number, widthMm: number): readonly DrawingElement[];
}

/** A titled table, which may run on from one column to the next. */
export interface PanelBlock {
  readonly title: string;
  readonly rows: readonly PanelRow[];
  /** Rows that must not be parted from the title. */
  readonly keepRows: number;
  /** Heads of its columns: below the title, wherever that is set. */
  readonly head?: PanelRow;
}

/** The columns in which tables stand on each page, counted from 0. */
export type ColumnsOfPage = (page: number) => readonly Box[];

/** Elements by page, in order. */
export interface FlownPanel {
  readonly pages: readonly (readonly DrawingElement[])[];
}

/** Room above a title that is not at the top of a column. */
const BLOCK_GAP_MM = 3.2;

/** Sizes for tables with letters of this size. */
export function panelStyle(textMm: number, columnMm: number): PanelStyle {
  return { textMm, titleMm: textMm * 1.18, rowMm: textMm * 1.45, columnMm, gutterMm: textMm * 2.4 };
}

/**
 * Sets the blocks one below the other, column after column, page after page. A title is never left alone at the foot of
 * a column; a table that runs on repeats its title. On the last page the columns end at about one height.
 */
export function flowBlocks(
  blocks: readonly PanelBlock[],
  columns: ColumnsOfPage,
  style: PanelStyle,
  fonts: FontBook,
): FlownPanel {
  const full = flowInto(blocks, columns, style, fonts);
  const best = balanced(full, blocks, columns, style, fonts);
  return { pages: best.map((page) => page.flatMap((draw) => draw())) };
}

/** What stands on each page, drawn only once it is known where. */
type PlacedRows = (() => readonly DrawingElement[])[][];

function balanced(
  full: PlacedRows,
  blocks: readonly PanelBlock[],
  columns: ColumnsOfPage,
  style: PanelStyle,
  fonts: FontBook,
): PlacedRows {
  const last = full.length - 1;
  if (!areAbreast(columns(last))) return full;
  let best = full;
  let [tooLow, enough] = [0, 1];
  for (let i = 0; i < BALANCING_STEPS; i++) {
    const share = (tooLow + enough) / 2;
    const tried = flowInto(blocks, (page) => shorten(columns(page), page === last ? share : 1), style, fonts);
    if (tried.length > full.length) tooLow = share;
    else [best, enough] = [tried, share];
  }
  return best;
}

/** Several columns that begin at one height. */
function areAbreast(columns: readonly Box[]): boolean {
  return columns.length > 1 && columns.every((box) => box.minY === columns[0]!.minY);
}

/** Halves the span of heights so often: to less than a row. */
const BALANCING_STEPS = 7;

function shorten(columns: readonly Box[], share: number): Box[] {
  return columns.map((box) => ({ ...box, maxY: box.minY + (box.maxY - box.minY) * share }));
}

function flowInto(
  blocks: readonly PanelBlock[],
  columns: ColumnsOfPage,
  style: PanelStyle,
  fonts: FontBook,
): PlacedRows {
  const [first] = columns(0);
  const cursor: Cursor = { pages: [[]], columns, column: 0, y: first!.minY };
  for (const block of blocks) {
    if (block.rows.length > 0) flowBlock(cursor, block, style, fonts);
  }
  return cursor.pages;
}

/** Where the next row goes. */
interface Cursor {
  readonly pages: PlacedRows;
  readonly columns: ColumnsOfPage;
  column: number;
  y: number;
}

function flowBlock(cursor: Cursor, block: PanelBlock, style: PanelStyle, fonts: FontBook): void {
  const titleMm = style.titleMm * TITLE_SHARE;
  const kept = titleMm + headMm(block) + heightOf(block.rows.slice(0, Math.max(1, block.keepRows)));
  if (!isAtTop(cursor)) {
    if (cursor.y + BLOCK_GAP_MM + kept > placeOf(cursor).maxY) nextColumn(cursor);
    else cursor.y += BLOCK_GAP_MM;
  }
  const put = (draw: (place: Box, y: number) => readonly DrawingElement[], heightMm: number): void => {
    const place = placeOf(cursor);
    const { y } = cursor;
    cursor.pages[cursor.pages.length - 1]!.push(() => draw(place, y));
    cursor.y += heightMm;
  };
  const putRow = (row: PanelRow): void =>
    put(({ minX, maxX }, y) => row.draw(minX, y, maxX - minX), row.heightMm);
  const putTitle = (text: string): void => {
    put((place, y) => blockTitle(fonts, style, text, place, y), titleMm);
    if (block.head !== undefined) putRow(block.head);
  };
  putTitle(block.title);
  block.rows.forEach((row, i) => {
    // A row that is higher than a column is set all the same, at the top of one.
    if (i > 0 && cursor.y + row.heightMm > placeOf(cursor).maxY) {
      if (row.isSpace === true) return;
      nextColumn(cursor);
      putTitle(`${block.title} …`);
    }
    putRow(row);
  });
}

function placeOf(cursor: Cursor): Box {
  return cursor.columns(cursor.pages.length - 1)[cursor.column]!;
}

function isAtTop(cursor: Cursor): boolean {
  return cursor.y === placeOf(cursor).minY;
}

function nextColumn(cursor: Cursor): void {
  cursor.column++;
  if (cursor.column >= cursor.columns(cursor.pages.length - 1).length) {
    cursor.pages.push([]);
    cursor.column = 0;
  }
  cursor.y = placeOf(cursor).minY;
}

/** A title with its rule is so many times as high as its letters. */
const TITLE_SHARE = 1.75;

/** Height of the block with its title. */
export function blockHeightMm(block: PanelBlock, style: PanelStyle): number {
  if (block.rows.length === 0) return 0;
  return style.titleMm * TITLE_SHARE + headMm(block) + heightOf(block.rows) + BLOCK_GAP_MM;
}

function headMm({ head }: PanelBlock): number {
  return head === undefined ? 0 : head.heightMm;
}

function heightOf(rows: readonly PanelRow[]): number {
  return rows.reduce((sum, row) => sum + row.heightMm, 0);
}

function blockTitle(
  fonts: FontBook,
  style: PanelStyle,
  text: string,
  column: Box,
  y: number,
): DrawingElement[] {
  const rule = y + style.titleMm * 1.3;
  return [
    textLine(fonts, fitText(fonts, 'bold', style.titleMm, text, column.maxX - column.minX), {
      at: { x: column.minX, y: y + style.titleMm * 0.9 },
      sizeMm: style.titleMm,
      colour: INK,
      face: 'bold',
    }),
    line(
      { x: column.minX, y: rule },
      { x: column.maxX, y: rule },
      { colour: RULE, widthMm: HAIRLINE_MM * 1.5 },
    ),
  ];
}

/** As many equal columns side by side as the box holds. */
export function columnsOf(box: Box, style: PanelStyle): Box[] {
  const width = box.maxX - box.minX;
  const count = Math.max(1, Math.floor((width + style.gutterMm) / (style.columnMm + style.gutterMm)));
  const each = (width - (count - 1) * style.gutterMm) / count;
  return Array.from({ length: count }, (_, i) => {
    const minX = box.minX + i * (each + style.gutterMm);
    return { minX, minY: box.minY, maxX: minX + each, maxY: box.maxY };
  });
}
