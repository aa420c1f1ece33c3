import { boxUnion, composeAffine, ringBox, translation } from '@hidebound/geometry';
import type { Affine, Box } from '@hidebound/geometry';
import { rectangle } from '../drawing/build.js';
import type { Drawing, DrawingElement } from '../drawing/model.js';
import { BARE_HIDE, INK, INK_SOFT } from '../sheet/palette.js';
import { PAGE_SIZES, lyingPage } from '../sheet/page-size.js';
import type { FontBook } from '../text/font-book.js';
import { fitText, measureText, textLine } from '../text/measure-text.js';
import { fitInto, rowsOfPages } from './page-rows.js';
import type { RowPage } from './page-rows.js';
import { markSign, pageCorners, pageGround, pageLines } from './page-sheet.js';
import type { PatternPagePicture } from './page-sheet.js';

export interface PagesPictureOptions {
  readonly pages: readonly PatternPagePicture[];
  readonly fonts: FontBook;
  /** The file's name. */
  readonly title: string;
}

const MARGIN_MM = 12;
const TITLE_MM = 5.2;
const NOTE_MM = 3;
const GAP_MM = 5;
/** Pages beside a whole take no more of the page's height than this share. */
const ASIDE_SHARE = 0.3;

/**
 * How the pages of a pattern lie together, reduced to one A4 page: each page's edges and lines where it lies in the
 * whole, its number, what its place rests on, and the marks that were used; below, the pages that lie in no whole.
 */
export function drawPages({ pages, fonts, title }: PagesPictureOptions): Drawing {
  const { together, aside } = sorted(pages);
  const whole = boxOfWhole(together);
  const isWide = whole === undefined || whole.maxX - whole.minX > whole.maxY - whole.minY;
  const { widthMm, heightMm } = isWide ? lyingPage(PAGE_SIZES.A4) : PAGE_SIZES.A4;
  const inner: Box = {
    minX: MARGIN_MM,
    minY: MARGIN_MM + TITLE_MM + NOTE_MM + GAP_MM,
    maxX: widthMm - MARGIN_MM,
    maxY: heightMm - MARGIN_MM - NOTE_MM - GAP_MM,
  };
  const share = whole === undefined ? 1 : ASIDE_SHARE;
  const rows = rowsOfPages(aside, inner.maxX - inner.minX, (inner.maxY - inner.minY) * share);
  const rowsTop = whole === undefined ? inner.minY : inner.maxY - rows.heightMm;
  const room = { ...inner, maxY: rows.heightMm === 0 ? inner.maxY : rowsTop - GAP_MM };
  const toPaper = whole === undefined ? undefined : fitInto(whole, room);
  const placed = [
    ...(toPaper === undefined ? [] : together.map((page) => joined(page, toPaper))),
    ...rows.placed.map(({ page, toPaper: own }) => ({
      page,
      toPaper: composeAffine(translation(inner.minX, rowsTop), own),
    })),
  ];
  return {
    widthMm,
    heightMm,
    title,
    layers: [
      { name: 'ground', elements: toPaper === undefined ? [] : [rectangle(room, { fill: BARE_HIDE })] },
      { name: 'pages', elements: placed.map(({ page, toPaper: own }) => pageGround(page, own, fonts)) },
      { name: 'lines', elements: placed.map(({ page, toPaper: own }) => pageLines(page, own, fonts)) },
      { name: 'title', elements: heading({ pages, together, fonts, title, widthMm }) },
      { name: 'key', elements: key(pages, rows.left, fonts, heightMm - MARGIN_MM) },
    ],
  };
}

/** Pages that lie in a whole with others, and those that don't. */
function sorted(pages: readonly PatternPagePicture[]) {
  const isTogether = ({ toWhole, joinedBy }: PatternPagePicture) =>
    toWhole !== undefined && joinedBy !== 'alone' && joinedBy !== 'left out';
  return {
    together: pages.filter(isTogether),
    aside: pages.filter((page) => !isTogether(page)),
  };
}

function boxOfWhole(pages: readonly PatternPagePicture[]): Box | undefined {
  const boxes = pages.map((page) => ringBox(pageCorners(page, page.toWhole!)));
  return boxes.length === 0 ? undefined : boxes.reduce(boxUnion);
}

function joined(page: PatternPagePicture, toPaper: Affine): RowPage {
  return { page, toPaper: composeAffine(toPaper, page.toWhole!) };
}

interface Heading extends PagesPictureOptions {
  readonly together: readonly PatternPagePicture[];
  readonly widthMm: number;
}

function heading({ pages, together, fonts, title, widthMm }: Heading): DrawingElement[] {
  const room = widthMm - 2 * MARGIN_MM;
  const at = { x: MARGIN_MM, y: MARGIN_MM + TITLE_MM * 0.8 };
  const below = { x: MARGIN_MM, y: at.y + TITLE_MM * 0.6 + NOTE_MM };
  const words = `How the pages lie: ${title}`;
  return [
    textLine(fonts, fitText(fonts, 'bold', TITLE_MM, words, room), {
      at,
      sizeMm: TITLE_MM,
      colour: INK,
      face: 'bold',
    }),
    textLine(fonts, summary(pages, together), {
      at: below,
      sizeMm: NOTE_MM,
      colour: INK_SOFT,
      face: 'narrow',
    }),
  ];
}

function summary(pages: readonly PatternPagePicture[], together: readonly PatternPagePicture[]): string {
  const leftOut = pages.filter(({ joinedBy }) => joinedBy === 'left out').length;
  const alone = pages.length - together.length - leftOut;
  const misses = together.flatMap(({ missMm }) => (missMm === undefined ? [] : [missMm]));
  const parts = [
    ...(together.length === 0 ? [] : [`${together.length} of ${pages.length} pages put together`]),
    ...(misses.length === 0
      ? []
      : [`neighbours miss each other by ${Math.max(...misses).toFixed(2)} mm at most`]),
    ...(alone === 0 ? [] : [`${alone} by ${alone === 1 ? 'itself' : 'themselves'}`]),
    ...(leftOut === 0 ? [] : [`${leftOut} left out`]),
  ];
  return parts.join('; ');
}

/** What the signs mean, and how many pages are not shown. */
function key(
  pages: readonly PatternPagePicture[],
  left: number,
  fonts: FontBook,
  y: number,
): DrawingElement[] {
  const words = [
    ...(pages.some(({ marks }) => marks.length > 0) ? ['mark that pages were joined by'] : []),
    ...(left === 0 ? [] : [`${left} more pages in no whole are not shown`]),
  ];
  let x = MARGIN_MM;
  return words.flatMap((text, i) => {
    const sign =
      i === 0 && text.startsWith('mark') ? markSign({ x: x + NOTE_MM / 2, y: y - NOTE_MM / 3 }) : [];
    const at = { x: x + (sign.length === 0 ? 0 : 2 * NOTE_MM), y };
    x = at.x + measureText(fonts, 'narrow', NOTE_MM, text).widthMm + 3 * NOTE_MM;
    return [...sign, textLine(fonts, text, { at, sizeMm: NOTE_MM, colour: INK_SOFT, face: 'narrow' })];
  });
}
