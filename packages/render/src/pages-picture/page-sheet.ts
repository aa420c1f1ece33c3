import { applyAffine, transformCurve } from '@hidebound/geometry';
import type { Affine, Curve, Point } from '@hidebound/geometry';
import { boxCorners, chain, circle, group, line, path } from '../drawing/build.js';
import type { DrawingElement, GroupElement, Stroke } from '../drawing/model.js';
import { FINE_LINE_MM, INK, INK_SOFT, MARK_LINE_MM, OXBLOOD, PAPER, RULE } from '../sheet/palette.js';
import type { FontBook } from '../text/font-book.js';
import { capitalHeightMm, measureText, textLine } from '../text/measure-text.js';
import { SMALLEST_TEXT_MM } from '../picture/picture-style.js';

/** One page of a pattern file, and where it lies in the whole. */
export interface PatternPagePicture {
  readonly number: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** From the page to the whole; absent: it was left out. */
  readonly toWhole?: Affine;
  readonly joinedBy: string;
  /** How far it misses its neighbours at the worst. */
  readonly missMm?: number;
  readonly lines: readonly { readonly curve: Curve; readonly isDashed: boolean }[];
  /** Marks that it was joined by, in its own frame. */
  readonly marks: readonly Point[];
}

/** A page's number is so large, as a share of the shorter side of the page as drawn. */
const NUMBER_SHARE = 0.3;
const MOST_NUMBER_MM = 18;
const MARK_RADIUS_MM = 1.3;

const SOLID: Stroke = { colour: INK, widthMm: FINE_LINE_MM };
const DASHED: Stroke = { colour: INK_SOFT, widthMm: FINE_LINE_MM, dashMm: [1.1, 0.8] };
const EDGE: Stroke = { colour: RULE, widthMm: MARK_LINE_MM };
const MARK: Stroke = { colour: OXBLOOD, widthMm: MARK_LINE_MM };
/** Where one page lies over the next, both are seen. */
const PAPER_OPACITY = 0.75;

/** The corners of a page where it is drawn. */
export function pageCorners({ widthMm, heightMm }: PatternPagePicture, toPaper: Affine): Point[] {
  return boxCorners({ minX: 0, minY: 0, maxX: widthMm, maxY: heightMm }).map((p) => applyAffine(toPaper, p));
}

/** The paper of a page, its number large and pale on it: what lies below its lines and those of its neighbours. */
export function pageGround(page: PatternPagePicture, toPaper: Affine, fonts: FontBook): GroupElement {
  const { corners, middle, sizeMm, capital } = numberOf(page, toPaper, fonts);
  return group(`page ${page.number}`, [
    chain(corners, true, { fill: PAPER, opacity: PAPER_OPACITY }),
    chain(corners, true, { stroke: EDGE }),
    textLine(fonts, String(page.number), {
      at: { x: middle.x, y: middle.y + capital / 2 },
      sizeMm,
      colour: PALE,
      face: 'bold',
      anchor: 'middle',
    }),
  ]);
}

/** A number that lines are read over. */
const PALE = '#e4d9c6';

/** A page's own lines and the marks that were used, and below its number what its place rests on. */
export function pageLines(page: PatternPagePicture, toPaper: Affine, fonts: FontBook): GroupElement {
  const curves = (isDashed: boolean) =>
    page.lines
      .filter((each) => each.isDashed === isDashed)
      .map(({ curve }) => transformCurve(toPaper, curve));
  const lines = [path(curves(false), { stroke: SOLID }), path(curves(true), { stroke: DASHED })].filter(
    (each) => each.curves.length > 0,
  );
  return group(`lines of page ${page.number}`, [
    ...lines,
    ...page.marks.flatMap((mark) => markSign(applyAffine(toPaper, mark))),
    ...noteBelowNumber(page, toPaper, fonts),
  ]);
}

/** A ring with its middle, as large on every picture. */
export function markSign({ x, y }: Point): DrawingElement[] {
  const arm = MARK_RADIUS_MM * 0.45;
  return [
    circle({ x, y }, MARK_RADIUS_MM, { stroke: MARK }),
    line({ x: x - arm, y }, { x: x + arm, y }, MARK),
    line({ x, y: y - arm }, { x, y: y + arm }, MARK),
  ];
}

/** Below the number, where neither marks nor the next page lie, if there is room for it. */
function noteBelowNumber(page: PatternPagePicture, toPaper: Affine, fonts: FontBook): DrawingElement[] {
  const { middle, width, capital } = numberOf(page, toPaper, fonts);
  const text = noteOf(page);
  const sizeMm = SMALLEST_TEXT_MM;
  if (measureText(fonts, 'narrow', sizeMm, text).widthMm > width - sizeMm) return [];
  const at = { x: middle.x, y: middle.y + capital / 2 + 1.6 * sizeMm };
  return [textLine(fonts, text, { at, sizeMm, colour: INK_SOFT, face: 'narrow', anchor: 'middle' })];
}

function numberOf(page: PatternPagePicture, toPaper: Affine, fonts: FontBook) {
  const corners = pageCorners(page, toPaper);
  const [width, height] = extent(corners);
  const sizeMm = Math.min(MOST_NUMBER_MM, NUMBER_SHARE * Math.min(width, height));
  const capital = capitalHeightMm(fonts, 'bold', sizeMm);
  return { corners, middle: midway(corners[0]!, corners[2]!), width, sizeMm, capital };
}

function noteOf({ joinedBy, missMm }: PatternPagePicture): string {
  if (joinedBy === 'left out') return 'left out';
  if (joinedBy === 'alone') return 'by itself';
  return missMm === undefined ? `by ${joinedBy}` : `by ${joinedBy}, ${missMm.toFixed(2)} mm off`;
}

function midway(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

function extent(points: readonly Point[]): [number, number] {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}
