import type { Area } from '../check/area.js';
import { placingOf } from '../check/turn.js';
import { areaOfRegion } from '../check/area.js';
import { splitSaneAnswer } from '../check/rule-finite-answer.js';
import { isProven } from '../check/violation.js';
import { GeometryError } from '../error.js';
import { roundCoordinate } from '../point.js';
import { GRID_MM } from '../tolerance.js';
import type { CopyRef, Item } from '../types/problem.js';
import type { Point, Region } from '../types/shape.js';
import { answerWith, placeOnStage, placementOf } from './bench.js';
import type { Bench, SheetPlace } from './bench.js';
import { MOST_CURVES, MOST_JUDGED, MOST_SIFTED } from './constants.js';
import { contactCurves, nearestTravel } from './contact-curves.js';
import type { ContactCurve } from './contact-curves.js';
import { curveMeetings } from './curve-meetings.js';
import type { Meeting } from './curve-meetings.js';
import { judgeMove } from './judge-move.js';
import { surroundingsOf } from './obstacles.js';
import type { Obstacle } from './obstacles.js';
import { firstInTheWay, keepsInFull, touchedBy } from './sift.js';
import { solidLoops } from './solid-loops.js';

/** A valid place in contact. */
export interface Snap {
  /** On the 0.001 mm grid; turned as asked. */
  readonly place: SheetPlace;
  /** How far it is from the place that was asked for. */
  readonly travelMm: number;
  /** What it touches there: other copies, `outline`, `opening 1`, the ids of regions, lanes and rough cuts. */
  readonly touches: readonly (CopyRef | string)[];
}

export interface SnapOptions {
  /**
   * `contact` (default): the nearest place that touches anything. `seat`: the nearest one within reach at which it
   * touches on two sides, so that it can slide no farther; where there is none, as `contact`.
   */
  readonly into?: 'contact' | 'seat';
}

/**
 * The nearest valid place, not more than `reachMm` from the one that is asked for, at which the copy is in contact: at
 * exactly the gap from another copy, at the edge distance from the edge, at a flaw that it may not lie on, and so on,
 * to the rounding of places (0.7 µm; towards more room where that can be had). It is moved, never turned: a copy that
 * is turned against its rule finds no place. All contacts of polygons are gone through, from near to far, so nearest
 * is meant exactly; the verdict is that of `judgeMove`. The same bench and place give the same snap.
 *
 * @returns undefined where no valid place in contact is within reach (it may well be valid where it is), or where more
 * than some thousand contacts are in each other's way. Throws `bad-argument` as `movePiece` does.
 */
export function snapTo(
  bench: Bench,
  copy: CopyRef,
  place: SheetPlace,
  reachMm: number,
  options: SnapOptions = {},
): Snap | undefined {
  const placement = placementOf(copy, place);
  if (splitSaneAnswer(bench.problem, answerWith([placement], {})).findings.length > 0 || !(reachMm >= 0)) {
    throw new GeometryError(
      'bad-argument',
      `A snap needs a known item and sheet, and numbers that are sane.`,
    );
  }
  const moved = placeOnStage(bench.stage, placement);
  const { shapes, obstacles } = surroundingsOf(bench, moved, reachMm);
  const search: SnapSearch = {
    bench,
    copy,
    place,
    reachMm,
    regions: regionsOf(moved.item),
    obstacles,
    curves: allCurves(shapes, obstacles, reachMm),
    spent: { sifted: 0, judged: 0, inTheWay: -1 },
  };
  const seat = options.into === 'seat' ? firstValid(search, meetings(search, reachMm, true)) : undefined;
  return seat ?? nearestContact(search);
}

interface SnapSearch {
  readonly bench: Bench;
  readonly copy: CopyRef;
  readonly place: SheetPlace;
  readonly reachMm: number;
  /** The whole item, then the areas of its parts, in its own frame. */
  readonly regions: readonly Region[];
  readonly obstacles: readonly Obstacle[];
  /** Nearest first. */
  readonly curves: readonly ContactCurve[];
  readonly spent: { sifted: number; judged: number; inTheWay: number };
}

function regionsOf(item: Item): readonly Region[] {
  return [item.region, ...item.parts.flatMap(({ areas }) => areas)];
}

