import type { CopyRef, NestAnswer, Placement, RoughCut } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../model/layout.js';
import { nestProblemFor } from '../order/problem.js';
import { resolveOrder } from '../order/resolve-order.js';
import type { NamedHide } from '../order/sheets.js';
import { resolvePieces } from '../pieces/resolve-pieces.js';
import { plainArticle, plainHide, plainOrder, plainOrderPiece, rectangleCurve } from '../testing/plain.js';
import { checkLayout } from './check-layout.js';
import { layoutFrom } from './layout-from.js';

const HIDES: readonly NamedHide[] = [
  { file: 'hide.json', hide: plainHide('hide-1', rectangleCurve(0, 0, 600, 400)) },
];
const PLAIN = plainOrder([
  plainArticle('bag', [plainOrderPiece('panel', { count: 2, marginMm: 10 }), plainOrderPiece('patch')]),
]);
const ORDER = {
  ...PLAIN,
  leathers: PLAIN.leathers.map((leather) => ({
    ...leather,
    preparation: { name: 'dyed brown', bothSides: false },
  })),
};

/** A layout with two panels side by side in one block, and a patch apart. */
function layoutWith(outline: RoughCut['outline']): Layout {
  const order = resolveOrder(ORDER);
  const { pieces } = resolvePieces(order, () => ({ pieces: [] }));
  const budget = { seed: 1, streams: 1, joins: 0 };
  const problem = nestProblemFor({ order, pieces, hides: HIDES, budget });
  const at = (item: string, copy: number, x: number): Placement => ({
    item,
    set: 1,
    copy,
    sheet: 'hide-1',
    x,
    y: 100,
    rotationDeg: 0,
  });
  const members: CopyRef[] = [1, 2].map((copy) => ({ item: 'bag/panel', set: 1, copy }));
  const answer: NestAnswer = {
    placements: [at('bag/panel', 1, 100), at('bag/panel', 2, 210), at('bag/patch', 1, 400)],
    lanes: [],
    roughCuts: [{ id: 'body 1', sheet: 'hide-1', group: 'body', outline, marginMm: 10, members }],
    unplaced: [],
    joins: 0,
  };
  const origin = { version: '0.1.0', seed: 1, streams: 1 };
  return layoutFrom({ order, pieces, hides: HIDES, problem, answer, origin });
}

function rectangle(x0: number, y0: number, x1: number, y1: number): RoughCut['outline'] {
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}

/** Panels are 100 by 60 mm, about their middle; two of them at (100, 100) and (210, 100), margins of 10 mm. */
const AROUND = rectangle(40, 60, 270, 140);

describe('a layout with a rough cut', () => {
  const layout = layoutWith(AROUND);

  test('when an answer has a block, the layout carries it with its leather, preparation and pieces', () => {
    expect(layout.roughCuts).toEqual([
      {
        id: 'body 1',
        hide: 'hide-1',
        leather: 'body',
        preparation: 'dyed brown',
        outline: AROUND,
        marginMm: 10,
        members: [1, 2].map((copy) => ({ article: 'bag', piece: 'panel', set: 1, copy, mirrored: false })),
      },
    ]);
  });

  test('when it is checked from the file alone, it is proven; when a margin is missing, it is not', () => {
    expect(checkLayout(layout, HIDES)).toMatchObject({ violations: [], proven: true });
    const narrow = checkLayout(layoutWith(rectangle(41, 60, 270, 140)), HIDES);
    expect(narrow.proven).toBe(false);
    expect(narrow.violations).toMatchObject([{ rule: 'rough-cut', measured: 9, required: 10 }]);
  });

  test('when it is cut, the block comes first and its pieces last', () => {
    const steps = layout.cuttingOrder.map(({ kind, of, pieces }) => [
      kind,
      of,
      pieces.map(({ piece }) => piece),
    ]);
    expect(steps).toEqual([
      ['rough cut', 'body 1', ['panel', 'panel']],
      ['piece', undefined, ['patch']],
      ['piece', undefined, ['panel']],
      ['piece', undefined, ['panel']],
    ]);
  });
});
