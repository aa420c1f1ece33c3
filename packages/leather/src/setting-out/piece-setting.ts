import { angleBetweenDeg, applyAffine, atan2Deg, sinCosDeg } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { placementTransform } from '../layout/placed-region.js';
import type { PiecePlacement } from '../model/layout.js';
import { bareCopy } from '../order/item-id.js';
import { cardPoints } from './card-points.js';
import type { KnownFlaw } from './flaws-beside.js';
import { flawsBeside } from './flaws-beside.js';
import { measureIn, roundMeasure } from './frame.js';
import type { Measure, SettingFrame } from './frame.js';
import type { ChalkMark, PieceSetting } from './model.js';
import type { PlacedCopy } from './placed-copy.js';
import { simpleShape } from './simple-shape.js';
import type { SimpleShape } from './simple-shape.js';

/** Turns are read to half a degree. */
const TURN_STEPS_PER_DEG = 2;

/** Where a piece goes, measured in a frame. */
export function pieceSetting(
  placed: PlacedCopy,
  frame: SettingFrame,
  flaws: readonly KnownFlaw[],
): PieceSetting {
  const { placement, piece, number, region } = placed;
  const map = placementTransform(placement);
  const simple = simpleShape(piece, placed.source);
  const own = simple === undefined ? cardPoints(piece) : undefined;
  const [a, b] =
    own === undefined
      ? simpleMarks(simple!, placed, frame)
      : [applyAffine(map, own.a), applyAffine(map, own.b)];
  return {
    copy: bareCopy(placement),
    number,
    by: simple === undefined ? { kind: 'card' } : sizeOf(simple),
    a: markAt(frame, a),
    ...(b === undefined ? {} : { b: markAt(frame, b) }),
    turnDeg: turnAgainst(frame, arrowOnHide(placement, piece.arrowDeg)),
    flaws: flawsBeside(region, flaws),
  };
}

/** A place with its rounded measure. */
export function markAt(frame: SettingFrame, at: Point): ChalkMark {
  return { at, measure: roundMeasure(measureIn(frame, at)) };
}

function sizeOf(simple: SimpleShape): PieceSetting['by'] {
  if (simple.kind === 'disc') return { kind: 'disc', diameterMm: simple.diameterMm };
  return { kind: 'rectangle', widthMm: simple.widthMm, lengthMm: simple.lengthMm };
}

/** The centre of a disc, or the ends of the long side of a rectangle that is the nearer one. */
function simpleMarks(simple: SimpleShape, { placement }: PlacedCopy, frame: SettingFrame): [Point, Point?] {
  const map = placementTransform(placement);
  if (simple.kind === 'disc') return [applyAffine(map, simple.centre)];
  const [p, q, r, s] = simple.corners.map((corner) => applyAffine(map, corner));
  return nearerSide([p!, q!], [s!, r!], frame);
}

/** An along as long as the out counts as along: sides at half a right angle are taken as lying along the line. */
function nearerSide(
  one: readonly [Point, Point],
  other: readonly [Point, Point],
  frame: SettingFrame,
): [Point, Point] {
  const [p, q] = one.map((at) => measureIn(frame, at)) as [Measure, Measure];
  const [s, r] = other.map((at) => measureIn(frame, at)) as [Measure, Measure];
  const isAlong = Math.abs(q.alongMm - p.alongMm) >= Math.abs(q.outMm - p.outMm);
  const reach = (m: Measure, n: Measure): number =>
    isAlong ? Math.abs(m.outMm + n.outMm) : m.alongMm + n.alongMm;
  const [ends, measures] = reach(p, q) <= reach(s, r) ? [one, [p, q]] : [other, [s, r]];
  const first = (m: Measure): number => (isAlong ? m.alongMm : m.outMm);
  return first(measures[0]!) <= first(measures[1]!) ? [ends[0], ends[1]] : [ends[1], ends[0]];
}

/** Unit vector of a piece's arrow as it lies. */
export function arrowOnHide(placement: PiecePlacement, arrowDeg: number): Point {
  const { sin, cos } = sinCosDeg(arrowDeg);
  const map = placementTransform(placement);
  return { x: map.a * cos + map.c * sin, y: map.b * cos + map.d * sin };
}

function turnAgainst({ axis }: SettingFrame, arrow: Point): number {
  const turn = angleBetweenDeg(atan2Deg(arrow.y, arrow.x), atan2Deg(axis.y, axis.x));
  const rounded = Math.round(turn * TURN_STEPS_PER_DEG) / TURN_STEPS_PER_DEG;
  return rounded === -180 ? 180 : rounded + 0;
}
