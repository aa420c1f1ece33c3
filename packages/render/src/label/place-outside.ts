import {
  boxesTouch,
  distanceBetween,
  pointInRing,
  regionBox,
  segmentsCross,
  sinCosDeg,
} from '@hidebound/geometry';
import type { Box, Point, Region } from '@hidebound/geometry';
import {
  isInside,
  labelBoxMeetsEdges,
  labelBoxMeetsRegion,
  labelBoxesOverlap,
  nearestOnLabelBox,
  segmentMeetsLabelBox,
} from './label-box.js';
import type { LabelBox } from './label-box.js';

/** A thin line from a label to what it names. */
export interface Leader {
  readonly from: Point;
  readonly to: Point;
}

/** What is already on the picture. `taken` grows as labels are placed. */
export interface FreeSpace {
  /** Labels stay within this. */
  readonly within: Box;
  /** Shapes that no outside label may touch. */
  readonly shapes: readonly Shape[];
  readonly taken: LabelBox[];
  readonly leaders: Leader[];
}

/** A region with its box, so that far ones are passed over quickly. */
export interface Shape {
  readonly region: Region;
  readonly box: Box;
  /** Only its edge is kept clear, not its inside: a label may lie on bare leather, not across the outline. */
  readonly edgeOnly?: boolean;
}

/** Steps of distance and direction in which free space is looked for. */
const RING_STEP_MM = 0.9;
const DIRECTIONS = 32;
const COMPASS = Array.from({ length: DIRECTIONS }, (_, k) => sinCosDeg((k * 360) / DIRECTIONS));

/** A leader that crosses another one, or runs through a label, costs as much as so many mm of length. */
const CROSSING_COST_MM = 60;
const THROUGH_LABEL_COST_MM = 90;
/** So much for each shape that a leader passes over, other than those that the named point lies in. */
const OVER_SHAPE_COST_MM = 12;

/** A shape with its box. */
export function shapeOf(region: Region, edgeOnly = false): Shape {
  return { region, box: regionBox(region), ...(edgeOnly ? { edgeOnly } : {}) };
}

/** Free space for a label, with its leader; the cost grows with the leader's length and with what it crosses. */
export interface OutsidePlace {
  readonly box: LabelBox;
  readonly leader: Leader;
  readonly cost: number;
}

/** True if no leader that is there already runs through the box. */
export function isClearOfLeaders(space: FreeSpace, box: LabelBox): boolean {
  return !space.leaders.some((leader) => segmentMeetsLabelBox(leader.from, leader.to, box));
}

/**
 * Free space for a label near the point that it names: nothing under it, a short leader that crosses little.
 * Undefined if there is no free space left at all, or none at less than `mostCost`.
 */
export function placeOutside(
  space: FreeSpace,
  size: { readonly widthMm: number; readonly heightMm: number },
  target: Point,
  mostCost = Infinity,
): OutsidePlace | undefined {
  const span = space.within;
  const farthest = distanceBetween({ x: span.minX, y: span.minY }, { x: span.maxX, y: span.maxY });
  const foreign = space.shapes.filter(
    (shape) => shape.edgeOnly !== true && !(boxHolds(shape.box, target) && isInside(target, shape.region)),
  );
  let best: OutsidePlace | undefined;
  let bestCost = mostCost;
  for (let radius = RING_STEP_MM; radius < farthest && radius < bestCost; radius += RING_STEP_MM) {
    for (const box of boxesAround(target, radius, size)) {
      if (!isFree(space, box)) continue;
      const leader = { from: nearestOnLabelBox(box, target), to: target };
      const cost = radius + leaderCost(space, foreign, leader);
      if (cost < bestCost) {
        bestCost = cost;
        best = { box, leader, cost };
      }
    }
  }
  return best;
}

/** Boxes about so far from the target, all round; above and below it also shifted to either side. */
function boxesAround(
  target: Point,
  radius: number,
  size: { readonly widthMm: number; readonly heightMm: number },
): LabelBox[] {
  const boxes: LabelBox[] = [];
  for (const { sin: y, cos: x } of COMPASS) {
    const isSteep = Math.abs(x) < STEEP_BELOW;
    for (const slide of isSteep ? SLIDES : [0]) {
      const beside = isSteep ? slide : Math.sign(x) * 0.5;
      boxes.push({
        center: {
          x: target.x + x * radius + beside * size.widthMm,
          y: target.y + y * radius + y * 0.5 * size.heightMm,
        },
        ...size,
        angleDeg: 0,
      });
    }
  }
  return boxes;
}

/** Directions with a cosine below this count as above or below. */
const STEEP_BELOW = 0.5;
const SLIDES: readonly number[] = [0, -0.42, 0.42];

/** True if nothing lies under the box, which is not turned, and it stays within the picture. */
export function isFree(space: FreeSpace, box: LabelBox): boolean {
  const around = outerBox(box);
  const { within } = space;
  if (around.minX < within.minX || around.maxX > within.maxX) return false;
  if (around.minY < within.minY || around.maxY > within.maxY) return false;
  if (space.taken.some((other) => labelBoxesOverlap(box, other))) return false;
  if (space.leaders.some((leader) => runsThrough(leader, box, around))) return false;
  return !space.shapes.some((shape) => boxesTouch(shape.box, around) && meets(box, shape));
}

function runsThrough(leader: Leader, box: LabelBox, around: Box): boolean {
  return boxesTouch(leaderBox(leader), around) && segmentMeetsLabelBox(leader.from, leader.to, box);
}

function meets(box: LabelBox, shape: Shape): boolean {
  return shape.edgeOnly === true
    ? labelBoxMeetsEdges(box, shape.region)
    : labelBoxMeetsRegion(box, shape.region);
}

function leaderCost(space: FreeSpace, foreign: readonly Shape[], leader: Leader): number {
  let cost = 0;
  for (const other of space.leaders) {
    if (segmentsCross(leader.from, leader.to, other.from, other.to)) cost += CROSSING_COST_MM;
  }
  for (const box of space.taken) {
    if (segmentMeetsLabelBox(leader.from, leader.to, box)) cost += THROUGH_LABEL_COST_MM;
  }
  const around = leaderBox(leader);
  for (const shape of foreign) {
    if (boxesTouch(shape.box, around) && passesOver(leader, shape.region)) cost += OVER_SHAPE_COST_MM;
  }
  return cost;
}

/** Its far end lies outside, so that a leader over the region crosses the outline or begins within it. */
function passesOver({ from, to }: Leader, { outer }: Region): boolean {
  let before = outer[outer.length - 1]!;
  for (const corner of outer) {
    if (segmentsCross(from, to, before, corner)) return true;
    before = corner;
  }
  return pointInRing(from, outer) === 'inside';
}

function boxHolds(box: Box, p: Point): boolean {
  return p.x >= box.minX && p.x <= box.maxX && p.y >= box.minY && p.y <= box.maxY;
}

function leaderBox({ from, to }: Leader): Box {
  return {
    minX: Math.min(from.x, to.x),
    minY: Math.min(from.y, to.y),
    maxX: Math.max(from.x, to.x),
    maxY: Math.max(from.y, to.y),
  };
}

/** Of a label that is not turned. */
function outerBox(box: LabelBox): Box {
  return {
    minX: box.center.x - box.widthMm / 2,
    minY: box.center.y - box.heightMm / 2,
    maxX: box.center.x + box.widthMm / 2,
    maxY: box.center.y + box.heightMm / 2,
  };
}
