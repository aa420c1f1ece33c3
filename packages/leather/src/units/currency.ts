/**
 * Decimals of the smallest coin, by the minor units of ISO 4217 (list from memory, held against ICU's table in the
 * tests); a currency that is not here has two.
 */
const DECIMALS: Readonly<Record<string, number>> = {
  ...each(0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'),
  ...each(3, 'BHD IQD JOD KWD LYD OMR TND'),
  ...each(4, 'CLF UYW'),
};

function each(decimals: number, codes: string): Readonly<Record<string, number>> {
  return Object.fromEntries(codes.split(' ').map((code) => [code, decimals]));
}

/** How many decimals a sum of a currency has. */
export function coinDecimals(currency: string): number {
  return DECIMALS[currency] ?? 2;
}
