import { describe, expect, test } from 'vitest';
import type { Order, OrderPiece, ResolvedOrder } from '../model/order.js';
import type { LayablePiece, PatternPiece, PatternPieces } from '../model/piece.js';
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
import { itemId, pieceCopyOf } from './item-id.js';
import { nestProblemFor } from './problem.js';
import { resolveOrder } from './resolve-order.js';
import type { NamedHide } from './sheets.js';

const orderOf = (pieces: readonly OrderPiece[], more: Partial<Order> = {}): Order =>
  plainOrder([plainArticle('bag', pieces)], more);

const patterns = (): PatternPieces => ({
  pieces: [
    plainPiece(
      'wing',
      polygonCurve([
        [0, 0],
        [80, 0],
        [0, 60],
      ]),
    ),
    plainPiece(
      'wedge',
      polygonCurve([
        [0, 0],
        [90, 0],
        [0, 50],
      ]),
    ),
  ].map((piece) => ({ piece, source: { file: 'bag.svg' } })),
});
const from = (piece: string): OrderPiece['from'] => ({ kind: 'pattern', file: 'bag.svg', piece });

const HIDES: readonly NamedHide[] = [
  { file: 'hide.json', hide: plainHide('hide 1', rectangleCurve(0, 0, 1000, 500)) },
];
const budget = { seed: 1, streams: 1 };

function problemOf(order: Order, hides = HIDES) {
  const resolved: ResolvedOrder = resolveOrder(order);
  const pieces: readonly LayablePiece[] = resolvePieces(resolved, patterns).pieces;
  return nestProblemFor({ order: resolved, pieces, hides, budget });
}

describe('resolving an order', () => {
  test('when a piece says nothing, its part says it; what it says wins', () => {
    const order = resolveOrder(
      orderOf([
        plainOrderPiece('a', { part: 'strap' }),
        plainOrderPiece('b', { part: 'strap', bearsLoad: false }),
      ]),
    );
    const [a, b] = order.articles[0]!.pieces;
    expect(a).toMatchObject({ bearsLoad: true, looks: { face: 'A', rest: 'B' }, side: 'grain' });
    expect(b).toMatchObject({ bearsLoad: false, direction: { rule: 'along', toleranceDeg: 10 } });
  });

  test('when leather and part know a thickness, the leather wins over the part, the piece over both', () => {
    const leathers = [{ name: 'body', hides: ['hide.json'], thickness: { minMm: 2.5, maxMm: 3 } }];
    const own = { minMm: 1, maxMm: 2 };
    const order = resolveOrder(
      orderOf(
        [plainOrderPiece('a', { part: 'strap' }), plainOrderPiece('b', { part: 'strap', thickness: own })],
        {
          leathers,
        },
      ),
    );
    const [a, b] = order.articles[0]!.pieces;
    expect([a!.thickness, b!.thickness]).toEqual([leathers[0]!.thickness, own]);
    expect(
      resolveOrder(orderOf([plainOrderPiece('a', { part: 'strap' })])).articles[0]!.pieces[0]!.thickness,
    ).toEqual({
      minMm: 2,
      maxMm: 5.2,
    });
  });

  const faults: readonly (readonly [string, Order, RegExp, string])[] = [
    [
      'asks for more mirrored than copies',
      orderOf([plainOrderPiece('a', { mirrored: 2 })]),
      /2 mirrored of 1/,
      'bad-count',
    ],
    ['has a negative count', orderOf([plainOrderPiece('a', { count: -1 })]), /count -1/, 'bad-count'],
    [
      'has two pieces of one name',
      orderOf([plainOrderPiece('a'), plainOrderPiece('a')]),
      /named "a"/,
      'duplicate',
    ],
    [
      'names an unknown leather',
      orderOf([plainOrderPiece('a', { leather: 'bodi' })]),
      /did you mean "body"/,
      'unknown-leather',
    ],
    [
      'cuts from a leather without hides',
      orderOf([plainOrderPiece('a')], { leathers: [{ name: 'body', hides: [] }] }),
      /"body" has no hides/,
      'no-hides',
    ],
    [
      'is sewn to a piece that is not there',
      orderOf([
        plainOrderPiece('front', { seams: [{ line: 's', to: { piece: 'gussett', line: 's' } }] }),
        plainOrderPiece('gusset'),
      ]),
      /sewn to "gussett".*did you mean "gusset"/,
      'unknown-piece',
    ],
    ['has an article without pieces', orderOf([]), /"bag" has no pieces/, 'no-pieces'],
  ];
  for (const [what, order, words, code] of faults) {
    test(`when it ${what}, the sentence says so`, () => {
      expect(() => resolveOrder(order)).toThrow(words);
      expect(() => resolveOrder(order)).toThrow(expect.objectContaining({ code }));
    });
  }
});

