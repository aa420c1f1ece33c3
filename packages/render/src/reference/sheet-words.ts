import type { Point } from '@hidebound/geometry';
import { BAR_MM, formatLength } from '@hidebound/leather';
import type { FontFace, TextElement } from '../drawing/model.js';
import type { FontBook } from '../text/font-book.js';
import { textLine, wrapText } from '../text/measure-text.js';

/** Size of the sheet's number, mm of em: read from above a hide, and in a photo. */
const NUMBER_MM = 38;
const HEAD_MM = 4.4;
const BODY_MM = 3.5;
/** From one line to the next, as a share of the letters' size. */
const LINE_STEP = 1.34;
/** More room before a paragraph. */
const PARAGRAPH_MM = 1.6;

/** One of the four fields between the bars, all outside the white that markers need; offsets from the middle. */
const FIELD = { widthMm: 70, insetMm: 7, farMm: 42 } as const;

export interface SheetWordsOptions {
  readonly sheet: number;
  readonly fonts: FontBook;
  readonly colour: string;
}

/** What stands in the middle of a sheet, in the four fields between its bars. */
export function sheetWords({ sheet, fonts, colour }: SheetWordsOptions): readonly TextElement[] {
  const left = -FIELD.insetMm - FIELD.widthMm;
  const right = FIELD.insetMm;
  const set = (at: Point, head: string, paragraphs: readonly Paragraph[]): TextElement[] =>
    column({ fonts, colour }, at, head, paragraphs);
  return [
    textLine(fonts, String(sheet), {
      at: { x: left + FIELD.widthMm / 2, y: -FIELD.farMm + NUMBER_MM * 0.83 },
      sizeMm: NUMBER_MM,
      colour,
      face: 'bold',
      anchor: 'middle',
    }),
    ...set({ x: right, y: -FIELD.farMm }, 'Print at 100 %', [
      'Choose “actual size”, never “fit to page”, on plain white paper. Keep all the paper around the squares, and keep it white.',
      'Don’t fold it. Creases and curls make the scale wrong.',
    ]),
    ...set({ x: left, y: FIELD.insetMm }, 'Measure both lines', [
      `From end mark to end mark they should be ${inMm(BAR_MM.across)} and ${inMm(BAR_MM.down)}. Type in what your rule shows, such as:`,
      { narrow: `hidebound markers --measured "${BAR_MM.across} x ${BAR_MM.down}"` },
    ]),
    ...set({ x: right, y: FIELD.insetMm }, 'Lay it flat, beside the hide', [
      'Several sheets with different numbers, all around the hide, close to its edge.',
      'Not on the hide, unless you drag it between photos: then let them lie on it.',
    ]),
  ];
}

function inMm(mm: number): string {
  return formatLength(mm, { unit: 'mm' });
}

/** A paragraph; a command line is set narrow, so that it stays in one line. */
type Paragraph = string | { readonly narrow: string };

/** A heading with paragraphs below it, from the top left corner down. */
function column(
  { fonts, colour }: Pick<SheetWordsOptions, 'fonts' | 'colour'>,
  { x, y }: Point,
  head: string,
  paragraphs: readonly Paragraph[],
): TextElement[] {
  let baseline = y + HEAD_MM;
  const elements = [textLine(fonts, head, { at: { x, y: baseline }, sizeMm: HEAD_MM, colour, face: 'bold' })];
  baseline += (HEAD_MM - BODY_MM) / 2;
  for (const paragraph of paragraphs) {
    baseline += PARAGRAPH_MM;
    const [face, words]: [FontFace, string] =
      typeof paragraph === 'string' ? ['regular', paragraph] : ['narrow', paragraph.narrow];
    for (const text of wrapText(fonts, face, BODY_MM, words, FIELD.widthMm)) {
      baseline += BODY_MM * LINE_STEP;
      elements.push(textLine(fonts, text, { at: { x, y: baseline }, sizeMm: BODY_MM, colour, face }));
    }
  }
  return elements;
}
