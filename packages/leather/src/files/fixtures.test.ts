import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import type { ValidateFunction } from 'ajv';
import { describe, expect, test } from 'vitest';
import { createRandom } from '@hidebound/geometry';
import { parse as parseYaml } from 'yaml';
import { LeatherError } from '../leather-error.js';
import type { LeatherErrorCode } from '../leather-error.js';
import { describeFormats } from './describe.js';
import { PUBLISHED_FORMATS } from './formats.js';
import type { PublishedFormat } from './formats.js';
import { jsonSchemaOf } from './published-schema.js';
import { alternatives, asAnySchema, likelyAlternative, unwrapped } from './schema/walk.js';
import type { AnySchema } from './schema/walk.js';
import { ROUND_TRIPS } from './test-formats.js';

const FOLDER = new URL('../../../../fixtures/formats/', import.meta.url);

function fixtureText(format: PublishedFormat): string {
  const ending = format.writtenBy === 'people' ? 'yaml' : 'json';
  return readFileSync(new URL(`every-field.${format.kind}.${ending}`, FOLDER), 'utf8');
}

/** Every key of a schema, once for each group that has it. */
function allKeys(schema: AnySchema, path: string, keys: Map<AnySchema, Map<string, string>>): void {
  const base = unwrapped(schema);
  for (const [key, entry] of Object.entries(base.entries ?? {})) {
    const known = keys.get(base.entries as unknown as AnySchema) ?? new Map<string, string>();
    keys.set(base.entries as unknown as AnySchema, known);
    if (known.has(key)) continue;
    known.set(key, `${path}.${key}`);
    allKeys(entry, `${path}.${key}`, keys);
  }
  for (const inner of [...(base.items ?? []), ...alternatives(base)]) allKeys(inner, path, keys);
  if (base.item !== undefined) allKeys(base.item, `${path}[]`, keys);
  if (base.type === 'record') allKeys(base.value!, `${path}.*`, keys);
}

/** Takes off the keys that a value uses. */
function useKeys(schema: AnySchema, value: unknown, keys: Map<AnySchema, Map<string, string>>): void {
  const base = unwrapped(schema);
  if (typeof value !== 'object' || value === null) return;
  if (base.type === 'union' || base.type === 'variant') {
    const meant = likelyAlternative(base, value);
    if (meant !== undefined) useKeys(meant, value, keys);
    return;
  }
  if (Array.isArray(value)) {
    value.forEach((item, i) => {
      const inner = base.items?.[i] ?? base.item;
      if (inner !== undefined) useKeys(inner, item, keys);
    });
    return;
  }
  for (const [key, held] of Object.entries(value)) {
    keys.get(base.entries as unknown as AnySchema)?.delete(key);
    const inner = base.entries?.[key] ?? (base.type === 'record' ? base.value : undefined);
    if (inner !== undefined) useKeys(inner, held, keys);
  }
}

describe.each(PUBLISHED_FORMATS)('$kind', (format) => {
  const { parse, rewrite } = ROUND_TRIPS[format.kind];
  const text = fixtureText(format);

  test('when the schema has a key, the fixture uses it', () => {
    const keys = new Map<AnySchema, Map<string, string>>();
    const schema = asAnySchema(format.schema);
    allKeys(schema, format.kind, keys);
    expect(keys.size).toBeGreaterThan(0);
    useKeys(schema, parseYaml(text), keys);
    expect([...keys.values()].flatMap((left) => [...left.values()])).toEqual([]);
  });

  test('when a file is written, read and written again, its bytes stay', () => {
    const once = rewrite(text);
    expect(rewrite(once)).toBe(once);
    if (format.writtenBy === 'Hidebound') expect(once).toBe(text);
  });

  test('when a file is read, written and read, the values stay', () => {
    expect(parse(rewrite(text), { file: 'again' })).toEqual(parse(text, { file: 'first' }));
  });

  test('when a group or key is described, it says what it means', () => {
    const described = describeFormats().find(({ kind }) => kind === format.kind)!;
    for (const field of described.fields) {
      expect(field.meaning, field.path).not.toBe('');
      expect(field.value, field.path).not.toBe('anything');
    }
  });

  test('when a file is changed at random, reader and published schema judge alike', () => {
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(jsonSchemaOf(format));
    const value: unknown = parseYaml(text);
    expect(validate(value), JSON.stringify(validate.errors)).toBe(true);
    const random = createRandom(20);
    const seen = { accepted: 0, refused: 0 };
    for (let i = 0; i < CHANGES; i += 1) {
      const changed = structuredClone(value) as object;
      const what = changeSomething(changed, random);
      seen[judgeBoth(validate, parse, changed, what)] += 1;
    }
    expect(seen.refused).toBeGreaterThan(CHANGES / 4);
  });
});

