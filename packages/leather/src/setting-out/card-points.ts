import { atan2Deg, distanceBetween, lineInRegion, regionCentroid, sinCosDeg } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import type { LayablePiece } from '../model/piece.js';

/** The two points of a piece's card that are laid on the chalk marks; in the piece's own frame, plain, not mirrored. */
export interface CardPoints {
  readonly a: Point;
  readonly b: Point;
  /** Two sharp corners; where the arrow's line meets the edge; where a line across the arrow meets it. */
  readonly found: 'corners' | 'ends of the arrow line' | 'ends of a line across the arrow';
}

/** A turn of at least this at one corner of the ring is sharp to the eye: rounded ones are made of gentler turns. */
const SHARP_DEG = 50;
/** Points nearer together than this share of the piece's extent would leave its turn open. */
const FAR_ENOUGH = 0.6;

/**
 * Points A and B of a card, easy to find and far apart: two sharp corners; else where the direction arrow, drawn on to
 * both sides, meets the edge; or where the line across it does. A lies behind B as the arrow points (across it, to its
 * right).
 */
export function cardPoints(piece: LayablePiece): CardPoints {
  const extent = 2 * Math.max(...piece.region.outer.map((p) => distanceBetween(p, ORIGIN)));
  const candidates = [cornerPair(piece), lineEnds(piece, 0), lineEnds(piece, 90)].filter(
    (each) => each !== undefined,
  );
  const far = candidates.find(({ a, b }) => distanceBetween(a, b) >= FAR_ENOUGH * extent);
  if (far !== undefined) return far;
  return candidates.reduce((best, each) =>
    distanceBetween(each.a, each.b) > distanceBetween(best.a, best.b) ? each : best,
  );
}

const ORIGIN: Point = { x: 0, y: 0 };

/** Two pairs of corners that are as far apart but for rounding: the first counts. */
const TIE_MM = 0.001;

function cornerPair(piece: LayablePiece): CardPoints | undefined {
  const corners = sharpCorners(piece.region.outer);
  let best: readonly [Point, Point] | undefined;
  let farthest = 0;
  corners.forEach((p, i) => {
    for (const q of corners.slice(i + 1)) {
      if (distanceBetween(p, q) > farthest + TIE_MM) [best, farthest] = [[p, q], distanceBetween(p, q)];
    }
  });
  if (best === undefined) return undefined;
  const { sin, cos } = sinCosDeg(piece.arrowDeg);
  const [p, q] = best;
  const isForward = (q.x - p.x) * cos + (q.y - p.y) * sin >= 0;
  return isForward ? { a: p, b: q, found: 'corners' } : { a: q, b: p, found: 'corners' };
}

/** Convex corners with a turn that no rounding has. Outer rings run clockwise as seen: they turn to the right. */
function sharpCorners(ring: Ring): Point[] {
  return ring.filter((p, i) => {
    const before = ring[(i - 1 + ring.length) % ring.length]!;
    const behind = ring[(i + 1) % ring.length]!;
    const [ax, ay] = [p.x - before.x, p.y - before.y];
    const [bx, by] = [behind.x - p.x, behind.y - p.y];
    return atan2Deg(ax * by - ay * bx, ax * bx + ay * by) >= SHARP_DEG;
  });
}

/** Where the drawn arrow's line (or one through the middle, where none is drawn) meets the edge; or the line across it. */
function lineEnds(piece: LayablePiece, turnDeg: 0 | 90): CardPoints | undefined {
  const { sin, cos } = sinCosDeg(piece.arrowDeg + turnDeg);
  const through = arrowMiddle(piece);
  const stretches = lineInRegion(
    through,
    { x: through.x + cos, y: through.y + sin },
    { outer: piece.region.outer, openings: [] },
  );
  const [first, last] = [stretches[0], stretches[stretches.length - 1]];
  if (first === undefined || last === undefined) return undefined;
  const found = turnDeg === 0 ? 'ends of the arrow line' : 'ends of a line across the arrow';
  return { a: first[0], b: last[1], found };
}

function arrowMiddle({ shape, region }: LayablePiece): Point {
  const { direction } = shape;
  if (direction === undefined) return regionCentroid(region);
  return { x: (direction.from.x + direction.to.x) / 2, y: (direction.from.y + direction.to.y) / 2 };
}
