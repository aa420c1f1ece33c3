import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LeatherError } from '../../leather-error.js';
import { parseJsonText } from './json-text.js';
import { pathWords } from './text-tree.js';
import { parseYamlText } from './yaml-text.js';

function errorOf(run: () => unknown): LeatherError {
  try {
    run();
  } catch (error) {
    if (error instanceof LeatherError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('JSON text', () => {
  test('when a text is valid JSON, the value is the one that the engine’s own reader gives', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 6 }), fc.integer({ min: 0, max: 3 }), (json, indent) => {
        fc.pre(!/"(?:__proto__|constructor|toString|valueOf|hasOwnProperty)"/.test(json));
        const text = JSON.stringify(JSON.parse(json), null, indent);
        expect(parseJsonText(text, 'x').value).toEqual(JSON.parse(json));
      }),
      { seed: 8259, numRuns: 300 },
    );
  });

  test('when a text is broken somewhere, it is refused whenever the engine’s own reader refuses it', () => {
    const whole = '{"a": [1, -2.5e3, "x\\n\\u00e9"], "b": {"c": null, "d": true}}';
    for (let i = 0; i < whole.length; i += 1) {
      for (const change of ['', '"', ',', '0', '}', '\n', '\\']) {
        const text = whole.slice(0, i) + change + whole.slice(i + 1);
        let engine: unknown;
        let refusedByEngine = false;
        try {
          engine = JSON.parse(text);
        } catch {
          refusedByEngine = true;
        }
        if (refusedByEngine)
          expect(errorOf(() => parseJsonText(text, 'x')).code, text).toMatch(/^(not-json|cut-off)$/);
        else expect(parseJsonText(text, 'x').value, text).toEqual(engine);
      }
    }
  });

  test('when a text stops between two marks or within a text in quotes, it is told to be cut off', () => {
    const whole = '{"a": [1, "x\\n\\u00e9 "], "b": {"c": ""}}';
    for (let i = 1; i < whole.length; i += 1)
      for (const end of ['', '\n'])
        expect(errorOf(() => parseJsonText(whole.slice(0, i) + end, 'x')).code, whole.slice(0, i)).toBe(
          'cut-off',
        );
    expect(errorOf(() => parseJsonText('{"a": "x\ny"}', 'x')).code).toBe('not-json');
    expect(errorOf(() => parseJsonText('x', 'x')).code).toBe('not-json');
  });

  test('when a thing is looked for, its line is found, or that of the nearest thing above it', () => {
    const tree = parseJsonText('{\n "a": [\n  {"b": 1},\n  {"b":\n 2, "c": 3}\n ]\n}', 'x');
    expect(tree.lineOf(['a', 1, 'c'])).toBe(5);
    expect(tree.lineOf(['a', 1, 'b'])).toBe(4);
    expect(tree.lineOf(['a', 1, 'nothing'])).toBe(4);
    expect(tree.lineOf([])).toBe(1);
  });

  test('when a text holds 100,000 groups of points on as many lines, it is read', () => {
    const text = JSON.stringify(
      Array.from({ length: 100_000 }, (_, i) => ({ to: [i, i / 8] })),
      null,
      1,
    );
    expect((parseJsonText(text, 'x').value as unknown[]).length).toBe(100_000);
  });
});

describe('YAML text', () => {
  test('when JSON is given, it is YAML', () => {
    expect(parseYamlText('{"a": [1, "x", null, true]}', 'x').value).toEqual({ a: [1, 'x', null, true] });
  });

  test('when words look like other things, they stay words: a day, no, on', () => {
    expect(parseYamlText('a: 2026-03-21\nb: no\nc: on', 'x').value).toEqual({
      a: '2026-03-21',
      b: 'no',
      c: 'on',
    });
  });

  test('when a few aliases repeat a part, it is read', () => {
    expect(parseYamlText('a: &r { w: 1 }\nb: *r\nc: *r', 'x').value).toEqual({
      a: { w: 1 },
      b: { w: 1 },
      c: { w: 1 },
    });
  });

  test.each([
    ['nested lists', '[', ']'],
    ['nested groups', '{a: ', '}'],
  ])('when %s go very deep, they are refused quickly', (_, open, close) => {
    const text = `a: ${open.repeat(50_000)}1${close.repeat(50_000)}`;
    expect(errorOf(() => parseYamlText(text, 'x')).code).toBe('too-deep');
  });

  test('when lists nest by dashes, they are refused quickly too', () => {
    expect(errorOf(() => parseYamlText('- '.repeat(2000) + 'x', 'x')).code).toBe('too-deep');
  });

  test('when nesting stays within what files need, it is read', () => {
    expect(parseYamlText(`a: ${'['.repeat(40)}1${']'.repeat(40)}`, 'x').value).toBeDefined();
  });

  test('when a thing is looked for, its line is found', () => {
    const tree = parseYamlText('# first\na:\n  - b: 1\n  - c: 2\n    d: 3\n', 'x');
    expect(tree.lineOf(['a', 1, 'd'])).toBe(5);
    expect(tree.lineOf(['a', 1])).toBe(4);
    expect(tree.lineOf(['a'])).toBe(2);
    expect(tree.lineOf(['z'])).toBe(1);
  });

  test.each([
    ['a: 1\na: 2', 'duplicate-key', 2],
    ['constructor: 1', 'reserved-key', 1],
    ['a: [1', 'not-yaml', 1],
    ['a: !!python/object x', 'not-yaml', 1],
    ['a: *nobody', 'not-yaml', 1],
    ['a: 1\n---\nb: 2', 'several-documents', undefined],
  ])('when the text is %j, it is refused as %s', (text, code, line) => {
    const error = errorOf(() => parseYamlText(text, 'x'));
    expect(error.code).toBe(code);
    expect(error.place?.line).toBe(line);
  });

  test('when characters are changed at random, it is read or refused, and never breaks', () => {
    const whole = 'a: &x [1, "two", { b: c }]\nd: *x\ne: |\n  text\n';
    fc.assert(
      fc.property(fc.nat(whole.length), fc.string({ maxLength: 4 }), (at, insert) => {
        const text = whole.slice(0, at) + insert + whole.slice(at + 1);
        try {
          parseYamlText(text, 'x');
        } catch (error) {
          expect(error).toBeInstanceOf(LeatherError);
        }
      }),
      { seed: 12, numRuns: 400 },
    );
  });
});

test('when a path is shown, keys with odd characters are quoted', () => {
  expect(pathWords(['articles', 0, 'pieces', 2, 'count'])).toBe('articles[0].pieces[2].count');
  expect(pathWords(['patterns', 'a b.svg', 'dpi'])).toBe('patterns["a b.svg"].dpi');
});
