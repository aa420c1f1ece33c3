import type { Box } from '@hidebound/geometry';
import type { Hide, Layout } from '@hidebound/leather';
import { chain, line } from '../drawing/build.js';
import type { DrawingElement } from '../drawing/model.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, measureText, textLine } from '../text/measure-text.js';
import { FINE_LINE_MM, INK, INK_SOFT, PAPER, RULE } from './palette.js';
import { hideWords, scaleWords } from './words.js';
import type { LengthUnit } from './words.js';
import type { SeenFrom } from '../picture/hide-view.js';

export interface HeaderText {
  readonly title: string;
  readonly titleNote: string;
  readonly right: string;
  readonly rightNote: string;
}

/** Left the order, right the hide, under both a rule. Heights go with the letters' size. */
export function sheetHeader(fonts: FontBook, box: Box, textMm: number, words: HeaderText): DrawingElement[] {
  const titleMm = textMm * 2.1;
  const hideMm = textMm * 1.7;
  const width = box.maxX - box.minX;
  const first = box.minY + titleMm * 0.78;
  const second = first + textMm * 1.75;
  const rightWidth = measureText(fonts, 'bold', hideMm, words.right).widthMm;
  const noteWidth = measureText(fonts, 'narrow', textMm, words.rightNote).widthMm;
  const left = (face: 'bold' | 'narrow', size: number, text: string, taken: number): string =>
    fitText(fonts, face, size, text, Math.max(width - taken - textMm * 3, width * 0.3));
  return [
    textLine(fonts, left('bold', titleMm, words.title, rightWidth), {
      at: { x: box.minX, y: first },
      sizeMm: titleMm,
      colour: INK,
      face: 'bold',
    }),
    textLine(fonts, fitText(fonts, 'bold', hideMm, words.right, width * 0.6), {
      at: { x: box.maxX, y: first },
      sizeMm: hideMm,
      colour: INK,
      face: 'bold',
      anchor: 'end',
    }),
    textLine(fonts, left('narrow', textMm, words.titleNote, Math.min(noteWidth, width * 0.6)), {
      at: { x: box.minX, y: second },
      sizeMm: textMm,
      colour: INK_SOFT,
      face: 'narrow',
    }),
    textLine(fonts, fitText(fonts, 'narrow', textMm, words.rightNote, width * 0.6), {
      at: { x: box.maxX, y: second },
      sizeMm: textMm,
      colour: INK_SOFT,
      face: 'narrow',
      anchor: 'end',
    }),
    line({ x: box.minX, y: box.maxY }, { x: box.maxX, y: box.maxY }, { colour: RULE, widthMm: FINE_LINE_MM }),
  ];
}

/** Height of the header with letters of this size. */
export function headerHeightMm(textMm: number): number {
  return textMm * 2.1 * 0.78 + textMm * 1.75 + textMm * 0.95;
}

/** What the header of a hide's pages says; `what` kind of sheet it is. */
export function hideHeader(
  layout: Layout,
  hide: Hide,
  number: string,
  units: LengthUnit,
  what = 'Cutting sheet',
): HeaderText {
  const { order } = layout;
  return {
    title: order.name,
    titleNote: `${what}, order version ${order.version}, ${order.date}`,
    right: number === '' ? hide.id : `${hide.id}  (${number})`,
    rightNote: hideWords(hide, units),
  };
}

/** What the header of the whole order's page says. */
export function orderHeader(layout: Layout): HeaderText {
  const { order, placements, hides } = layout;
  const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`;
  return {
    title: order.name,
    titleNote: `Cutting sheet, order version ${order.version}, ${order.date}`,
    right: 'whole order',
    rightNote:
      placements.length === 0
        ? 'nothing could be laid'
        : `${counted(placements.length, 'piece')} on ${counted(hides.length, 'hide')}`,
  };
}

/** The side in words, and the scale, set at the left of a footer; the scale bar stands at its right. */
export function sheetFooter(
  fonts: FontBook,
  box: Box,
  textMm: number,
  words: {
    readonly side?: SeenFrom;
    readonly denominator?: number;
    readonly page: string;
    readonly units: LengthUnit;
  },
): DrawingElement[] {
  const baseline = box.maxY - textMm * 0.25;
  const elements: DrawingElement[] = [
    textLine(fonts, words.page, {
      at: { x: box.maxX, y: baseline },
      sizeMm: textMm,
      colour: INK_SOFT,
      face: 'narrow',
      anchor: 'end',
    }),
  ];
  if (words.side === undefined) return elements;
  const side = `seen from the ${words.side} side`;
  const bold = { sizeMm: textMm, colour: INK, face: 'bold' } as const;
  if (words.denominator === undefined) {
    return [...elements, textLine(fonts, side, { at: { x: box.minX, y: baseline }, ...bold })];
  }
  const bar = scaleBar(fonts, { x: box.minX, y: baseline }, textMm, words.denominator, words.units);
  const scale = `scale ${scaleWords(words.denominator)}`;
  const at = { x: box.minX + bar.widthMm + textMm * 2.5, y: baseline };
  const sideWidth = measureText(fonts, 'bold', textMm, side).widthMm;
  return [
    ...elements,
    ...bar.elements,
    textLine(fonts, side, { at, ...bold }),
    textLine(fonts, scale, {
      at: { x: at.x + sideWidth + textMm * 2, y: baseline },
      sizeMm: textMm,
      colour: INK,
      face: 'narrow',
    }),
  ];
}

const BAR_MM = 45;
const MM_PER_INCH = 25.4;

/** A bar of a round length of leather (or of the wanted one), in five parts dark and light, its length behind it. */
export function scaleBar(
  fonts: FontBook,
  at: { readonly x: number; readonly y: number },
  textMm: number,
  denominator: number,
  units: LengthUnit,
  wanted?: number,
): { readonly elements: DrawingElement[]; readonly widthMm: number } {
  const unitMm = units === 'in' ? MM_PER_INCH : 1;
  const length = wanted ?? roundLength((BAR_MM * denominator) / unitMm);
  const bar = (length * unitMm) / denominator;
  const height = textMm * 0.5;
  const part = bar / PARTS;
  const elements: DrawingElement[] = [];
  for (let i = 0; i < PARTS; i++) {
    const x = at.x + i * part;
    const corners = [
      { x, y: at.y - height },
      { x: x + part, y: at.y - height },
      { x: x + part, y: at.y },
      { x, y: at.y },
    ];
    elements.push(
      chain(corners, true, {
        fill: i % 2 === 0 ? INK : PAPER,
        stroke: { colour: INK, widthMm: FINE_LINE_MM },
      }),
    );
  }
  const text = `${length} ${units}`;
  const label = textLine(fonts, text, {
    at: { x: at.x + bar + textMm * 0.6, y: at.y },
    sizeMm: textMm,
    colour: INK,
    face: 'narrow',
  });
  return { elements: [...elements, label], widthMm: bar + textMm * 0.6 + label.widthMm };
}

const PARTS = 5;

/** The largest of 1, 2, 5 times a power of ten that is no more. */
function roundLength(most: number): number {
  let power = 1;
  while (power * 10 <= most) power *= 10;
  return [5, 2, 1].map((digit) => digit * power).find((length) => length <= most) ?? power;
}
