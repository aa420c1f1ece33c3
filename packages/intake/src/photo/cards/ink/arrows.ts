import { distanceBetween } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { BARB_DEG, BARB_MM, SHORTEST_ARROW_MM } from './limits.js';
import { cosBetween } from './strokes.js';
import type { Stroke } from './strokes.js';

export interface FoundArrow {
  readonly from: Point;
  readonly to: Point;
  /** The shaft and both barbs. */
  readonly strokes: readonly Stroke[];
}

/** Barbs start this near to the end of their shaft, mm. */
const TIP_MM = 1.5;
/** A shaft is so straight: distance of its ends over its length. */
const SHAFT_STRAIGHT = 0.97;

/** Straight strokes with two barbs at one end, one on either side, turned back. */
export function findArrows(strokes: readonly Stroke[]): FoundArrow[] {
  const arrows: FoundArrow[] = [];
  for (const shaft of strokes) {
    if (shaft.closed || shaft.lengthMm < SHORTEST_ARROW_MM) continue;
    const ends = [shaft.points[0]!, shaft.points.at(-1)!] as const;
    if (distanceBetween(...ends) < SHAFT_STRAIGHT * shaft.lengthMm) continue;
    const heads = [headAt(ends[1], ends[0], shaft, strokes), headAt(ends[0], ends[1], shaft, strokes)];
    // Barbs at both ends point nowhere.
    if (heads.filter((head) => head !== undefined).length !== 1) continue;
    const atEnd = heads[0] !== undefined;
    const barbs = (heads[0] ?? heads[1])!;
    arrows.push({
      from: atEnd ? ends[0] : ends[1],
      to: atEnd ? ends[1] : ends[0],
      strokes: [shaft, ...barbs],
    });
  }
  return arrows;
}

function headAt(
  tip: Point,
  tail: Point,
  shaft: Stroke,
  strokes: readonly Stroke[],
): readonly Stroke[] | undefined {
  const back = { x: tail.x - tip.x, y: tail.y - tip.y };
  const barbs = strokes.flatMap((stroke) => {
    if (stroke === shaft || stroke.closed) return [];
    if (stroke.lengthMm < BARB_MM.least || stroke.lengthMm > Math.min(BARB_MM.most, shaft.lengthMm / 2))
      return [];
    const [a, b] = [stroke.points[0]!, stroke.points.at(-1)!];
    const [near, far] = distanceBetween(a, tip) <= distanceBetween(b, tip) ? [a, b] : [b, a];
    if (distanceBetween(near, tip) > TIP_MM) return [];
    const way = { x: far.x - near.x, y: far.y - near.y };
    const deg = (Math.acos(Math.min(1, Math.max(-1, cosBetween(way, back)))) * 180) / Math.PI;
    if (deg < BARB_DEG.least || deg > BARB_DEG.most) return [];
    return [{ stroke, side: Math.sign(back.x * way.y - back.y * way.x) }];
  });
  // A blurred tip may leave stumps beside the barbs: the longest on either side is the barb.
  const longest = (side: number) =>
    barbs.filter((barb) => barb.side === side).sort((a, b) => b.stroke.lengthMm - a.stroke.lengthMm)[0]
      ?.stroke;
  const [left, right] = [longest(-1), longest(1)];
  return left === undefined || right === undefined ? undefined : [left, right];
}
