import type * as v from 'valibot';
import type { Encoder, GroupWords } from './group.js';

/** What the walkers look at in a schema; valibot's own types are too many to name. */
export interface AnySchema extends Partial<GroupWords> {
  readonly type: string;
  readonly message?: unknown;
  readonly wrapped?: AnySchema;
  readonly default?: unknown;
  readonly entries?: Readonly<Record<string, AnySchema>>;
  readonly item?: AnySchema;
  readonly items?: readonly AnySchema[];
  /** Schemas of a union or variant, or the words of a picklist. */
  readonly options?: readonly (AnySchema | string)[];
  readonly literal?: unknown;
  readonly key?: string | AnySchema;
  readonly value?: AnySchema;
  readonly encode?: Encoder<unknown>['encode'];
}

export function asAnySchema(schema: v.GenericSchema): AnySchema {
  return schema;
}

/** Without "may be left out" around it. (A pipe carries the properties of the schema that it starts with.) */
export function unwrapped(schema: AnySchema): AnySchema {
  return schema.wrapped === undefined ? schema : unwrapped(schema.wrapped);
}

export function isOptional(schema: AnySchema): boolean {
  return schema.wrapped !== undefined;
}

/** The schemas among which a union or variant chooses. */
export function alternatives(schema: AnySchema): readonly AnySchema[] {
  if (schema.type !== 'union' && schema.type !== 'variant') return [];
  return schema.options as readonly AnySchema[];
}

/** The alternative that a written value seems to be meant as. */
export function likelyAlternative(schema: AnySchema, value: unknown): AnySchema | undefined {
  const groups = alternatives(schema).filter((option) => option.entries !== undefined);
  if (typeof value !== 'object' || value === null) {
    return alternatives(schema).find((option) => option.type === typeof value);
  }
  if (Array.isArray(value)) return alternatives(schema).find((option) => option.item ?? option.items);
  if (schema.type === 'variant')
    return groups.find((option) => isOfKind(option, schema.key as string, value));
  let best: AnySchema | undefined;
  let bestHits = -1;
  for (const option of groups) {
    const hits = Object.keys(value).filter((key) => Object.hasOwn(option.entries!, key)).length;
    if (hits > bestHits) {
      best = option;
      bestHits = hits;
    }
  }
  return best;
}

function isOfKind(option: AnySchema, key: string, value: object): boolean {
  return option.entries?.[key]?.literal === (value as Record<string, unknown>)[key];
}

/** The schema that judges what lies at a path of a written value. */
export function schemaAt(
  schema: AnySchema,
  value: unknown,
  path: readonly (string | number)[],
): AnySchema | undefined {
  let current: AnySchema | undefined = schema;
  let held: unknown = value;
  for (const step of path) {
    if (current === undefined) return undefined;
    current = stepInto(unwrapped(current), held, step);
    held = (held as Record<string, unknown> | undefined)?.[step];
  }
  return current;
}

function stepInto(schema: AnySchema, held: unknown, step: string | number): AnySchema | undefined {
  if (schema.type === 'union' || schema.type === 'variant') {
    const meant = likelyAlternative(schema, held);
    return meant === undefined ? undefined : stepInto(unwrapped(meant), held, step);
  }
  if (schema.entries !== undefined) return schema.entries[String(step)];
  if (schema.items !== undefined) return schema.items[Number(step)];
  return schema.item ?? schema.value;
}
