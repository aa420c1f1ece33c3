import { curveBox } from '@hidebound/geometry';
import type { DrawnLine } from '../drawing/drawn-line.js';
import type { Seam } from './cells.js';
import { ON_SEAM_MM } from './limits.js';
import type { PatternPage } from './page.js';
import { heightOf, widthOf } from './vectors.js';

/** What stands below the window of each page of one of our layouts (docs/templates.md, "A page in figures"). */
const OWN_MARK = /^layout [0-9a-f]{6}$/;

/** Our filled signs (arrow heads, squares, dots) are no larger, mm; lines of pieces are never filled without a line. */
const SIGN_MM = 8;

/** Our dotted join lines are 0.15 mm wide. */
const JOIN_LINE_MM = 0.17;
const STRAIGHT_MM = 0.05;

const WHITE = '#ffffff';

/** The page was drawn by our own templates. */
export function isOwnPage({ texts }: PatternPage): boolean {
  return texts.some(({ text }) => OWN_MARK.test(text.trim()));
}

/** Of our own pages: what is filled and has no line, and the white beside lines that run over marks. */
export function isOwnSign(line: DrawnLine): boolean {
  if (line.stroke === WHITE) return true;
  if (line.stroke !== undefined || line.fill === undefined) return false;
  const box = curveBox(line.curve);
  return widthOf(box) <= SIGN_MM && heightOf(box) <= SIGN_MM;
}

/** The dotted line along which our own pages are trimmed: thin, straight, on a seam. */
export function isJoinLine({ curve, isDashed, stroke, widthMm }: DrawnLine, seams: readonly Seam[]): boolean {
  if (!isDashed || stroke === undefined || widthMm > JOIN_LINE_MM || curve.closed) return false;
  const box = curveBox(curve);
  return seams.some(({ axis, at }) =>
    axis === 'x'
      ? widthOf(box) <= STRAIGHT_MM && Math.abs(box.minX - at) <= ON_SEAM_MM
      : heightOf(box) <= STRAIGHT_MM && Math.abs(box.minY - at) <= ON_SEAM_MM,
  );
}