describe('resolving pieces', () => {
  const resolve = (piece: Partial<OrderPiece>, read = patterns) =>
    resolvePieces(resolveOrder(orderOf([plainOrderPiece('side', piece)])), read);

  test('when the file lacks the piece, the sentence lists what it has and suggests the nearest', () => {
    expect(() => resolve({ from: from('wings') })).toThrow(
      /bag\.svg: .*"wings", which is not in this file \(did you mean "wing"\?\); it has "wing", "wedge"\./,
    );
  });

  test('when the file has no pieces, the sentence says so', () => {
    expect(() => resolve({ from: from('wing') }, () => ({ pieces: [] }))).toThrow(
      /No piece was found in this file/,
    );
  });

  test('when the file has two of that name, the sentence says so', () => {
    const twice = () => ({ pieces: [...patterns().pieces, ...patterns().pieces] });
    expect(() => resolve({ from: from('wing') }, twice)).toThrow(/2 pieces are named "wing"/);
  });

  test('when the cut line of a named piece crosses itself, the order is refused with the place, but not for another piece', () => {
    const tangled = polygonCurve([
      [0, 0],
      [40, 40],
      [40, 0],
      [0, 60],
    ]);
    const knot: PatternPiece = {
      piece: plainPiece('knot', tangled),
      source: { file: 'bag.svg', element: '#knot' },
    };
    const withKnot = () => ({ pieces: [...patterns().pieces, knot] });
    // By hand: the lines y = x and y = 60 - 1.5 x meet at 24.
    expect(() => resolve({ from: from('knot') }, withKnot)).toThrow(
      /^bag\.svg, #knot, at \(24, 24\) mm: The cut line of "knot" crosses itself here, so the piece "side" of the article "bag" can't be cut/,
    );
    expect(() => resolve({ from: from('knot') }, withKnot)).toThrow(
      expect.objectContaining({ code: 'bad-outline' }),
    );
    expect(resolve({ from: from('wing') }, withKnot).pieces).toHaveLength(1);
  });

  test('when an arrow is guessed, that is said, unless the piece may lie anyhow', () => {
    const codes = (part: OrderPiece['part']) =>
      resolve({ from: from('wing'), part }).diagnostics.map(({ code }) => code);
    expect([codes('front'), codes('lining')]).toEqual([['arrow-guessed'], []]);
  });

  test('when it is sewn along a line that is not drawn, the sentence says so', () => {
    const seams = [{ line: 'top', to: { piece: 'side', line: 'top' } }];
    expect(() => resolve({ from: from('wing'), seams })).toThrow(/sewn along its line "top"/);
  });

  test('when two pieces come from one file, it is read once', () => {
    let reads = 0;
    const order = resolveOrder(
      orderOf([plainOrderPiece('a', { from: from('wing') }), plainOrderPiece('b', { from: from('wedge') })]),
    );
    resolvePieces(order, () => {
      reads += 1;
      return patterns();
    });
    expect(reads).toBe(1);
  });
});

