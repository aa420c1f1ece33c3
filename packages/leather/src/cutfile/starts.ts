import { curveLength, curveSteps, distanceSq, endDirection, startDirection } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';

/** A place on a closed line at which its cut may start. */
export interface Start {
  readonly alongMm: number;
  readonly at: Point;
  /** Unit vector of the way on from there. */
  readonly direction: Point;
}

/** More are not looked at: a start a little nearer saves less time than it takes to find. */
const MOST_STARTS = 24;
/** A line of fewer parts offers their middles too, so that there is a choice. */
const FEW_PARTS = 6;
/** Cosine of the turn that makes a corner: 12°. A cut shows least where it starts at one. */
const CORNER_COS = 0.978;

/** Corners first, then joints and middles of parts, at most 24 of them. */
export function startsOf(curve: Curve): Start[] {
  const steps = curveSteps(curve);
  const corners: Start[] = [];
  const others: Start[] = [];
  let passed = 0;
  steps.forEach(({ from, segment }, i) => {
    const before = steps[(i + steps.length - 1) % steps.length]!;
    const reaching = endDirection(before.from, before.segment);
    const direction = startDirection(from, segment);
    const isCorner = reaching.x * direction.x + reaching.y * direction.y < CORNER_COS;
    (isCorner ? corners : others).push({ alongMm: passed, at: from, direction });
    const length = curveLength({ start: from, segments: [segment], closed: false });
    if (steps.length < FEW_PARTS && segment.kind === 'line') {
      const at = { x: (from.x + segment.to.x) / 2, y: (from.y + segment.to.y) / 2 };
      others.push({ alongMm: passed + length / 2, at, direction });
    }
    passed += length;
  });
  const room = Math.max(0, MOST_STARTS - corners.length);
  return [...thinned(corners, MOST_STARTS), ...thinned(others, room)];
}

function thinned(starts: readonly Start[], most: number): readonly Start[] {
  if (starts.length <= most) return starts;
  return Array.from({ length: most }, (_, i) => starts[Math.floor((i * starts.length) / most)]!);
}

/** The starts by their distance from a place, the nearest first. */
export function nearestStarts(starts: readonly Start[], from: Point): Start[] {
  return [...starts].sort((a, b) => distanceSq(a.at, from) - distanceSq(b.at, from) || a.alongMm - b.alongMm);
}
