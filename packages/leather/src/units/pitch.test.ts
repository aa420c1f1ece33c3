import { describe, expect, test } from 'vitest';
import { parsePitchMm } from './pitch.js';

const codeOf = (value: string | number): string => {
  try {
    parsePitchMm(value);
  } catch (error) {
    return (error as { readonly code: string }).code;
  }
  return 'read';
};

describe('a pitch in a file', () => {
  test.each([
    [3.4, 3.4],
    [5, 5],
    ['3.38 mm', 3.38],
    ['3,85 mm', 3.85],
    ['8 mm', 8],
    ['1/8 in', 3.175],
    ['0.4 cm', 4],
  ])('when %j is written, it is a length', (written, mm) => {
    expect(parsePitchMm(written)).toBeCloseTo(mm, 12);
  });

  test.each([
    '8 spi',
    '8spi',
    '8 SPI',
    '8 tpi',
    '8 per inch',
    '8 to the inch',
    '8/in',
    '8 / "',
    '8 stitches',
    '8 st/in',
    '8 teeth',
    '8-tooth',
    '8 prong iron',
    '8.5 stitches per inch',
  ])('when %j is written, it is not converted: both readings are named', (written) => {
    expect(codeOf(written)).toBe('pitch-by-the-inch');
  });

  test('when stitches by the inch are asked back, iron and true stitches are told apart', () => {
    expect(() => parsePitchMm('12 spi')).toThrow(/"2\.3 mm" for the first or "2\.117 mm" for the second/);
    expect(() => parsePitchMm('11 spi')).toThrow(/"2\.42 mm" for the first or "2\.309 mm" for the second/);
  });

  test.each([6, 8, 12])('when the bare number %d may be teeth, stitches or mm, it is asked about', (bare) => {
    expect(codeOf(bare)).toBe('ambiguous-pitch');
  });

  test.each([0, -3, 0.2, 60, NaN, '', 'fine', 'per inch', '40 cm', '3.4'])(
    'when %j is no pitch, it is refused',
    (written) => {
      expect(codeOf(written)).toMatch(/^(bad-length|out-of-range)$/);
    },
  );
});
