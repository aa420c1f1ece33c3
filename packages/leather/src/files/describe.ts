import { PUBLISHED_FORMATS, SHARED_PARTS } from './formats.js';
import type { PublishedFormat } from './formats.js';
import { problemOf } from './schema/problem.js';
import { alternatives, asAnySchema, isOptional, unwrapped } from './schema/walk.js';
import type { AnySchema } from './schema/walk.js';

/** One key of a file, for the documentation. */
export interface FieldDescription {
  /** "flaws[].shape.at". */
  readonly path: string;
  readonly required: boolean;
  /** What may stand there. */
  readonly value: string;
  /** Name of the shared part that it is, or that its entries are. */
  readonly part?: string;
  /** The part's name stands for each entry of a list. */
  readonly isListOfPart: boolean;
  readonly meaning: string;
}

export interface FormatDescription extends Omit<PublishedFormat, 'schema'> {
  readonly fields: readonly FieldDescription[];
}

export interface PartDescription {
  readonly name: string;
  readonly value: string;
  readonly fields: readonly FieldDescription[];
}

/** Every format, key by key, as its schema says it. */
export function describeFormats(): readonly FormatDescription[] {
  return PUBLISHED_FORMATS.map(({ schema, ...format }) => ({
    ...format,
    fields: describeFields(asAnySchema(schema), ''),
  }));
}

/** The parts that several formats share. */
export function describeParts(): readonly PartDescription[] {
  return Object.entries(SHARED_PARTS).map(([name, schema]) => ({
    name,
    value: valueWords(asAnySchema(schema)),
    fields: [asAnySchema(schema), ...alternatives(asAnySchema(schema))].flatMap((one) =>
      describeFields(one, ''),
    ),
  }));
}

/** The keys of a group and of what it holds, down to shared parts and plain values. */
function describeFields(schema: AnySchema, prefix: string): FieldDescription[] {
  const entries = schema.entries ?? {};
  return Object.entries(entries).flatMap(([key, entry]) => {
    const path = prefix === '' ? quoteKey(key) : `${prefix}.${quoteKey(key)}`;
    const inner = unwrapped(entry);
    const own = partName(inner);
    const part = own ?? partName(inner.item === undefined ? undefined : unwrapped(inner.item));
    const row: FieldDescription = {
      path,
      required: !isOptional(entry),
      value: valueWords(inner),
      ...(part === undefined ? {} : { part }),
      isListOfPart: part !== undefined && own === undefined,
      meaning: schema.fieldWords?.[key] ?? '',
    };
    return [row, ...describeWithin(inner, path)];
  });
}

function describeWithin(schema: AnySchema, path: string): FieldDescription[] {
  if (partName(schema) !== undefined) return [];
  if (schema.entries !== undefined) return describeFields(schema, path);
  if (schema.item !== undefined) return describeWithin(unwrapped(schema.item), `${path}[]`);
  if (schema.type === 'record') return describeWithin(unwrapped(schema.value!), `${path}.<name>`);
  return alternatives(schema).flatMap((option) => {
    const kind = schema.type === 'variant' ? option.entries?.[schema.key as string]?.literal : undefined;
    return describeWithin(option, kind === undefined ? path : `${path}(${kind as string})`);
  });
}

function quoteKey(key: string): string {
  return /^[\w-]+$/.test(key) ? key : `"${key}"`;
}

function partName(schema: AnySchema | undefined): string | undefined {
  return Object.keys(SHARED_PARTS).find((name) => asAnySchema(SHARED_PARTS[name]!) === schema);
}

function valueWords(schema: AnySchema): string {
  if (schema.item !== undefined) {
    const item = unwrapped(schema.item);
    const part = partName(item);
    if (part !== undefined) return `list of ${part}`;
    return item.entries === undefined ? `list: ${valueWords(item)}` : 'list of groups';
  }
  if (typeof schema.message === 'string' && problemOf(schema.message) === undefined) return schema.message;
  if (schema.type === 'variant') {
    const kinds = alternatives(schema).map((option) =>
      String(option.entries?.[schema.key as string]?.literal),
    );
    return `group, told apart by ${schema.key as string}: ${kinds.join(', ')}`;
  }
  return schema.entries === undefined ? 'anything' : 'group';
}
