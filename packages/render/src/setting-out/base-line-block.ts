import type { BaseLine, LineEnd, SettingOut } from '@hidebound/leather';
import type { SeenFrom } from '../picture/hide-view.js';
import type { PanelBlock, PanelRow, PanelStyle } from '../sheet/panel.js';
import { lineRow, spaceRow, stackRows } from '../sheet/table-row.js';
import { MIRRORED_SIGN } from '../sheet/words.js';
import type { FontBook } from '../text/font-book.js';
import { wrapText } from '../text/measure-text.js';
import { cornersOf } from './setting-picture.js';
import { hasTwoSides, mmWords } from './setting-words.js';

interface Desk {
  readonly fonts: FontBook;
  readonly style: PanelStyle;
}

/** Where the base line is chalked, in words that need the picture's letters alone. */
export function baseLineBlock({ baseLine }: SettingOut, desk: Desk): PanelBlock {
  const rows = [
    ...paragraph(LINE_WORDS[baseLine.kind], desk),
    ...endsWords(baseLine).flatMap((words) => paragraph(words, desk)),
    ...paragraph(`Check: from S to E it is ${mmWords(baseLine.lengthMm)} mm.`, desk),
  ];
  return { title: 'Base line', rows, keepRows: rows.length };
}

const LINE_WORDS: Readonly<Record<BaseLine['kind'], string>> = {
  'back edge': 'Chalk a straight line along the back edge, from S to E.',
  backbone: 'Chalk a straight line down the backbone, from S to E.',
  'straight edge': 'Chalk a straight line along the long straight edge, from S to E.',
  'long axis': 'Chalk a straight line down the middle, from S to E.',
};

function endsWords(baseLine: BaseLine): string[] {
  const { start, end } = baseLine;
  if (start.fromCornerMm === 0 && end.fromCornerMm === 0 && start.corner.kind === end.corner.kind) {
    return [`S and E are two ${start.corner.kind}s of the outline.`];
  }
  return [endWords('S', start, baseLine), endWords('E', end, baseLine)];
}

function endWords(letter: 'S' | 'E', end: LineEnd, { start, end: last }: BaseLine): string {
  if (end.fromCornerMm === 0) return `${letter} is ${ARTICLE[end.corner.kind]} of the outline.`;
  const corners = cornersOf(start, last);
  const { name } = corners.find((each) => each.letter === letter) ?? corners[0]!;
  return `${letter} is on the edge, ${mmWords(end.fromCornerMm)} mm by tape from the ${end.corner.kind} ${name}.`;
}

const ARTICLE = { corner: 'a corner', 'outermost point': 'an outermost point' } as const;

/** How the measures of the tables are taken. */
export function measuresBlock(out: SettingOut, side: SeenFrom, desk: Desk): PanelBlock {
  const pieces = out.steps.flatMap((step) => {
    if (step.kind === 'piece') return [step.piece];
    return step.kind === 'rough cut' ? step.roughCut.pieces : [];
  });
  const has = (kind: 'card' | 'rectangle' | 'disc'): boolean => pieces.some(({ by }) => by.kind === kind);
  const words = [
    'The tables give mm. Along: on the line, from S; a minus lies before S, on the line drawn on.',
    hasTwoSides(out.baseLine)
      ? 'Out: at a right angle to it, to the left (L) or right (R) as seen from S.'
      : 'Out: at a right angle to it, into the hide; a minus lies on its other side.',
    ...(has('card') ? [cardWords(side)] : []),
    ...(has('rectangle')
      ? [
          'Cut … × …: no card. A–B is its long side that is nearer to the line (to S, where it runs across the line).',
        ]
      : []),
    ...(has('disc') ? ['Disc: no card. A is its centre.'] : []),
    ...(out.steps.some(({ kind }) => kind === 'rough cut')
      ? ['A prepared block: zero is the first corner of its own side that is named, out is into the block.']
      : []),
    'Turn: the direction arrow against the line from S to E, ↻ clockwise.',
    `Rounded to 0.5 mm: no corner of a piece comes out more than ${tenthsUp(out.offByMm)} mm off its place.`,
  ];
  const rows = words.flatMap((text) => paragraph(text, desk));
  return { title: 'Measures', rows, keepRows: rows.length };
}

function cardWords(side: SeenFrom): string {
  return side === 'grain'
    ? `Card: A on the dot, B on the ring. ${MIRRORED_SIGN}: the card is turned over.`
    : `Card: A on the dot, B on the ring; from this side it is turned over. ${MIRRORED_SIGN}: it is not.`;
}

/** Rounded up, so that it is a promise. */
function tenthsUp(mm: number): string {
  return (Math.ceil(mm * 10) / 10).toFixed(1);
}

/** Room below a paragraph, as a share of a row. */
const AFTER = 0.3;

/** Words set over as many lines as they take, never parted. */
export function paragraph(text: string, { fonts, style }: Desk): PanelRow[] {
  const lines = wrapText(fonts, 'narrow', style.textMm, text, style.columnMm);
  return [stackRows([...lines.map((each) => lineRow(fonts, style, each)), spaceRow(style, AFTER)])];
}
