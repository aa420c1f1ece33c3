import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { LeatherError } from '../leather-error.js';
import { parseAngleDeg } from './angle.js';
import { formatArea, mm2ToSquareFeet, parseAreaMm2, quarterFootMark, squareFeetToMm2 } from './area.js';
import { formatLength, parseLengthMm } from './length.js';
import { formatMoney, parseMoney } from './money.js';
import { formatThickness, mmToOunces, ouncesToMm, parseThickness } from './thickness.js';

function codeOf(run: () => unknown): string {
  try {
    run();
  } catch (error) {
    if (error instanceof LeatherError) return error.code;
    throw error;
  }
  return 'none';
}

describe('lengths', () => {
  // International yard and pound agreement of 1959: 1 in = 0.0254 m and 1 ft = 0.3048 m exactly.
  test.each([
    [40, 40],
    ['40 mm', 40],
    ['2.5mm', 2.5],
    ['2,5 mm', 2.5],
    ['4 cm', 40],
    ['1.5 m', 1500],
    ['1 in', 25.4],
    ['1 1/2 in', 38.1],
    ['1-1/2 in', 38.1],
    ['1½ in', 38.1],
    ['½"', 12.7],
    ['1.5"', 38.1],
    ['3/8 inch', 9.525],
    ['1 ft', 304.8],
    ['2 feet', 609.6],
    ['1,234.5 mm', 1234.5],
    ['1.234,5 mm', 1234.5],
    ['0,500 m', 500],
    [' 10 IN. ', 254],
  ])('when the length is %j, it is %d mm exactly', (written, mm) => {
    expect(parseLengthMm(written)).toBe(mm);
  });

  test.each([
    ['40', 'bad-length'],
    ['', 'bad-length'],
    ['ten mm', 'bad-length'],
    ['4/1 in', 'bad-length'],
    ['5 yd', 'bad-length'],
    ['-4 mm', 'bad-length'],
    ['4 mm 5', 'bad-length'],
    [NaN, 'bad-length'],
    [Infinity, 'bad-length'],
    [-1, 'out-of-range'],
    [50_001, 'out-of-range'],
    ['60 m', 'out-of-range'],
    ['1,500 mm', 'ambiguous-comma'],
  ])('when the length is %j, it is refused as %s', (written, code) => {
    expect(codeOf(() => parseLengthMm(written))).toBe(code);
  });

  test('when a comma can mean two things, the sentence shows both', () => {
    expect(() => parseLengthMm('1,500 mm')).toThrow(/as 1\.500 or as 1500/);
  });

  test.each([
    [38.1, 'in', '1 1/2 in'],
    [25.4, 'in', '1 in'],
    [12.7, 'in', '1/2 in'],
    [38.2, 'in', '1.504 in'],
    [40, 'mm', '40 mm'],
    [38.1, 'cm', '3.81 cm'],
    [0, 'mm', '0 mm'],
    [1500, 'm', '1.5 m'],
  ] as const)('when %d mm is shown in %s, it says %s', (mm, unit, words) => {
    expect(formatLength(mm, { unit })).toBe(words);
  });

  test('when a length on a 1/64 in mark is written and read, it is the same', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 64 * 1000 }), (parts) => {
        const mm = (parts / 64) * 25.4;
        expect(parseLengthMm(formatLength(mm, { unit: 'in' }))).toBeCloseTo(mm, 9);
      }),
      { seed: 1959 },
    );
  });
});

describe('thickness', () => {
  // Arithmetic from 1 oz = 1/64 in (craft suppliers' charts say the same, rounded to 0.1 mm).
  test.each([
    [1, 2, 0.4, 0.79],
    [2, 3, 0.79, 1.19],
    [3, 4, 1.19, 1.59],
    [4, 5, 1.59, 1.98],
    [5, 6, 1.98, 2.38],
    [6, 7, 2.38, 2.78],
    [7, 8, 2.78, 3.18],
    [8, 9, 3.18, 3.57],
    [9, 10, 3.57, 3.97],
    [10, 11, 3.97, 4.37],
    [11, 12, 4.37, 4.76],
    [13, 15, 5.16, 5.95],
  ])('when leather is %d-%d oz, it is %d-%d mm', (from, to, minMm, maxMm) => {
    const range = parseThickness(`${from}-${to} oz`);
    // The table is rounded to 0.01 mm; 8 oz is 3.175 mm.
    expect(Math.abs(range.minMm - minMm)).toBeLessThan(0.00501);
    expect(Math.abs(range.maxMm - maxMm)).toBeLessThan(0.00501);
  });

  test('when one ounce is converted, it is 1/64 in exactly, and back', () => {
    expect(ouncesToMm(1)).toBe(0.396875);
    expect(ouncesToMm(64)).toBe(25.4);
    expect(mmToOunces(25.4)).toBe(64);
  });

  test.each([
    [2, 2, 2],
    ['2.0-2.4 mm', 2, 2.4],
    ['2.0–2.4 mm', 2, 2.4],
    ['2 to 2.4mm', 2, 2.4],
    ['2,0-2,4 mm', 2, 2.4],
    ['3 oz', 1.190625, 1.190625],
    ['3 1/2 oz', 1.3890625, 1.3890625],
  ])('when the thickness is %j, it runs from %d to %d mm', (written, minMm, maxMm) => {
    expect(parseThickness(written)).toEqual({ minMm, maxMm });
  });

  test.each([
    ['2.0-2.4', 'bad-thickness'],
    ['4/5 oz', 'ambiguous-ounces'],
    ['3 1/2 oz', 'none'],
    ['8/10 oz', 'ambiguous-ounces'],
    ['thick', 'bad-thickness'],
    [0, 'bad-thickness'],
    [-2, 'bad-thickness'],
    ['2.4-2.0 mm', 'thickness-reversed'],
    ['60 mm', 'out-of-range'],
    ['2- mm', 'bad-thickness'],
  ])('when the thickness is %j, it is judged as %s', (written, code) => {
    expect(codeOf(() => parseThickness(written))).toBe(code);
  });

  test('when a span is shown, its unit stands once', () => {
    expect(formatThickness({ minMm: 2, maxMm: 2.4 }, { unit: 'mm' })).toBe('2–2.4 mm');
    expect(formatThickness(parseThickness('4-5 oz'), { unit: 'oz' })).toBe('4–5 oz');
    expect(formatThickness({ minMm: 2, maxMm: 2 }, { unit: 'mm' })).toBe('2 mm');
  });
});

