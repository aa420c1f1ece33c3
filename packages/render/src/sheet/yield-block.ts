import type { AreaBalance, Layout } from '@hidebound/leather';
import type { FontBook } from '../text/font-book.js';
import { INK_SOFT } from './palette.js';
import type { PanelBlock, PanelRow, PanelStyle } from './panel.js';
import { ruleRow, stackRows, tableRow } from './table-row.js';
import { areaFigure, areaUnit, percentWords } from './words.js';

/** Yield and areas of one hide, and of all hides where there are several. */
export function yieldBlocks(
  layout: Layout,
  hideId: string,
  fonts: FontBook,
  style: PanelStyle,
): PanelBlock[] {
  const own = layout.yield.hides.find((each) => each.hide === hideId);
  const blocks: PanelBlock[] = [];
  if (own !== undefined) blocks.push(balanceBlock(`Yield of ${hideId}`, own, fonts, style));
  return blocks;
}

/** Yield of the whole order, for the last page. */
export function totalYieldBlock(layout: Layout, fonts: FontBook, style: PanelStyle): PanelBlock {
  return balanceBlock('Yield of all hides', layout.yield.total, fonts, style);
}

/** Height of a rule between figures, as a share of a row. */
const RULE_SHARE = 0.3;

function balanceBlock(title: string, balance: AreaBalance, fonts: FontBook, style: PanelStyle): PanelBlock {
  const unit = areaUnit(balance.grossMm2);
  const row = (name: string, mm2: number, bold = false): PanelRow => {
    const face = bold ? 'narrow bold' : 'narrow';
    return tableRow(fonts, style, [
      { text: name, at: 0, room: 0.42, face },
      { text: areaFigure(mm2, unit), at: 0.6, room: 0.2, align: 'right', face },
      { text: areaFigure(mm2, 'ft²'), at: 0.8, room: 0.2, align: 'right', face },
      { text: shareOf(mm2, balance.grossMm2), at: 1, room: 0.2, align: 'right', face },
    ]);
  };
  const head = tableRow(fonts, style, [
    { text: '', at: 0, room: 0.4 },
    { text: unit, at: 0.6, room: 0.2, align: 'right', colour: INK_SOFT },
    { text: 'ft²', at: 0.8, room: 0.2, align: 'right', colour: INK_SOFT },
    { text: '% gross', at: 1, room: 0.2, align: 'right', colour: INK_SOFT },
  ]);
  const rows = [
    head,
    row('Gross', balance.grossMm2, true),
    row('Usable', balance.usableMm2),
    ruleRow(style, RULE_SHARE),
    row('Pieces', balance.piecesMm2),
    row('Between pieces', balance.betweenMm2),
    row('Flaws', balance.flawsMm2),
    row('Along the edge', balance.edgeMm2),
    ...(balance.openingsMm2 > 0 ? [row('Openings', balance.openingsMm2)] : []),
    row('Offcut, kept', balance.offcutMm2),
    ruleRow(style, RULE_SHARE),
    row('Used up', balance.usedUpMm2, true),
    yieldRow(balance, fonts, style),
  ];
  return { title, rows, keepRows: rows.length };
}

/** "Yield: 61.2 % of gross, 66.0 % of usable, 78.1 % of used up", in two cells to a line. */
function yieldRow(balance: AreaBalance, fonts: FontBook, style: PanelStyle): PanelRow {
  const words = [
    ['of gross', balance.grossYield],
    ['of usable', balance.usableYield],
    ['of used up', balance.usedUpYield],
  ] as const;
  const lines = words.map(([name, share], i) =>
    tableRow(fonts, style, [
      { text: i === 0 ? 'Yield' : '', at: 0, room: 0.25, face: 'narrow bold' },
      { text: percentWords(share), at: 0.6, room: 0.3, align: 'right', face: 'narrow bold' },
      { text: name, at: 0.64, room: 0.36 },
    ]),
  );
  return stackRows(lines);
}

function shareOf(mm2: number, grossMm2: number): string {
  return grossMm2 > 0 ? ((mm2 / grossMm2) * 100).toFixed(1) : '–';
}
