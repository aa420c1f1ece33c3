import { leatherError } from '../../words/refuse.js';

/** A way into a file's value: keys of groups and indexes of lists. */
export type KeyPath = readonly (string | number)[];

/** A file's value with a way to find the line of anything in it. */
export interface TextTree {
  readonly value: unknown;
  /** The line, from 1, of the key or list entry at the end of the path, or of the nearest thing above it. */
  readonly lineOf: (path: KeyPath) => number | undefined;
}

/** No file of ours nests deeper than a layout's offcut's curve's handle, at about 12. */
export const DEEPEST_NESTING = 64;

/** JSON files hold measured shapes and bundled photos; YAML files are written by hand. In characters. */
export const LONGEST_JSON = 50_000_000;
export const LONGEST_YAML = 5_000_000;

const MB = 1_000_000;

/** Refuses text that is too long, and takes off a byte order mark. */
export function admitText(
  text: string,
  options: { readonly file: string; readonly longest: number; readonly format: string },
): string {
  const { file, longest, format } = options;
  if (text.length > longest) {
    const sizeMb = Math.ceil((text.length * 10) / MB) / 10;
    throw leatherError('too-large', { sizeMb, limitMb: longest / MB }, { file });
  }
  const plain = text.startsWith('\uFEFF') ? text.slice(1) : text;
  if (plain.trim() === '') throw leatherError('empty-file', { format }, { file });
  return plain;
}

/** A key that every group has by birth would slip past the lists of known keys. */
export function isReservedKey(key: string): boolean {
  return key in Object.prototype;
}

/** "articles[0].pieces[2].count". */
export function pathWords(path: KeyPath): string {
  let words = '';
  for (const step of path) {
    if (typeof step === 'number') words += `[${step}]`;
    else if (/^[A-Za-z_][\w-]*$/.test(step)) words += words === '' ? step : `.${step}`;
    else words += `[${JSON.stringify(step)}]`;
  }
  return words;
}

/** How a kind of file is written. A value, so that who reads one kind alone need not carry the reader of the other. */
export interface TextSyntax {
  /** Characters. */
  readonly longest: number;
  readonly read: (text: string, file: string) => TextTree;
}