function allCurves(
  shapes: readonly Area[],
  obstacles: readonly Obstacle[],
  reach: number,
): readonly ContactCurve[] {
  const moving = shapes.map((shape) => solidLoops(shape, 'inside'));
  const curves = obstacles.flatMap(({ shape, area, solid, distance }, obstacle) =>
    contactCurves(moving[shape]!, solidLoops(area, solid), { distance, reach, obstacle }),
  );
  return curves
    .map((curve) => ({ curve, far: leastTravel(curve) }))
    .sort((one, other) => one.far - other.far)
    .slice(0, MOST_CURVES)
    .map(({ curve }) => curve);
}

function leastTravel(curve: ContactCurve): number {
  if (curve.kind === 'arc') return Math.abs(lengthOf(curve) - curve.radius);
  return lengthOf(nearestTravel(curve)!);
}

/** The nearest point of a curve, or a meeting of two that is nearer. */
function nearestContact(search: SnapSearch): Snap | undefined {
  const nearest = search.curves.map(nearestTravel).filter((travel) => travel !== undefined);
  const onCurve = firstValid(search, nearest);
  const meeting = firstValid(search, meetings(search, onCurve?.travelMm ?? search.reachMm, false));
  if (onCurve === undefined || (meeting !== undefined && meeting.travelMm < onCurve.travelMm)) return meeting;
  return onCurve;
}

/** Where two curves meet no farther than `reach` away. A meeting is at least as far as either curve. */
function meetings({ curves }: SnapSearch, reach: number, seatsOnly: boolean): readonly Meeting[] {
  const near = curves.filter((curve) => leastTravel(curve) <= reach);
  const found: Meeting[] = [];
  near.forEach((one, i) => {
    for (let k = 0; k < i; k++) {
      for (const meeting of curveMeetings(one, near[k]!)) {
        if (lengthOf(meeting) <= reach && (meeting.isSeat || !seatsOnly)) found.push(meeting);
      }
    }
  });
  return found;
}

/** The nearest of the travels after which the copy lies well; ties go to the lesser x, then y. */
function firstValid(search: SnapSearch, travels: readonly Point[]): Snap | undefined {
  const { place, reachMm, spent } = search;
  const byLength = travels
    .map((travel) => ({ ...travel, far: lengthOf(travel) }))
    .filter(({ far }) => far <= reachMm)
    .sort((one, other) => one.far - other.far || one.x - other.x || one.y - other.y);
  for (const { x, y } of byLength) {
    if (spent.sifted >= MOST_SIFTED || spent.judged >= MOST_JUDGED) return undefined;
    spent.sifted += 1;
    const to = { ...place, x: place.x + x, y: place.y + y };
    spent.inTheWay = firstInTheWay(shapesAt(search, to), search.obstacles, spent.inTheWay);
    if (spent.inTheWay >= 0) continue;
    const snap = snapOnGrid(search, to);
    if (snap !== undefined) return snap;
  }
  return undefined;
}

/** The nearest valid place of the grid around: one that keeps all distances in full, if there is such a one. */
function snapOnGrid(search: SnapSearch, to: SheetPlace): Snap | undefined {
  const { bench, copy, place, obstacles, spent } = search;
  const corners = gridPlaces(to).map((corner) => {
    const shapes = shapesAt(search, corner);
    return { corner, shapes, isFull: keepsInFull(shapes, obstacles) };
  });
  corners.sort((one, other) => Number(other.isFull) - Number(one.isFull));
  for (const { corner, shapes } of corners) {
    spent.judged += 1;
    if (!isProven(judgeMove(bench, copy, corner))) continue;
    const travelMm = lengthOf({ x: corner.x - place.x, y: corner.y - place.y });
    return { place: corner, travelMm, touches: touchedBy(shapes, obstacles) };
  }
  return undefined;
}

/** The four places of the grid around a place, nearest first. */
function gridPlaces({ sheet, x, y, rotationDeg }: SheetPlace): readonly SheetPlace[] {
  const beside = (n: number): readonly number[] => {
    const near = roundCoordinate(n);
    return [near, roundCoordinate(near + (n < near ? -GRID_MM : GRID_MM))];
  };
  return beside(x)
    .flatMap((gridX) => beside(y).map((gridY) => ({ sheet, x: gridX, y: gridY, rotationDeg })))
    .map((corner) => ({ corner, far: lengthOf({ x: corner.x - x, y: corner.y - y }) }))
    .sort((one, other) => one.far - other.far)
    .map(({ corner }) => corner);
}

function shapesAt({ copy, regions }: SnapSearch, to: SheetPlace): readonly Area[] {
  const placing = placingOf(placementOf(copy, to));
  return regions.map((region) => areaOfRegion(region, placing));
}

function lengthOf({ x, y }: Point): number {
  return Math.sqrt(x * x + y * y);
}
