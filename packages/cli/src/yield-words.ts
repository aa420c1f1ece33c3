import { formatArea } from '@hidebound/leather';
import type { Layout } from '@hidebound/leather';
import { textTable } from './text-table.js';

export function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

export function squareMetres(mm2: number): string {
  return formatArea(mm2, { unit: 'm2' });
}

/** The yield table of a layout: always of which area. */
export function yieldLines(layout: Layout): readonly string[] {
  const rows = layout.yield.hides.map((hide) => [
    hide.hide,
    String(layout.placements.filter((placement) => placement.hide === hide.hide).length),
    squareMetres(hide.grossMm2),
    squareMetres(hide.usableMm2),
    squareMetres(hide.piecesMm2),
    percent(hide.grossYield),
    percent(hide.usableYield),
    squareMetres(hide.usedUpMm2),
    percent(hide.usedUpYield),
  ]);
  const { total } = layout.yield;
  const totals = [
    'all',
    String(layout.placements.length),
    squareMetres(total.grossMm2),
    squareMetres(total.usableMm2),
    squareMetres(total.piecesMm2),
    percent(total.grossYield),
    percent(total.usableYield),
    squareMetres(total.usedUpMm2),
    percent(total.usedUpYield),
  ];
  return textTable(YIELD_HEAD, [...rows, totals], [1, 2, 3, 4, 5, 6, 7, 8]);
}

const YIELD_HEAD = [
  'hide',
  'pieces',
  'gross',
  'usable',
  'in pieces',
  'gross yield',
  'usable yield',
  'used up',
  'of used up',
] as const;
