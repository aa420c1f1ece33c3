import { toJsonSchema } from '@valibot/to-json-schema';
import { PUBLISHED_FORMATS, SHARED_PARTS } from './formats.js';
import type { PublishedFormat } from './formats.js';
import type { GroupWords } from './schema/group.js';

/** A JSON Schema (draft 2020-12) as plain data. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** The published JSON Schema of each file format, by file name: "hide.schema.json". */
export function publishedSchemas(): Readonly<Record<string, JsonSchema>> {
  return Object.fromEntries(
    PUBLISHED_FORMATS.map((format) => [`${format.kind}.schema.json`, jsonSchemaOf(format)]),
  );
}

/**
 * What a schema can say of a format: keys, types, ranges, patterns. What it can't: that a text with a unit reads as a
 * quantity, that a line does not cross itself, that a name leads somewhere; readers say these.
 */
export function jsonSchemaOf(format: PublishedFormat): JsonSchema {
  const { $schema, $defs, ...body } = toJsonSchema(format.schema, {
    target: 'draft-2020-12',
    typeMode: 'input',
    ignoreActions: ['check'],
    definitions: SHARED_PARTS,
    overrideSchema: ({ valibotSchema, jsonSchema }) =>
      withFieldWords(jsonSchema as JsonSchema, (valibotSchema as Partial<GroupWords>).fieldWords),
  });
  const used = usedDefinitions(body, $defs ?? {});
  return {
    $schema,
    title: `Hidebound ${format.title.toLowerCase()} file (${format.fileName})`,
    description: format.purpose,
    ...body,
    ...(Object.keys(used).length === 0 ? {} : { $defs: used }),
  };
}

function withFieldWords(schema: JsonSchema, words: GroupWords['fieldWords'] | undefined) {
  const properties = schema.properties as Readonly<Record<string, JsonSchema>> | undefined;
  if (words === undefined || properties === undefined) return undefined;
  const described = Object.entries(properties).map(([key, value]) => [
    key,
    { ...value, description: words[key] },
  ]);
  return { ...schema, properties: Object.fromEntries(described) as Record<string, never> };
}

const REFERENCE = /"#\/\$defs\/([^"]+)"/g;

/** The definitions that a schema refers to, directly or through others, in their own order. */
function usedDefinitions(
  body: unknown,
  all: Readonly<Record<string, unknown>>,
): Readonly<Record<string, unknown>> {
  const wanted = new Set<string>();
  const collect = (part: unknown): void => {
    for (const [, name] of JSON.stringify(part).matchAll(REFERENCE)) {
      if (name === undefined || wanted.has(name)) continue;
      wanted.add(name);
      collect(all[name]);
    }
  };
  collect(body);
  return Object.fromEntries(Object.entries(all).filter(([name]) => wanted.has(name)));
}
