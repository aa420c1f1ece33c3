import * as v from 'valibot';

/** A key of a group: its schema, and what it means, for the published schema and the documentation. */
export type Field = readonly [schema: v.GenericSchema, words: string];
export type Fields = Readonly<Record<string, Field>>;

export type EntriesOf<Group extends Fields> = { -readonly [Key in keyof Group]: Group[Key][0] };
export type GroupSchema<Group extends Fields> = v.StrictObjectSchema<EntriesOf<Group>, undefined> &
  GroupWords;

/** What a group's keys mean, beside its schema. */
export interface GroupWords {
  readonly fieldWords: Readonly<Record<string, string>>;
}

/** A group of known keys, in the order in which they are written. A list is not a group (valibot alone lets it pass). */
export function group<const Group extends Fields>(fields: Group): GroupSchema<Group> {
  const entries = {} as EntriesOf<Group>;
  const fieldWords: Record<string, string> = {};
  for (const key of Object.keys(fields) as (keyof Group & string)[]) {
    const field = fields[key]!;
    entries[key] = field[0];
    fieldWords[key] = field[1];
  }
  return { ...withoutLists(v.strictObject(entries)), fieldWords };
}

function withoutLists<Schema extends v.GenericSchema>(plain: Schema): Schema {
  const run: v.GenericSchema['~run'] = (dataset, config) =>
    plain['~run'](Array.isArray(dataset.value) ? { value: null } : dataset, config);
  return { ...plain, '~run': run };
}

/** A group whose keys are names that the user gives. */
export function mapOf<Value extends v.GenericSchema>(
  key: v.GenericSchema<string>,
  value: Value,
  words: string,
) {
  return withoutLists(v.record(key, value, words));
}

/** A schema that knows how its value is written in a stored file. */
export interface Encoder<Value> {
  readonly encode: (value: Value) => unknown;
}

/** Ties a reading schema to its way back. */
export function stored<Schema extends v.GenericSchema>(
  schema: Schema,
  encode: (value: v.InferOutput<Schema>) => unknown,
): Schema & Encoder<v.InferOutput<Schema>> {
  return { ...schema, encode };
}

/** A list that may be left out. */
export function listOf<Item extends v.GenericSchema>(item: Item) {
  return v.optional(v.array(item, LIST_WORDS), []);
}

/** A list that must be there, with at least so many entries. */
export function listOfAtLeast<Item extends v.GenericSchema>(least: number, item: Item) {
  const words = `a list of at least ${least} ${least === 1 ? 'entry' : 'entries'}`;
  return v.pipe(v.array(item, words), v.minLength(least, words));
}

export const LIST_WORDS = 'a list';

/** A list that must be there. */
export function requiredList<Item extends v.GenericSchema>(item: Item) {
  return v.array(item, LIST_WORDS);
}

export const optional = v.exactOptional;
