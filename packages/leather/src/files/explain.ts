import * as v from 'valibot';
import { LeatherError } from '../leather-error.js';
import type { DiagnosticPlace } from '../model/diagnostic.js';
import { placeWords } from '../words/catalogue.js';
import { nearestWord } from '../words/nearest.js';
import { leatherError } from '../words/refuse.js';
import { listWords, quoteValue } from '../words/sentence.js';
import { problemOf } from './schema/problem.js';
import { alternatives, asAnySchema, likelyAlternative, schemaAt, unwrapped } from './schema/walk.js';
import type { AnySchema } from './schema/walk.js';
import { pathWords } from './text/text-tree.js';
import type { KeyPath, TextTree } from './text/text-tree.js';

/** A file being read: its name, its text as a value, and the schema that judges it. */
export interface Reading {
  readonly file: string;
  readonly tree: TextTree;
  readonly schema: v.GenericSchema;
}

/** The file's value as its schema gives it back, or the first thing that is wrong as one sentence. */
export function judge<Schema extends v.GenericSchema>(
  file: string,
  tree: TextTree,
  schema: Schema,
): v.InferOutput<Schema> {
  const result = v.safeParse(schema, tree.value, { abortEarly: true });
  if (result.success) return result.output;
  throw explain({ file, tree, schema }, result.issues[0]);
}

/** Where a path of the file lies, for people. */
export function placeOf(reading: Pick<Reading, 'file' | 'tree'>, path: KeyPath): DiagnosticPlace {
  const line = reading.tree.lineOf(path);
  const at = pathWords(path);
  return { file: reading.file, ...(line === undefined ? {} : { line }), ...(at === '' ? {} : { at }) };
}

type Issue = v.BaseIssue<unknown>;

function explain(reading: Reading, issue: Issue): LeatherError {
  const path = (issue.path ?? []).map((item) => item.key as string | number);
  const root = asAnySchema(reading.schema);
  const value = valueAt(reading.tree.value, path);
  if (issue.type === 'strict_object' && issue.expected !== 'Object') {
    return explainKeys(reading, path, issue.expected === 'never');
  }
  const schema = schemaAt(root, reading.tree.value, path);
  if (issue.type === 'union' && schema !== undefined) {
    const inner = issueOfAlternative(unwrapped(schema), value);
    if (inner !== undefined) return explain(reading, { ...inner, path: joinPaths(issue, inner) });
  }
  const place = placeOf(reading, path);
  const problem = problemOf(issue.message) ?? problemOfQuantity(issue, value);
  if (problem !== undefined) {
    return new LeatherError(problem.code, `${placeWords(place)}: ${problem.sentence}`, place, problem);
  }
  const right = hasOwnWords(issue) ? issue.message : rightWords(schema, discriminatorOf(root, reading, path));
  return leatherError('wrong-value', { found: quoteValue(value), right }, place);
}

/** Valibot's own messages all begin alike; those of our schemas are the words for what would be right. */
function hasOwnWords(issue: Issue): boolean {
  return !issue.message.startsWith('Invalid ');
}

/** A union of words and a quantity: what looks like a figure was meant as the quantity. */
function problemOfQuantity(issue: Issue, value: unknown): ReturnType<typeof problemOf> {
  const isFigure = typeof value === 'number' || (typeof value === 'string' && /\d/.test(value));
  if (issue.type !== 'union' || !isFigure) return undefined;
  return issue.issues?.map((inner) => problemOf(inner.message)).find((inner) => inner !== undefined);
}

function joinPaths(outer: Issue, inner: Issue): Issue['path'] {
  const steps = [...(outer.path ?? []), ...(inner.path ?? [])];
  return steps as unknown as Issue['path'];
}

/** What is wrong with a value of a union, seen as the alternative that it seems to be meant as. */
function issueOfAlternative(union: AnySchema, value: unknown): Issue | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const meant = likelyAlternative(union, value);
  if (meant === undefined) return undefined;
  const result = v.safeParse(meant as unknown as v.GenericSchema, value, { abortEarly: true });
  return result.success ? undefined : result.issues[0];
}

/** A missing key is most often a mistyped one, so the unknown key is told of first. */
function explainKeys(reading: Reading, path: KeyPath, isUnknown: boolean): LeatherError {
  const above = path.slice(0, -1);
  const group = valueAt(reading.tree.value, above) as Readonly<Record<string, unknown>>;
  const key = String(path[path.length - 1]);
  const found = schemaAt(asAnySchema(reading.schema), reading.tree.value, above);
  const schema = found === undefined ? undefined : groupOf(unwrapped(found), group);
  const entries = schema?.entries ?? {};
  const unknown = isUnknown ? key : Object.keys(group).find((name) => !Object.hasOwn(entries, name));
  if (unknown === undefined) {
    return leatherError('missing-key', { key, right: rightWords(entries[key]) }, placeOf(reading, above));
  }
  const free = Object.keys(entries).filter((name) => !Object.hasOwn(group, name));
  const near = nearestWord(unknown, free);
  const known = Object.keys(entries).join(', ');
  return leatherError(
    'unknown-key',
    { key: quoteValue(unknown), known, ...(near === undefined ? {} : { near }) },
    placeOf(reading, [...above, unknown]),
  );
}

function groupOf(schema: AnySchema, value: unknown): AnySchema | undefined {
  return schema.entries === undefined ? likelyAlternative(schema, value) : schema;
}

function discriminatorOf(root: AnySchema, reading: Reading, path: KeyPath): AnySchema | undefined {
  const above = schemaAt(root, reading.tree.value, path.slice(0, -1));
  if (above === undefined) return undefined;
  const variant = unwrapped(above);
  return variant.type === 'variant' && variant.key === path[path.length - 1] ? variant : undefined;
}

/** "it should be …": what a schema asks for, in words. */
function rightWords(schema: AnySchema | undefined, variant?: AnySchema): string {
  if (variant !== undefined) {
    const kinds = alternatives(variant).map((option) => option.entries?.[variant.key as string]?.literal);
    return listWords(kinds.map((kind) => `"${String(kind)}"`));
  }
  if (schema === undefined) return 'something else';
  const base = unwrapped(schema);
  if (typeof base.message === 'string' && problemOf(base.message) === undefined) return base.message;
  if (base.entries !== undefined)
    return `a group with the keys ${listWords(Object.keys(base.entries), 'and')}`;
  if (base.type === 'variant') return `a group with the key "${base.key as string}"`;
  return 'something else';
}

export function valueAt(value: unknown, path: KeyPath): unknown {
  let held = value;
  for (const step of path) held = (held as Record<string | number, unknown> | null | undefined)?.[step];
  return held;
}
