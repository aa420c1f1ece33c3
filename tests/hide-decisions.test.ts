import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { ROOT, expectOneSentence, hideboundHere, testFolder } from './cli-support.js';

const folder = testFolder();
const file = join(folder, 'side.hide.json');

interface Written {
  readonly flaws: readonly { readonly id: string }[];
  readonly candidates: readonly { readonly id: string }[];
  readonly guessed?: readonly string[];
}
const written = (): Written => JSON.parse(readFileSync(file, 'utf8')) as Written;

beforeEach(() => {
  copyFileSync(join(ROOT, 'fixtures', 'formats', 'every-field.hide.json'), file);
});

describe('what is decided of a traced hide', () => {
  test('when a possible flaw is taken and a guess confirmed, the hide file says so', async () => {
    const before = written();
    const [candidate] = before.candidates;
    const run = await hideboundHere(['hide', file, '--take', candidate!.id, '--confirm', 'backbone']);
    expect(run.status, run.stderr).toBe(0);
    const after = written();
    expect(after.flaws).toHaveLength(before.flaws.length + 1);
    expect(after.candidates.map(({ id }) => id)).not.toContain(candidate!.id);
    expect(after.guessed).toEqual(['cut']);
    expect(run.stdout).toContain(`${candidate!.id} is the flaw `);
  });

  test('when another file is named, the first one stays as it was', async () => {
    const bytes = readFileSync(file);
    const other = join(folder, 'other.hide.json');
    const run = await hideboundHere(['hide', file, '--drop', 'all', '--out', other]);
    expect(run.status, run.stderr).toBe(0);
    expect(readFileSync(file).equals(bytes)).toBe(true);
    expect((JSON.parse(readFileSync(other, 'utf8')) as Written).candidates).toEqual([]);
  });

  test('when a possible flaw is not there, one sentence says which there are, and nothing is written', async () => {
    const bytes = readFileSync(file);
    const run = await hideboundHere(['hide', file, '--take', 'posible-99']);
    expect(run.status).toBe(3);
    expect(expectOneSentence(run)).toMatch(/has no possible flaw "posible-99".*it has /);
    expect(readFileSync(file).equals(bytes)).toBe(true);
  });

  test('when a drawing is decided on, it is not written over', async () => {
    const drawing = join(folder, 'hide.svg');
    copyFileSync(join(ROOT, 'fixtures', 'demo', 'shoulder-traced.svg'), drawing);
    const run = await hideboundHere(['hide', drawing, '--drop', 'all']);
    expect(run.status).toBe(2);
    expect(expectOneSentence(run)).toMatch(/--out/);
  });
});
