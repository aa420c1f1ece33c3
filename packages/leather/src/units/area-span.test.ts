import { describe, expect, test } from 'vitest';
import { parseAreaSpanMm2, writeAreaSpan } from './area-span.js';

/** 1 ft is 304.8 mm exactly (international foot of 1959), so 1 ft² is 92,903.04 mm². */
const FT2 = 304.8 * 304.8;

describe('when a span of area is read', () => {
  test.each([
    ['20-22 ft2', 20 * FT2, 22 * FT2],
    ['20 ft2 to 22 ft2', 20 * FT2, 22 * FT2],
    ['20 1/2 – 22 3/4 sq ft', 20.5 * FT2, 22.75 * FT2],
    ['190-210 dm2', 1_900_000, 2_100_000],
    ['2.1 m2', 2_100_000, 2_100_000],
  ])('%s is from %d to %d mm²', (text, min, max) => {
    const span = parseAreaSpanMm2(text);
    expect(span.min).toBeCloseTo(min, 2);
    expect(span.max).toBeCloseTo(max, 2);
  });

  test.each(['20-22 ft2', '20.50-22.75 ft2', '190-210.5 dm2', '1.2345 m2'])(
    '%s is the same when written and read',
    (text) => {
      const span = parseAreaSpanMm2(text);
      expect(parseAreaSpanMm2(writeAreaSpan(span))).toEqual(span);
    },
  );

  test('from more to less is refused', () => {
    expect(() => parseAreaSpanMm2('22-20 ft2')).toThrow(/from the smaller to the larger/);
  });

  test('without a unit it is refused', () => {
    expect(() => parseAreaSpanMm2('20-22')).toThrow(/unit/);
  });
});
