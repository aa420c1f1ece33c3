import { line } from '../drawing/build.js';
import type { FontFace } from '../drawing/model.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, textLine } from '../text/measure-text.js';
import { HAIRLINE_MM, INK, RULE } from './palette.js';
import type { PanelRow, PanelStyle } from './panel.js';

/** A cell: its text, and where in the row it stands. */
export interface Cell {
  readonly text: string;
  /** From the row's left edge to the cell's left edge, or to its right edge if it is set to the right; 0 to 1. */
  readonly at: number;
  readonly align?: 'left' | 'right';
  readonly face?: FontFace;
  readonly colour?: string;
  /** Share of the row that it may take; longer text is cut short. */
  readonly room: number;
}

/** A row of cells on one baseline. */
export function tableRow(fonts: FontBook, style: PanelStyle, cells: readonly Cell[]): PanelRow {
  return {
    heightMm: style.rowMm,
    draw: (x, y, widthMm) =>
      cells.map((cell) => {
        const face = cell.face ?? 'narrow';
        return textLine(fonts, fitText(fonts, face, style.textMm, cell.text, cell.room * widthMm), {
          at: { x: x + cell.at * widthMm, y: y + style.rowMm * 0.72 },
          sizeMm: style.textMm,
          colour: cell.colour ?? INK,
          face,
          anchor: cell.align === 'right' ? 'end' : 'start',
        });
      }),
  };
}

/** A row of one line of text. */
export function lineRow(
  fonts: FontBook,
  style: PanelStyle,
  text: string,
  more: { readonly face?: FontFace; readonly colour?: string } = {},
): PanelRow {
  return tableRow(fonts, style, [{ text, at: 0, room: 1, ...more }]);
}

/** An empty row of part of a row's height. */
export function spaceRow(style: PanelStyle, share: number): PanelRow {
  return { heightMm: style.rowMm * share, isSpace: true, draw: () => [] };
}

/** A fine line across, in the middle of part of a row's height. */
export function ruleRow(style: PanelStyle, share: number): PanelRow {
  const heightMm = style.rowMm * share;
  const stroke = { colour: RULE, widthMm: HAIRLINE_MM };
  return {
    heightMm,
    draw: (x, y, widthMm) => [
      line({ x, y: y + heightMm / 2 }, { x: x + widthMm, y: y + heightMm / 2 }, stroke),
    ],
  };
}

/** Rows that are never parted. */
export function stackRows(rows: readonly PanelRow[]): PanelRow {
  return {
    heightMm: rows.reduce((sum, row) => sum + row.heightMm, 0),
    draw: (x, y, widthMm) => {
      let down = y;
      return rows.flatMap((row) => {
        const elements = row.draw(x, down, widthMm);
        down += row.heightMm;
        return elements;
      });
    },
  };
}
