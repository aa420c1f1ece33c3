import { curveBox } from '@hidebound/geometry';
import type { ArticleCost, CoinSpan, CostSheet, LayablePiece, Piece } from '@hidebound/leather';
import { drawRectangle } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { loadFontBook } from '../node.js';
import { textsOf } from '../sample/read-drawing.js';
import { costReport } from './cost-report.js';
import { bareSpan, quantityText } from './cost-words.js';
import { drawSmallPieces } from './pieces-picture.js';
import { quoteReport } from './quote-report.js';

const span = (low: string, likely = low, high = likely): CoinSpan => {
  const money = (amount: string) => ({ amount, currency: 'EUR' });
  return { low: money(low), likely: money(likely), high: money(high) };
};

const ARTICLE: ArticleCost = {
  article: 'tag',
  goods: 'tag',
  for: 'a club',
  sets: 2,
  rows: [
    {
      kind: 'leather',
      name: 'body',
      quantity: { low: 1e4, likely: 1e4, high: 1e4 },
      unit: 'mm²',
      cost: span('3.00', '4.00', '6.00'),
    },
    { kind: 'hardware', name: 'ring', quantity: { low: 2, likely: 2, high: 2 }, unit: 'each' },
    { kind: 'price', cost: span('3.00', '4.00', '6.00') },
  ],
  price: span('3.00', '4.00', '6.00'),
  sum: span('6.00', '8.00', '12.00'),
  taxInSum: span('0.00'),
  beforeTax: span('6.00', '8.00', '12.00'),
  pieces: [],
};
const SHEET: CostSheet = {
  currency: 'EUR',
  articles: [ARTICLE],
  customers: [
    {
      for: 'a club',
      articles: ['tag'],
      sum: ARTICLE.sum,
      taxInSum: ARTICLE.taxInSum,
      beforeTax: ARTICLE.beforeTax,
    },
  ],
  kinds: [{ kind: 'leather', cost: ARTICLE.sum }],
  sum: ARTICLE.sum,
  taxInSum: ARTICLE.taxInSum,
  beforeTax: ARTICLE.beforeTax,
  hides: [],
  leathers: [],
  withoutPrice: [{ kind: 'hardware', name: 'ring', unit: 'each' }],
  diagnostics: [],
};

describe('the page of costs', () => {
  const { blocks } = costReport({ sheet: SHEET, subtitle: 's', isEstimate: false });

  test('when something has no price, the answer says so and its row says no price, not 0', () => {
    expect(blocks[0]).toMatchObject({
      text: 'The order comes to 6.00–12.00 EUR, without what has no price.',
    });
    const rows = blocks.flatMap((block) => (block.kind === 'table' ? block.rows : []));
    expect(rows).toContainEqual(['ring', '2', 'no price', '', '']);
    expect(rows).toContainEqual(['leather, body', '1.0 dm²', '4.00', '3.00', '6.00']);
  });

  test('when a cost has a span, its bar is as long as what is likely', () => {
    expect(blocks).toContainEqual({
      kind: 'bars',
      rows: [{ name: 'leather', value: 8, text: '6.00–12.00 EUR' }],
    });
  });
});

describe('a quote', () => {
  const order = { name: 'o', version: '1', date: '2026-01-05' };
  const textOf = (isEstimate: boolean): string =>
    JSON.stringify(quoteReport({ sheet: SHEET, customer: SHEET.customers[0]!, order, isEstimate }));

  test('when the leather is laid, the customer is told one price; before, a span', () => {
    expect(textOf(false)).toContain('8.00 EUR');
    expect(textOf(false)).not.toContain('–');
    expect(textOf(true)).toContain('6.00–12.00 EUR');
  });
});

describe('words of costs', () => {
  test('when rounding adds more to the lower price, there is no from and to', () => {
    expect(bareSpan(span('0.40', '0.35', '0.31'))).toBe('0.35');
  });

  test('when quantities are told, each has the unit of its kind', () => {
    const many = (low: number, high = low) => ({ low, likely: low, high });
    expect(quantityText(many(18_000), 'mm')).toBe('18.00 m');
    expect(quantityText(many(9.12, 19), 'mL')).toBe('9.1–19 mL');
    expect(quantityText(many(2.5), 'h')).toBe('2.5 h');
    expect(quantityText(many(3), 'each')).toBe('3');
  });
});

describe('the small picture of an article’s pieces', () => {
  const layable = (name: string, widthMm: number, lengthMm: number): LayablePiece => {
    const shape: Piece = drawRectangle(name, { widthMm, lengthMm, cornerRadiusMm: 0 });
    return {
      article: 'a',
      piece: name,
      hash: '',
      shape,
      region: { outer: [], openings: [] },
      face: [],
      arrowDeg: 0,
      arrowIsGuessed: false,
    };
  };

  test.each([
    [[layable('strap', 30, 1100), layable('washer', 20, 20)]],
    [Array.from({ length: 30 }, (_, i) => layable(`panel ${i + 1}`, 250, 300))],
  ])('when pieces are long or many, all are within the room that there is, each with its name', (pieces) => {
    const drawing = drawSmallPieces({ pieces, fonts: loadFontBook(), widthMm: 186, heightMm: 75 });
    expect(drawing.heightMm).toBeLessThanOrEqual(75);
    const texts = textsOf(drawing).map(({ text }) => text);
    for (const { piece } of pieces) expect(texts).toContain(piece);
    for (const element of drawing.layers.flatMap(({ elements }) => elements)) {
      if (element.kind !== 'path') continue;
      const box = curveBox(element.curves[0]!);
      expect(box.minX).toBeGreaterThanOrEqual(-1e-9);
      expect(box.maxX).toBeLessThanOrEqual(186 + 1e-9);
      expect(box.maxY).toBeLessThanOrEqual(75);
    }
  });
});
