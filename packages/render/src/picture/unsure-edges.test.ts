import { curveLength } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';
import { expect, test } from 'vitest';
import type { DrawingElement } from '../drawing/model.js';
import { loadFontBook } from '../node.js';
import { sampleHide } from '../sample/sample-hide.js';
import { HIDE_EDGE_MM } from '../sheet/palette.js';
import { drawHide } from './draw-hide.js';

const fonts = loadFontBook();
const SIDE = sampleHide({ id: 'side-1', kind: 'side', seed: 1, flaws: 0 });

function unsureLayer(hide: Hide): readonly DrawingElement[] {
  const { layers } = drawHide({ hide, fonts });
  return layers.find(({ name }) => name === 'unsure edges')?.elements ?? [];
}

test('when an edge is unsure by 3 mm only, it is still seen beside the outline of a reduced picture', () => {
  const { start, segments } = SIDE.outline;
  const line = [start, ...segments.slice(0, 2).map(({ to }) => to)];
  const [glow] = unsureLayer({ ...SIDE, unsureEdges: [{ line, offByMm: 3 }] });
  if (glow?.kind !== 'path') throw new Error('Nothing is drawn for the unsure edge.');
  expect(glow.style.stroke!.widthMm).toBeGreaterThan(3 * HIDE_EDGE_MM);
  expect(curveLength(glow.curves[0]!)).toBeGreaterThan(0);
});

test('when no edge is unsure, nothing glows', () => {
  expect(unsureLayer({ ...SIDE, unsureEdges: [] })).toEqual([]);
});
