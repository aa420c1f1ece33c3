import type { CountedText } from './words.js';

/** The same keys in another language: the compiler holds a translation complete. A counted text stays one. */
export type Translated<T> = {
  readonly [K in keyof T]: T[K] extends string ? string : CountedText;
};
