import { runNest } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../model/layout.js';
import type { Order, OrderPiece } from '../model/order.js';
import { nestProblemFor } from '../order/problem.js';
import { resolveOrder } from '../order/resolve-order.js';
import type { NamedHide } from '../order/sheets.js';
import { resolvePieces } from '../pieces/resolve-pieces.js';
import { plainArticle, plainHide, plainOrder, plainOrderPiece, rectangleCurve } from '../testing/plain.js';
import { checkLayout } from './check-layout.js';
import { layoutFrom } from './layout-from.js';

/** Orders laid by the search, from the order to the checked layout. */

const BACKBONE = {
  backbone: [
    { x: 0, y: 0 },
    { x: 700, y: 0 },
  ],
};
const HIDES: readonly NamedHide[] = [
  { file: 'hide.json', hide: plainHide('hide-1', rectangleCurve(0, 0, 700, 400), BACKBONE) },
];

function strap(name: string, widthMm: number, lengthMm: number, count: number): OrderPiece {
  const holes = { count: 5, spacingMm: 20, diameterMm: 4, fromEndMm: 50 };
  const numbers = { widthMm, lengthMm, holeEnd: 'pointed', buckleEnd: 'round', holes } as const;
  return plainOrderPiece(name, {
    part: 'strap',
    from: { kind: 'strap', strap: numbers },
    count,
    inLane: true,
  });
}

function lay(order: Order, joins = 0): Layout {
  const resolved = resolveOrder(order);
  const { pieces } = resolvePieces(resolved, () => ({ pieces: [] }));
  const budget = { seed: 1, streams: 1, joins };
  const problem = nestProblemFor({ order: resolved, pieces, hides: HIDES, budget });
  const answer = runNest(problem.problem);
  const origin = { version: '0.1.0', seed: 1, streams: 1 };
  return layoutFrom({ order: resolved, pieces, hides: HIDES, problem, answer, origin });
}

describe('when an order has straps in lanes', () => {
  const pieces = [
    strap('belt', 38, 560, 3),
    strap('loop', 38, 250, 2),
    plainOrderPiece('patch', { count: 4 }),
  ];
  const order = plainOrder([plainArticle('set', pieces)]);

  test('the layout has lanes with all of them, cut first, and is proven', () => {
    const layout = lay(order);
    expect(layout.unplaced).toEqual([]);
    expect(layout.lanes.flatMap(({ rows }) => rows.flatMap(({ straps }) => straps))).toHaveLength(5);
    expect(layout.cuttingOrder[0]!.kind).toBe('straight edge');
    expect(checkLayout(layout, HIDES)).toMatchObject({ violations: [], proven: true });
  });

  test('a laser keeps its kerf between them; sharing lines all the same is refused', () => {
    const cutting = { method: 'laser', gapMm: 1, edgeMm: 5, voidMm: 4, kerfMm: 0.2 };
    const layout = lay({ ...order, cutting });
    expect(new Set(layout.lanes.map(({ kerfMm }) => kerfMm))).toEqual(new Set([0.2]));
    expect(checkLayout(layout, HIDES)).toMatchObject({ violations: [], proven: true });
    const shared = { ...lay(order), order: layout.order };
    expect(checkLayout(shared, HIDES).violations).toMatchObject([
      { rule: 'lane', measured: 0, required: 0.2 },
    ]);
  });

  test('one that is longer than the hide is told of with its reason', () => {
    const long = plainOrder([plainArticle('set', [strap('rein', 25, 900, 1), ...pieces])]);
    const layout = lay(long);
    expect(layout.unplaced).toMatchObject([{ piece: 'rein', reason: 'larger-than-every-sheet' }]);
    expect(checkLayout(layout, HIDES).violations.filter(({ rule }) => rule !== 'count')).toEqual([]);
  });
});

describe('when a leather is prepared whole', () => {
  test('its pieces lie in rough cuts, straps and all other pieces outside, and the layout is proven', () => {
    const pieces = [
      strap('belt', 25, 500, 2),
      plainOrderPiece('panel', { leather: 'dyed', count: 6, marginMm: 10 }),
      plainOrderPiece('patch', { count: 5 }),
    ];
    const plain = plainOrder([plainArticle('bag', pieces)]);
    const preparation = { name: 'dyed black', bothSides: true };
    const dyed = { ...plain.leathers[0]!, name: 'dyed', preparation };
    const layout = lay({ ...plain, leathers: [...plain.leathers, dyed] }, 1);
    expect(layout.unplaced).toEqual([]);
    expect(layout.roughCuts.flatMap(({ members }) => members.map(({ piece }) => piece))).toEqual(
      Array.from({ length: 6 }, () => 'panel'),
    );
    expect(layout.roughCuts.every((cut) => cut.preparation === 'dyed black')).toBe(true);
    expect(checkLayout(layout, HIDES)).toMatchObject({ violations: [], proven: true });
  });
});
