import { runNest } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { Layout, PiecePlacement } from '../model/layout.js';
import type { Order } from '../model/order.js';
import { nestProblemFor } from '../order/problem.js';
import type { NamedHide } from '../order/sheets.js';
import { resolveOrder } from '../order/resolve-order.js';
import { resolvePieces } from '../pieces/resolve-pieces.js';
import {
  plainArticle,
  plainHide,
  plainOrder,
  plainOrderPiece,
  plainPiece,
  polygonCurve,
  rectangleCurve,
} from '../testing/plain.js';
import { checkLayout } from './check-layout.js';
import { layoutFrom } from './layout-from.js';

const WING = plainPiece(
  'wing',
  polygonCurve([
    [0, 0],
    [80, 0],
    [0, 60],
  ]),
);

const ORDER: Order = plainOrder([
  plainArticle(
    'bag',
    [
      plainOrderPiece('panel', { part: 'front', count: 2 }),
      plainOrderPiece('wing', {
        part: 'pocket',
        from: { kind: 'pattern', file: 'bag.svg', piece: 'wing' },
        count: 2,
        mirrored: 1,
      }),
    ],
    { sets: 2 },
  ),
]);

const HIDES: readonly NamedHide[] = [
  {
    file: 'hide.json',
    hide: plainHide('hide-1', rectangleCurve(0, 0, 600, 400), {
      backbone: [
        { x: 0, y: 200 },
        { x: 600, y: 200 },
      ],
      flaws: [
        { id: 'h', kind: 'hole', side: 'grain', shape: { kind: 'point', at: { x: 60, y: 60 }, radiusMm: 8 } },
        {
          id: 's',
          kind: 'scar',
          side: 'grain',
          shape: { kind: 'point', at: { x: 60, y: 300 }, radiusMm: 20 },
        },
      ],
    }),
  },
];

function lay(keep?: Layout, order: Order = ORDER): Layout {
  const resolved = resolveOrder(order);
  const { pieces } = resolvePieces(resolved, () => ({
    pieces: [{ piece: WING, source: { file: 'bag.svg' } }],
  }));
  const kept = keep === undefined ? {} : { keep };
  const budget = { seed: 7, streams: 1, joins: 0 };
  const problem = nestProblemFor({ order: resolved, pieces, hides: HIDES, budget, ...kept });
  const answer = runNest(problem.problem);
  const origin = { version: '0.1.0', seed: 7, effort: 0, streams: 1 };
  return layoutFrom({ order: resolved, pieces, hides: HIDES, problem, answer, origin, ...kept });
}

const keyOf = ({ piece, set, copy, mirrored }: PiecePlacement): string =>
  `${piece} ${set} ${copy} ${mirrored}`;
const errors = (layout: Layout): string[] =>
  checkLayout(layout, HIDES)
    .diagnostics.filter(({ severity }) => severity === 'error')
    .map(({ code }) => code);

describe('a layout that the search made', () => {
  const layout = lay();

  test('when it is checked, all is laid and proven', () => {
    expect(layout.unplaced).toEqual([]);
    expect(layout.placements).toHaveLength(8);
    expect(checkLayout(layout, HIDES)).toMatchObject({ violations: [], proven: true });
  });

  test('when its cutting order is read, every piece is cut once, the ones at the edge first', () => {
    const cut = layout.cuttingOrder.filter(({ kind }) => kind === 'piece').flatMap(({ pieces }) => pieces);
    expect(cut).toHaveLength(8);
    expect(layout.cuttingOrder.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  test('when its figures are read, the pieces cover what their outlines do', () => {
    expect(layout.yield.total.piecesMm2).toBeCloseTo(4 * 6000 + 4 * 2400, 0);
    expect(layout.yield.hides.map(({ hide }) => hide)).toEqual(['hide-1']);
  });

  test('when an offcut is left, it is a hide of its own within the parent', () => {
    expect(layout.offcuts.map(({ id, parent, cut }) => [id, parent, cut])).toEqual([
      ['hide-1a', 'hide-1', 'offcut'],
    ]);
  });

  test('when its hides lie elsewhere as seen from the layout, order and hides say so alike', () => {
    const resolved = resolveOrder(ORDER);
    const budget = { seed: 7, streams: 1, joins: 0 };
    const { pieces } = layout;
    const problem = nestProblemFor({ order: resolved, pieces, hides: HIDES, budget });
    const answer = { placements: [], lanes: [], roughCuts: [], unplaced: [], joins: 0 };
    const origin = { version: '0.1.0', seed: 7, streams: 1 };
    const fileFor = (file: string): string => `../${file}`;
    const moved = layoutFrom({ order: resolved, pieces, hides: HIDES, problem, answer, origin, fileFor });
    expect(moved.hides[0]!.file).toBe('../hide.json');
    expect(moved.order.leathers[0]!.hides).toEqual(['../hide.json']);
  });
});

describe('a layout that is laid anew around what was kept', () => {
  const first = lay();
  const change = (index: number, to: Partial<PiecePlacement>): Layout => ({
    ...first,
    placements: first.placements.map((placement, i) => (i === index ? { ...placement, ...to } : placement)),
  });

  test('when a piece is locked, it stays, and stays locked', () => {
    const kept = change(3, { locked: true });
    const again = lay(kept);
    const wanted = kept.placements[3]!;
    expect(again.placements.find((placement) => keyOf(placement) === keyOf(wanted))).toEqual(wanted);
    expect(checkLayout(again, HIDES, { keep: kept }).proven).toBe(true);
  });

  test('when a piece was cut, it stays, and is not in the order of cutting', () => {
    const again = lay(change(0, { state: 'cut' }));
    expect(again.placements.filter(({ state }) => state === 'cut')).toHaveLength(1);
    expect(again.cuttingOrder.filter(({ kind }) => kind === 'piece')).toHaveLength(7);
    expect(errors(again)).toEqual([]);
  });

  test('when a piece was spoiled, its place stays taken and its copy is laid again', () => {
    const kept = change(0, { state: 'spoiled' });
    const again = lay(kept);
    const wanted = keyOf(kept.placements[0]!);
    const both = again.placements.filter((placement) => keyOf(placement) === wanted);
    expect(both.map(({ state }) => state).sort()).toEqual(['planned', 'spoiled']);
    expect(again.placements).toHaveLength(9);
    expect(checkLayout(again, HIDES)).toMatchObject({ violations: [], proven: true });
  });

  test('when another piece is then moved onto the spoiled one, the gap is broken and both are named', () => {
    const again = lay(change(0, { state: 'spoiled' }));
    const spoiled = again.placements.find(({ state }) => state === 'spoiled')!;
    const moved = {
      ...again,
      placements: again.placements.map((placement) =>
        placement.piece === 'wing' &&
        placement.set === 2 &&
        placement.state !== 'spoiled' &&
        !placement.mirrored
          ? { ...placement, x: spoiled.x, y: spoiled.y }
          : placement,
      ),
    };
    const { violations } = checkLayout(moved, HIDES);
    const gap = violations.find(({ rule, at, other }) => {
      const names = [at, other].map((party) => (typeof party === 'object' ? party.piece : party));
      return rule === 'gap' && names.includes('wing') && names.includes(spoiled.piece);
    });
    expect(gap).toBeDefined();
  });

  test('when the order no longer has a piece that is kept, the sentence names it', () => {
    const kept = change(0, { locked: true, piece: 'pannel' });
    expect(() => lay(kept)).toThrow(/stays where it is, but the order has no such piece/);
  });
});
