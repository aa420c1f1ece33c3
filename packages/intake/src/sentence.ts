/** What a sentence is filled in with. */
export type SentenceParams = Readonly<Record<string, string | number>>;

export type Sentence = (params: SentenceParams) => string;

/** "1 line", "2 lines". */
export const plural = (n: string | number | undefined, one: string, many: string): string =>
  `${n} ${Number(n) === 1 ? one : many}`;
