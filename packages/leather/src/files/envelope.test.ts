import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { LeatherError } from '../leather-error.js';
import { openFile } from './envelope.js';
import type { FileFormat } from './envelope.js';
import { parseHide } from './hide-file.js';
import { group } from './schema/group.js';
import { LONGEST_YAML } from './text/text-tree.js';
import { YAML_SYNTAX } from './text/yaml-text.js';

const schema = group({
  format: [v.string(), 'What this file is.'],
  width: [v.number('a width in mm'), 'Width, mm.'],
});

/** A workshop file whose third version says `width` where the second said `breadth`, and the first gave it in cm. */
const thirdVersion: FileFormat<typeof schema> = {
  kind: 'workshop',
  syntax: YAML_SYNTAX,
  schema,
  upgrades: [
    ({ breadthCm, ...rest }) => ({ ...rest, breadth: Number(breadthCm) * 10 }),
    ({ breadth, ...rest }) => ({ ...rest, width: breadth }),
  ],
};

const open = (text: string) => openFile(text, 'w.yaml', thirdVersion).value;

function errorOf(run: () => unknown): LeatherError {
  try {
    run();
  } catch (error) {
    if (error instanceof LeatherError) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('the format line', () => {
  test('when a file is of an older version, it is upgraded step by step', () => {
    const newest = { format: 'hidebound/workshop@3', width: 40 };
    expect(open('format: hidebound/workshop@1\nbreadthCm: 4')).toEqual(newest);
    expect(open('format: hidebound/workshop@2\nbreadth: 40')).toEqual(newest);
    expect(open('format: hidebound/workshop@3\nwidth: 40')).toEqual(newest);
  });

  test('when a file is of a newer version, the words say so and name both', () => {
    const error = errorOf(() => open('format: hidebound/workshop@4\nwidth: 40'));
    expect(error.code).toBe('format-newer');
    expect(error.message).toContain('newer Hidebound (hidebound/workshop@4)');
    expect(error.message).toContain('hidebound/workshop@3');
  });

  test('when an older file is wrong, the line is still found', () => {
    const error = errorOf(() => open('format: hidebound/workshop@3\n\nwidth: wide'));
    expect(error.place).toEqual({ file: 'w.yaml', line: 3, at: 'width' });
  });

  test('when a file starts with a byte order mark or has Windows line ends, it is read', () => {
    expect(open('\uFEFFformat: hidebound/workshop@3\r\nwidth: 40\r\n').width).toBe(40);
  });

  test('when a text is too long, it is refused before it is read', () => {
    const text = `format: hidebound/workshop@3\nwidth: 40\n#${'x'.repeat(LONGEST_YAML)}`;
    const error = errorOf(() => open(text));
    expect(error.code).toBe('too-large');
    expect(error.message).toContain('at most 5 MB');
  });

  test('when a broken hide is told of, the error carries file, line and key apart from the sentence', () => {
    const error = errorOf(() =>
      parseHide('{"format": "hidebound/hide@1",\n "id": 3}', { file: 'a.hide.json' }),
    );
    expect(error.name).toBe('LeatherError');
    expect(error.place).toEqual({ file: 'a.hide.json', line: 2, at: 'id' });
  });
});
