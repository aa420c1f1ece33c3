import {
  angleBetweenDeg,
  atan2Deg,
  distanceBetween,
  lineInRegion,
  minimumWidthBox,
  polylineNearest,
  ringArea,
  ringCentroid,
  sinCosDeg,
} from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';
import { hideRegion } from '../hide/hide-region.js';
import { useFromVector } from '../hide/use-from.js';
import type { Hide } from '../model/hide.js';
import type { UseFrom } from '../model/order.js';
import { dot, frameBetween, opposite, rightOf, unitBetween } from './frame.js';
import { AT_CORNER_MM, endAtCorner } from './line-end.js';
import type { BaseLine, OutlineCorner } from './model.js';
import { outermostPoints, outlineCorners } from './outline-corners.js';
import { lineWithin, placesOn, runLengthMm, straightRuns, withoutBentEnds } from './straight-stretch.js';

/** A back edge wavers; what wavers by more than this to either side is not one edge. */
const BACK_EDGE_BAND_MM = 15;
/** Another straight edge was cut with a knife along a straight edge. */
const STRAIGHT_BAND_MM = 4;
/** The backbone of a side is drawn along its edge, this near to it. */
const NEAR_BACKBONE_MM = 40;
/** Hides are split along the backbone, roughly. */
const ALONG_BACKBONE_DEG = 15;
/** Shares of the backbone, or of the hide's length, below which an edge or a line is too short to measure from. */
const LEAST_SHARE_OF_BACKBONE = 0.5;
const LEAST_SHARE_OF_HIDE = 0.35;
/** A line that touches the edge is looked for this far within it, so that it is found to be on the leather. */
const WITHIN_MM = 0.3;

/** A line on the leather before its ends are told. */
interface ChalkLine {
  readonly kind: BaseLine['kind'];
  readonly ends: readonly [Point, Point];
}

/**
 * The line that a hide's pieces are measured from: along its back edge, where the backbone is drawn on one; down its
 * backbone otherwise; along its longest straight edge where it has no backbone; down its middle where it has neither.
 * It is a straight line on the leather from edge to edge. Each end is told from the nearest corner of the outline and
 * lies exactly so far from it. Zero is at the end from which the hide is used up, or at the head.
 */
export function baseLineOf(hide: Hide, useFrom: UseFrom): BaseLine {
  const outer = hideRegion(hide).outer;
  const leather: Region = { outer, openings: [] };
  const centre = ringCentroid(outer);
  const lengthMm = minimumWidthBox(outer).length;
  const line =
    edgeLine(hide, leather, lengthMm) ?? backboneLine(hide, leather, lengthMm) ?? middleLine(leather);
  const [first, last] = inOrder(line.ends, useFromVector(hide, useFrom).vector, headToTail(hide));
  const axis = unitBetween(first, last);
  const isAtEdge = line.kind === 'back edge' || line.kind === 'straight edge';
  const start = endAtCorner(outer, first, cornersFor(outer, first, axis), isAtEdge);
  const end = endAtCorner(outer, last, cornersFor(outer, last, axis), isAtEdge);
  const right = rightOf(unitBetween(start.at, end.at));
  const beside = { x: start.at.x + right.x, y: start.at.y + right.y };
  return {
    kind: line.kind,
    frame: frameBetween(start.at, end.at, isAtEdge ? centre : beside),
    start,
    end,
    lengthMm: distanceBetween(start.at, end.at),
  };
}

/** Along the back edge where the backbone lies on it, or along the longest straight edge where there is no backbone. */
function edgeLine(hide: Hide, leather: Region, lengthMm: number): ChalkLine | undefined {
  const places = placesOn(leather.outer);
  const { backbone } = hide;
  const spine = backbone === undefined ? undefined : chordOf(backbone);
  if (backbone !== undefined && spine !== undefined) {
    const runs = straightRuns(places, BACK_EDGE_BAND_MM).filter((run) => {
      const middle = run[Math.floor(run.length / 2)]!;
      return (
        polylineNearest(backbone, middle).distance <= NEAR_BACKBONE_MM &&
        isAlong(run[0]!, run[run.length - 1]!, spine)
      );
    });
    const run = longestRun(runs);
    if (run !== undefined && runLengthMm(run) >= LEAST_SHARE_OF_BACKBONE * distanceBetween(...spine)) {
      return lineAtEdge('back edge', run, leather);
    }
    if (crosses(spine, leather, lengthMm) !== undefined) return undefined;
  }
  const run = longestRun(straightRuns(places, STRAIGHT_BAND_MM));
  if (run === undefined || runLengthMm(run) < LEAST_SHARE_OF_HIDE * lengthMm) return undefined;
  return lineAtEdge('straight edge', run, leather);
}

