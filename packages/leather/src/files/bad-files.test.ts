import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { LeatherError } from '../leather-error.js';
import type { FormatKind } from './envelope.js';
import { ROUND_TRIPS } from './test-formats.js';

const FOLDER = new URL('../../../../fixtures/formats/', import.meta.url);

interface Expected {
  readonly code: string;
  readonly sentence: string;
}

const expected = JSON.parse(readFileSync(new URL('bad-expected.json', FOLDER), 'utf8')) as Record<
  string,
  Expected
>;

describe('broken files', () => {
  test('when a broken file is added, the table says what to expect of it', () => {
    expect(Object.keys(expected).sort()).toEqual(readdirSync(new URL('bad/', FOLDER)).sort());
  });

  test.each(Object.entries(expected))(
    'when the file is %s, it is refused with its one sentence',
    (name, wanted) => {
      const text = readFileSync(new URL(`bad/${name}`, FOLDER), 'utf8');
      const kind = name.split('.')[1] as FormatKind;
      let error: unknown;
      try {
        ROUND_TRIPS[kind].parse(text, { file: name });
      } catch (thrown) {
        error = thrown;
      }
      expect(error).toBeInstanceOf(LeatherError);
      const { code, message, place } = error as LeatherError;
      expect({ code, sentence: message }).toEqual(wanted);
      expect(place?.file).toBe(name);
    },
  );
});
