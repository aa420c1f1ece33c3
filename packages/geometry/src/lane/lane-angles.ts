import { roundDeg, turnDeg } from '../nest/angle.js';
import { directionDegAt } from '../nest/field.js';
import { atan2Deg } from '../number/trigonometry.js';
import { pointInRegion } from '../shape/point-in-ring.js';
import { regionBox } from '../shape/ring.js';
import type { Item, Sheet } from '../types/problem.js';
import type { Point } from '../types/shape.js';
import { ANGLE_ANCHORS, MOST_ANGLES, SAME_ANGLE_DEG } from './constants.js';
import type { StrapKind } from './strap-kind.js';

/** Wishes for one direction, or nearly. */
interface Wish {
  readonly firstDeg: number;
  /** Sum of the turns from the first one. */
  turned: number;
  count: number;
  weight: number;
}

/**
 * Directions in which lanes may run on a sheet, in degrees within [0, 180), the one that suits most straps at most
 * places first: a lane is straight, so it takes the mean of the local directions that are alike.
 */
export function laneAngles(sheet: Sheet, kinds: readonly StrapKind[]): number[] {
  const anchors = anchorsOf(sheet);
  const wishes: Wish[] = [];
  for (const { prepared } of kinds) {
    for (const at of anchors) {
      for (const deg of wantedDeg(prepared.item, sheet, at)) addWish(wishes, deg, prepared.areaMm2);
    }
  }
  return [...wishes]
    .sort((a, b) => b.weight - a.weight)
    .slice(0, MOST_ANGLES)
    .map(({ firstDeg, turned, count }) => roundDeg(firstDeg + turned / count))
    .map((deg) => (deg >= 180 ? roundDeg(deg - 180) : deg));
}

function addWish(wishes: Wish[], deg: number, weight: number): void {
  const like = wishes.find(({ firstDeg }) => Math.abs(turnDeg(deg, firstDeg, 180)) <= SAME_ANGLE_DEG);
  if (like === undefined) {
    wishes.push({ firstDeg: deg, turned: 0, count: 1, weight });
    return;
  }
  like.turned += turnDeg(deg, like.firstDeg, 180);
  like.count++;
  like.weight += weight;
}

/** Angles of the item's x axis on the sheet that would meet its rule at a place; of a free one, along the leather. */
function wantedDeg(item: Item, sheet: Sheet, at: Point): number[] {
  const { frame, targetsDeg, arrowDeg } = item.angleRule;
  if (frame === 'sheet') return targetsDeg.map((target) => target - arrowDeg);
  const local = directionDegAt(sheet.direction, at.x, at.y);
  if (frame === 'local') {
    return Number.isNaN(local) ? [] : targetsDeg.map((target) => local + target - arrowDeg);
  }
  return [Number.isNaN(local) ? atan2Deg(sheet.useFrom.y, sheet.useFrom.x) : local];
}

function anchorsOf(sheet: Sheet): Point[] {
  const { minX, minY, maxX, maxY } = regionBox(sheet.region);
  const anchors: Point[] = [];
  for (let j = 0; j < ANGLE_ANCHORS; j++) {
    for (let i = 0; i < ANGLE_ANCHORS; i++) {
      const at = {
        x: minX + ((i + 0.5) / ANGLE_ANCHORS) * (maxX - minX),
        y: minY + ((j + 0.5) / ANGLE_ANCHORS) * (maxY - minY),
      };
      if (pointInRegion(at, sheet.region) === 'inside') anchors.push(at);
    }
  }
  return anchors;
}
