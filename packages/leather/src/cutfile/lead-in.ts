import { curveArea, flattenCurve, pointInRing } from '@hidebound/geometry';
import type { Curve, Point, Polyline } from '@hidebound/geometry';
import { RING_TOLERANCE_MM } from './contour.js';
import type { Contour } from './contour.js';
import type { Obstacles } from './obstacles.js';
import type { Start } from './starts.js';
import type { CutFileOptions } from './types.js';

export type LeadInWish = NonNullable<CutFileOptions['leadIn']>;

/** Where a cut starts, and the way to it through the waste. */
export interface ChosenStart {
  readonly start: Start;
  /** Open, ends at the start; absent: the cut starts on the line. */
  readonly leadIn?: Curve;
}

/** Where the whole length finds no room, half of it may, or a quarter. */
const SHARES = [1, 1 / 2, 1 / 4];
/** So much of a lead-in at its end touches its own line and is not asked about. */
const LAST_SHARE = 0.02;

/**
 * The first of the starts at which a lead-in has room: it lies in the waste, and neither crosses nor touches any cut or
 * other lead-in. The nearest start, without one, where none has.
 */
export function chooseStart(
  contour: Contour,
  starts: readonly Start[],
  wish: LeadInWish | undefined,
  obstacles: Obstacles,
): ChosenStart {
  const [nearest] = starts as [Start];
  if (wish === undefined || contour.waste === 'none' || contour.ring === undefined) return { start: nearest };
  const side = wasteSide(contour);
  for (const share of SHARES) {
    for (const start of starts) {
      const leadIn = drawLeadIn(start, side, { ...wish, lengthMm: wish.lengthMm * share });
      const line = flattenCurve(leadIn, RING_TOLERANCE_MM);
      if (!hasRoom(line, contour, obstacles)) continue;
      obstacles.add(withoutEnd(line));
      return { start, leadIn };
    }
  }
  return { start: nearest };
}

/** 1 if the waste lies to the left of the line's way as seen, -1 if to the right. */
function wasteSide({ curves, waste }: Contour): 1 | -1 {
  const isOutsideLeft = curveArea(curves[0]!) > 0;
  return isOutsideLeft === (waste === 'outside') ? 1 : -1;
}

function drawLeadIn({ at, direction: t }: Start, side: 1 | -1, wish: LeadInWish): Curve {
  const n = { x: side * t.y, y: -side * t.x };
  const r = wish.lengthMm;
  const diagonal = r * Math.SQRT1_2;
  if (wish.kind === 'straight') {
    const start = { x: at.x + diagonal * (n.x - t.x), y: at.y + diagonal * (n.y - t.y) };
    return { start, segments: [{ kind: 'line', to: at }], closed: false };
  }
  const centre = { x: at.x + r * n.x, y: at.y + r * n.y };
  const via = { x: centre.x - diagonal * (n.x + t.x), y: centre.y - diagonal * (n.y + t.y) };
  const start = { x: centre.x - r * t.x, y: centre.y - r * t.y };
  return { start, segments: [{ kind: 'arc', via, to: at }], closed: false };
}

function hasRoom(line: Polyline, { ring, waste }: Contour, obstacles: Obstacles): boolean {
  const open = withoutEnd(line);
  const wanted = waste === 'outside' ? 'outside' : 'inside';
  return open.every((p) => pointInRing(p, ring!) === wanted) && !obstacles.meets(open);
}

function withoutEnd(line: Polyline): Polyline {
  const last = line[line.length - 1]!;
  const before = line[line.length - 2]!;
  const end: Point = {
    x: last.x + (before.x - last.x) * LAST_SHARE,
    y: last.y + (before.y - last.y) * LAST_SHARE,
  };
  return [...line.slice(0, -1), end];
}
