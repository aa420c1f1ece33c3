import type { Point } from '@hidebound/geometry';
import type { FontFace, TextElement } from '../drawing/model.js';
import type { FontBook, WordMeasure } from './font-book.js';

/** Extent of a line of text, in mm. */
export interface TextMeasure {
  readonly widthMm: number;
  /** From the baseline up to the highest ink. */
  readonly aboveMm: number;
  /** From the baseline down to the lowest ink; 0 if none hangs below. */
  readonly belowMm: number;
}

/** Measures a line of text. Words are laid out one by one, spaces with the word before, as the PDF writer does. */
export function measureText(fonts: FontBook, face: FontFace, sizeMm: number, text: string): TextMeasure {
  const font = fonts.fonts[face];
  let width = 0;
  let above = 0;
  let below = 0;
  for (const word of text.split(/(?<=[ \t])/)) {
    const measure = measureWord(fonts, face, word);
    width += measure.width;
    above = Math.max(above, measure.above);
    below = Math.max(below, measure.below);
  }
  const scale = sizeMm / font.unitsPerEm;
  return { widthMm: width * scale, aboveMm: above * scale, belowMm: below * scale };
}

function measureWord(fonts: FontBook, face: FontFace, word: string): WordMeasure {
  const key = `${face}:${word}`;
  const known = fonts.measured.get(key);
  if (known !== undefined) return known;
  const run = fonts.fonts[face].layout(word);
  let above = 0;
  let below = 0;
  for (const glyph of run.glyphs) {
    // A blank has no outline, and what stands in the file at its place is another glyph's box.
    if (glyph.codePoints.every(isBlank)) continue;
    above = Math.max(above, glyph.cbox.maxY);
    below = Math.max(below, -glyph.cbox.minY);
  }
  const measure = { width: run.advanceWidth, above, below };
  fonts.measured.set(key, measure);
  return measure;
}

function isBlank(codePoint: number): boolean {
  return String.fromCodePoint(codePoint).trim() === '';
}

/** Height of a capital letter at this size of text, in mm. Measured on an H: not every font file says it. */
export function capitalHeightMm(fonts: FontBook, face: FontFace, sizeMm: number): number {
  return measureText(fonts, face, sizeMm, 'H').aboveMm;
}

/** Characters of the text that the font can't show, each once. */
export function missingCharacters(fonts: FontBook, face: FontFace, text: string): string[] {
  const font = fonts.fonts[face];
  return [...new Set(text)].filter((character) => !font.hasGlyphForCodePoint(character.codePointAt(0)!));
}

/** How a line of text is set; a bag for `textLine`. */
export interface TextSetting {
  readonly at: Point;
  readonly sizeMm: number;
  readonly colour: string;
  readonly face?: FontFace;
  readonly anchor?: TextElement['anchor'];
  readonly angleDeg?: number;
}

/** A measured text element. */
export function textLine(fonts: FontBook, text: string, setting: TextSetting): TextElement {
  const face = setting.face ?? 'regular';
  return {
    kind: 'text',
    text,
    at: setting.at,
    anchor: setting.anchor ?? 'start',
    angleDeg: setting.angleDeg ?? 0,
    sizeMm: setting.sizeMm,
    widthMm: measureText(fonts, face, setting.sizeMm, text).widthMm,
    face,
    colour: setting.colour,
  };
}

/** The text cut short with an ellipsis so that it is no longer than the width; as it is where it fits. */
export function fitText(
  fonts: FontBook,
  face: FontFace,
  sizeMm: number,
  text: string,
  widthMm: number,
): string {
  if (measureText(fonts, face, sizeMm, text).widthMm <= widthMm) return text;
  const characters = [...text];
  for (let keep = characters.length - 1; keep > 0; keep--) {
    const shorter = `${characters.slice(0, keep).join('').trimEnd()}…`;
    if (measureText(fonts, face, sizeMm, shorter).widthMm <= widthMm) return shorter;
  }
  return '…';
}

/** The text broken between words into lines no longer than the width; a word that is longer by itself is cut short. */
export function wrapText(
  fonts: FontBook,
  face: FontFace,
  sizeMm: number,
  text: string,
  widthMm: number,
): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || measureText(fonts, face, sizeMm, longer).widthMm <= widthMm) line = longer;
    else {
      lines.push(line);
      line = word;
    }
  }
  lines.push(line);
  return lines.map((each) => fitText(fonts, face, sizeMm, each, widthMm));
}
