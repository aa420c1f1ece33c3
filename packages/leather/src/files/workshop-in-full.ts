import { isMap, isScalar, parseDocument } from 'yaml';
import type { Document, Pair, YAMLMap } from 'yaml';
import type { Workshop } from '../model/workshop.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { WORKSHOP_FORMAT, workshopFileSchema } from './schema/written-workshop.js';
import { parseWorkshop, workshopInWriting } from './workshop-file.js';
import { toYamlText, yamlDocument } from './write-written.js';

const HEAD = [
  'What this workshop reckons with. Change any value; a change of yours may say "source: own".',
  'Where a value comes from stands beside it. What you leave out keeps its built-in value.',
];

/** A workshop file with every value written out, built-in ones too, each table and figure with what it means. */
export function writeWorkshopInFull(workshop: Workshop): string {
  const written = workshopInWriting(workshop);
  const document = yamlDocument(written);
  document.commentBefore = comment(HEAD);
  for (const pair of topPairs(document)) explain(pair, workshop);
  return toYamlText(document);
}

function topPairs(document: Document): readonly Pair[] {
  return isMap(document.contents) ? document.contents.items : [];
}

/** Sets what it means above a key of the file, and above each figure. */
function explain(pair: Pair, workshop: Workshop): void {
  const key = keyOf(pair);
  const words = workshopFileSchema.fieldWords[key];
  if (words !== undefined && key !== 'format' && isScalar(pair.key)) {
    pair.key.commentBefore = comment([words]);
    pair.key.spaceBefore = true;
  }
  if (key !== 'figures' || !isMap(pair.value)) return;
  for (const row of pair.value.items) {
    const figure = workshop.figures.find(({ name }) => name === keyOf(row));
    if (figure !== undefined && isScalar(row.key)) row.key.commentBefore = comment([figure.words]);
  }
}

function keyOf({ key }: Pair): string {
  return isScalar(key) ? String(key.value) : '';
}

function comment(lines: readonly string[]): string {
  return lines.map((line) => ` ${line}`).join('\n');
}

/** A workshop file with what it lacked. */
export interface CompletedWorkshop {
  readonly text: string;
  /** What was added, by key of the file: names of rows, or the key itself where it stands alone. */
  readonly added: readonly { readonly key: string; readonly names: readonly string[] }[];
  /** Keys whose rows are written on one line, where none can be put between; nothing was added to them. */
  readonly closed: readonly { readonly key: string; readonly names: readonly string[] }[];
}

/**
 * Adds to a workshop file what is built in and not yet in it. Each line that was there stays as it is, byte for byte:
 * new rows are put behind the last one of their table, new tables at the end.
 * @throws LeatherError as `parseWorkshop`
 */
export function completeWorkshop(text: string, options: { readonly file: string }): CompletedWorkshop {
  parseWorkshop(text, options);
  const present = new Map(topPairs(parseDocument(text)).map((pair) => [keyOf(pair), pair]));
  const added: { key: string; names: string[] }[] = [];
  const closed: { key: string; names: string[] }[] = [];
  const inserts: Insert[] = [];
  const wholeKeys: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(workshopInWriting(DEFAULT_WORKSHOP))) {
    const pair = present.get(key);
    const rows = rowsOf(value);
    if (pair === undefined) {
      wholeKeys[key] = value;
      added.push({ key, names: rows === undefined ? [key] : Object.keys(rows) });
    } else if (rows !== undefined) {
      const lacking = lackingRows(rows, pair);
      const names = Object.keys(lacking);
      if (names.length === 0) continue;
      const insert = insertInto(text, key, pair, lacking);
      if (insert === undefined) closed.push({ key, names });
      else {
        inserts.push(insert);
        added.push({ key, names });
      }
    }
  }
  return { text: withTables(withInserts(text, inserts), wholeKeys), added, closed };
}

type Rows = Readonly<Record<string, unknown>>;

/** A table's rows by name; undefined for what is no table. */
function rowsOf(value: unknown): Rows | undefined {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Rows) : undefined;
}

function lackingRows(rows: Rows, { value }: Pair): Rows {
  const names = new Set(isMap(value) ? value.items.map((item) => keyOf(item)) : []);
  return Object.fromEntries(Object.entries(rows).filter(([name]) => !names.has(name)));
}

interface Insert {
  readonly at: number;
  readonly lines: string;
}

/** Where the rows go, and how they are written there; undefined where the table is written on one line. */
function insertInto(text: string, key: string, pair: Pair, rows: Rows): Insert | undefined {
  const { value } = pair;
  const isEmpty = value === null || (isScalar(value) && value.value === null);
  if (!isEmpty && (!isMap(value) || value.flow === true || value.items.length === 0)) return undefined;
  const first = isMap(value) ? value.items[0]?.key : undefined;
  const indent = isScalar(first) && first.range ? columnOf(text, first.range[0]) : 2;
  const end = isMap(value) ? endOfRows(value) : endOf(pair.key);
  const lineEnd = text.indexOf('\n', end === 0 ? 0 : end - 1);
  const written = textOf({ [key]: rows }).split('\n');
  const block = written.slice(written.indexOf(`${key}:`) + 1);
  const lines = block.filter((line) => line !== '').map((line) => ' '.repeat(indent) + line.slice(2));
  return { at: lineEnd === -1 ? text.length : lineEnd + 1, lines: `${lines.join('\n')}\n` };
}

function endOfRows(map: YAMLMap): number {
  const last = map.items.at(-1)!;
  return Math.max(endOf(last.key), endOf(last.value));
}

/** Where the value of a node ends in the text. */
function endOf(node: unknown): number {
  const { range } = (node ?? {}) as { readonly range?: readonly [number, number, number] | null };
  return range?.[1] ?? 0;
}

function columnOf(text: string, offset: number): number {
  return offset - (text.lastIndexOf('\n', offset - 1) + 1);
}

function withInserts(text: string, inserts: readonly Insert[]): string {
  const sorted = [...inserts].sort((a, b) => b.at - a.at);
  return sorted.reduce((now, { at, lines }) => {
    const before = now.slice(0, at);
    return `${before}${before === '' || before.endsWith('\n') ? '' : '\n'}${lines}${now.slice(at)}`;
  }, text);
}

/** New tables behind all else. */
function withTables(text: string, tables: Rows): string {
  if (Object.keys(tables).length === 0) return text;
  return `${text}${text.endsWith('\n') ? '' : '\n'}\n${textOf(tables)}`;
}

/** Rows as text, with what they mean; without a format line. */
function textOf(tables: Rows): string {
  const document = yamlDocument({ format: WORKSHOP_FORMAT, ...tables });
  for (const pair of topPairs(document)) explain(pair, DEFAULT_WORKSHOP);
  const text = toYamlText(document);
  return text.slice(text.indexOf('\n') + 1).replace(/^\n+/, '');
}
