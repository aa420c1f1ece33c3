import { describe, expect, it } from 'vitest';
import type { Prefs } from '../app/prefs.js';
import { usualPrefs } from '../app/prefs.js';
import { measuresFor } from './measures.js';

const MM: Prefs = { language: 'de', lengths: 'mm', areas: 'dm2', light: 'auto' };
const INCH: Prefs = { language: 'en', lengths: 'in', areas: 'ft2', light: 'auto' };

describe('measures as a person reads and writes them', () => {
  // Source: Unicode CLDR, number formats of de and en-US.
  it('when the locale writes a decimal comma, so do the measures', () => {
    const german = measuresFor(MM, ['de-DE']);
    expect(german.length(12.5)).toBe('12,5 mm');
    expect(german.area(942_000)).toBe('94,2 dm²');
    expect(german.number(1234.5)).toBe('1.234,5');
    expect(german.percent(0.615)).toBe('61,5\u00a0%');
  });

  // Source: 1 in = 25.4 mm, 1 ft = 12 in, exact (international yard and pound agreement, 1959).
  it('when inches are chosen, lengths and areas come in inches and square feet', () => {
    const inches = measuresFor(INCH, ['en-US']);
    expect(inches.length(254)).toBe('10 in');
    expect(inches.area(929_030.4)).toBe('10 ft²');
    // Common practice, no source: 1 oz = 1/64 in.
    expect(inches.thickness(25.4 / 16)).toBe('4 oz');
  });

  it('when a number is typed, both signs are understood where only one stands in it', () => {
    const german = measuresFor(MM, ['de-DE']);
    expect(german.readNumber('2,5')).toBe(2.5);
    expect(german.readNumber('2.5')).toBe(2.5);
    expect(german.readNumber('1.234,5')).toBe(1234.5);
    expect(measuresFor(INCH, ['en-US']).readNumber('1,234.5')).toBe(1234.5);
    for (const wrong of ['', 'x', '1,2,3,4', '--1', '1e9x']) expect(german.readNumber(wrong)).toBeUndefined();
  });

  it('when a length is typed, its unit counts, and without one the chosen unit', () => {
    const inches = measuresFor(INCH, ['en-US']);
    expect(inches.readLengthMm('1 1/2 in')).toBeCloseTo(38.1, 9);
    expect(inches.readLengthMm('3/4')).toBeCloseTo(19.05, 9);
    expect(inches.readLengthMm('20 mm')).toBe(20);
    const german = measuresFor(MM, ['de-DE']);
    expect(german.readLengthMm('12,5')).toBe(12.5);
    expect(german.readLengthMm('2 cm')).toBe(20);
    expect(german.readLengthMm('two')).toBeUndefined();
    expect(german.readLengthMm('1/0')).toBeUndefined();
    expect(german.readAreaMm2('2 ft²')).toBeCloseTo(185_806.08, 6);
    expect(german.readAreaMm2('94,2')).toBeCloseTo(942_000, 6);
  });

  it('when what stands in a field is read back, it is the same measure to its last shown digit', () => {
    for (const prefs of [MM, INCH]) {
      const measures = measuresFor(prefs, prefs.language === 'de' ? ['de-DE'] : ['en-US']);
      for (const mm of [0.4, 3.2, 25.4, 99.9, 250, 1234, 2400]) {
        const shown = measures.lengthField(mm);
        expect(measures.lengthField(measures.readLengthMm(shown)!)).toBe(shown);
      }
    }
  });

  it('when nothing was chosen yet, the device’s language decides', () => {
    expect(usualPrefs(['de-AT', 'en'])).toMatchObject({ language: 'de', lengths: 'mm', areas: 'dm2' });
    expect(usualPrefs(['en-US'])).toMatchObject({ language: 'en', lengths: 'in', areas: 'ft2' });
    expect(usualPrefs(['en-GB'])).toMatchObject({ language: 'en', lengths: 'mm' });
    expect(usualPrefs(['fr'])).toMatchObject({ language: 'en', lengths: 'mm' });
  });
});
