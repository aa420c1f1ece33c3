import { describe, expect, test } from 'vitest';
import type { Hide } from '../model/hide.js';
import type { Layout, PiecePlacement } from '../model/layout.js';
import type { OrderArticle } from '../model/order.js';
import type { Workshop } from '../model/workshop.js';
import { resolveOrder } from '../order/resolve-order.js';
import { resolvePieces } from '../pieces/resolve-pieces.js';
import { plainArticle, plainHide, plainOrder, plainOrderPiece, rectangleCurve } from '../testing/plain.js';
import { parseMoney } from '../units/money.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { layoutYield } from '../yield/layout-yield.js';
import { costOfLayout } from './cost-of-layout.js';

/** 1000 × 500 mm, used from the left: 50 dm² in all. */
const HIDE = plainHide('h', rectangleCurve(0, 0, 1000, 500), {
  backbone: [
    { x: 0, y: 0 },
    { x: 1000, y: 0 },
  ],
  area: { invoicedMm2: 500_000 },
  price: { amount: '20', currency: 'EUR', per: 'dm2', of: 'invoiced' },
});

/** Pieces of 100 × 200 and 100 × 100 mm that stand side by side up to x = 200: the freeing cut runs there. */
const ARTICLES: readonly OrderArticle[] = [
  plainArticle(
    'large',
    [
      plainOrderPiece('plate', {
        from: { kind: 'rectangle', widthMm: 100, lengthMm: 200, cornerRadiusMm: 0 },
      }),
    ],
    { for: 'a club', hours: 1, hardware: [{ name: 'ring', count: 2, price: parseMoney('0.30 EUR') }] },
  ),
  plainArticle(
    'small',
    [
      plainOrderPiece('tag', {
        from: { kind: 'rectangle', widthMm: 100, lengthMm: 100, cornerRadiusMm: 0 },
        count: 2,
      }),
    ],
    { for: 'a friend', hours: 0.5 },
  ),
];

function layoutOf(hide: Hide, articles: readonly OrderArticle[], more: Partial<Layout> = {}): Layout {
  const order = resolveOrder(plainOrder(articles), DEFAULT_WORKSHOP);
  const { pieces } = resolvePieces(order, () => ({ pieces: [] }));
  const at = (article: string, piece: string, copy: number, x: number, y: number): PiecePlacement => ({
    article,
    piece,
    copy,
    set: 1,
    mirrored: false,
    hide: hide.id,
    x,
    y,
    rotationDeg: 0,
    locked: false,
    accepted: [],
    state: 'planned',
  });
  const placements = [
    at('large', 'plate', 1, 100, 50),
    at('small', 'tag', 1, 50, 160),
    at('small', 'tag', 2, 150, 160),
  ].filter(({ article }) => articles.some(({ name }) => name === article));
  return {
    order,
    hides: [{ id: hide.id, hash: '', file: 'h.hide.json' }],
    pieces,
    placements,
    lanes: [],
    roughCuts: [],
    swatches: [],
    cuttingOrder: [],
    unplaced: [],
    yield: layoutYield({ order, pieces, placements, hides: [hide] }),
    offcuts: [],
    origin: { version: '0', seed: 1, streams: 1, joins: 0 },
    ...more,
  };
}

const workshop: Workshop = { ...DEFAULT_WORKSHOP, hourlyRate: parseMoney('10 EUR') };
const costOf = (hide: Hide, more: Partial<Layout> = {}, rules: Workshop = workshop) =>
  costOfLayout({ layout: layoutOf(hide, ARTICLES, more), hides: [hide], workshop: rules });

