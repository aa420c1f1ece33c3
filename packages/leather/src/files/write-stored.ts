import type * as v from 'valibot';
import { asAnySchema, likelyAlternative, unwrapped } from './schema/walk.js';
import type { AnySchema } from './schema/walk.js';

/**
 * The text of a stored file: keys in the schema's order, numbers rounded as the schema says, points on one line,
 * a final line break. The same value always gives the same bytes.
 */
export function writeStored<Schema extends v.GenericSchema>(
  schema: Schema,
  value: Frozen<v.InferOutput<Schema>>,
): string {
  return `${print(storedValue(schema, value), 0)}\n`;
}

/** What a stored file's text would say, as a value: numbers rounded as the schema says. */
export function storedValue<Schema extends v.GenericSchema>(
  schema: Schema,
  value: Frozen<v.InferOutput<Schema>>,
): unknown {
  return encode(asAnySchema(schema), value);
}

/** The model's types are readonly throughout; a schema's are not. */
export type Frozen<Value> = Value extends readonly unknown[]
  ? { readonly [Index in keyof Value]: Frozen<Value[Index]> }
  : Value extends object
    ? { readonly [Key in keyof Value]: Frozen<Value[Key]> }
    : Value;

/** A value of the model as a value of the file. */
function encode(schema: AnySchema, value: unknown): unknown {
  const base = unwrapped(schema);
  if (base.encode !== undefined) return base.encode(value);
  if (typeof value !== 'object' || value === null) return encodePlain(base, value);
  if (base.type === 'union' || base.type === 'variant') {
    const meant = likelyAlternative(base, value);
    return meant === undefined ? value : encode(meant, value);
  }
  if (base.entries !== undefined) return encodeGroup(base.entries, value as Record<string, unknown>);
  if (!Array.isArray(value)) return value;
  return value.map((item, i) => encode((base.items?.[i] ?? base.item)!, item));
}

function encodePlain(schema: AnySchema, value: unknown): unknown {
  const meant = schema.type === 'union' ? likelyAlternative(schema, value) : undefined;
  return meant?.encode === undefined ? value : meant.encode(value);
}

function encodeGroup(
  entries: Readonly<Record<string, AnySchema>>,
  value: Readonly<Record<string, unknown>>,
): Record<string, unknown> {
  const group: Record<string, unknown> = {};
  for (const key of Object.keys(entries)) {
    if (value[key] !== undefined) group[key] = encode(entries[key]!, value[key]);
  }
  return group;
}

/** Columns that a list or group on one line may fill. */
const LINE_WIDTH = 100;

function print(value: unknown, depth: number): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const short = printShort(value, LINE_WIDTH - 2 * depth);
  if (short !== undefined) return short;
  const inner = '  '.repeat(depth + 1);
  const outer = '  '.repeat(depth);
  if (Array.isArray(value)) {
    const items = value.map((item) => inner + print(item, depth + 1));
    return `[\n${items.join(',\n')}\n${outer}]`;
  }
  const pairs = Object.entries(value).map(
    ([key, held]) => `${inner}${JSON.stringify(key)}: ${print(held, depth + 1)}`,
  );
  return `{\n${pairs.join(',\n')}\n${outer}}`;
}

/** On one line, or undefined as soon as that is longer than the room. */
function printShort(value: unknown, room: number): string | undefined {
  if (typeof value !== 'object' || value === null) {
    const text = JSON.stringify(value);
    return text.length <= room ? text : undefined;
  }
  const isList = Array.isArray(value);
  const parts: string[] = [];
  let left = room - (isList ? 2 : 4);
  for (const [key, held] of Object.entries(value)) {
    const lead = isList ? '' : `${JSON.stringify(key)}: `;
    const text = printShort(held, left - lead.length);
    if (text === undefined) return undefined;
    parts.push(lead + text);
    left -= lead.length + text.length + 2;
    if (left < -2) return undefined;
  }
  if (parts.length === 0) return isList ? '[]' : '{}';
  return isList ? `[${parts.join(', ')}]` : `{ ${parts.join(', ')} }`;
}
