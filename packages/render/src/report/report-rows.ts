import { group, line, rectangle } from '../drawing/build.js';
import type { Drawing, DrawingElement, FontFace } from '../drawing/model.js';
import { scaling, translation, composeAffine } from '@hidebound/geometry';
import { BARE_HIDE, BRASS, FINE_LINE_MM, HAIRLINE_MM, INK, INK_SOFT, PIECE, RULE } from '../sheet/palette.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, measureText, textLine, wrapText } from '../text/measure-text.js';
import { columnWidths } from './column-widths.js';
import type { ColumnWish } from './column-widths.js';
import type {
  ReportBars,
  ReportBlock,
  ReportChecklist,
  ReportFact,
  ReportItem,
  ReportTable,
  TextTone,
} from './report.js';

/** One band across the page that is not parted. */
export interface ReportRow {
  readonly heightMm: number;
  /** Not the last one on a page: what follows belongs to it. */
  readonly keepsNext: boolean;
  /** Set anew above it where it begins a page. */
  readonly head?: ReportRow;
  /** The title of its section, which is set above that head. */
  readonly sectionTitle?: ReportRow;
  /** Only room: left out at the top of a page. */
  readonly isSpace?: boolean;
  draw(x: number, y: number): readonly DrawingElement[];
}

/** What rows are set with. */
export interface ReportDesk {
  readonly fonts: FontBook;
  readonly textMm: number;
  readonly widthMm: number;
}

const LINE_SHARE = 1.38;
const SECTION_SHARE = 1.25;
const ANSWER_SHARE = 1.3;
const GAP_SHARE = 1.7;

/** The rows of one block, from the top. */
export function rowsOfBlock(block: ReportBlock, desk: ReportDesk): ReportRow[] {
  switch (block.kind) {
    case 'section':
      return sectionRows(block.title, desk);
    case 'text':
      return textRows(block.text, block.tone, desk);
    case 'facts':
      return factRows(block.rows, desk);
    case 'table':
      return tableRows(block, desk);
    case 'checklist':
      return checklistRows(block, desk);
    case 'bars':
      return barRows(block, desk);
    case 'picture':
      return pictureRows(block.drawing, block.caption, desk);
  }
}

/** Room between blocks. */
export function gapRow(desk: ReportDesk, share = 0.6): ReportRow {
  return { heightMm: desk.textMm * LINE_SHARE * share, keepsNext: false, isSpace: true, draw: () => [] };
}

interface Setting {
  readonly face?: FontFace;
  readonly sizeMm?: number;
  readonly colour?: string;
}

function words(desk: ReportDesk, text: string, x: number, y: number, setting: Setting = {}, isEnd = false) {
  return textLine(desk.fonts, text, {
    at: { x, y },
    sizeMm: setting.sizeMm ?? desk.textMm,
    colour: setting.colour ?? INK,
    face: setting.face ?? 'narrow',
    anchor: isEnd ? 'end' : 'start',
  });
}

function sectionRows(title: string, desk: ReportDesk): ReportRow[] {
  const sizeMm = desk.textMm * SECTION_SHARE;
  const lineMm = sizeMm * LINE_SHARE;
  const lines = wrapText(desk.fonts, 'bold', sizeMm, title, desk.widthMm);
  const below = (lines.length - 1) * lineMm;
  const draw = (x: number, y: number): DrawingElement[] => [
    ...lines.map((text, i) => words(desk, text, x, y + sizeMm * 0.95 + i * lineMm, { face: 'bold', sizeMm })),
    line(
      { x, y: y + below + sizeMm * 1.35 },
      { x: x + desk.widthMm, y: y + below + sizeMm * 1.35 },
      { colour: RULE, widthMm: FINE_LINE_MM },
    ),
  ];
  return [{ heightMm: below + sizeMm * 1.75, keepsNext: true, draw }];
}

