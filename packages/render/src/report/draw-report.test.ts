import { curveBox } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { labelBoxesOverlap } from '../label/label-box.js';
import { loadFontBook } from '../node.js';
import { inkBox, textsOf } from '../sample/read-drawing.js';
import { PAGE_MARGIN_MM } from '../sheet/fit-page.js';
import { columnWidths } from './column-widths.js';
import { drawReport } from './draw-report.js';
import type { Report } from './report.js';

const fonts = loadFontBook();

const LONG =
  'a saddlebag with two straps, a pocket and a flap that is turned and stitched all round its edge';

function reportOf(rows: number): Report {
  return {
    title: 'Cost',
    subtitle: 'Bicycle goods, week 10, version 3, 2026-03-02',
    blocks: [
      { kind: 'text', tone: 'answer', text: 'Four saddlebags cost 412.60 EUR to make.' },
      { kind: 'section', title: 'Leather' },
      { kind: 'facts', rows: [{ name: 'Used up', value: '2.412 m²' }] },
      {
        kind: 'table',
        columns: [
          { head: 'article', align: 'left' },
          { head: 'area used up', align: 'right' },
          { head: 'why', align: 'left' },
        ],
        rows: Array.from({ length: rows }, (_, i) => [`saddlebag ${i + 1}`, `${i}.25 dm²`, LONG]),
        totals: ['together', '12.40 dm²', ''],
      },
      { kind: 'section', title: `Order of work for ${LONG}` },
      {
        kind: 'checklist',
        items: [
          { text: LONG, detail: LONG, aside: '24 h' },
          { text: 'Cut.', aside: '1 h' },
        ],
      },
      { kind: 'text', tone: 'caution', text: `Blades cut: ${LONG}.` },
      { kind: 'text', tone: 'soft', text: LONG },
    ],
  };
}

describe.each(['A4', 'Letter', 'A3'] as const)('when a report is set on %s', (page) => {
  const pages = drawReport(reportOf(40), { page, fonts });

  test('no text lies over another or in the margin', () => {
    for (const sheet of pages) {
      const boxes = textsOf(sheet)
        .filter(({ text }) => text !== '')
        .map((text) => inkBox(fonts, text));
      boxes.forEach((box, i) => {
        expect(boxes.slice(i + 1).some((other) => labelBoxesOverlap(box, other))).toBe(false);
      });
      for (const text of textsOf(sheet)) {
        const left = text.anchor === 'end' ? text.at.x - text.widthMm : text.at.x;
        expect(left).toBeGreaterThanOrEqual(PAGE_MARGIN_MM - 0.01);
        expect(left + text.widthMm).toBeLessThanOrEqual(sheet.widthMm - PAGE_MARGIN_MM + 0.01);
        expect(text.at.y).toBeLessThanOrEqual(sheet.heightMm - PAGE_MARGIN_MM + 0.01);
      }
    }
  });

  test('every row is there once, and a table that runs on repeats its head', () => {
    const texts = pages.map((sheet) => textsOf(sheet).map(({ text }) => text));
    const all = texts.flat();
    for (let i = 1; i <= 40; i++) expect(all.filter((text) => text === `saddlebag ${i}`)).toHaveLength(1);
    for (const own of texts) {
      expect(own.includes('article')).toBe(own.some((text) => text.startsWith('saddlebag')));
    }
  });
});

test('when a report must fit one page, its letters get smaller, and as small as needed only', () => {
  const card = drawReport(reportOf(14), { page: 'A4', fonts, onOnePage: true });
  const plain = drawReport(reportOf(14), { page: 'A4', fonts });
  expect(plain.length).toBeGreaterThan(1);
  expect(card).toHaveLength(1);
  const roomy = drawReport(reportOf(2), { page: 'A4', fonts, onOnePage: true });
  expect(roomy).toEqual(drawReport(reportOf(2), { page: 'A4', fonts }));
});

test('when columns want more than the room, figures stay whole and the widest texts give way', () => {
  const wishes = [
    { wholeMm: 100, wordMm: 20, mayWrap: true },
    { wholeMm: 30, wordMm: 10, mayWrap: true },
    { wholeMm: 25, wordMm: 25, mayWrap: false },
  ];
  const [first, second, third] = columnWidths(wishes, 120, 5);
  expect(third).toBe(25);
  expect(second).toBe(30);
  expect(first).toBeCloseTo(120 - 10 - 55, 3);
});

test('when bars are drawn, their lengths are as the values, and each text stands behind its bar', () => {
  const bars = {
    kind: 'bars',
    rows: [
      { name: 'leather', value: 40, text: '40.00 EUR' },
      { name: 'work', value: 10, text: '10.00 EUR' },
      { name: 'nothing', value: 0, text: '0.00 EUR' },
    ],
  } as const;
  const [page] = drawReport({ title: 'T', subtitle: 's', blocks: [bars] }, { page: 'A4', fonts });
  const boxes = page!.layers
    .flatMap(({ elements }) => elements)
    .flatMap((element) =>
      element.kind === 'path' && element.style.fill !== undefined ? [curveBox(element.curves[0]!)] : [],
    );
  expect(boxes).toHaveLength(2);
  const [first, second] = boxes.map(({ minX, maxX }) => maxX - minX);
  expect(first! / second!).toBeCloseTo(4, 6);
  const texts = textsOf(page!);
  for (const [i, { text }] of bars.rows.slice(0, 2).entries()) {
    expect(texts.find((each) => each.text === text)!.at.x).toBeGreaterThan(boxes[i]!.maxX);
  }
});
