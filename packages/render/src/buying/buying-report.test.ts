import type { KindAnswer, PurchaseAnswer } from '@hidebound/leather';
import { squareFeetToMm2 as ft2 } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import type { PathElement } from '../drawing/model.js';
import { loadFontBook } from '../node.js';
import type { ReportBlock } from '../report/report.js';
import { inkBox, textsOf } from '../sample/read-drawing.js';
import { buyingReport } from './buying-report.js';
import { areaSpanWords, costWords, unitOf } from './buying-words.js';
import { chanceChart } from './chance-chart.js';

const fonts = loadFontBook();
const eur = (amount: string) => ({ amount, currency: 'EUR' });

function kind(name: string, more: Partial<KindAnswer> = {}): KindAnswer {
  return {
    name,
    cut: 'side',
    areaMm2: { min: ft2(20), max: ft2(24) },
    price: { ...eur('11.90'), per: 'ft2' },
    trials: 12,
    needMm2: { low: ft2(25), likely: ft2(30), high: ft2(36) },
    losses: { piecesMm2: ft2(18), betweenMm2: ft2(4), edgeMm2: ft2(5), flawsMm2: ft2(3) },
    levels: [50, 90, 95].map((inHundred) => ({
      inHundred,
      hides: 2,
      areaMm2: { min: ft2(40), max: ft2(48) },
      cost: { from: eur('476.00'), to: eur('571.20') },
    })),
    counts: [
      { hides: 1, inHundred: 12, bySize: [] },
      {
        hides: 2,
        inHundred: 93,
        bySize: [
          { areaMm2: { min: ft2(20), max: ft2(22) }, inHundred: 91 },
          { areaMm2: { min: ft2(22), max: ft2(24) }, inHundred: 96 },
        ],
      },
    ],
    curve: Array.from({ length: 41 }, (_, i) => ({ areaMm2: ft2(20 + i), inHundred: i * 2.475 })),
    truePricePerFt2: eur('19.83'),
    missed: [],
    holdsAll: true,
    ...more,
  };
}

function answer(kinds: readonly KindAnswer[]): PurchaseAnswer {
  return { leathers: ['body', 'wraps'], copies: 54, piecesMm2: ft2(18), kinds };
}

function report(kinds: readonly KindAnswer[], wasStopped = false) {
  return buyingReport({
    order: { name: 'Goods', version: '1', date: '2026-03-02' },
    answers: [answer(kinds)],
    statedAreaOffPercent: { min: 2, max: 3 },
    wasStopped,
    fonts,
  });
}

function wordsOf(blocks: readonly ReportBlock[]): string {
  return JSON.stringify(blocks.filter(({ kind: own }) => own !== 'picture'));
}

describe('what to buy, in words', () => {
  test('when hides hold all, the first choice, its chance and its cost are the answer', () => {
    expect(wordsOf(report([kind('first')]).blocks)).toContain(
      'Buy 2 of “first”, 20–24 ft² each: enough in 93 of 100, 476.00–571.20 EUR.',
    );
  });

  test('when losses are told, each stands apart with its share of the need', () => {
    const words = wordsOf(report([kind('first')]).blocks);
    // 4, 5 and 3 of 30 ft²; 1 ft² is 0.09290304 m².
    expect(words).toContain('"Lost between pieces","value":"4.00 ft² (0.372 m²), 13 %"');
    expect(words).toContain('"Lost at the edge","value":"5.00 ft² (0.465 m²), 17 %"');
    expect(words).toContain('"Lost to flaws","value":"3.00 ft² (0.279 m²), 10 %"');
  });

  test('when no hide holds the pieces, no number is told', () => {
    const blocks = report([kind('small', { holdsAll: false })]).blocks;
    expect(wordsOf(blocks)).toContain('None of the hides that can be bought holds all of these pieces.');
    expect(blocks.some(({ kind: own }) => own === 'picture')).toBe(false);
  });

  test('when it was stopped, that is told first', () => {
    expect(wordsOf(report([kind('first')], true).blocks.slice(0, 1))).toContain('Stopped by hand');
  });

  test('when hides are sold by square metre, areas are told in it', () => {
    expect(unitOf([kind('metric', { price: { ...eur('90.00'), per: 'm2' } })])).toBe('m2');
    expect(areaSpanWords({ min: 1.5e6, max: 2.25e6 }, 'm2')).toBe('1.500–2.250 m²');
    expect(areaSpanWords({ min: ft2(12), max: ft2(13.5) }, 'ft2')).toBe('12–13.50 ft²');
    expect(costWords({ from: eur('12.00'), to: eur('12.00') })).toBe('12.00 EUR');
  });
});

describe('the chart of chances', () => {
  const drawing = chanceChart(answer([kind('first'), kind('second')]), 'ft2', fonts)!;
  const layer = (name: string) => drawing.layers.find((own) => own.name === name)!.elements;

  test('when it is drawn, nothing reaches over its edge', () => {
    for (const { center, widthMm, heightMm } of textsOf(drawing).map((own) => inkBox(fonts, own))) {
      expect(center.x - widthMm / 2).toBeGreaterThanOrEqual(0);
      expect(center.y - heightMm / 2).toBeGreaterThanOrEqual(0);
      expect(center.x + widthMm / 2).toBeLessThanOrEqual(drawing.widthMm);
      expect(center.y + heightMm / 2).toBeLessThanOrEqual(drawing.heightMm);
    }
  });

  test('when more leather is enough more often, the line rises to the right', () => {
    const [path] = layer('chances') as PathElement[];
    const [curve] = path!.curves;
    const points = [curve!.start, ...curve!.segments.map(({ to }) => to)];
    for (let i = 1; i < points.length; i++) {
      expect(points[i]!.x).toBeGreaterThan(points[i - 1]!.x);
      expect(points[i]!.y).toBeLessThan(points[i - 1]!.y);
    }
  });

  test('when two kinds are compared, each has a line of its own look and a row that names it', () => {
    const strokes = (layer('chances') as PathElement[]).map(({ style }) => JSON.stringify(style.stroke));
    expect(new Set(strokes).size).toBe(2);
    const texts = textsOf(drawing).map(({ text }) => text);
    expect(texts).toContain('first, 20–24 ft² each');
    expect(texts).toContain('second, 20–24 ft² each');
  });

  test('when numbers of hides stand within it, each has a dot with its number', () => {
    const texts = layer('hides').flatMap((own) => (own.kind === 'text' ? [own.text] : []));
    // Middle size 22 ft²: one hide at 22, two at 44 ft²; the line goes from 20 to 60.
    expect(texts).toEqual(['1', '2', '1', '2']);
  });
});