describe('the cost of a layout', () => {
  // By hand: 50 dm² × 20 = 1000; used up up to x = 200 (20 %): 200. Pieces 20,000 + 2 × 10,000 mm²: half each.
  const sheet = costOf(HIDE);

  test('when a fifth of a hide is used up, a fifth of its price is charged and the rest stays with the offcut', () => {
    expect(sheet.hides).toMatchObject([
      {
        hide: 'h',
        price: parseMoney('1000.00 EUR'),
        usedUp: parseMoney('200.00 EUR'),
        left: parseMoney('800.00 EUR'),
        piecesOnly: parseMoney('80.00 EUR'),
        byUsable: parseMoney('80.00 EUR'),
        perUsableDm2: parseMoney('20.00 EUR'),
        perUsableFt2: parseMoney('185.81 EUR'),
      },
    ]);
  });

  test('when two customers share a hide, each bears the waste by the area of the own pieces', () => {
    expect(sheet.customers.map(({ for: who, sum }) => [who, sum.likely.amount])).toEqual([
      ['a club', '110.60'],
      ['a friend', '105.00'],
    ]);
    expect(sheet.sum.likely).toEqual(parseMoney('215.60 EUR'));
    expect(
      sheet.articles.map(({ pieces }) => pieces.map((piece) => [piece.copies, piece.cost?.likely.amount])),
    ).toEqual([[[1, '100.00']], [[2, '50.00']]]);
  });

  test('when the kinds of cost are added up, they make the sum', () => {
    const total = sheet.kinds.reduce((sum, { cost }) => sum + Number(cost.likely.amount), 0);
    expect(total).toBeCloseTo(215.6, 9);
  });

  test('when a copy is spoiled, its leather is waste that all others bear', () => {
    const { placements } = layoutOf(HIDE, ARTICLES);
    const spoiled = placements.map((each) =>
      each.copy === 2 ? { ...each, state: 'spoiled' as const } : each,
    );
    const own = costOf(HIDE, { placements: spoiled });
    const leather = own.articles.map(
      ({ rows }) => rows.find(({ kind }) => kind === 'leather')?.cost?.likely.amount,
    );
    expect(leather).toEqual(['133.33', '66.67']);
  });

  test('when a hide has no price, its leather is named and the sums go without it', () => {
    const { price: _, ...bare } = HIDE;
    const own = costOf(bare);
    expect(own.withoutPrice).toEqual([{ kind: 'leather', name: 'body, hide h', unit: 'mm²' }]);
    expect(own.diagnostics.map(({ code }) => code)).toEqual(['no-price-leather']);
    expect(own.sum.likely).toEqual(parseMoney('15.60 EUR'));
    expect(own.articles[0]?.rows[0]).not.toHaveProperty('cost');
  });

  test('when the list of prices has the hide, that price counts', () => {
    const { price: _, ...bare } = HIDE;
    const prices = [{ name: 'h', price: parseMoney('500 EUR'), per: 'hide' }];
    expect(costOf(bare, {}, { ...workshop, prices }).hides[0]?.usedUp).toEqual(parseMoney('100.00 EUR'));
  });

  test('when a price per area has no invoiced area, it is refused; an offcut takes what was measured', () => {
    const bare: Hide = { ...HIDE, area: {} };
    expect(() => costOf(bare)).toThrow(
      'Hide "h" costs "20 EUR" per dm2 of the invoiced area, but has no invoiced area; write "invoicedMm2" into its file, or make the price one per hide or of the measured area.',
    );
    const offcut: Hide = { ...HIDE, parent: 'g', area: { measuredMm2: 400_000 } };
    expect(costOf(offcut).hides[0]?.price).toEqual(parseMoney('800.00 EUR'));
  });

  test('when hide and hardware are priced in two currencies, both places are named', () => {
    const dollars: Hide = { ...HIDE, price: { amount: '20', currency: 'USD', per: 'dm2', of: 'invoiced' } };
    expect(() => costOf(dollars)).toThrow(
      /the leather "body" is in USD, the hardware "ring" of large is in EUR/,
    );
  });

  test('when nothing has a price, that is refused', () => {
    const { price: _, ...bare } = HIDE;
    const layout = layoutOf(bare, ARTICLES.slice(1));
    expect(() => costOfLayout({ layout, hides: [bare], workshop: DEFAULT_WORKSHOP })).toThrow(
      /Nothing here has a price/,
    );
  });
});
