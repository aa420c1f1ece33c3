import { expect, test } from 'vitest';
import { PAGE_SIZES, lyingPage } from './page-size.js';

test('when a page is named, it has the size of its standard', () => {
  // ISO 216:2007, main series.
  expect(PAGE_SIZES.A4).toEqual({ widthMm: 210, heightMm: 297 });
  expect(PAGE_SIZES.A3).toEqual({ widthMm: 297, heightMm: 420 });
  // ASME Y14.1, sizes A (8.5 × 11 in) and B (11 × 17 in).
  expect(PAGE_SIZES.Letter.widthMm).toBeCloseTo(215.9, 9);
  expect(PAGE_SIZES.Letter.heightMm).toBeCloseTo(279.4, 9);
  expect(PAGE_SIZES.Tabloid.widthMm).toBeCloseTo(279.4, 9);
  expect(PAGE_SIZES.Tabloid.heightMm).toBeCloseTo(431.8, 9);
});

test('when a page lies on its side, width and height change places', () => {
  expect(lyingPage(PAGE_SIZES.A4)).toEqual({ widthMm: 297, heightMm: 210 });
});
