import { expect, test } from 'vitest';
import { loadFontBook } from '../node.js';
import { flowBlocks, panelStyle } from './panel.js';
import type { PanelBlock } from './panel.js';
import { lineRow } from './table-row.js';

const fonts = loadFontBook();
const style = panelStyle(2.5, 50);

function blockOf(title: string, rows: number): PanelBlock {
  const lines = Array.from({ length: rows }, (_, i) => lineRow(fonts, style, `${title} row ${i + 1}`));
  return { title, rows: lines, keepRows: 1 };
}

/** Columns of equal height, side by side. */
const columns = [0, 1, 2].map((i) => ({ minX: i * 60, maxX: i * 60 + 50, minY: 0, maxY: 200 }));

/** For each column the lowest baseline that is set in it; 0 for an empty one. */
function depths(elements: ReturnType<typeof flowBlocks>['pages'][number]): number[] {
  return columns.map((column) =>
    Math.max(
      0,
      ...elements.flatMap((each) => (each.kind === 'text' && each.at.x === column.minX ? [each.at.y] : [])),
    ),
  );
}

test('when tables fill part of a page, its columns end at about one height', () => {
  const { pages } = flowBlocks([blockOf('a', 30), blockOf('b', 30)], () => columns, style, fonts);
  expect(pages).toHaveLength(1);
  const each = depths(pages[0]!);
  expect(Math.min(...each)).toBeGreaterThan(0.75 * Math.max(...each));
});

test('when tables take several pages, only the last one is cut short', () => {
  const { pages } = flowBlocks([blockOf('a', 200)], () => columns, style, fonts);
  expect(pages).toHaveLength(2);
  for (const depth of depths(pages[0]!)) expect(depth).toBeGreaterThan(200 - style.rowMm * 2);
  for (const depth of depths(pages[1]!)) expect(depth).toBeLessThan(100);
});

test('when a table runs on into another column, its title stands there again, and is no wider than the column', () => {
  const title = 'A title that is a good deal longer than any column';
  const { pages } = flowBlocks([blockOf(title, 90)], () => columns, style, fonts);
  const titles = pages[0]!.flatMap((each) =>
    each.kind === 'text' && each.sizeMm === style.titleMm ? [each] : [],
  );
  expect(titles).toHaveLength(3);
  for (const each of titles) expect(each.widthMm).toBeLessThanOrEqual(50);
});
