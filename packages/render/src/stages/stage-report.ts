import { listWords } from '@hidebound/leather';
import type { CuttingStage, HideStage, Layout, LeftPiece, PieceCopy, UnplacedCopy } from '@hidebound/leather';
import type { Drawing } from '../drawing/model.js';
import type { Report, ReportBlock } from '../report/report.js';
import { areaFigure, percentWords } from '../sheet/words.js';

export interface StageReportOptions {
  readonly layout: Layout;
  readonly stage: CuttingStage;
  /** Pictures of hides by their ids, where there are some. */
  readonly pictures?: ReadonlyMap<string, Drawing>;
}

/** How far the cutting is, what each hide is now, and what is left to cut, with a box for each piece. */
export function stageReport({ layout, stage, pictures }: StageReportOptions): Report {
  const { order } = layout;
  return {
    title: stage.isDone ? 'All is cut' : 'What is left to cut',
    subtitle: `${order.name}, version ${order.version}, ${order.date}`,
    blocks: [
      { kind: 'text', tone: 'answer', text: answerWords(stage) },
      ...yieldBlocks(stage),
      hidesTable(stage),
      ...unlaidBlocks(stage),
      ...stage.hides.flatMap((hide) => hideBlocks(hide, layout, pictures?.get(hide.hide))),
    ],
  };
}

function answerWords({ cut, spoiled, left, unlaid, isDone }: CuttingStage): string {
  const asked = cut + left + unlaid.length;
  if (isDone) return `All ${counted(cut, 'piece')} are cut${spoiled === 0 ? '' : `, ${spoiled} spoiled`}.`;
  return `${listWords(
    [
      `${cut} of ${counted(asked, 'piece')} ${cut === 1 ? 'is' : 'are'} cut`,
      ...(spoiled === 0 ? [] : [`${spoiled} ${spoiled === 1 ? 'was' : 'were'} spoiled`]),
      `${left} ${left === 1 ? 'is' : 'are'} still to be cut`,
      ...(unlaid.length === 0
        ? []
        : [`${unlaid.length} ${unlaid.length === 1 ? 'has' : 'have'} no place yet`]),
    ],
    'and',
  )}.`;
}

function yieldBlocks({ begun, grossYield, goneYield, isDone }: CuttingStage): ReportBlock[] {
  if (begun.cutMm2 + begun.spoiledMm2 === 0) return [];
  const rows = [
    { name: 'In good pieces', value: areaWords(begun.cutMm2) },
    ...(begun.spoiledMm2 > 0 ? [{ name: 'In spoiled pieces', value: areaWords(begun.spoiledMm2) }] : []),
    {
      name: isDone
        ? 'Real yield, of the gross area of the hides'
        : 'Yield so far, of the gross area of the hides begun',
      value: percentWords(grossYield),
    },
    { name: 'Good pieces, of the leather that is gone', value: percentWords(goneYield) },
  ];
  return [{ kind: 'facts', rows }];
}

function hidesTable({ hides }: CuttingStage): ReportBlock {
  const row = (hide: HideStage): string[] => [
    hide.hide,
    String(hide.cut),
    String(hide.spoiled),
    String(hide.left.length),
    areaWords(hide.grossMm2),
    areaWords(hide.cutMm2),
    areaWords(hide.spoiledMm2),
    areaWords(hide.lostMm2),
    areaWords(hide.restMm2),
  ];
  return {
    kind: 'table',
    columns: [
      { head: 'hide', align: 'left' },
      { head: 'cut', align: 'right' },
      { head: 'spoiled', align: 'right' },
      { head: 'to cut', align: 'right' },
      { head: 'gross', align: 'right' },
      { head: 'good pieces', align: 'right' },
      { head: 'spoiled pieces', align: 'right' },
      { head: 'fell off', align: 'right' },
      { head: 'there is left', align: 'right' },
    ],
    rows: hides.map(row),
  };
}

