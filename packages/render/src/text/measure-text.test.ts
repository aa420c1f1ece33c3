import { expect, test } from 'vitest';
import { loadFontBook } from '../node.js';
import { capitalHeightMm, fitText, measureText, missingCharacters, wrapText } from './measure-text.js';
import { createFontBook } from './font-book.js';
import { SMALLEST_TEXT_MM } from '../picture/picture-style.js';

const fonts = loadFontBook();

test('when a capital is measured, its ink is as high as the font draws it', () => {
  // DejaVu: capitals of 1493 in an em of 2048 units (the glyph H of DejaVu Sans 2.37).
  const { aboveMm, belowMm } = measureText(fonts, 'regular', 10, 'H');
  expect(aboveMm).toBeCloseTo((1493 / 2048) * 10, 2);
  expect(belowMm).toBe(0);
  expect(capitalHeightMm(fonts, 'regular', 10)).toBeCloseTo(aboveMm, 2);
});

test('when the smallest text is set, its capitals are at least 1.8 mm high in every face', () => {
  for (const face of ['regular', 'bold', 'narrow', 'narrow bold'] as const) {
    expect(capitalHeightMm(fonts, face, SMALLEST_TEXT_MM)).toBeGreaterThanOrEqual(1.8);
  }
});

test('when names are Latin, Greek or Cyrillic, no character is missing', () => {
  for (const name of ['Gürtelschlaufe ½', 'Ζώνη, λουρί', 'Ремень с пряжкой']) {
    for (const face of ['regular', 'bold', 'narrow', 'narrow bold'] as const) {
      expect(missingCharacters(fonts, face, name)).toEqual([]);
    }
  }
});

test('when a font lacks a character, it is named once', () => {
  expect(missingCharacters(fonts, 'regular', 'a\u{10FFFD}b\u{10FFFD}')).toEqual(['\u{10FFFD}']);
});

test('when text is too long, it is cut short and fits', () => {
  const text = fitText(fonts, 'narrow', 3, 'a long and winding name', 20);
  expect(text.endsWith('…')).toBe(true);
  expect(measureText(fonts, 'narrow', 3, text).widthMm).toBeLessThanOrEqual(20);
});

test('when text is wrapped, no word is lost and every line fits', () => {
  const lines = wrapText(fonts, 'narrow', 3, 'one two three four five six seven', 15);
  expect(lines.join(' ')).toBe('one two three four five six seven');
  for (const line of lines) expect(measureText(fonts, 'narrow', 3, line).widthMm).toBeLessThanOrEqual(15);
});

test('when a font file is no font, the error says which', () => {
  const bytes = new Uint8Array([1, 2, 3]);
  expect(() => createFontBook({ regular: bytes, bold: bytes, narrow: bytes, 'narrow bold': bytes })).toThrow(
    expect.objectContaining({ code: 'bad-font', message: expect.stringContaining('regular') as string }),
  );
});
