import { expect, test } from 'vitest';
import type { Layout } from '../model/layout.js';
import { layoutMark } from './layout-mark.js';

const PLACED = {
  article: 'bag',
  piece: 'front',
  set: 1,
  copy: 1,
  mirrored: false,
  hide: 'side',
  x: 10,
  y: 20,
  rotationDeg: 30,
};

function layoutWith(place: Partial<typeof PLACED>): Layout {
  const layout = {
    hides: [{ id: 'side', hash: 'aa', file: 'side.hide.json' }],
    pieces: [{ article: 'bag', piece: 'front', hash: 'bb' }],
    placements: [{ ...PLACED, ...place }],
    lanes: [],
    roughCuts: [],
  };
  return layout as unknown as Layout;
}

test('when a piece lies elsewhere, the mark is another one', () => {
  const mark = layoutMark(layoutWith({}));
  expect(mark).toMatch(/^[0-9a-f]{6}$/);
  expect(layoutMark(layoutWith({}))).toBe(mark);
  for (const place of [{ x: 10.001 }, { rotationDeg: 30.01 }, { hide: 'bend' }, { mirrored: true }]) {
    expect(layoutMark(layoutWith(place))).not.toBe(mark);
  }
});
