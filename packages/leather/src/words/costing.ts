import type { SentenceTable } from './sentence.js';

/** English sentences of money and prices. */
export const COSTING_SENTENCES = {
  'mixed-currencies': (p: { first: string; currency: string; second: string; other: string }) =>
    `Sums of two currencies can't be added: ${p.first} is in ${p.currency}, ${p.second} is in ${p.other}; write all prices in one currency.`,
  'rounding-to-nothing': () =>
    `Prices can't be rounded to multiples of 0; write an amount above 0 under "rounding", such as "0.50 EUR", or leave it out.`,
} as const satisfies SentenceTable;
