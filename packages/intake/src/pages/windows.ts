import type { Box, Point } from '@hidebound/geometry';
import type { PatternPage } from './page.js';
import {
  AT_BORDER_MM,
  CUT_MIN_SINE,
  MAX_MARGIN_MM,
  WINDOW_CROSSING_SHARE,
  WINDOW_MIN_ENDS,
  WINDOW_SPREAD_MM,
} from './limits.js';
import { lineEnds } from './page-lines.js';
import type { PageLines } from './page-lines.js';

/** The four borders of a page's window. */
export const SIDES = ['left', 'right', 'top', 'bottom'] as const;
export type Side = (typeof SIDES)[number];

export const OUTWARD: Readonly<Record<Side, Point>> = {
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
  top: { x: 0, y: -1 },
  bottom: { x: 0, y: 1 },
};

/** The end of a line that was cut by the border of a page's window. */
export interface CutEnd {
  readonly at: Point;
  /** The way in which the line would go on. */
  readonly out: Point;
  readonly side: Side;
  readonly look: string;
  readonly line: number;
}

/** Through what the drawing is seen on a page: its edges, or borders within them where lines end. */
export interface Window {
  readonly box: Box;
  /** Borders at which lines were seen to end. */
  readonly sides: readonly Side[];
  readonly ends: readonly CutEnd[];
}

/** An open line's end that points out of the page, seen from one side. */
interface OutEnd extends Omit<CutEnd, 'side'> {
  readonly depth: number;
  readonly isFurniture: boolean;
}

/** What is needed of a page: its lines without those that every page has. */
export interface WindowPage {
  readonly page: PatternPage;
  readonly lines: PageLines;
  /** Stands at the same place of several pages. */
  readonly isFurniture: (line: number) => boolean;
  /** Part of a small figure that may be a mark. */
  readonly isSign: (line: number) => boolean;
}

/**
 * The windows of all pages. Pages of one file have the same margins as a rule, so a border is where lines of many pages
 * end at the same depth from the page's edge and hardly any line runs across; each page's own border may differ by a
 * little (its drawing moved in printing).
 */
export function windowsOf(pages: readonly WindowPage[]): Window[] {
  const endsOf = new Map(SIDES.map((side) => [side, pages.map((page) => outEnds(page, side))]));
  const marginOver = (side: Side, isAsked: (page: number) => boolean) =>
    commonMargin(
      placesOf(
        endsOf
          .get(side)!
          .filter((_, i) => isAsked(i))
          .flat(),
        side,
      ),
      pages.filter((_, i) => isAsked(i)),
      side,
    );
  const swapped = swappedMargins(marginOver);
  const perSide = SIDES.map((side) => {
    const ends = endsOf.get(side)!;
    const common = swapped === undefined || !isLevel(side) ? marginOver(side, () => true) : undefined;
    const margins = pages.map((_, i) => (swapped !== undefined && isLevel(side) ? swapped(side, i) : common));
    const own = ends.map((list, i) => (margins[i] === undefined ? undefined : ownMargin(list, margins[i])));
    return { side, ends, margins, own };
  });
  return pages.map(({ page }, i) => {
    const [left, right, top, bottom] = perSide.map(({ margins, own }) => own[i] ?? margins[i] ?? 0);
    const box = { minX: left!, minY: top!, maxX: page.widthMm - right!, maxY: page.heightMm - bottom! };
    const ends = perSide.flatMap(({ side, ends: all, own }) => {
      const depth = own[i];
      if (depth === undefined) return [];
      return all[i]!.filter((end) => Math.abs(end.depth - depth) <= AT_BORDER_MM).map(
        ({ at, out, look, line }): CutEnd => ({ at, out, look, line, side }),
      );
    });
    const sides = perSide.filter(({ margins }) => margins[i] !== undefined).map(({ side }) => side);
    return { box, sides, ends };
  });
}

const isLevel = (side: Side): boolean => side === 'left' || side === 'right';

function placesOf(ends: readonly OutEnd[], side: Side): EndPlace[] {
  return ends
    .filter(({ depth, isFurniture }) => !isFurniture || depth <= AT_BORDER_MM)
    .map(({ depth, at }) => ({ depth, along: isLevel(side) ? at.y : at.x }));
}

/** Margins that change sides differ by this at least, mm; lesser ones are a page's own shift. */
const SWAPPED_MM = 2 * WINDOW_SPREAD_MM;

/** Left and right margins that change sides from page to page, as of a booklet; nothing if they don't. */
function swappedMargins(
  marginOver: (side: Side, isAsked: (page: number) => boolean) => number | undefined,
): ((side: Side, page: number) => number) | undefined {
  const isEven = (page: number) => page % 2 === 0;
  const isOdd = (page: number) => page % 2 === 1;
  const [one, oneToo] = [marginOver('left', isEven), marginOver('right', isOdd)];
  const [other, otherToo] = [marginOver('right', isEven), marginOver('left', isOdd)];
  const [near, far] = [one ?? oneToo, other ?? otherToo];
  if (near === undefined || far === undefined || Math.abs(near - far) < SWAPPED_MM) return undefined;
  if (Math.abs((oneToo ?? near) - near) > WINDOW_SPREAD_MM) return undefined;
  if (Math.abs((otherToo ?? far) - far) > WINDOW_SPREAD_MM) return undefined;
  // Margins of one side must be seen to differ; else left and right ones that differ do as well.
  if ((one === undefined || otherToo === undefined) && (other === undefined || oneToo === undefined))
    return undefined;
  return (side, page) => ((side === 'left') === isEven(page) ? near : far);
}

