import {
  pointToRing,
  regionBox,
  regionCentroid,
  rotationDeg,
  sinCosDeg,
  transformRegion,
} from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import { isInside, labelBoxInRegion, labelBoxesOverlap } from './label-box.js';
import type { LabelBox } from './label-box.js';

/** Places tried along each side of a region's box. More finds tighter fits and takes longer. */
const TRIES_PER_SIDE = 22;

/** Never tried closer together than this: the eye sees no difference. */
const FINEST_STEP_MM = 0.4;

export interface RoomWanted {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly angleDeg: number;
  /** As near to this as may be. */
  readonly near: Point;
  /** Not over any of these. */
  readonly avoid: readonly LabelBox[];
}

/** The place nearest to the wanted one at which a rectangle lies wholly in the region; undefined if there is none. */
export function placeInside(region: Region, wanted: RoomWanted): LabelBox | undefined {
  const { widthMm, heightMm, angleDeg } = wanted;
  const turn = sinCosDeg(angleDeg);
  for (const center of candidateCenters(region, wanted)) {
    const box: LabelBox = { center, widthMm, heightMm, angleDeg, turn };
    if (wanted.avoid.some((other) => labelBoxesOverlap(box, other))) continue;
    if (labelBoxInRegion(box, region)) return box;
  }
  return undefined;
}

/** Centres on a grid that is turned with the rectangle, nearest first; only such as leave room within the box. */
function candidateCenters(region: Region, wanted: RoomWanted): Point[] {
  const turn = rotationDeg(-wanted.angleDeg);
  const back = rotationDeg(wanted.angleDeg);
  const box = regionBox(transformRegion(turn, region));
  const roomX = box.maxX - box.minX - wanted.widthMm;
  const roomY = box.maxY - box.minY - wanted.heightMm;
  if (roomX < 0 || roomY < 0) return [];
  const centers: { readonly at: Point; readonly distanceSq: number }[] = [];
  const add = (x: number, y: number): void => {
    const at = { x: back.a * x + back.c * y, y: back.b * x + back.d * y };
    const dx = at.x - wanted.near.x;
    const dy = at.y - wanted.near.y;
    centers.push({ at, distanceSq: dx * dx + dy * dy });
  };
  add(turn.a * wanted.near.x + turn.c * wanted.near.y, turn.b * wanted.near.x + turn.d * wanted.near.y);
  const columns = stepsFor(roomX);
  const rows = stepsFor(roomY);
  for (let i = 0; i <= columns; i++) {
    for (let j = 0; j <= rows; j++) {
      add(
        box.minX + wanted.widthMm / 2 + (roomX * (i + 0.5)) / (columns + 1),
        box.minY + wanted.heightMm / 2 + (roomY * (j + 0.5)) / (rows + 1),
      );
    }
  }
  return centers.sort((a, b) => a.distanceSq - b.distanceSq).map((center) => center.at);
}

function stepsFor(roomMm: number): number {
  return Math.min(TRIES_PER_SIDE, Math.ceil(roomMm / FINEST_STEP_MM));
}

/** Points tried along each side of a region's box in looking for its roomiest one. */
const ROOM_TRIES_PER_SIDE = 15;

/** A point well inside the region: of a grid over its box and its centroid the one farthest from the edges. */
export function roomiestPoint(region: Region): Point {
  const box = regionBox(region);
  const rings = [region.outer, ...region.openings];
  let best = region.outer[0]!;
  let bestRoom = -1;
  const offer = (p: Point, favour: number): void => {
    if (!isInside(p, region)) return;
    const room = Math.min(...rings.map((ring) => pointToRing(p, ring))) * favour;
    if (room > bestRoom) {
      bestRoom = room;
      best = p;
    }
  };
  // The centroid looks calmest: it wins unless another place has a good deal more room.
  offer(regionCentroid(region), CENTROID_FAVOUR);
  for (let i = 0; i < ROOM_TRIES_PER_SIDE; i++) {
    for (let j = 0; j < ROOM_TRIES_PER_SIDE; j++) {
      offer(
        {
          x: box.minX + ((box.maxX - box.minX) * (i + 0.5)) / ROOM_TRIES_PER_SIDE,
          y: box.minY + ((box.maxY - box.minY) * (j + 0.5)) / ROOM_TRIES_PER_SIDE,
        },
        1,
      );
    }
  }
  return best;
}

const CENTROID_FAVOUR = 1.5;
