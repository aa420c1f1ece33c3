import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { checkLayout, parseHide, parseLayout, writeHide, writeLayout } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { HAND_WRITTEN_HIDES, handWrittenLayout } from './support/hand-written-job.js';

const FOLDER = new URL('../fixtures/layouts/', import.meta.url);
const LAYOUT = 'hand-written.layout.json';

/** With UPDATE_FIXTURES set, the file is written anew and the run fails, so that nobody updates by accident. */
function expectSameFile(name: string, text: string): void {
  const file = new URL(name, FOLDER);
  const stored = existsSync(file) ? readFileSync(file, 'utf8') : '';
  if (stored !== text && process.env['UPDATE_FIXTURES'] !== undefined) {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(file, text);
    throw new Error(`${name} was written anew; look at the difference and run again.`);
  }
  expect(stored).toBe(text);
}

describe('the hand-written layout', () => {
  for (const { file, hide } of HAND_WRITTEN_HIDES) {
    test(`when ${file} is written, it is the file at hand`, () => expectSameFile(file, writeHide(hide)));
  }

  test('when it is written, it is the file at hand', () =>
    expectSameFile(LAYOUT, writeLayout(handWrittenLayout())));

  test('when it is read from its files and checked, it is proven', () => {
    const read = (name: string): string => readFileSync(new URL(name, FOLDER), 'utf8');
    const layout = parseLayout(read(LAYOUT), { file: LAYOUT });
    const hides = layout.hides.map(({ file }) => ({ file, hide: parseHide(read(file), { file }) }));
    const { violations, diagnostics, proven } = checkLayout(layout, hides);
    expect(violations).toEqual([]);
    expect(diagnostics).toEqual([]);
    expect(proven).toBe(true);
    expect(layout.placements.filter(({ locked }) => locked)).toHaveLength(1);
    expect(layout.lanes).toHaveLength(1);
    expect(layout.roughCuts).toHaveLength(1);
    expect(new Set(hides.map(({ hide }) => hide.lot)).size).toBe(2);
  });
});
