import { curveBox, curveEndPoints, roundCurve, transformCurveToGrid, translation } from '@hidebound/geometry';
import type { Box, Curve, Point } from '@hidebound/geometry';
import type { DrawnLine } from '../drawing/drawn-line.js';
import { clipBoxed } from '../lines/clip-to-box.js';
import { dropStandstill } from '../lines/tidy.js';
import { AT_BORDER_MM } from './limits.js';
import type { PageFacts } from './page-facts.js';

/** A part of a line of one page, in the whole's frame. */
export interface PagePart {
  readonly line: DrawnLine;
  readonly page: number;
  /** Its start, its end: cut by a seam or by the border of the window, so that it may go on elsewhere. */
  readonly isCut: readonly [boolean, boolean];
}

/** Of two pages that meet, what lies on the seam itself is drawn by the left or upper one, mm. */
const SEAM_LINE_MM = 0.0002;

/** Parts of lines within the page's share of the whole. */
export function partsOfPage(
  facts: PageFacts,
  page: number,
  place: Point,
  boxes: readonly Box[],
  isDropped: (line: number) => boolean,
): PagePart[] {
  const toWhole = translation(place.x, place.y);
  const cutLines = new Map<number, Point[]>();
  for (const { line, at } of facts.ends) cutLines.set(line, [...(cutLines.get(line) ?? []), at]);
  const window = {
    minX: facts.window.minX + place.x,
    minY: facts.window.minY + place.y,
  };
  const open = boxes.map((box) => ({
    ...box,
    minX: box.minX - window.minX > SEAM_LINE_MM ? box.minX + SEAM_LINE_MM : box.minX - SLACK_MM,
    minY: box.minY - window.minY > SEAM_LINE_MM ? box.minY + SEAM_LINE_MM : box.minY - SLACK_MM,
    maxX: box.maxX + SLACK_MM,
    maxY: box.maxY + SLACK_MM,
  }));
  return facts.page.lines.flatMap((line, i) => {
    if (isDropped(i)) return [];
    const curve = transformCurveToGrid(toWhole, line.curve);
    const box = curveBox(curve);
    const own = curveEndPoints(curve);
    const cuts = (cutLines.get(i) ?? []).map(({ x, y }) => ({ x: x + place.x, y: y + place.y }));
    return open.flatMap((cell) =>
      clipBoxed(curve, box, cell).flatMap((part) => {
        const kept = dropStandstill(roundCurve(part));
        return kept === undefined || isSpeck(kept)
          ? []
          : [{ line: { ...line, curve: kept }, page, isCut: cutsOf(kept, curve, own, cuts) }];
      }),
    );
  });
}

/** Lines end on the border of a window to within this; they are not to be cut there once more, mm. */
const SLACK_MM = 0.0001;

/** Rounding to the grid on two ways, mm. */
const SAME_END_MM = 0.002;

/** What rounding leaves of a line that only touches a seam. */
function isSpeck(curve: Curve): boolean {
  const box = curveBox(curve);
  return Math.max(box.maxX - box.minX, box.maxY - box.minY) <= SAME_END_MM;
}

function cutsOf(
  part: Curve,
  whole: Curve,
  own: { readonly start: Point; readonly end: Point },
  cuts: readonly Point[],
): readonly [boolean, boolean] {
  if (part.closed) return [false, false];
  const { start, end } = curveEndPoints(part);
  const isCut = (p: Point) => {
    if (whole.closed || cuts.some((cut) => isNear(p, cut, AT_BORDER_MM))) return true;
    return !isNear(p, own.start, SAME_END_MM) && !isNear(p, own.end, SAME_END_MM);
  };
  return [isCut(start), isCut(end)];
}

function isNear(a: Point, b: Point, by: number): boolean {
  return Math.abs(a.x - b.x) <= by && Math.abs(a.y - b.y) <= by;
}