function textRows(text: string, tone: TextTone, desk: ReportDesk): ReportRow[] {
  if (tone === 'caution') return [cautionRow(text, desk)];
  const setting: Setting = {
    answer: { face: 'bold' as const, sizeMm: desk.textMm * ANSWER_SHARE },
    plain: {},
    soft: { colour: INK_SOFT },
  }[tone];
  const sizeMm = setting.sizeMm ?? desk.textMm;
  const lines = wrapText(desk.fonts, setting.face ?? 'narrow', sizeMm, text, desk.widthMm);
  return lines.map((part, i) => ({
    heightMm: sizeMm * LINE_SHARE,
    keepsNext: i < lines.length - 1 && (i === 0 || i === lines.length - 2),
    draw: (x, y) => [words(desk, part, x, y + sizeMm, setting)],
  }));
}

/** A frame with a brass bar at its left. */
function cautionRow(text: string, desk: ReportDesk): ReportRow {
  const { textMm, widthMm, fonts } = desk;
  const inset = textMm * 1.2;
  const lines = wrapText(fonts, 'narrow', textMm, text, widthMm - inset - textMm);
  const lineMm = textMm * LINE_SHARE;
  const boxMm = lines.length * lineMm + textMm * 0.7;
  const box = (x: number, y: number, width: number) => ({
    minX: x,
    minY: y,
    maxX: x + width,
    maxY: y + boxMm,
  });
  return {
    heightMm: boxMm + textMm * 0.4,
    keepsNext: false,
    draw: (x, y) => [
      rectangle(box(x, y, widthMm), { fill: BARE_HIDE }),
      rectangle(box(x, y, textMm * 0.4), { fill: BRASS }),
      ...lines.map((part, i) => words(desk, part, x + inset, y + textMm * 1.2 + i * lineMm)),
    ],
  };
}

/** Facts that are not parted by the end of a page. */
const FACTS_TOGETHER = 10;

function factRows(facts: readonly ReportFact[], desk: ReportDesk): ReportRow[] {
  const { fonts, textMm, widthMm } = desk;
  const nameMm = Math.min(
    widthMm * 0.45,
    Math.max(...facts.map(({ name }) => measureText(fonts, 'narrow', textMm, name).widthMm)) + textMm,
  );
  return facts.map(({ name, value }, i) => {
    const names = wrapText(fonts, 'narrow', textMm, name, nameMm - textMm + 0.01);
    const values = wrapText(fonts, 'narrow bold', textMm, value, widthMm - nameMm);
    const lineMm = textMm * LINE_SHARE;
    return {
      heightMm: Math.max(names.length, values.length) * lineMm,
      // A short list stays together.
      keepsNext: facts.length <= FACTS_TOGETHER && i < facts.length - 1,
      draw: (x, y) => [
        ...names.map((part, k) => words(desk, part, x, y + textMm + k * lineMm, { colour: INK_SOFT })),
        ...values.map((part, k) =>
          words(desk, part, x + nameMm, y + textMm + k * lineMm, { face: 'narrow bold' }),
        ),
      ],
    };
  });
}

interface PlacedColumn {
  readonly left: number;
  readonly widthMm: number;
  readonly isRight: boolean;
}

function tableRows(table: ReportTable, desk: ReportDesk): ReportRow[] {
  const columns = placedColumns(table, desk);
  const heads = table.columns.map(({ head }) => head);
  const head = cellsRow(heads, columns, desk, { face: 'narrow', colour: INK_SOFT }, { below: true });
  const last = table.rows.length - 1;
  const rows = table.rows.map((cells, i): ReportRow => ({
    ...cellsRow(cells, columns, desk, {}, { below: i < table.rows.length - 1 }),
    head,
    // Neither a table's first row nor its last one stands alone.
    keepsNext: i === last ? table.totals !== undefined : i === 0 || i === last - 1,
  }));
  const totals =
    table.totals === undefined
      ? []
      : [{ ...cellsRow(table.totals, columns, desk, { face: 'narrow bold' }, { above: true }), head }];
  return [{ ...head, keepsNext: true }, ...rows, ...totals];
}

