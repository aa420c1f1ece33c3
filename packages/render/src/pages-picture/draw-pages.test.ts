import { curveBox, curveFromPolyline, rotationDeg, translation, composeAffine } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { writeSvg } from '../svg/write-svg.js';
import type { DrawingElement } from '../drawing/model.js';
import { loadFontBook } from '../node.js';
import { drawPages } from './draw-pages.js';
import type { PatternPagePicture } from './page-sheet.js';

const fonts = loadFontBook();

/** An invented A4 page with one line right across it. */
function page(number: number, more: Partial<PatternPagePicture> = {}): PatternPagePicture {
  const across = curveFromPolyline(
    [
      { x: 0, y: 100 },
      { x: 210, y: 100 },
    ],
    false,
  );
  return {
    number,
    widthMm: 210,
    heightMm: 297,
    joinedBy: 'marks',
    missMm: 0.12,
    lines: [{ curve: across, isDashed: false }],
    marks: [{ x: 5, y: 5 }],
    ...more,
  };
}

function texts(element: DrawingElement): string[] {
  if (element.kind === 'text') return [element.text];
  return element.kind === 'group' ? element.elements.flatMap(texts) : [];
}

function allTexts(pages: readonly PatternPagePicture[]): string[] {
  return drawPages({ pages, fonts, title: 'roll.pdf' }).layers.flatMap(({ elements }) =>
    elements.flatMap(texts),
  );
}

/** Boxes of the lines of each page, in the order of the pages. */
function lineBoxes(pages: readonly PatternPagePicture[]) {
  const { layers } = drawPages({ pages, fonts, title: 'roll.pdf' });
  const groups = layers.find(({ name }) => name === 'lines')!.elements;
  return groups.map((each) => {
    const [first] = each.kind === 'group' ? each.elements : [];
    return first?.kind === 'path' ? curveBox(first.curves[0]!) : undefined;
  });
}

describe('the picture of the pages', () => {
  test('when two pages lie side by side, a line over both is drawn on over the edge, at one scale', () => {
    const [a, b] = lineBoxes([
      page(1, { toWhole: translation(0, 0) }),
      page(2, { toWhole: translation(200, 0) }),
    ]);
    // 410 × 297 mm in a room of 273 × 160 mm or so: reduced, and 10 mm of overlap by the same share.
    const reduced = (a!.maxX - a!.minX) / 210;
    expect(reduced).toBeLessThan(0.7);
    expect(b!.maxX - b!.minX).toBeCloseTo(210 * reduced, 9);
    expect(a!.maxX - b!.minX).toBeCloseTo(10 * reduced, 9);
    expect(a!.minY).toBeCloseTo(b!.minY, 9);
  });

  test('when a page is turned in the whole, its lines are turned with it', () => {
    const turned = composeAffine(translation(297, 0), rotationDeg(90));
    const [box] = lineBoxes([page(1, { toWhole: turned })]);
    expect(box!.maxX - box!.minX).toBeCloseTo(0, 9);
    expect(box!.maxY - box!.minY).toBeGreaterThan(50);
  });

  test('when pages are left out or lie by themselves, they stand beside the whole and say so', () => {
    const said = allTexts([
      page(1, { toWhole: translation(0, 0) }),
      page(2, { joinedBy: 'left out' }),
      page(3, { joinedBy: 'alone', toWhole: translation(0, 350) }),
    ]);
    expect(said).toContain('left out');
    expect(said.join('|')).toMatch(/1 of 3 pages put together; .*0\.12 mm at most; 1 by itself; 1 left out/);
    expect(said).toEqual(expect.arrayContaining(['1', '2', '3']));
  });

  test('when there are 500 pages beside, those without room are counted', () => {
    const pages = Array.from({ length: 500 }, (_, i) => page(i + 1, { joinedBy: 'left out' }));
    const said = allTexts([page(501, { toWhole: translation(0, 0) }), ...pages]);
    const more = said.flatMap((text) => /^(\d+) more pages/.exec(text)?.[1] ?? []).map(Number);
    const shown = said.filter((text) => /^\d+$/.test(text)).length - 1;
    expect(more).toEqual([500 - shown]);
  });

  test('when all of it is written, nothing lies outside the paper', () => {
    for (const pages of [
      [page(1, { toWhole: translation(-900, 40) }), page(2, { toWhole: translation(900, 40) })],
    ]) {
      const { widthMm, heightMm } = drawPages({ pages, fonts, title: 'a very long name '.repeat(20) });
      const numbers = [
        ...writeSvg(drawPages({ pages, fonts, title: 'x' })).matchAll(/[ML]([\d.-]+) ([\d.-]+)/g),
      ];
      expect(numbers.length).toBeGreaterThan(10);
      for (const [, x, y] of numbers) {
        expect(Number(x)).toBeGreaterThanOrEqual(0);
        expect(Number(x)).toBeLessThanOrEqual(widthMm);
        expect(Number(y)).toBeGreaterThanOrEqual(0);
        expect(Number(y)).toBeLessThanOrEqual(heightMm);
      }
    }
  });
});
