import { leatherError } from '../words/refuse.js';
import { listWords, quoteValue } from '../words/sentence.js';

/** What a price can be for, in the unit that is reckoned with. */
export type PricedIn = 'each' | 'mm' | 'mL' | 'mm²' | 'hide';

export interface PriceUnit {
  readonly of: PricedIn;
  /** So many of these are in one unit of the price, exactly. */
  readonly times: string;
}

/** Lengths by the international yard and pound agreement of 1959, US fluid measure by its definition: 1 gal = 231 in³. */
const PRICE_UNITS: Readonly<Record<string, PriceUnit>> = {
  each: { of: 'each', times: '1' },
  hide: { of: 'hide', times: '1' },
  mm: { of: 'mm', times: '1' },
  cm: { of: 'mm', times: '10' },
  m: { of: 'mm', times: '1000' },
  in: { of: 'mm', times: '25.4' },
  ft: { of: 'mm', times: '304.8' },
  yd: { of: 'mm', times: '914.4' },
  mL: { of: 'mL', times: '1' },
  L: { of: 'mL', times: '1000' },
  'US gal': { of: 'mL', times: '3785.411784' },
  'US qt': { of: 'mL', times: '946.352946' },
  'US pt': { of: 'mL', times: '473.176473' },
  'US fl oz': { of: 'mL', times: '29.5735295625' },
  dm2: { of: 'mm²', times: '10000' },
  m2: { of: 'mm²', times: '1000000' },
  ft2: { of: 'mm²', times: '92903.04' },
};

/** Exactly so many mm² are in a unit that leather is priced by. */
export function areaOfUnit(unit: 'ft2' | 'm2' | 'dm2'): string {
  return PRICE_UNITS[unit]!.times;
}

/**
 * The unit of a price as it is written, "L", "m", "each".
 * @throws LeatherError `unknown-price-unit`
 */
export function readPriceUnit(text: string): string {
  const wanted = text.trim();
  if (Object.hasOwn(PRICE_UNITS, wanted)) return wanted;
  const same = Object.keys(PRICE_UNITS).find((unit) => unit.toLowerCase() === wanted.toLowerCase());
  // "M" and "ML" are as good as "m" and "mL": there is nothing else that they could mean in a price.
  if (same !== undefined) return same;
  const known = listWords(Object.keys(PRICE_UNITS));
  throw leatherError('unknown-price-unit', { found: quoteValue(text), known });
}

/** What a unit that `readPriceUnit` gave back is for. */
export function priceUnit(name: string): PriceUnit {
  return PRICE_UNITS[readPriceUnit(name)]!;
}
