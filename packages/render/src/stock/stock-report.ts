import type { PieceTrial, StockEntry, StockJournal, StockRow } from '@hidebound/leather';
import { capital, openTakes, stockRemarkText } from '@hidebound/leather';
import { column, section } from '../report/blocks.js';
import type { Report, ReportBlock } from '../report/report.js';
import type { FontBook } from '../text/font-book.js';
import { stockPictures } from './stock-picture.js';
import {
  areaWords,
  countOfRows,
  extentWords,
  leatherWords,
  priceWords,
  rectangleWords,
  stripWords,
  thicknessOfRow,
} from './stock-words.js';

/** Pictures of a report are shrunk to the page's text; this is about as wide as that of A4. */
const PICTURES_MM = 186;

export interface StockReportOptions {
  /** The folder, and what was asked for: "stock, brown, at least 80 × 200 mm". */
  readonly subtitle: string;
  readonly stripWidthMm: number;
  /** What the workshop keeps: the sides of the rectangle. */
  readonly keepMm: readonly [number, number];
  readonly keepStripMm: readonly [width: number, length: number];
  /** For pages: with them the hides are drawn. */
  readonly fonts?: FontBook;
}

/** The stock as a sheet to hang up: what there is, how large, where it lies. */
export function stockReport(rows: readonly StockRow[], options: StockReportOptions): Report {
  const { subtitle, fonts } = options;
  const total = rows.reduce((sum, { sizes }) => sum + sizes.usableMm2, 0);
  const answer =
    rows.length === 0
      ? 'There is no such leather in the stock.'
      : `${capital(countOfRows(rows))}, ${areaWords(total)} of usable leather.`;
  return {
    title: 'Stock',
    subtitle,
    blocks: [
      { kind: 'text', tone: 'answer', text: answer },
      ...(rows.length === 0 ? [] : [...listBlocks(rows), ...sizeBlocks(rows, options)]),
      ...(fonts === undefined || rows.length === 0 ? [] : pictureBlocks(rows, fonts)),
    ],
  };
}

function listBlocks(rows: readonly StockRow[]): ReportBlock[] {
  return [
    section('What there is'),
    {
      kind: 'table',
      columns: [
        column('hide'),
        column('leather'),
        column('thickness', 'right'),
        column('lot'),
        column('lies'),
        column('state'),
        column('price', 'right'),
      ],
      rows: rows.map((row) => {
        const { hide } = row;
        return [
          hide.id,
          leatherWords(hide),
          thicknessOfRow(row),
          hide.lot ?? '',
          hide.storedAt ?? '',
          hide.state,
          priceWords(hide),
        ];
      }),
    },
  ];
}

function sizeBlocks(rows: readonly StockRow[], options: StockReportOptions): ReportBlock[] {
  const { stripWidthMm, keepMm, keepStripMm } = options;
  const small = rows.filter(({ isWorthKeeping }) => !isWorthKeeping).map(({ hide }) => hide.id);
  return [
    section('How large'),
    {
      kind: 'table',
      columns: [
        column('hide'),
        column('size', 'right'),
        column('usable', 'right'),
        column('largest rectangle, along × across', 'right'),
        column('turned any way', 'right'),
      ],
      rows: rows.map((row) => {
        const { directionDeg, usableMm2, rectangle, rectangleAlong } = row.sizes;
        return [
          row.hide.id,
          extentWords(row),
          areaWords(usableMm2),
          directionDeg === undefined ? 'not known' : rectangleWords(rectangleAlong, true),
          rectangleWords(rectangle),
        ];
      }),
    },
    section(`Longest strip, ${stripWidthMm} mm wide`),
    {
      kind: 'table',
      columns: [column('hide'), column('along', 'right'), column('turned any way', 'right')],
      rows: rows.map(({ hide, sizes: { directionDeg, strip, stripAlong } }) => [
        hide.id,
        directionDeg === undefined ? 'not known' : stripWords(stripAlong),
        stripWords(strip),
      ]),
    },
    {
      kind: 'text',
      tone: 'soft',
      text: 'Along is the direction in which the leather stretches least. Rectangles and strips lie clear of holes and of what is never to be used.',
    },
    ...(small.length === 0
      ? []
      : [
          {
            kind: 'text' as const,
            tone: 'plain' as const,
            text: `Too small to keep by your sizes (${keepMm[0]} × ${keepMm[1]} mm, or a strip of ${keepStripMm[0]} × ${keepStripMm[1]} mm): ${small.join(', ')}.`,
          },
        ]),
  ];
}

