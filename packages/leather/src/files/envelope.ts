import type * as v from 'valibot';
import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';
import { judge } from './explain.js';
import { admitText } from './text/text-tree.js';
import type { TextSyntax, TextTree } from './text/text-tree.js';

export const FORMAT_KINDS = [
  'hide',
  'article',
  'order',
  'layout',
  'workshop',
  'stock-journal',
  'job',
  'photo-hints',
  'reference-sheets',
] as const;
export type FormatKind = (typeof FORMAT_KINDS)[number];

/** Turns a file's value of one version into one of the next; index 0 leads from version 1 to 2. */
export type UpgradeStep = (value: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/** How a kind of file is told and judged. */
export interface FileFormat<Schema extends v.GenericSchema> {
  readonly kind: FormatKind;
  readonly syntax: TextSyntax;
  /** Judges a value of the newest version, its format line included. */
  readonly schema: Schema;
  /** One step for each version before the newest. */
  readonly upgrades: readonly UpgradeStep[];
}

/** A file as its schema gives it back, with what is needed to say where something in it is. */
export interface Opened<Schema extends v.GenericSchema> {
  readonly file: string;
  readonly tree: TextTree;
  readonly value: v.InferOutput<Schema>;
}

/** "hidebound/hide@1". */
export function formatLine(kind: FormatKind, version = 1): string {
  return `hidebound/${kind}@${version}`;
}

/**
 * Reads a text of one format: its syntax, its format line, upgrades from older versions, its schema.
 * @throws LeatherError with the file and, wherever it is known, the line
 */
export function openFile<Schema extends v.GenericSchema>(
  text: string,
  file: string,
  format: FileFormat<Schema>,
): Opened<Schema> {
  const newest = format.upgrades.length + 1;
  const line = formatLine(format.kind, newest);
  const { longest, read } = format.syntax;
  const tree = read(admitText(text, { file, longest, format: line }), file);
  const { value } = tree;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw leatherError('not-a-group', { found: quoteValue(value) }, { file });
  }
  const version = readVersion(value as Record<string, unknown>, { tree, file, kind: format.kind, newest });
  const current = { ...tree, value: upgrade(value as Record<string, unknown>, version, format) };
  return { file, tree: current, value: judge(file, current, format.schema) };
}

const FORMAT_LINE = /^hidebound\/([a-z][a-z-]*)@([1-9]\d{0,5})$/;

function readVersion(
  value: Readonly<Record<string, unknown>>,
  about: {
    readonly tree: TextTree;
    readonly file: string;
    readonly kind: FormatKind;
    readonly newest: number;
  },
): number {
  const { file, kind, newest } = about;
  const format = formatLine(kind, newest);
  if (value.format === undefined) throw leatherError('format-missing', { format }, { file });
  const line = about.tree.lineOf(['format']);
  const place = { file, ...(line === undefined ? {} : { line }), at: 'format' };
  const match = typeof value.format === 'string' ? FORMAT_LINE.exec(value.format) : null;
  const isOurs = FORMAT_KINDS.some((one) => one === match?.[1]);
  if (match === null || !isOurs) {
    throw leatherError('format-strange', { found: quoteValue(value.format), format }, place);
  }
  if (match[1] !== kind) throw leatherError('format-other', { found: match[1]!, format: kind }, place);
  const version = Number(match[2]);
  if (version > newest) throw leatherError('format-newer', { found: match[0], newest: format }, place);
  return version;
}

function upgrade<Schema extends v.GenericSchema>(
  value: Record<string, unknown>,
  version: number,
  format: FileFormat<Schema>,
): Record<string, unknown> {
  let current = value;
  for (let from = version; from <= format.upgrades.length; from += 1) {
    const step = format.upgrades[from - 1]!;
    current = { ...step(current), format: formatLine(format.kind, from + 1) };
  }
  return current;
}
