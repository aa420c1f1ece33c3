import { HIDE_CUTS, parseAreaMm2, parseMoney, parseThickness } from '@hidebound/leather';
import type { Hide, HideCut, HidePrice, ThicknessRange } from '@hidebound/leather';
import { tell } from '../findings.js';
import type { Findings } from '../findings.js';

/** What the root element's `data-*` attributes say of the hide as a whole. */
export interface HideData {
  readonly id?: string;
  readonly parent?: string;
  readonly cut?: HideCut;
  readonly lot?: string;
  readonly storedAt?: string;
  readonly notes?: string;
  readonly invoicedMm2?: number;
  readonly price?: HidePrice;
  readonly tannage?: string;
  readonly temper?: string;
  readonly finish?: string;
  readonly colour?: string;
  readonly thickness?: ThicknessRange;
  readonly state?: Hide['state'];
}

const STATES: readonly Hide['state'][] = ['on hand', 'reserved', 'cut'];
const TEXT_KEYS = ['id', 'parent', 'lot', 'notes', 'tannage', 'temper', 'finish', 'colour'] as const;

/** Reads them all; one that can't be read is told of and left out. */
export function readHideData(data: Readonly<Record<string, string>>, findings: Findings): HideData {
  const texts = Object.fromEntries(
    TEXT_KEYS.filter((key) => (data[key] ?? '') !== '').map((key) => [key, data[key]!]),
  ) as Partial<Record<(typeof TEXT_KEYS)[number], string>>;
  const read = <T>(key: string, parse: (text: string) => T | undefined): T | undefined => {
    const text = data[key];
    if (text === undefined || text === '') return undefined;
    const value = parseOrNothing(text, parse);
    if (value === undefined) {
      tell(findings, 'warning', 'bad-hide-data', { name: `data-${key}`, value: text }, { at: '<svg>' });
    }
    return value;
  };
  const cut = read('cut', (text) => HIDE_CUTS.find((name) => name === text.toLowerCase()));
  const state = read('state', (text) => STATES.find((name) => name === text.toLowerCase()));
  const thickness = read('thickness', parseThickness);
  const invoicedMm2 = read('invoiced', parseAreaMm2);
  const price = read('price', parsePrice);
  const storedAt = data['stored-at'];
  return {
    ...texts,
    ...(storedAt === undefined || storedAt === '' ? {} : { storedAt }),
    ...(cut === undefined ? {} : { cut }),
    ...(state === undefined ? {} : { state }),
    ...(thickness === undefined ? {} : { thickness }),
    ...(invoicedMm2 === undefined ? {} : { invoicedMm2 }),
    ...(price === undefined ? {} : { price }),
  };
}

function parseOrNothing<T>(text: string, parse: (text: string) => T | undefined): T | undefined {
  try {
    return parse(text);
  } catch {
    return undefined;
  }
}

/** "120.00 EUR per hide", "9.80 EUR per ft2 measured". */
function parsePrice(text: string): HidePrice | undefined {
  const match = /^(.*?)\s+per\s+(hide|ft2|m2|dm2)(?:\s+(invoiced|measured))?$/i.exec(text.trim());
  if (match === null) return undefined;
  const [, amount, per, of = 'invoiced'] = match;
  return {
    ...parseMoney(amount!),
    per: per!.toLowerCase() as HidePrice['per'],
    of: of.toLowerCase() as HidePrice['of'],
  };
}