describe('areas', () => {
  test.each([
    // 0.3048² m² = 0.09290304 m² exactly.
    ['1 ft2', 92_903.04],
    ['22 3/4 ft2', 22.75 * 92_903.04],
    ['22¾ ft²', 22.75 * 92_903.04],
    ['22³ ft2', 22.75 * 92_903.04],
    ['22¹ sq ft', 22.25 * 92_903.04],
    ['22.30 ft2', 22.3 * 92_903.04],
    ['22.75 sq. ft.', 22.75 * 92_903.04],
    ['22.5 ft2', 22.5 * 92_903.04],
    ['22 square feet', 22 * 92_903.04],
    ['2.1 m2', 2_100_000],
    ['2,1 m²', 2_100_000],
    ['210 dm2', 2_100_000],
    ['500 cm2', 50_000],
    ['1000 mm2', 1000],
  ])('when the area is %j, it is %d mm²', (written, mm2) => {
    expect(parseAreaMm2(written)).toBeCloseTo(mm2, 6);
  });

  test.each([
    ['22.3 ft2', 'ambiguous-area'],
    ['22.1 ft2', 'ambiguous-area'],
    ['22.2 sq ft', 'ambiguous-area'],
    ['22,3 ft2', 'ambiguous-area'],
    ['22.3', 'area-needs-unit'],
    [22.3, 'area-needs-unit'],
    ['4/1 ft2', 'bad-area'],
    ['big', 'bad-area'],
    ['3 acres', 'bad-area'],
    ['99999 m2', 'out-of-range'],
  ])('when the area is %j, it is refused as %s', (written, code) => {
    expect(codeOf(() => parseAreaMm2(written))).toBe(code);
  });

  test('when an area can be quarters or tenths, the sentence shows both readings and how to write each', () => {
    expect(() => parseAreaMm2('22.3 ft2')).toThrow(
      '"22.3 ft2" can be read two ways: quarters of a foot make it 22.75 ft2 (2.114 m2), tenths make it ' +
        '22.30 ft2 (2.072 m2); write "22 3/4 ft2" for the first or "22.30 ft2" for the second.',
    );
  });

  test('when a reading is written as the sentence advises, it is read', () => {
    expect(parseAreaMm2('22 3/4 ft2')).toBeCloseTo(squareFeetToMm2(22.75), 6);
    expect(parseAreaMm2('22.30 ft2')).toBeCloseTo(squareFeetToMm2(22.3), 6);
  });

  test('when square metres are shown in feet, they agree with a worked pair: 2.95 m² = 31.75 sq ft', () => {
    // Leather trade page on units.
    expect(mm2ToSquareFeet(2_950_000).toFixed(2)).toBe('31.75');
    expect(formatArea(2_950_000, { unit: 'ft2' })).toBe('31.75 ft²');
  });

  test('when an area is marked as on a hide, small figures are quarters', () => {
    expect(quarterFootMark(squareFeetToMm2(22.75))).toBe('22³');
    expect(quarterFootMark(squareFeetToMm2(22.9))).toBe('23');
    expect(quarterFootMark(squareFeetToMm2(0.25))).toBe('0¹');
  });

  test('when any area in feet is written with two decimals, it reads back within half a hundredth', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), (ft2) => {
        const words = formatArea(squareFeetToMm2(ft2), { unit: 'ft2' });
        expect(Math.abs(mm2ToSquareFeet(parseAreaMm2(words)) - ft2)).toBeLessThanOrEqual(0.0050001);
        const quarters = formatArea(squareFeetToMm2(ft2), { unit: 'quarter ft2' });
        expect(Math.abs(mm2ToSquareFeet(parseAreaMm2(quarters)) - ft2)).toBeLessThanOrEqual(0.1250001);
      }),
      { seed: 1959 },
    );
  });
});

describe('angles and prices', () => {
  test('when an angle carries its unit or none, it is degrees', () => {
    expect([parseAngleDeg(90), parseAngleDeg('90 deg'), parseAngleDeg('-12.5°')]).toEqual([90, 90, -12.5]);
    expect(codeOf(() => parseAngleDeg('90'))).toBe('bad-angle');
    expect(codeOf(() => parseAngleDeg(400))).toBe('out-of-range');
    expect(codeOf(() => parseAngleDeg(NaN))).toBe('bad-angle');
  });

  test('when a price is read, its text stays exact', () => {
    expect(parseMoney('12.50 EUR')).toEqual({ amount: '12.50', currency: 'EUR' });
    expect(parseMoney('12,50 EUR')).toEqual({ amount: '12.50', currency: 'EUR' });
    expect(formatMoney(parseMoney('7 GBP'))).toBe('7 GBP');
    expect(codeOf(() => parseMoney('12.50'))).toBe('bad-money');
    expect(codeOf(() => parseMoney('1,250 EUR'))).toBe('ambiguous-comma');
    expect(codeOf(() => parseMoney('-3 EUR'))).toBe('bad-money');
  });
});
