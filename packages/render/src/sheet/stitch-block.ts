import { gaveWords, planStitches, setsOfLayout } from '@hidebound/leather';
import type { Layout, StitchPlan, StitchSeam, ThreadNeed } from '@hidebound/leather';
import type { FontBook } from '../text/font-book.js';
import { wrapText } from '../text/measure-text.js';
import { INK_SOFT } from './palette.js';
import type { PanelBlock, PanelRow, PanelStyle } from './panel.js';
import { spaceRow, stackRows, tableRow } from './table-row.js';

/** The seams of each article, and the thread for all of them. None where no piece says how it is sewn. */
export function stitchBlocks(layout: Layout, fonts: FontBook, style: PanelStyle): PanelBlock[] {
  const { order, pieces } = layout;
  const plan = planStitches({ order, pieces, setsOf: setsOfLayout(layout) });
  if (plan.seams.length === 0) return [];
  const articles = [...new Set(plan.seams.map(({ article }) => article))];
  return [
    ...articles.map((article) => seamsBlock(plan, article, fonts, style)),
    threadBlock(plan.threads, fonts, style),
  ];
}

/** Where the columns end, as shares of the row. */
const PITCH_AT = 0.7;
const HOLES_AT = 0.83;
const FIGURE_ROOM = 0.14;
const NAME_ROOM = PITCH_AT - FIGURE_ROOM;
/** Room between two entries, as a share of a row. */
const ENTRY_GAP = 0.3;

function seamsBlock(plan: StitchPlan, article: string, fonts: FontBook, style: PanelStyle): PanelBlock {
  const head = tableRow(fonts, style, [
    { text: 'seam, in each set', at: 0, room: NAME_ROOM, colour: INK_SOFT },
    { text: 'pitch', at: PITCH_AT, room: FIGURE_ROOM, align: 'right', colour: INK_SOFT },
    { text: 'holes', at: HOLES_AT, room: FIGURE_ROOM, align: 'right', colour: INK_SOFT },
    { text: 'thread', at: 1, room: FIGURE_ROOM, align: 'right', colour: INK_SOFT },
  ]);
  const seams = plan.seams.filter((seam) => seam.article === article);
  const rows = seams.map((seam) => seamRow(seam, fonts, style));
  return { title: `Stitching: ${article}`, rows: [head, ...rows], keepRows: 2 };
}

function seamRow(seam: StitchSeam, fonts: FontBook, style: PanelStyle): PanelRow {
  const times = seam.perSet === 1 ? '' : `${seam.perSet}\u00a0× `;
  const names = wrapText(fonts, 'narrow bold', style.textMm, times + seam.name, style.columnMm * NAME_ROOM);
  const soft = wrapText(fonts, 'narrow', style.textMm, seamNote(seam), style.columnMm);
  return stackRows([
    ...names.map((text, i) =>
      tableRow(fonts, style, [
        { text, at: 0, room: NAME_ROOM, face: 'narrow bold' },
        ...(i === 0 ? figures(seam) : []),
      ]),
    ),
    ...soft.map((text) => tableRow(fonts, style, [{ text, at: 0, room: 1, colour: INK_SOFT }])),
    spaceRow(style, ENTRY_GAP),
  ]);
}

function figures({ pitchMm, holes, threadMm }: StitchSeam) {
  const cell = (text: string, at: number) => ({ text, at, room: FIGURE_ROOM, align: 'right' as const });
  return [
    cell(pitchMm.toFixed(2), PITCH_AT),
    cell(String(holes), HOLES_AT),
    cell(threadMm === undefined ? '?' : metres(threadMm), 1),
  ];
}

/** The tool, the length, the stack, and what gave on each line. */
function seamNote(seam: StitchSeam): string {
  const [first] = seam.lines;
  return [
    `with the ${first!.with}`,
    `${seam.lengthMm.toFixed(0)} mm`,
    ...(seam.stackMm === undefined
      ? ['stack not known, so no thread']
      : [`through ${seam.stackMm.toFixed(1)} mm`]),
    ...gaveOnLines(seam),
  ].join('; ');
}

/** What gave, once where it is the same on every line of the seam. */
function gaveOnLines({ lines }: StitchSeam): readonly string[] {
  const words = lines.map(({ marks }) => gaveWords(marks));
  const [first] = words;
  if (words.every((each) => each === first)) return first === undefined ? [] : [first];
  return lines.flatMap(({ piece }, i) => (words[i] === undefined ? [] : [`${piece}: ${words[i]}`]));
}

function threadBlock(threads: readonly ThreadNeed[], fonts: FontBook, style: PanelStyle): PanelBlock {
  const head = tableRow(fonts, style, [
    { text: 'all sets, with tails', at: 0, room: 0.46, colour: INK_SOFT },
    { text: 'seams', at: 0.6, room: 0.14, align: 'right', colour: INK_SOFT },
    { text: 'takes', at: 0.8, room: 0.18, align: 'right', colour: INK_SOFT },
    { text: 'in order', at: 1, room: 0.2, align: 'right', colour: INK_SOFT },
  ]);
  const rows = threads.map(({ thread, seams, lengthMm, statedMm }) =>
    tableRow(fonts, style, [
      { text: thread, at: 0, room: 0.46, face: 'narrow bold' },
      { text: String(seams), at: 0.6, room: 0.14, align: 'right' },
      { text: metres(lengthMm), at: 0.8, room: 0.18, align: 'right', face: 'narrow bold' },
      { text: statedMm === undefined ? '' : metres(statedMm), at: 1, room: 0.2, align: 'right' },
    ]),
  );
  return { title: 'Thread', rows: [head, ...rows], keepRows: 2 };
}

const MM_PER_M = 1000;

/** Rounded up to a tenth: thread that is too short is of no use. */
function metres(mm: number): string {
  return `${(Math.ceil(mm / (MM_PER_M / 10)) / 10).toFixed(1)} m`;
}