function pictureBlocks(rows: readonly StockRow[], fonts: FontBook): ReportBlock[] {
  const drawings = stockPictures(rows, fonts, PICTURES_MM);
  return [
    section('What they look like'),
    {
      kind: 'text',
      tone: 'soft',
      text: 'Each is drawn to its own scale, from the grain side. Dashed: its largest rectangle. Dark: never here. The arrow points to the tail.',
    },
    ...drawings.map((drawing): ReportBlock => ({ kind: 'picture', drawing, caption: '' })),
  ];
}

/** What a piece could be cut from. */
export function pieceTrialReport(
  trials: readonly PieceTrial[],
  { piece, count, subtitle }: { readonly piece: string; readonly count: number; readonly subtitle: string },
): Report {
  const enough = trials.filter(({ isEnough }) => isEnough);
  const [first] = enough;
  const wanted = count === 1 ? `A ${piece}` : `${count} of ${piece}`;
  const answer =
    first === undefined
      ? `${wanted} can't be cut from any one hide of this stock.`
      : `${wanted} can be cut from ${first.hide.id}${first.hide.storedAt === undefined ? '' : ` (${first.hide.storedAt})`}${enough.length === 1 ? '' : `, or from ${enough.length - 1} more`}.`;
  const shown = trials.filter(({ fits }) => fits > 0);
  const without = trials.filter(({ fits }) => fits === 0).map(({ hide }) => hide.id);
  return {
    title: `What ${piece} can be cut from`,
    subtitle,
    blocks: [
      { kind: 'text', tone: 'answer', text: answer },
      ...(shown.length === 0
        ? []
        : [
            {
              kind: 'table' as const,
              columns: [
                column('hide'),
                column('cut'),
                column('pieces', 'right'),
                column('usable', 'right'),
                column('colour'),
                column('lot'),
                column('lies'),
                column('mind'),
              ],
              rows: shown.map(({ hide, fits, isFull, usableMm2, remarks }) => [
                hide.id,
                hide.cut,
                isFull ? `${fits} or more` : String(fits),
                areaWords(usableMm2),
                hide.leather.colour ?? '',
                hide.lot ?? '',
                hide.storedAt ?? '',
                remarks.map(stockRemarkText).join('; '),
              ]),
            },
          ]),
      ...(without.length === 0
        ? []
        : [
            { kind: 'text' as const, tone: 'plain' as const, text: `Not one fits on ${without.join(', ')}.` },
          ]),
      {
        kind: 'text',
        tone: 'soft',
        text: 'Each hide was laid by itself by all rules of the piece (thickness, looks, direction, zones), and the layout is proven. More may fit after a longer search.',
      },
    ],
  };
}

/** What was taken from a stock, and undone. */
export function stockHistoryReport(journal: StockJournal, subtitle: string): Report {
  const open = new Set(openTakes(journal).map(({ number }) => number));
  return {
    title: 'What was taken',
    subtitle,
    blocks:
      journal.entries.length === 0
        ? [{ kind: 'text', tone: 'answer', text: 'Nothing was taken from this stock yet.' }]
        : [
            {
              kind: 'table',
              columns: [
                column('step', 'right'),
                column('day'),
                column('what'),
                column('hides'),
                column('offcuts'),
                column(''),
              ],
              rows: journal.entries.map((entry) => historyRow(entry, open)),
            },
          ],
  };
}

function historyRow(entry: StockEntry, open: ReadonlySet<number>): string[] {
  const { number, date } = entry;
  if (entry.kind === 'undone') return [String(number), date, `step ${entry.undoes} undone`, '', '', ''];
  return [
    String(number),
    date,
    entry.layout,
    entry.hides.map(({ hide }) => hide).join(', '),
    entry.offcuts.join(', '),
    open.has(number) ? '' : 'undone',
  ];
}