function unlaidBlocks({ unlaid, unlaidMm2, missingMm2 }: CuttingStage): ReportBlock[] {
  if (unlaid.length === 0) return [];
  const leather =
    missingMm2 === undefined
      ? ''
      : ` At the yield of this layout they take about ${areaWords(missingMm2)} of leather.`;
  return [
    { kind: 'section', title: 'Without a place yet' },
    {
      kind: 'text',
      tone: 'plain',
      text: `These pieces have ${areaWords(unlaidMm2)} and are to be laid again.${leather}`,
    },
    {
      kind: 'table',
      columns: [
        { head: 'piece', align: 'left' },
        { head: 'article', align: 'left' },
        { head: 'set', align: 'right' },
        { head: 'copy', align: 'right' },
        { head: '', align: 'left' },
        { head: 'why', align: 'left' },
      ],
      rows: unlaid.map((copy) => [
        copy.piece,
        copy.article,
        String(copy.set),
        String(copy.copy),
        copy.mirrored ? 'mirrored' : '',
        WHY[copy.reason],
      ]),
    },
  ];
}

const WHY: Readonly<Record<UnplacedCopy['reason'], string>> = {
  'not-tried': 'to be laid again',
  'no-room': 'no room was found',
  'larger-than-every-sheet': 'larger than every hide',
  'no-sheet-allowed': 'no hide of its leather',
  'no-leather-good-enough': 'no leather is good enough',
  'direction-unknown': 'the direction is not known',
  thickness: 'no hide is of its thickness',
  'set-incomplete': 'its set has no room',
};

function hideBlocks(hide: HideStage, layout: Layout, picture: Drawing | undefined): ReportBlock[] {
  if (hide.left.length === 0 && hide.cut + hide.spoiled === 0) return [];
  const isBegun = hide.cut + hide.spoiled > 0;
  return [
    { kind: 'section', title: `Hide ${hide.hide}` },
    ...(picture === undefined
      ? []
      : [{ kind: 'picture' as const, drawing: picture, caption: captionOf(hide) }]),
    {
      kind: 'text',
      tone: 'plain',
      text: [
        ...(isBegun ? [leftWords(hide)] : ['Nothing is cut from it yet.']),
        hide.left.length === 0
          ? 'All of its pieces are cut.'
          : `${counted(hide.left.length, 'piece')} of ${areaWords(hide.leftMm2)} together ${hide.left.length === 1 ? 'is' : 'are'} still to be cut:`,
      ].join(' '),
    },
    ...(hide.left.length === 0
      ? []
      : [{ kind: 'checklist' as const, items: hide.left.map((piece) => itemOf(piece, layout)) }]),
  ];
}

function captionOf({ cut, spoiled }: HideStage): string {
  return [
    ...(cut > 0 ? ['White: cut already.'] : []),
    ...(spoiled > 0 ? ['Crossed: spoiled.'] : []),
    'Numbers: still to be cut.',
  ].join(' ');
}

function leftWords({ parts, restMm2 }: HideStage): string {
  if (parts.length === 0) return 'Nothing is left of it that is worth keeping.';
  const few = parts.length === 1 ? 'one part' : `${parts.length} parts`;
  return `${areaWords(restMm2)} is left of it, in ${few}.`;
}

function itemOf({ number, copy, lengthMm, widthMm }: LeftPiece, { order }: Layout) {
  const leather = order.articles
    .find(({ name }) => name === copy.article)
    ?.pieces.find(({ name }) => name === copy.piece)?.leather;
  return {
    text: `${number}   ${copy.piece}, ${copyWords(copy)}`,
    aside: `${lengthMm.toFixed(0)} × ${widthMm.toFixed(0)} mm${leather === undefined ? '' : `, ${leather}`}`,
  };
}

function copyWords({ article, set, copy, mirrored }: PieceCopy): string {
  return `${article}, set ${set}, copy ${copy}${mirrored ? ', mirrored' : ''}`;
}

function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}

/** In one unit throughout, so that figures below each other can be compared. */
function areaWords(mm2: number): string {
  return `${areaFigure(Math.max(0, mm2), 'dm²')} dm²`;
}
