import type { EN } from './en/index.js';

/** A text by count: "1 piece", "3 pieces". */
export interface CountedText {
  readonly one: string;
  readonly other: string;
}

export type WordKey = keyof typeof EN;
/** All texts of the app in one language; `{name}` stands for a parameter. */
export type WordTable = Readonly<Record<WordKey, string | CountedText>>;
export type WordParams = Readonly<Record<string, string | number>>;

/** Each language by its own name. */
export const LANGUAGE_NAMES = { en: 'English', de: 'Deutsch' } as const;
export type Language = keyof typeof LANGUAGE_NAMES;
export const LANGUAGES = Object.keys(LANGUAGE_NAMES) as readonly Language[];

/** A language is loaded when it is used. */
export async function loadWords(language: Language): Promise<WordTable> {
  switch (language) {
    case 'en':
      return (await import('./en/index.js')).EN;
    case 'de':
      return (await import('./de/index.js')).DE;
  }
}

/** A text with its parameters in place; a counted text goes by the parameter `n`. */
export function wordsFor(table: WordTable, locale: string, key: WordKey, params: WordParams = {}): string {
  const text = table[key];
  const form =
    typeof text === 'string'
      ? text
      : new Intl.PluralRules(locale).select(Number(params['n'] ?? 0)) === 'one'
        ? text.one
        : text.other;
  return form.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const value = params[name];
    if (value === undefined) return whole;
    return typeof value === 'number' ? new Intl.NumberFormat(locale).format(value) : value;
  });
}