/** Left edges and widths; what is left over widens the gaps, up to a point. */
function placedColumns(table: ReportTable, desk: ReportDesk): PlacedColumn[] {
  const { textMm, widthMm } = desk;
  const gap = textMm * GAP_SHARE;
  const room = widthMm - gap * Math.max(0, table.columns.length - 1);
  // Heads over figures stand on as few lines as the texts beside them leave room for.
  const tries = HEAD_LINES.map((lines) => columnWishes(table, desk, lines));
  const wishes =
    tries.find((each) => each.reduce((total, { wholeMm }) => total + wholeMm, 0) <= room) ?? tries.at(-1)!;
  const widths = columnWidths(wishes, widthMm, gap);
  const taken = widths.reduce((total, width) => total + width, 0) + gap * (widths.length - 1);
  const more = Math.min(Math.max(0, widthMm - taken) / Math.max(1, widths.length - 1), textMm * 5);
  let left = 0;
  return widths.map((width, column) => {
    const placed = { left, widthMm: width, isRight: table.columns[column]!.align === 'right' };
    left += width + gap + more;
    return placed;
  });
}

/** As many lines as a head over figures may have, tried in turn; the last means a line a word where need be. */
const HEAD_LINES: readonly number[] = [1, 2, 3, Infinity];

/** A long head over short figures is broken into so many lines at most; figures never are. */
function columnWishes(table: ReportTable, desk: ReportDesk, headLines: number): ColumnWish[] {
  const lengthOf = (text: string): number =>
    measureText(desk.fonts, 'narrow bold', desk.textMm, text).widthMm;
  return table.columns.map(({ head, align }, column): ColumnWish => {
    const texts = [...table.rows, ...(table.totals === undefined ? [] : [table.totals])].map(
      (row) => row[column] ?? '',
    );
    const words = head.split(' ').map(lengthOf);
    if (align === 'left') {
      const whole = Math.max(lengthOf(head), ...texts.map(lengthOf));
      const word = Math.max(...words, ...texts.flatMap((text) => text.split(' ').map(lengthOf)));
      return { wholeMm: whole, wordMm: word, mayWrap: true };
    }
    const figures = Math.max(...texts.map(lengthOf), headWidth(head, headLines, lengthOf));
    return { wholeMm: figures, wordMm: figures, mayWrap: false };
  });
}

/** The least width at which a head takes no more than so many lines. */
function headWidth(head: string, lines: number, lengthOf: (text: string) => number): number {
  const words = head.split(' ');
  const widest = Math.max(...words.map(lengthOf));
  if (lines >= words.length) return widest;
  const runs = words.flatMap((_, from) =>
    words.slice(from).map((__, count) => lengthOf(words.slice(from, from + count + 1).join(' '))),
  );
  const widths = runs.filter((width) => width >= widest).sort((a, b) => a - b);
  return widths.find((width) => linesAt(words, width, lengthOf) <= lines) ?? lengthOf(head);
}

function linesAt(words: readonly string[], width: number, lengthOf: (text: string) => number): number {
  let count = 0;
  let line: string | undefined;
  for (const word of words) {
    const longer = line === undefined ? word : `${line} ${word}`;
    if (line === undefined || lengthOf(longer) > width) {
      count++;
      line = word;
    } else line = longer;
  }
  return count;
}

function cellsRow(
  cells: readonly string[],
  columns: readonly PlacedColumn[],
  desk: ReportDesk,
  setting: Setting,
  rules: { readonly above?: boolean; readonly below?: boolean },
): ReportRow {
  const { fonts, textMm, widthMm } = desk;
  const face = setting.face ?? 'narrow';
  const lines = columns.map(({ widthMm: width }, i) =>
    wrapText(fonts, face, textMm, cells[i] ?? '', width + 0.01),
  );
  const lineMm = textMm * LINE_SHARE;
  const most = Math.max(1, ...lines.map((parts) => parts.length));
  const padMm = textMm * 0.22;
  const heightMm = most * lineMm + 2 * padMm;
  const rule = (x: number, y: number) =>
    line({ x, y }, { x: x + widthMm, y }, { colour: RULE, widthMm: HAIRLINE_MM });
  return {
    heightMm,
    keepsNext: false,
    draw: (x, y) => [
      ...(rules.above === true ? [rule(x, y)] : []),
      ...columns.flatMap(({ left, widthMm: width, isRight }, i) =>
        lines[i]!.map((part, k) =>
          words(
            desk,
            part,
            x + left + (isRight ? width : 0),
            y + padMm + textMm + k * lineMm,
            setting,
            isRight,
          ),
        ),
      ),
      ...(rules.below === true ? [rule(x, y + heightMm)] : []),
    ],
  };
}

