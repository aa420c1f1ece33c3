import type { Box } from '@hidebound/geometry';
import { line } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import type { FontBook } from '../text/font-book.js';
import { textLine } from '../text/measure-text.js';
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
  draw(x: number, y: number, widthMm: number): readonly DrawingElement[];
}

/** A titled table, which may run on from one column to the next. */
export interface PanelBlock {
  readonly title: string;
  readonly rows: readonly PanelRow[];
  /** Rows that must not be parted from the title. */
  readonly keepRows: number;
}

/** Where tables may stand on one page. */
export interface PanelPlace {
  readonly columns: readonly Box[];
}

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
 * Sets the blocks one below the other, column after column, on the first page's place and as many further pages as it
 * takes. A title is never left alone at the foot of a column; a table that runs on repeats its title.
 */
export function flowBlocks(
  blocks: readonly PanelBlock[],
  first: PanelPlace,
  further: PanelPlace,
  style: PanelStyle,
  fonts: FontBook,
): FlownPanel {
  const pages: DrawingElement[][] = [[]];
  let columns = first.columns;
  let column = 0;
  let y = columns[0]?.minY ?? 0;
  const titleMm = style.titleMm * 1.75;
  const place = (): Box => columns[column]!;
  const nextColumn = (): void => {
    column++;
    if (column >= columns.length) {
      pages.push([]);
      columns = further.columns;
      column = 0;
    }
    y = place().minY;
  };
  for (const block of blocks) {
    if (block.rows.length === 0) continue;
    const isTop = (): boolean => y === place().minY;
    const needed = titleMm + heightOf(block.rows.slice(0, Math.max(1, block.keepRows)));
    if (columns.length === 0 || (!isTop() && y + BLOCK_GAP_MM + needed > place().maxY)) nextColumn();
    while (isTop() && y + needed > place().maxY && pages.length < MOST_PAGES && pages.length === 1)
      nextColumn();
    if (!isTop()) y += BLOCK_GAP_MM;
    const title = (text: string): void => {
      pages[pages.length - 1]!.push(...blockTitle(fonts, style, text, place(), y));
      y += titleMm;
    };
    title(block.title);
    for (const row of block.rows) {
      if (y + row.heightMm > place().maxY && pages.length < MOST_PAGES) {
        nextColumn();
        title(`${block.title}, continued`);
      }
      const box = place();
      pages[pages.length - 1]!.push(...row.draw(box.minX, y, box.maxX - box.minX));
      y += row.heightMm;
    }
  }
  return { pages };
}

/** A guard against rows that are higher than a page. */
const MOST_PAGES = 500;

/** Height of the block with its title. */
export function blockHeightMm(block: PanelBlock, style: PanelStyle): number {
  return block.rows.length === 0 ? 0 : style.titleMm * 1.75 + heightOf(block.rows) + BLOCK_GAP_MM;
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
    textLine(fonts, text, {
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