function outEnds({ page, lines, isFurniture, isSign }: WindowPage, side: Side): OutEnd[] {
  const outward = OUTWARD[side];
  return page.lines.flatMap(({ curve }, line) => {
    if (curve.closed) return [];
    return lineEnds(curve)
      .filter(({ out }) => pointsOut(out, outward))
      .filter(({ at, out }) => isNearestSide(at, out, page, side))
      .map(({ at, out }) => ({
        at,
        out,
        line,
        look: lines.looks[line]!,
        depth: depthOf(at, page, side),
        // Halves of marks end at the border too, but a whole mark ends anywhere.
        isFurniture: isFurniture(line) || isSign(line),
      }));
  });
}

function pointsOut(out: Point, outward: Point): boolean {
  return out.x * outward.x + out.y * outward.y >= CUT_MIN_SINE;
}

/** Of the edges towards which a line points, the nearest cut it off; in a corner it may be either. */
function isNearestSide(at: Point, out: Point, page: PatternPage, side: Side): boolean {
  const depth = depthOf(at, page, side);
  return SIDES.every(
    (other) => !pointsOut(out, OUTWARD[other]) || depthOf(at, page, other) >= depth - CORNER_MM,
  );
}

/** Margins of one page differ by less than this where lines are cut off in its corners, mm. */
const CORNER_MM = 35;

/** How far within the page's edge. */
export function depthOf({ x, y }: Point, { widthMm, heightMm }: PatternPage, side: Side): number {
  if (side === 'left') return x;
  if (side === 'right') return widthMm - x;
  return side === 'top' ? y : heightMm - y;
}

/** Where a line ends: how far within the page's edge, and where along it. */
interface EndPlace {
  readonly depth: number;
  readonly along: number;
}

/** The depth at which the most lines of all pages end, far more than run across there. */
function commonMargin(
  places: readonly EndPlace[],
  pages: readonly WindowPage[],
  side: Side,
): number | undefined {
  const byDepth = [...places].sort((a, b) => a.depth - b.depth);
  const sorted = byDepth.map(({ depth }) => depth);
  let best: number | undefined;
  let most = 0;
  for (let i = 0; i < sorted.length;) {
    const from = sorted[i]!;
    if (from > MAX_MARGIN_MM) break;
    let to = i;
    while (to < sorted.length && sorted[to]! <= from + WINDOW_SPREAD_MM) to++;
    const margin = densest(sorted.slice(i, to));
    const near = byDepth.slice(i, to).filter(({ depth }) => Math.abs(depth - margin) <= WINDOW_SPREAD_MM);
    if (near.length > most && isBorder(near, margin, pages, side)) {
      best = margin <= AT_BORDER_MM ? 0 : margin;
      most = near.length;
    }
    while (i < to && sorted[i]! < from + WINDOW_SPREAD_MM / 2) i++;
  }
  return best;
}

/** Lines end there at several places, and hardly any runs on across. */
function isBorder(
  near: readonly EndPlace[],
  margin: number,
  pages: readonly WindowPage[],
  side: Side,
): boolean {
  if (margin <= AT_BORDER_MM) return true;
  // Of what is printed beside the drawing on each page, lines end there too, but all at one place.
  const spots = new Set(near.map(({ along }) => Math.round(along)));
  if (spots.size < WINDOW_MIN_ENDS) return false;
  const crossing = pages.reduce((sum, page) => sum + crossingsAt(page, side, margin), 0);
  return crossing <= WINDOW_CROSSING_SHARE * near.length;
}

/** The depth that most others share, to a hundredth of a millimetre. */
function densest(sorted: readonly number[]): number {
  let best = sorted[0]!;
  let most = 0;
  for (let i = 0, from = 0; i < sorted.length; i++) {
    while (sorted[i]! - sorted[from]! > 2 * AT_BORDER_MM) from++;
    if (i - from + 1 <= most) continue;
    most = i - from + 1;
    best = sorted[Math.floor((from + i) / 2)]!;
  }
  return best;
}

function ownMargin(ends: readonly OutEnd[], margin: number): number | undefined {
  const near = ends
    .map(({ depth }) => depth)
    .filter((depth) => Math.abs(depth - margin) <= WINDOW_SPREAD_MM)
    .sort((a, b) => a - b);
  return near.length === 0 ? undefined : densest(near);
}

/** Lines of the drawing that reach farther out than the border by more than a drawing moves on its page. */
function crossingsAt({ page, lines, isFurniture, isSign }: WindowPage, side: Side, margin: number): number {
  let count = 0;
  lines.boxes.forEach((box, i) => {
    if (isFurniture(i) || isSign(i)) return;
    const outer = depthOf(
      { x: side === 'left' ? box.minX : box.maxX, y: side === 'top' ? box.minY : box.maxY },
      page,
      side,
    );
    const inner = depthOf(
      { x: side === 'left' ? box.maxX : box.minX, y: side === 'top' ? box.maxY : box.minY },
      page,
      side,
    );
    if (outer < margin - WINDOW_SPREAD_MM && inner > margin + WINDOW_SPREAD_MM) count++;
  });
  return count;
}
