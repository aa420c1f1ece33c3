import type { PreparedItem } from '../nest/prepared-item.js';
import type { Soup } from '../nest/soup.js';
import { buildSoup } from '../nest/soup.js';
import type { LaneNeed } from '../types/problem.js';
import type { Point } from '../types/shape.js';
import { ringArea } from '../shape/ring.js';
import { simplifyGrowing } from '../shape/simplify.js';
import { ROUND_END_MM, STRAIGHT_SIDES_MM } from './constants.js';

/** One item that is cut in lanes. */
export interface StrapKind {
  readonly prepared: PreparedItem;
  readonly lane: LaneNeed;
  readonly lengthMm: number;
  /** By half turn: as it is, and turned by 180 degrees. */
  readonly ways: readonly [StrapShape, StrapShape];
}

/** A strap in the frame of its lane, about its own origin. */
export interface StrapShape {
  readonly turnDeg: 0 | 180;
  /** Its outer ring, shrunk by the skin. */
  readonly body: Soup;
  readonly needs: readonly { readonly needClass: number; readonly soup: Soup }[];
  /** How far it reaches along the lane, from its origin. */
  readonly minU: number;
  readonly maxU: number;
  /** Points at which direction and thickness are proven, [u0, v0, …], the centroid first. */
  readonly proofPoints: Float64Array;
}

/** Undefined for an item that doesn't lie between two straight lines as wide apart as it says. */
export function strapKindOf(prepared: PreparedItem): StrapKind | undefined {
  const { lane } = prepared.item;
  if (lane === undefined || !(lane.widthMm > 0)) return undefined;
  const whole = buildSoup(prepared.rings);
  const reach = Math.max(whole.maxY, -whole.minY) - lane.widthMm / 2;
  if (reach > STRAIGHT_SIDES_MM) return undefined;
  return {
    prepared,
    lane,
    lengthMm: whole.maxX - whole.minX,
    ways: [shapeOf(prepared, whole, 0), shapeOf(prepared, whole, 180)],
  };
}

function shapeOf(prepared: PreparedItem, whole: Soup, turnDeg: 0 | 180): StrapShape {
  const turn = (ring: Float64Array): Float64Array =>
    turnDeg === 0 ? ring : ring.map((coordinate) => 0 - coordinate);
  return {
    turnDeg,
    body: buildSoup([turn(simplified(prepared.insetRings[0]!))]),
    needs: prepared.needs.map(({ needClass, insetRings }) => ({
      needClass,
      soup: buildSoup(insetRings.map(simplified).map(turn)),
    })),
    minU: turnDeg === 0 ? whole.minX : -whole.maxX,
    maxU: turnDeg === 0 ? whole.maxX : -whole.minX,
    proofPoints: turn(prepared.proofPoints),
  };
}

/** An outer ring of fewer corners that contains it, for speed; an opening as it is. */
function simplified(ring: Float64Array): Float64Array {
  const corners: Point[] = [];
  for (let i = 0; i < ring.length; i += 2) corners.push({ x: ring[i]!, y: ring[i + 1]! });
  if (ringArea(corners) <= 0) return ring;
  return Float64Array.from(simplifyGrowing(corners, ROUND_END_MM).flatMap(({ x, y }) => [x, y]));
}
