import { regionArea } from '@hidebound/geometry';
import type { Layout } from '@hidebound/leather';
import { boxSides } from '../picture/mark-labels.js';
import { compareNumbers, copyKey, cuttingNumbers } from '../picture/placed-pieces.js';
import { hideShape } from '../picture/hide-view.js';
import type { FontBook } from '../text/font-book.js';
import { wrapText } from '../text/measure-text.js';
import { INK_SOFT } from './palette.js';
import type { PanelBlock, PanelRow, PanelStyle } from './panel.js';
import { lineRow, spaceRow, stackRows, tableRow } from './table-row.js';
import { MIRRORED_SIGN, areaFigure, areaUnit, percentWords, sizeWords } from './words.js';
import type { LengthUnit } from './words.js';

/** Each hide with its pieces, the numbers that they bear, and its yield. */
export function hidesBlock(layout: Layout, fonts: FontBook, style: PanelStyle): PanelBlock {
  const numbers = cuttingNumbers(layout);
  const rows = layout.hides.map(({ id }): PanelRow => {
    const own = wantedOn(layout).filter((placement) => placement.hide === id);
    const sorted = own.map((placement) => numbers.get(copyKey(placement)) ?? '').sort(compareNumbers);
    const share = layout.yield.hides.find((each) => each.hide === id)?.grossYield;
    return tableRow(fonts, style, [
      { text: id, at: 0, room: 0.44, face: 'narrow bold' },
      { text: spanOf(sorted), at: 0.66, room: 0.2, align: 'right' },
      { text: String(own.length), at: 0.8, room: 0.13, align: 'right' },
      { text: share === undefined ? '' : percentWords(share), at: 1, room: 0.2, align: 'right' },
    ]);
  });
  const head = tableRow(fonts, style, [
    { text: '', at: 0, room: 0.4 },
    { text: 'numbers', at: 0.66, room: 0.24, align: 'right', colour: INK_SOFT },
    { text: 'pieces', at: 0.8, room: 0.14, align: 'right', colour: INK_SOFT },
    { text: 'of gross', at: 1, room: 0.2, align: 'right', colour: INK_SOFT },
  ]);
  return { title: 'Hides', rows: rows.length === 0 ? [] : [head, ...rows], keepRows: 3 };
}

/** A spoiled piece belongs to no set any more. */
function wantedOn({ placements }: Layout): Layout['placements'] {
  return placements.filter(({ state }) => state !== 'spoiled');
}

function spanOf(sorted: readonly string[]): string {
  if (sorted.length === 0) return 'none';
  const [first, last] = [sorted[0]!, sorted[sorted.length - 1]!];
  return first === last ? first : `${first}–${last}`;
}

/** What goes back on the shelf: the name that each offcut bears from now on, and its size. */
export function offcutsBlock(
  layout: Layout,
  units: LengthUnit,
  fonts: FontBook,
  style: PanelStyle,
): PanelBlock {
  const rows = layout.offcuts.map((offcut): PanelRow => {
    const shape = hideShape(offcut);
    const area = regionArea(shape);
    const unit = areaUnit(area);
    const words = [
      sizeWords(...boxSides(shape), units),
      `${areaFigure(area, unit)} ${unit} (${areaFigure(area, 'ft²')} ft²)`,
    ].join(', ');
    const from = offcut.parent === undefined ? '' : `from ${offcut.parent}`;
    return stackRows([
      tableRow(fonts, style, [
        { text: offcut.id, at: 0, room: 0.5, face: 'narrow bold' },
        { text: from, at: 1, room: 0.48, align: 'right', colour: INK_SOFT },
      ]),
      lineRow(fonts, style, words),
      spaceRow(style, ENTRY_GAP),
    ]);
  });
  return { title: 'Offcuts worth keeping', rows, keepRows: 1 };
}

/** Room between two entries of a list, as a share of a row. */
const ENTRY_GAP = 0.35;

/** For each article its sets, with the numbers of the pieces that make up each: for putting them together once cut. */
export function setBlocks(layout: Layout, fonts: FontBook, style: PanelStyle): PanelBlock[] {
  const numbers = cuttingNumbers(layout);
  const articles = layout.order.articles.map((article) => article.name);
  return [...new Set(articles)].map((article): PanelBlock => {
    const placed = wantedOn(layout).filter((placement) => placement.article === article);
    const missing = layout.unplaced.filter((copy) => copy.article === article);
    const sets = [...new Set([...placed, ...missing].map((copy) => copy.set))].sort((a, b) => a - b);
    const rows = sets.map((set): PanelRow => {
      const entries = new Map<string, string[]>();
      for (const copy of placed.filter((each) => each.set === set)) {
        const number = numbers.get(copyKey(copy)) ?? '';
        const known = entries.get(copy.piece) ?? [];
        entries.set(copy.piece, [...known, copy.mirrored ? `${number}\u00a0${MIRRORED_SIGN}` : number]);
      }
      const lacking = missing.filter((each) => each.set === set).length;
      const words = [
        // A fixed space: a name is never parted from its first number.
        ...[...entries].map(([piece, copies]) => `${piece}\u00a0${copies.sort(compareNumbers).join(', ')}`),
        ...(lacking === 0 ? [] : [`${lacking} not laid`]),
      ].join('; ');
      return setRow(fonts, style, set, words);
    });
    return { title: `Sets: ${article}`, rows, keepRows: 1 };
  });
}

/** Share of the row that a set's number takes. */
const SET_SHARE = 0.09;

function setRow(fonts: FontBook, style: PanelStyle, set: number, words: string): PanelRow {
  const lines = wrapText(fonts, 'narrow', style.textMm, words, style.columnMm * (1 - SET_SHARE));
  return stackRows([
    ...lines.map((text, i) =>
      tableRow(fonts, style, [
        { text: i === 0 ? String(set) : '', at: 0, room: SET_SHARE, face: 'narrow bold' },
        { text, at: SET_SHARE, room: 1 - SET_SHARE },
      ]),
    ),
    ...(lines.length > 1 ? [spaceRow(style, ENTRY_GAP)] : []),
  ]);
}
