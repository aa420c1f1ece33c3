import { expect, test } from 'vitest';
import { parseMeasuredBars } from './measured-bars.js';

// An inch is 25.4 mm exactly (international yard and pound agreement of 1959).
test.each([
  ['159.2 x 218.9', 159.2, 218.9],
  ['159.2x218.9', 159.2, 218.9],
  ['159,2 × 218,9 mm', 159.2, 218.9],
  ['15.92 cm x 21.89 cm', 159.2, 218.9],
  ['15.92 x 21.89 cm', 159.2, 218.9],
  ['6 1/4 in x 8 5/8 in', 158.75, 219.075],
  ['6 1/4" X 8 5/8"', 158.75, 219.075],
  ['6¼ × 8⅝ in', 158.75, 219.075],
  ['6.25in * 219 mm', 158.75, 219],
  ['144 x 242', 144, 242],
])('when the lines read %s, they are %d and %d mm long', (written, acrossMm, downMm) => {
  const bars = parseMeasuredBars(written);
  expect(bars.acrossMm).toBeCloseTo(acrossMm, 9);
  expect(bars.downMm).toBeCloseTo(downMm, 9);
});

test.each(['', '160', '160 x', 'x 220', '160 x 220 x 3', 'sixty x 220', '160 ounces x 220', '-160 x 220'])(
  'when what is written is "%s", the sentence shows how to write it',
  (written) => {
    expect(() => parseMeasuredBars(written)).toThrow(
      expect.objectContaining({ code: 'bars-unreadable' }) as Error,
    );
  },
);

test.each([
  ['143.9 x 220', 'The line across is drawn 160 mm long and reads 143.9 mm, more than 10 % off'],
  ['160 x 242.1', 'The line down is drawn 220 mm long and reads 242.1 mm, more than 10 % off'],
  ['6 x 8', 'The line across is drawn 160 mm long and reads 6 mm, more than 10 % off'],
])('when the lines read %s, one is told to be far off', (written, sentence) => {
  expect(() => parseMeasuredBars(written)).toThrow(sentence);
});

test('when the two were swapped, the sentence says so', () => {
  expect(() => parseMeasuredBars('219 x 159')).toThrow(
    expect.objectContaining({ code: 'bars-swapped' }) as Error,
  );
});
