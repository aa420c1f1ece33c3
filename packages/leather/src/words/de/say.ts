import type { SentenceTable } from '../sentence.js';

/** The same codes in another language, each with the same parameters: the compiler holds a translation complete. */
export type Translation<Table extends SentenceTable> = {
  readonly [Code in keyof Table]: Table[Code] extends (params: infer Params) => string
    ? (params: Params) => string
    : never;
};

/** What German sentences are written with. */
export interface German {
  /** A text whose numbers come as the locale writes them, and whose "quoted" values come in German quotes. */
  readonly de: (parts: TemplateStringsArray, ...values: readonly (string | number | undefined)[]) => string;
  /** Figures within a text that was written for English: "2.2–2.9 mm", "1,250". */
  readonly figures: (text: string) => string;
  /** "1 Teil", "3 Teile". */
  readonly count: (count: number | string | undefined, one: string, many: string) => string;
}

/** As many decimals as a finding ever tells. */
const MOST_DECIMALS = 3;

const FIGURE = /(\d{1,3}(?:,\d{3})+|\d+)(?:\.(\d+))?/g;

/** Writes German for a locale: "de-DE", "de-CH". */
export function germanFor(locale: string): German {
  const number = (value: number, decimals?: number): string =>
    new Intl.NumberFormat(locale, {
      maximumFractionDigits: decimals ?? MOST_DECIMALS,
      ...(decimals === undefined ? {} : { minimumFractionDigits: decimals }),
    }).format(value);
  const shown = (value: string | number | undefined): string =>
    typeof value === 'number' ? number(value) : (value ?? '').replace(/"([^"]*)"/g, '„$1“');
  const de: German['de'] = (parts, ...values) =>
    parts.map((part, i) => (i === 0 ? part : shown(values[i - 1]) + part)).join('');
  return {
    de,
    figures: (text) =>
      text.replace(FIGURE, (_, whole: string, decimals: string | undefined) =>
        number(Number(`${whole.replaceAll(',', '')}.${decimals ?? '0'}`), decimals?.length ?? 0),
      ),
    count: (count, one, many) => de`${count} ${Number(count) === 1 ? one : many}`,
  };
}
