import { expect, test } from 'vitest';
import type { Layout } from '@hidebound/leather';
import type { Drawing } from '../drawing/model.js';
import { loadFontBook } from '../node.js';
import { textsOf } from '../sample/read-drawing.js';
import { sampleHide } from '../sample/sample-hide.js';
import { sampleLayout } from '../sample/sample-layout.js';
import { drawCuttingSheets } from './cutting-sheet.js';

const fonts = loadFontBook();
const side = sampleHide({ id: 'side-07', kind: 'side', seed: 3, flaws: 3 });
const shoulder = sampleHide({ id: 'shoulder-02', kind: 'shoulder', seed: 4, flaws: 3 });
const layout = sampleLayout({ hides: [side, shoulder], sets: 1, seed: 1 });

function wordsOf(sheet: Drawing | undefined): string[] {
  return sheet === undefined ? [] : textsOf(sheet).map((text) => text.text);
}

function draw(changed: Layout): Drawing[] {
  return drawCuttingSheets({ layout: changed, hides: [side, shoulder], page: 'A4', fonts });
}

test('when there are several hides, the last page lists them and says which pieces make up each set', () => {
  const words = wordsOf(draw(layout).at(-1));
  expect(words).toContain('whole order');
  expect(words).toContain('side-07');
  expect(words).toContain('shoulder-02');
  expect(words).toContain('Yield of all hides');
  for (const { name } of layout.order.articles) expect(words).toContain(`Sets: ${name}`);
});

test('when something did not fit, the page of the whole order says what and why before all else', () => {
  const [first] = layout.placements;
  const copy = { article: first!.article, piece: first!.piece, set: 9, copy: 1, mirrored: false };
  const words = wordsOf(draw({ ...layout, unplaced: [{ ...copy, reason: 'no-room' }] }).at(-1));
  expect(words.indexOf('Did not fit: 1')).toBe(0);
  expect(words.join(' ')).toContain('no room left');
});

test('when nothing could be laid, there is one page, with all that did not fit', () => {
  const unplaced = layout.placements.map((each) => ({ ...each, reason: 'no-leather-good-enough' as const }));
  const empty = {
    ...layout,
    hides: [],
    placements: [],
    cuttingOrder: [],
    offcuts: [],
    lanes: [],
    roughCuts: [],
    unplaced,
    yield: { ...layout.yield, hides: [] },
  };
  const sheets = draw(empty);
  expect(sheets).toHaveLength(1);
  const words = wordsOf(sheets[0]);
  expect(words).toContain(`Did not fit: ${unplaced.length}`);
  expect(words).toContain('nothing could be laid');
  expect(words).not.toContain('Yield of all hides');
});
