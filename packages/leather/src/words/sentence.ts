/** What a sentence is filled in with. */
export type SentenceParams = Readonly<Record<string, string | number>>;

/**
 * Sentences of one language by code: each is a function from the diagnostic's parameters to one plain sentence
 * without its place (that is put in front of it). A second language is a second table.
 */
export type SentenceTable = Readonly<Record<string, (params: never) => string>>;

/** The parameters that a table's sentence asks for. */
export type ParamsOf<Table extends SentenceTable, Code extends keyof Table> =
  Parameters<Table[Code]> extends [infer Params] ? Params : Readonly<Record<string, never>>;

/** A user's own value as it is shown within a sentence: quoted, on one line, shortened. */
export function quoteValue(value: unknown): string {
  if (typeof value === 'string') return `"${shorten(value)}"`;
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (value === null) return 'empty';
  if (value === undefined) return 'missing';
  if (Array.isArray(value)) return listSize(value.length);
  return 'a group of keys';
}

function listSize(entries: number): string {
  if (entries === 0) return 'an empty list';
  return entries === 1 ? 'a list of one entry' : `a list of ${entries} entries`;
}

const LONGEST_QUOTE = 60;

function shorten(text: string): string {
  const line = text.replace(/[\u0000-\u001f\u007f]+/g, ' ');
  return line.length <= LONGEST_QUOTE ? line : `${line.slice(0, LONGEST_QUOTE - 1)}…`;
}

/** "a, b or c". */
export function listWords(words: readonly string[], joint: 'or' | 'and' = 'or'): string {
  if (words.length <= 1) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} ${joint} ${words[words.length - 1]}`;
}

/** 10000 as "10,000". */
export function groupDigits(value: number): string {
  return String(value).replace(/\B(?=(?:\d{3})+$)/g, ',');
}

/** The text with a capital at its beginning. */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
