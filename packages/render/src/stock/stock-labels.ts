import type { Box } from '@hidebound/geometry';
import type { StockRow } from '@hidebound/leather';
import { rectangle } from '../drawing/build.js';
import type { Drawing, DrawingElement } from '../drawing/model.js';
import { PAGE_MARGIN_MM } from '../sheet/fit-page.js';
import { PAGE_SIZES } from '../sheet/page-size.js';
import type { PageName } from '../sheet/page-size.js';
import { HAIRLINE_MM, INK, INK_SOFT, RULE } from '../sheet/palette.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, textLine } from '../text/measure-text.js';
import { hideInBox } from './stock-picture.js';
import { areaWords, rectangleWords, thicknessOfRow } from './stock-words.js';

/** Large enough to read on a roll in a rack, ten to an A4 page. */
const LABEL_MM = { width: 92, height: 53 };
const INSET_MM = 4;
const NAME_MM = 6;
const TEXT_MM = 3.6;
const LINE_SHARE = 1.4;

/** Labels to cut out along their thin lines and to tie to hides and offcuts. */
export function drawStockLabels(
  rows: readonly StockRow[],
  { page, fonts }: { readonly page: PageName; readonly fonts: FontBook },
): Drawing[] {
  const { widthMm, heightMm } = PAGE_SIZES[page];
  const columns = Math.floor((widthMm - 2 * PAGE_MARGIN_MM) / LABEL_MM.width);
  const lines = Math.floor((heightMm - 2 * PAGE_MARGIN_MM) / LABEL_MM.height);
  const left = (widthMm - columns * LABEL_MM.width) / 2;
  const top = (heightMm - lines * LABEL_MM.height) / 2;
  const perPage = columns * lines;
  const pages: Drawing[] = [];
  for (let from = 0; from < rows.length; from += perPage) {
    const elements = rows.slice(from, from + perPage).flatMap((row, i) => {
      const minX = left + (i % columns) * LABEL_MM.width;
      const minY = top + Math.floor(i / columns) * LABEL_MM.height;
      return label(row, { minX, minY, maxX: minX + LABEL_MM.width, maxY: minY + LABEL_MM.height }, fonts);
    });
    pages.push({
      widthMm,
      heightMm,
      title: `Labels of the stock, sheet ${pages.length + 1}`,
      layers: [{ name: 'labels', elements }],
    });
  }
  return pages;
}

function label(row: StockRow, box: Box, fonts: FontBook): DrawingElement[] {
  const { hide, sizes } = row;
  const x = box.minX + INSET_MM;
  const middle = box.minX + LABEL_MM.width * 0.56;
  const room = middle - x - 2;
  const facts = [
    thicknessOfRow(row) === 'not known' ? 'thickness not known' : thicknessOfRow(row),
    [hide.leather.tannage, hide.leather.colour].filter((each) => each !== undefined).join(', '),
    hide.lot === undefined ? '' : `lot ${hide.lot}`,
    `${hide.cut}, ${areaWords(sizes.usableMm2)}`,
    `largest ${rectangleWords(sizes.rectangle)}`,
    hide.storedAt ?? '',
  ].filter((text) => text !== '');
  const first = box.minY + INSET_MM + NAME_MM;
  return [
    rectangle(box, { stroke: { colour: RULE, widthMm: HAIRLINE_MM } }),
    textLine(fonts, fitText(fonts, 'bold', NAME_MM, hide.id, LABEL_MM.width - 2 * INSET_MM), {
      at: { x, y: first - 1 },
      sizeMm: NAME_MM,
      colour: INK,
      face: 'bold',
    }),
    ...facts.map((text, i) =>
      textLine(fonts, fitText(fonts, 'narrow', TEXT_MM, text, room), {
        at: { x, y: first + (i + 1) * TEXT_MM * LINE_SHARE },
        sizeMm: TEXT_MM,
        colour: i === 0 ? INK : INK_SOFT,
        face: i === 0 ? 'narrow bold' : 'narrow',
      }),
    ),
    ...hideInBox(row, {
      minX: middle,
      minY: first + 2,
      maxX: box.maxX - INSET_MM,
      maxY: box.maxY - INSET_MM,
    }),
  ];
}