/** Names on the left, figures at the right end of the bars. */
function barRows({ rows }: ReportBars, desk: ReportDesk): ReportRow[] {
  const { fonts, textMm, widthMm } = desk;
  const widest = (texts: readonly string[], face: FontFace): number =>
    Math.max(0, ...texts.map((text) => measureText(fonts, face, textMm, text).widthMm));
  const names = rows.map(({ name }) => name);
  const nameMm = Math.min(widthMm * 0.4, widest(names, 'narrow')) + textMm;
  const texts = rows.map(({ text }) => text);
  const roomMm = widthMm - nameMm - widest(texts, 'narrow bold') - textMm;
  const longest = Math.max(...rows.map(({ value }) => value));
  const heightMm = textMm * LINE_SHARE * 1.1;
  return rows.map(({ name, value, text }, i) => {
    const barMm = longest > 0 ? (roomMm * value) / longest : 0;
    return {
      heightMm,
      keepsNext: i < rows.length - 1,
      draw: (x, y) => [
        words(desk, fitText(fonts, 'narrow', textMm, name, nameMm - textMm / 2), x, y + textMm, {
          colour: INK_SOFT,
        }),
        ...(barMm < HAIRLINE_MM
          ? []
          : [
              rectangle(
                {
                  minX: x + nameMm,
                  minY: y + textMm * 0.1,
                  maxX: x + nameMm + barMm,
                  maxY: y + textMm * 1.2,
                },
                { fill: PIECE, stroke: { colour: INK, widthMm: HAIRLINE_MM } },
              ),
            ]),
        words(desk, text, x + nameMm + barMm + textMm * 0.5, y + textMm, { face: 'narrow bold' }),
      ],
    };
  });
}

function checklistRows({ items }: ReportChecklist, desk: ReportDesk): ReportRow[] {
  return items.map((item) => itemRow(item, desk));
}

/** A box to tick, the step, what else to know; at the right how long or how much. */
function itemRow({ text, detail, aside }: ReportItem, desk: ReportDesk): ReportRow {
  const { fonts, textMm, widthMm } = desk;
  const boxMm = textMm * 1.15;
  const indent = boxMm + textMm * 0.9;
  const asideMm = aside === undefined ? 0 : measureText(fonts, 'narrow bold', textMm, aside).widthMm + textMm;
  const lines = wrapText(fonts, 'narrow', textMm, text, widthMm - indent - asideMm);
  const details =
    detail === undefined ? [] : wrapText(fonts, 'narrow', textMm * 0.88, detail, widthMm - indent);
  const lineMm = textMm * LINE_SHARE;
  const detailMm = lineMm * 0.88;
  return {
    heightMm: lines.length * lineMm + details.length * detailMm + textMm * 0.55,
    keepsNext: false,
    draw: (x, y) => [
      rectangle(
        { minX: x, minY: y + textMm * 0.12, maxX: x + boxMm, maxY: y + textMm * 0.12 + boxMm },
        { stroke: { colour: INK, widthMm: FINE_LINE_MM } },
      ),
      ...lines.map((part, i) => words(desk, part, x + indent, y + textMm + i * lineMm)),
      ...(aside === undefined
        ? []
        : [words(desk, aside, x + widthMm, y + textMm, { face: 'narrow bold' }, true)]),
      ...details.map((part, i) =>
        words(desk, part, x + indent, y + lines.length * lineMm + textMm * 0.9 + i * detailMm, {
          colour: INK_SOFT,
          sizeMm: textMm * 0.88,
        }),
      ),
    ],
  };
}

function pictureRows(drawing: Drawing, caption: string, desk: ReportDesk): ReportRow[] {
  const grow = Math.min(1, desk.widthMm / drawing.widthMm);
  const heightMm = drawing.heightMm * grow;
  const picture: ReportRow = {
    heightMm: heightMm + desk.textMm * 0.4,
    keepsNext: caption !== '',
    draw: (x, y) =>
      drawing.layers.map(({ name, elements }) =>
        group(name, elements, { transform: composeAffine(translation(x, y), scaling(grow)) }),
      ),
  };
  return caption === '' ? [picture] : [picture, ...textRows(caption, 'soft', desk)];
}
