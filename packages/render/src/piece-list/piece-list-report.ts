import { pieceList } from '@hidebound/leather';
import type { Layout, ListedPiece } from '@hidebound/leather';
import { column } from '../report/blocks.js';
import type { Report, ReportBlock } from '../report/report.js';

/** Every copy of every piece as a page to tick off, hide by hide in the order of cutting. */
export function pieceListReport(layout: Layout): Report {
  const { name, version, date } = layout.order;
  const pieces = pieceList(layout);
  const laid = layout.hides.map(({ id }) => ({ id, rows: pieces.filter((row) => isOpenOn(row, id)) }));
  const cut = pieces.filter(({ state }) => state === 'cut');
  const spoiled = pieces.filter(({ state }) => state === 'spoiled');
  const unlaid = pieces.filter(({ state }) => state === 'not laid');
  return {
    title: 'Piece list',
    subtitle: `${name}, version ${version}, ${date}`,
    blocks: [
      { kind: 'text', tone: 'soft', text: 'Sizes are along and across the direction arrow, in mm.' },
      ...laid.flatMap(({ id, rows }) => listed(`On hide ${id}`, rows)),
      ...listed('Cut already', cut),
      ...listed('Spoiled', spoiled),
      ...listed('Not laid', unlaid),
    ],
  };
}

function isOpenOn({ state, hide }: ListedPiece, id: string): boolean {
  return state === 'planned' && hide === id;
}

function listed(title: string, rows: readonly ListedPiece[]): ReportBlock[] {
  if (rows.length === 0) return [];
  const count = rows.length === 1 ? '1 piece' : `${rows.length} pieces`;
  return [
    { kind: 'section', title: `${title}: ${count}` },
    {
      kind: 'table',
      columns: [
        column('number', 'right'),
        column('piece'),
        column('article'),
        column('set', 'right'),
        column('copy', 'right'),
        column('leather'),
        column('along', 'right'),
        column('across', 'right'),
      ],
      rows: rows.map((row) => [
        row.number ?? '–',
        row.mirrored ? `${row.piece}, mirrored` : row.piece,
        row.article,
        String(row.set),
        String(row.copy),
        row.leather ?? '–',
        sizeWords(row.lengthMm),
        sizeWords(row.widthMm),
      ]),
    },
  ];
}

function sizeWords(mm: number | undefined): string {
  return mm === undefined ? '–' : mm.toFixed(1);
}
