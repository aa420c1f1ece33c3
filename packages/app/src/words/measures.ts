import type { Prefs } from '../app/prefs.js';

/** Exact by definition (International yard and pound agreement, 1959): 1 in = 25.4 mm, 1 ft² = 929.0304 cm². */
const MM_PER_INCH = 25.4;
const MM2_PER_FT2 = 92_903.04;
const MM2_PER_DM2 = 10_000;
/** A leather ounce is 1/64 in of thickness (common practice, no standard). */
const MM_PER_OUNCE = MM_PER_INCH / 64;

/** Numbers and measures as the person reads them: by her locale and the units that she chose. */
export interface Measures {
  readonly locale: string;
  number(value: number, decimals?: number): string;
  /** "120 mm" or "4.72 in". */
  length(mm: number): string;
  /** How far off something is: "0.34 mm" or "0.013 in". */
  deviation(mm: number): string;
  /** "18.4 dm²" or "1.98 ft²". */
  area(mm2: number): string;
  /** "2.4 mm (6 oz)". */
  thickness(mm: number): string;
  thicknessRange(range: { readonly minMm?: number; readonly maxMm?: number }): string;
  /** 0.615 → "61.5 %". */
  percent(share: number, decimals?: number): string;
  degrees(deg: number): string;
  /** What stands behind a field for lengths: "mm" or "in". */
  readonly lengthUnit: string;
  /** "dm²" or "ft²". */
  readonly areaUnit: string;
  /** A length typed by a person, with the locale's comma or a unit of its own ("1 1/2 in"); undefined where it is none. */
  readLengthMm(text: string): number | undefined;
  readAreaMm2(text: string): number | undefined;
  /** A bare number, comma or point. */
  readNumber(text: string): number | undefined;
  /** As it stands in a field, without the unit. */
  lengthField(mm: number): string;
  areaField(mm2: number): string;
}

export function measuresFor({ language, lengths, areas }: Prefs, languages: readonly string[]): Measures {
  const locale = languages.find((each) => each.toLowerCase().startsWith(language)) ?? language;
  const number = (value: number, decimals = 1): string =>
    new Intl.NumberFormat(locale, { maximumFractionDigits: decimals }).format(value);
  const isInch = lengths === 'in';
  const areaUnit = areas === 'ft2' ? 'ft²' : 'dm²';
  const lengthNumber = (mm: number): string =>
    isInch ? number(mm / MM_PER_INCH, 2) : number(mm, mm < 100 ? 1 : 0);
  const areaNumber = (mm2: number): string =>
    areas === 'ft2' ? number(mm2 / MM2_PER_FT2, 2) : number(mm2 / MM2_PER_DM2, 1);
  const thickness = (mm: number): string =>
    isInch ? `${number(mm / MM_PER_OUNCE, 1)} oz` : `${number(mm, 1)} mm`;
  const readNumber = (text: string): number | undefined => numberIn(text, locale);
  return {
    locale,
    number,
    length: (mm) => `${lengthNumber(mm)} ${lengths}`,
    deviation: (mm) => `${isInch ? number(mm / MM_PER_INCH, 3) : number(mm, 2)} ${lengths}`,
    area: (mm2) => `${areaNumber(mm2)} ${areaUnit}`,
    thickness,
    thicknessRange: ({ minMm, maxMm }) => rangeWords(minMm, maxMm, thickness),
    percent: (share, decimals = 1) =>
      new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: decimals }).format(share),
    degrees: (deg) => `${number(deg, 1)}°`,
    lengthUnit: lengths,
    areaUnit,
    readNumber,
    readLengthMm: (text) => readLength(text, readNumber, isInch ? MM_PER_INCH : 1),
    readAreaMm2: (text) => readArea(text, readNumber, areas === 'ft2' ? MM2_PER_FT2 : MM2_PER_DM2),
    lengthField: lengthNumber,
    areaField: areaNumber,
  };
}

function rangeWords(min: number | undefined, max: number | undefined, words: (mm: number) => string): string {
  if (min !== undefined && max !== undefined && min !== max) return `${words(min)} – ${words(max)}`;
  const one = min ?? max;
  return one === undefined ? '–' : words(one);
}

/** "1,234.5" or "1.234,5" by the locale; either sign where only one stands in the text. */
function numberIn(text: string, locale: string): number | undefined {
  const bare = text.trim().replace(/[\s\u00a0\u202f']/g, '');
  if (!/^[+-]?[\d.,]+$/.test(bare)) return undefined;
  const decimal = new Intl.NumberFormat(locale)
    .formatToParts(1.5)
    .find(({ type }) => type === 'decimal')!.value;
  const group = decimal === ',' ? '.' : ',';
  const isGrouped = new RegExp(`^[+-]?\\d{1,3}(\\${group}\\d{3})+(\\${decimal}\\d*)?$`).test(bare);
  const plain = isGrouped ? bare.replaceAll(group, '').replace(decimal, '.') : bare.replace(',', '.');
  const value = Number(plain);
  return plain === '' || !Number.isFinite(value) ? undefined : value;
}

const LENGTH_UNITS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  '"': MM_PER_INCH,
  ft: 12 * MM_PER_INCH,
};
const AREA_UNITS: Readonly<Record<string, number>> = {
  mm2: 1,
  cm2: 100,
  dm2: MM2_PER_DM2,
  m2: 1e6,
  ft2: MM2_PER_FT2,
  sqft: MM2_PER_FT2,
};

type ReadNumber = (text: string) => number | undefined;

/** Also "1 1/2 in", as inches are spoken. */
function readLength(text: string, read: ReadNumber, usual: number): number | undefined {
  const [, amount = '', unit = ''] = /^(.*?)\s*(mm|cm|m|in|ft|")?\s*$/i.exec(text.trim()) ?? [];
  const fraction = /^(?:(\d+)\s+)?(\d+)\/(\d+)$/.exec(amount.trim());
  const value =
    fraction === null ? read(amount) : Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
  if (value === undefined || !Number.isFinite(value)) return undefined;
  return value * (unit === '' ? usual : LENGTH_UNITS[unit.toLowerCase()]!);
}

function readArea(text: string, read: ReadNumber, usual: number): number | undefined {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/²/g, '2')
    .replace(/sq\.?\s*ft/, 'sqft');
  const [, amount = '', unit = ''] = /^(.*?)\s*(mm2|cm2|dm2|m2|ft2|sqft)?$/.exec(plain) ?? [];
  const value = read(amount);
  return value === undefined ? undefined : value * (unit === '' ? usual : AREA_UNITS[unit]!);
}