function backboneLine(hide: Hide, leather: Region, lengthMm: number): ChalkLine | undefined {
  const spine = hide.backbone === undefined ? undefined : chordOf(hide.backbone);
  const ends = spine === undefined ? undefined : crosses(spine, leather, lengthMm);
  return ends === undefined ? undefined : { kind: 'backbone', ends };
}

/** Through the middle of the leather, the long way. */
function middleLine(leather: Region): ChalkLine {
  const centre = ringCentroid(leather.outer);
  const { sin, cos } = sinCosDeg(minimumWidthBox(leather.outer).angleDeg);
  const ends = longestStretch(centre, { x: centre.x + cos, y: centre.y + sin }, leather);
  return { kind: 'long axis', ends: ends ?? [centre, { x: centre.x + cos, y: centre.y + sin }] };
}

function lineAtEdge(kind: BaseLine['kind'], run: readonly Point[], leather: Region): ChalkLine | undefined {
  const straight = withoutBentEnds(run);
  const inward = inwardOf(straight, leather.outer);
  const [a, b] = lineWithin(straight, inward);
  if (a.x === b.x && a.y === b.y) return undefined;
  const within = (p: Point): Point => ({ x: p.x + WITHIN_MM * inward.x, y: p.y + WITHIN_MM * inward.y });
  const ends = longestStretch(within(a), within(b), leather);
  return ends === undefined ? undefined : { kind, ends };
}

/** The unit vector from an edge into the leather: rings of leather run clockwise as seen, so it is on their right. */
function inwardOf(run: readonly Point[], outer: Ring): Point {
  const right = rightOf(unitBetween(run[0]!, run[run.length - 1]!));
  return ringArea(outer) >= 0 ? right : opposite(right);
}

function longestRun(runs: readonly Point[][]): Point[] | undefined {
  let best: Point[] | undefined;
  for (const run of runs) if (best === undefined || runLengthMm(run) > runLengthMm(best)) best = run;
  return best;
}

function longestStretch(a: Point, b: Point, leather: Region): readonly [Point, Point] | undefined {
  let best: readonly [Point, Point] | undefined;
  for (const stretch of lineInRegion(a, b, leather)) {
    if (best === undefined || distanceBetween(...stretch) > distanceBetween(...best)) best = stretch;
  }
  return best;
}

/** Where the backbone's line runs over the leather, if it is a good part of the hide that it runs over. */
function crosses(
  [head, tail]: readonly [Point, Point],
  leather: Region,
  lengthMm: number,
): readonly [Point, Point] | undefined {
  const stretch = longestStretch(head, tail, leather);
  return stretch === undefined || distanceBetween(...stretch) < LEAST_SHARE_OF_HIDE * lengthMm
    ? undefined
    : stretch;
}

function chordOf(backbone: NonNullable<Hide['backbone']>): readonly [Point, Point] | undefined {
  const [head, tail] = [backbone[0]!, backbone[backbone.length - 1]!];
  return head.x === tail.x && head.y === tail.y ? undefined : [head, tail];
}

function isAlong(a: Point, b: Point, [head, tail]: readonly [Point, Point]): boolean {
  const deg = atan2Deg(b.y - a.y, b.x - a.x);
  const spineDeg = atan2Deg(tail.y - head.y, tail.x - head.x);
  return Math.abs(angleBetweenDeg(deg, spineDeg, 180)) <= ALONG_BACKBONE_DEG;
}

function headToTail(hide: Hide): Point {
  const spine = hide.backbone === undefined ? undefined : chordOf(hide.backbone);
  return spine === undefined ? { x: 1, y: 0 } : unitBetween(...spine);
}

/** Lines across the way in which the hide is used up begin at the head: of this share of its length they are across. */
const ACROSS = 0.5;

function inOrder([a, b]: readonly [Point, Point], usedUp: Point, tailwards: Point): readonly [Point, Point] {
  const along = unitBetween(a, b);
  const way = Math.abs(dot(along, usedUp)) >= ACROSS ? usedUp : tailwards;
  const goes = dot(along, way);
  return goes < 0 || (goes === 0 && (a.x > b.x || (a.x === b.x && a.y > b.y))) ? [b, a] : [a, b];
}

/** A corner is of use for an end of the line only if the line runs across the way to it, not along it: by this share. */
const MOST_ALONG = 0.8;

/** Corners from which an end can be told: the end itself, or to its side. */
function cornersFor(outer: Ring, end: Point, axis: Point): readonly OutlineCorner[] {
  const isBeside = ({ at }: OutlineCorner): boolean =>
    distanceBetween(at, end) <= AT_CORNER_MM || Math.abs(dot(unitBetween(at, end), axis)) <= MOST_ALONG;
  const corners = outlineCorners(outer);
  const outermost = outermostPoints(outer, [axis, rightOf(axis)]);
  return [corners.filter(isBeside), outermost.filter(isBeside)].find(({ length }) => length > 0) ?? outermost;
}
