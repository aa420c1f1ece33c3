import { curveBox } from '@hidebound/geometry';
import type { Box } from '@hidebound/geometry';
import type { PatternPage } from './page.js';
import { STRAIGHT_MM } from './limits.js';
import { lookOf } from './look.js';
import type { PageLines } from './page-lines.js';
import { repeatedAmong } from './repeated.js';
import type { Placed } from './repeated.js';
import { heightOf, widthOf } from './vectors.js';

/** A frame spans this share of the page both ways at least. */
const FRAME_SHARE = 0.6;

/** Its sides meet within this, mm. */
const CORNER_MM = 0.3;

/** Numbers of the lines that frame the page: a rectangle, or four straight lines that meet in its corners. */
export function frameLines(page: PatternPage, lines: Pick<PageLines, 'boxes'>): number[] {
  const wide = (box: Box) => widthOf(box) >= FRAME_SHARE * page.widthMm;
  const high = (box: Box) => heightOf(box) >= FRAME_SHARE * page.heightMm;
  const rectangles = lines.boxes.flatMap((box, i) =>
    wide(box) && high(box) && isRectangle(page, box, i) ? [i] : [],
  );
  const thin = (mm: number) => mm <= STRAIGHT_MM;
  const level = lines.boxes.flatMap((box, i) => (wide(box) && thin(heightOf(box)) ? [i] : []));
  const upright = lines.boxes.flatMap((box, i) => (high(box) && thin(widthOf(box)) ? [i] : []));
  const meets = (i: number, j: number) => {
    const a = lines.boxes[i]!;
    const b = lines.boxes[j]!;
    const isAtEndX = [a.minX, a.maxX].some((x) => Math.abs(x - b.minX) <= CORNER_MM);
    const isAtEndY = [b.minY, b.maxY].some((y) => Math.abs(y - a.minY) <= CORNER_MM);
    return isAtEndX && isAtEndY;
  };
  const sides = [
    ...level.filter((i) => upright.filter((j) => meets(i, j)).length >= 2),
    ...upright.filter((j) => level.filter((i) => meets(i, j)).length >= 2),
  ];
  return [...rectangles, ...sides];
}

/** By page: lines that frame it and stand at the same place of other pages too. */
export function repeatedFrames(pages: readonly PatternPage[]): Set<number>[] {
  const placed = pages.flatMap((page, number) => {
    const boxes = page.lines.map(({ curve }) => curveBox(curve));
    return frameLines(page, { boxes }).map((i): Placed => {
      return { page: number, kind: lookOf(page.lines[i]!), box: boxes[i]!, lines: [i] };
    });
  });
  const sets = pages.map(() => new Set<number>());
  for (const { page, lines } of repeatedAmong(placed, pages.length))
    for (const line of lines) sets[page]!.add(line);
  return sets;
}

/** All its corners lie in the corners of its box. */
function isRectangle(page: PatternPage, box: Box, i: number): boolean {
  const { curve } = page.lines[i]!;
  if (!curve.closed || curve.segments.length > 8) return false;
  return curve.segments.every(({ kind, to }) => {
    const onX = Math.min(Math.abs(to.x - box.minX), Math.abs(to.x - box.maxX)) <= STRAIGHT_MM;
    const onY = Math.min(Math.abs(to.y - box.minY), Math.abs(to.y - box.maxY)) <= STRAIGHT_MM;
    return kind === 'line' && onX && onY;
  });
}