const CHANGES = 60;

/** What a schema can't say: the reader may refuse for these what the schema lets pass. */
const BEYOND_A_SCHEMA: ReadonlySet<LeatherErrorCode> = new Set<LeatherErrorCode>([
  'ambiguous-area',
  'ambiguous-comma',
  'ambiguous-pitch',
  'article-duplicate',
  'bad-angle',
  'bad-length',
  'bad-money',
  'bad-thickness',
  'bundle-content',
  'bundle-path',
  'curve-not-closed',
  'fixed-needs-angle',
  'hide-duplicate-id',
  'hide-flaw-outside',
  'hide-flaw-without-effect',
  'hide-no-area',
  'hide-open-line',
  'hide-opening-outside',
  'hide-openings-overlap',
  'hide-outline-crosses',
  'hide-reading-outside',
  'hide-short-line',
  'hide-zone-outside',
  'hints-corners',
  'hints-photo-twice',
  'hints-readings',
  'hints-two-references',
  'journal-change',
  'journal-finished',
  'journal-number',
  'journal-undo',
  'layout-duplicate',
  'layout-no-such-block',
  'layout-no-such-hide',
  'layout-no-such-piece',
  'missing-key',
  'no-such-leather',
  'no-such-piece',
  'out-of-range',
  'piece-duplicate',
  'piece-mirrored-count',
  'piece-source',
  'piece-without-pattern',
  'pitch-by-the-inch',
  'seam-target',
  'sheet-twice',
  'strap-does-not-fit',
]);

/** Lengths of 0 or less, days that no month has, percentages: ranges behind a text that the schema can't see into. */
const RANGES_BEHIND_TEXT = /above 0|a day such as|0 to 180 degrees|percentage|0 to 1 km|minMm/;

function judgeBoth(
  validate: ValidateFunction,
  parse: (text: string, options: { readonly file: string }) => unknown,
  changed: object,
  what: string,
): 'accepted' | 'refused' {
  const bySchema = validate(changed);
  let error: LeatherError | undefined;
  try {
    parse(JSON.stringify(changed), { file: 'changed' });
  } catch (thrown) {
    if (!(thrown instanceof LeatherError)) throw thrown;
    error = thrown;
  }
  if (!bySchema) {
    expect(error, `${what}: the reader accepts ${JSON.stringify(validate.errors?.[0])}`).toBeDefined();
    return 'refused';
  }
  if (error === undefined) return 'accepted';
  const isBeyond =
    BEYOND_A_SCHEMA.has(error.code) ||
    (error.code === 'wrong-value' && RANGES_BEHIND_TEXT.test(error.message));
  expect(isBeyond, `${what}: only the reader refuses: ${error.code}: ${error.message}`).toBe(true);
  return 'refused';
}

const ODD_VALUES = [null, true, -1, 0, 0.5, 1e9, '', 'x', '4 cm', [], {}, [1], { a: 1 }] as const;

type Random = ReturnType<typeof createRandom>;

function pick<Item>(list: readonly Item[], random: Random): Item {
  return list[Math.min(list.length - 1, Math.floor(random.next() * list.length))]!;
}

/** Drops, adds or replaces one thing anywhere below the top level, and says what it did. */
function changeSomething(root: object, random: Random): string {
  const holders: object[] = [];
  const visit = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    holders.push(value);
    Object.values(value).forEach(visit);
  };
  visit(root);
  const holder = pick(holders, random) as Record<string, unknown>;
  // The format line has sentences and tests of its own.
  const keys = Object.keys(holder).filter((key) => key !== 'format');
  const key = keys.length === 0 ? undefined : pick(keys, random);
  const kind = Math.floor(random.next() * 4);
  if (key === undefined || kind === 0) return addKey(holder);
  const held = JSON.stringify(holder[key]).slice(0, 60);
  if (kind === 1) {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
    return `dropped ${key}: ${held}`;
  }
  const odd = pick(ODD_VALUES, random);
  holder[key] = structuredClone(odd);
  return `made ${key}: ${held} into ${JSON.stringify(odd)}`;
}

function addKey(holder: Record<string, unknown>): string {
  if (Array.isArray(holder)) holder.push('surplus');
  else holder.surplus = 1;
  return 'added something';
}
