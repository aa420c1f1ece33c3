import { expect, test } from 'vitest';
import { PUBLISHED_FORMATS } from '../../files/formats.js';
import { parseHide } from '../../files/hide-file.js';
import { parseOrder } from '../../files/order-file.js';
import { LeatherError } from '../../leather-error.js';
import { sentenceFor } from '../catalogue.js';
import { expectedGerman } from './expected.js';
import { germanLanguage } from './german.js';

/** Every text that a schema of a file has for what would be right. */
function wordsOfSchemas(): string[] {
  const words = new Set<string>();
  const seen = new Set<unknown>();
  const visit = (part: unknown): void => {
    if (typeof part !== 'object' || part === null || seen.has(part)) return;
    seen.add(part);
    for (const [key, value] of Object.entries(part)) {
      if (key === 'message' && typeof value === 'string' && !value.startsWith('\u0001')) words.add(value);
      visit(value);
    }
  };
  for (const { schema } of PUBLISHED_FORMATS) visit(schema);
  return [...words].sort();
}

const QUOTED = /"[^"]*"/g;
/** "from", "to", "length" and the like are keys of files; "an" and "a" are German words or digits, too. */
const ENGLISH = /\b(the|and|or|of|with|at|least|most|such|each|one|list|number)\b/;

test.each(wordsOfSchemas())('when a file should say %s, that is told in German', (words) => {
  const german = expectedGerman(words);
  const isOnlyQuoted = words.replace(QUOTED, '') === '';
  if (!isOnlyQuoted) expect(german).not.toBe(words);
  expect(german.replace(QUOTED, '')).not.toMatch(ENGLISH);
  expect(german.match(QUOTED) ?? []).toEqual(words.match(QUOTED) ?? []);
  expect(german).not.toContain('$');
});

function refusalOf(read: () => unknown): LeatherError {
  try {
    read();
  } catch (error) {
    if (error instanceof LeatherError) return error;
    throw error;
  }
  throw new Error('Nothing was refused.');
}

test.each([
  [
    () => parseHide('{"format": "hidebound/hide@1", "id": }', { file: 'a.hide.json' }),
    'a.hide.json, Zeile 1: Ab hier ist der Text kein JSON mehr: Da steht „}“, erwartet wird ein Wert.',
  ],
  [
    () => parseOrder('format: hidebound/order@1\nname: [1, 2]\n', { file: 'a.order.yaml' }),
    'a.order.yaml, Zeile 2, name: Hier steht eine Liste mit 2 Einträgen, gebraucht wird ein Name von 1 bis 200 Zeichen in einer Zeile.',
  ],
  [
    () => parseOrder('format: hidebound/order@1\nname: x\npiecess: {}\n', { file: 'a.order.yaml' }),
    /^a\.order\.yaml, Zeile 3, piecess: Der Schlüssel „piecess“ ist hier nicht bekannt\./,
  ],
])('when a file is refused, its sentence comes in German from the error', (read, words) => {
  const { said, params, place } = refusalOf(read);
  const told = sentenceFor({ code: said, params, ...(place && { place }) }, [], germanLanguage('de-DE'));
  if (typeof words === 'string') expect(told).toBe(words);
  else expect(told).toMatch(words);
});

test('when a quantity within a file is refused, its German sentence has the quantity', () => {
  const text = [
    'format: hidebound/order@1',
    'name: x',
    'version: 1',
    'date: 2026-03-21',
    'leathers: { body: { hides: [a.hide.json] } }',
    'articles:',
    '  - name: bag',
    '    goods: bag',
    '    sets: 1',
    '    pieces:',
    '      - { name: strap, part: strap, leather: body, strap: { width: "2 ells", length: 600 } }',
  ].join('\n');
  const { said, params } = refusalOf(() => parseOrder(text, { file: 'a.order.yaml' }));
  expect(sentenceFor({ code: said, params }, [], germanLanguage('de-DE'))).toBe(
    '„2 ells“ ist keine Länge; Millimeter als bloße Zahl schreiben (40) oder eine Zahl mit Einheit in Anführungszeichen („4 cm“, „1 1/2 in“).',
  );
});