describe('the nesting problem of an order', () => {
  test('when pieces are doubled and mirrored, copies are counted apart and multiplied', () => {
    const wing = plainOrderPiece('wing', { from: from('wing'), count: 5, mirrored: 2, layers: 2 });
    const { problem, items } = problemOf(plainOrder([plainArticle('bag', [wing], { sets: 3, value: 7 })]));
    expect(problem.setKinds).toEqual([
      {
        id: 'bag',
        sets: 3,
        members: [
          { item: 'bag/wing', count: 6 },
          { item: 'bag/wing~mirrored', count: 4 },
        ],
        value: 7,
        priority: 0,
        keep: 'nothing',
        beside: [],
      },
    ]);
    expect(pieceCopyOf({ item: 'bag/wing~mirrored', set: 2, copy: 3 }, items)).toEqual({
      article: 'bag',
      piece: 'wing',
      set: 2,
      copy: 3,
      mirrored: true,
    });
  });

  test('when a copy is mirrored, its region, arrow and fixed angle are mirrored too', () => {
    const direction = { rule: 'fixed', angleDeg: 30, toleranceDeg: 5, halfTurn: false } as const;
    const pair = { toleranceDeg: 5, distanceMm: 150 };
    const wing = plainOrderPiece('wing', {
      from: from('wing'),
      count: 2,
      mirrored: 1,
      direction,
      pair,
      arrowDeg: 20,
    });
    const [plain, mirrored] = problemOf(orderOf([wing])).problem.items;
    expect(plain!.angleRule).toEqual({
      frame: 'local',
      arrowDeg: 20,
      targetsDeg: [30],
      toleranceDeg: 5,
      modulo: 360,
    });
    expect(mirrored!.angleRule).toMatchObject({ arrowDeg: 160, targetsDeg: [-30] });
    expect(mirrored).toMatchObject({ mirrorOf: 'bag/wing', pair });
    expect(plain!.pair).toBeUndefined();
    expect(mirrored!.region.outer).toContainEqual({ x: 40, y: -30 });
  });

  test('when a piece is seen from the flesh side, its fixed angle turns the other way', () => {
    const direction = { rule: 'fixed', angleDeg: 30, toleranceDeg: 5, halfTurn: true } as const;
    const piece = plainOrderPiece('wing', { from: from('wing'), direction, side: 'flesh' });
    expect(problemOf(orderOf([piece])).problem.items[0]!.angleRule).toMatchObject({
      targetsDeg: [-30],
      modulo: 180,
    });
  });

  test('when a piece is to lie across, either side of the backbone will do', () => {
    const direction = { rule: 'across', angleDeg: 0, toleranceDeg: 10, halfTurn: false } as const;
    expect(
      problemOf(orderOf([plainOrderPiece('a', { direction })])).problem.items[0]!.angleRule,
    ).toMatchObject({
      targetsDeg: [90],
      modulo: 180,
    });
  });

  test('when looks and load are asked for, the item needs them, and the face more than the rest', () => {
    const piece = plainOrderPiece('a', { looks: { face: 'A', rest: 'C' }, bearsLoad: true, zones: ['bend'] });
    const [item] = problemOf(orderOf([piece])).problem.items;
    expect(item!.need).toEqual({ maxGrade: 2, strong: true, zones: ['bend'] });
    expect(item!.parts).toMatchObject([{ name: 'face', need: { maxGrade: 0 } }]);
  });

  test('when zones are asked for and the hide has none drawn, they do not bind there, and that is said', () => {
    const { problem, diagnostics } = problemOf(
      orderOf([plainOrderPiece('a', { zones: ['bend', 'shoulder'] })]),
    );
    expect(problem.sheets[0]!.qualities.map(({ zone }) => zone)).toEqual(['bend', 'shoulder']);
    expect(diagnostics.map(({ code }) => code)).toContain('zones-not-drawn');
  });

  test('when the hide has zones drawn, nothing is added to them', () => {
    const zones = [{ id: 'z', kind: 'belly', outline: rectangleCurve(0, 0, 100, 100) } as const];
    const hides = HIDES.map(({ file, hide }) => ({ file, hide: { ...hide, zones } }));
    const { problem, diagnostics } = problemOf(orderOf([plainOrderPiece('a', { zones: ['bend'] })]), hides);
    expect(problem.sheets[0]!.qualities.map(({ id }) => id)).toEqual(['zone:z']);
    expect(diagnostics.map(({ code }) => code)).not.toContain('zones-not-drawn');
  });

  test('when a margin is given, a rough cut is asked for; when a lane is, the strap is told', () => {
    const strap = { widthMm: 30, lengthMm: 400, holeEnd: 'round', buckleEnd: 'square' } as const;
    const holes = { count: 5, spacingMm: 25, diameterMm: 4, fromEndMm: 75 };
    const { items } = problemOf(
      orderOf([
        plainOrderPiece('a', { marginMm: 10 }),
        plainOrderPiece('b', { inLane: true, from: { kind: 'strap', strap }, allowanceMm: 1 }),
        plainOrderPiece('c', { inLane: true, from: { kind: 'strap', strap: { ...strap, holes } } }),
      ]),
    ).problem;
    expect(items[0]).toMatchObject({ roughMargin: 10, group: 'body' });
    expect(items[1]!.lane).toEqual({ widthMm: 32, firmEnd: 0 });
    expect(items[2]!.lane).toEqual({ widthMm: 30, firmEnd: 1 });
    expect(() => problemOf(orderOf([plainOrderPiece('d', { inLane: true, from: from('wing') })]))).toThrow(
      /lane of straps/,
    );
  });

  test('when the kerf is wider than the gap, pieces keep the kerf', () => {
    const cutting = { method: 'laser', gapMm: 0, edgeMm: 5, voidMm: 4, kerfMm: 0.2 };
    expect(problemOf(orderOf([plainOrderPiece('a')], { cutting })).problem.distances).toEqual({
      gap: 0.2,
      edge: 5,
      void: 4,
      kerf: 0.2,
    });
  });

  test('when a hide that the order names is not given, the sentence names it', () => {
    expect(() => problemOf(orderOf([plainOrderPiece('a')]), [])).toThrow(/"hide\.json", which was not given/);
  });

  test('when two files hold hides of one id, the sentence names both', () => {
    const leathers = [{ name: 'body', hides: ['hide.json', 'copy.json'] }];
    const hides = [...HIDES, { file: 'copy.json', hide: HIDES[0]!.hide }];
    expect(() => problemOf(orderOf([plainOrderPiece('a')], { leathers }), hides)).toThrow(
      /"hide\.json" and "copy\.json" have the same id/,
    );
  });

  test('when two hides have no lot, they are lots of their own', () => {
    const leathers = [{ name: 'body', hides: ['hide.json', 'other.json'] }];
    const hides = [...HIDES, { file: 'other.json', hide: { ...HIDES[0]!.hide, id: 'hide 2' } }];
    const { sheets } = problemOf(orderOf([plainOrderPiece('a')], { leathers }), hides).problem;
    expect(new Set(sheets.map(({ lot }) => lot)).size).toBe(2);
  });

  test('when faces keep to one lot, all that is seen counts as face, and each leather is a group of its own', () => {
    const leathers = [
      { name: 'body', hides: ['hide.json'] },
      { name: 'straps', hides: ['bend.json', 'other.json'] },
    ];
    const hides = [
      ...HIDES,
      ...['bend', 'other'].map((id) => ({ file: `${id}.json`, hide: { ...HIDES[0]!.hide, id } })),
    ];
    const bag = plainArticle(
      'bag',
      [
        plainOrderPiece('tie', { leather: 'straps', part: 'tab', from: { kind: 'disc', diameterMm: 20 } }),
        plainOrderPiece('front', { part: 'front' }),
        plainOrderPiece('lining', { part: 'lining' }),
      ],
      { keepTogether: 'faces on one lot' },
    );
    const { problem } = problemOf(plainOrder([bag], { leathers }), hides);
    expect(problem.setKinds[0]!.keep).toBe('faceLot');
    expect(problem.items.map(({ id, isFace, group }) => [id, isFace, group])).toEqual([
      ['bag/tie', true, 'straps'],
      ['bag/front', true, 'body'],
      ['bag/lining', false, 'body'],
    ]);
  });

  test('when names hold strokes and tildes, their ids stay apart', () => {
    const ids = [
      itemId('a/b', 'c', false),
      itemId('a', 'b/c', false),
      itemId('a', 'b~mirrored', false),
      itemId('a', 'b', true),
    ];
    expect(new Set(ids).size).toBe(4);
  });
});
