import { applyAffine, curveBox, distanceBetween, lineInRegion } from '@hidebound/geometry';
import type { Point, Region } from '@hidebound/geometry';
import { placementTransform } from '../layout/placed-region.js';
import type { StrapLane } from '../model/layout.js';
import { bareCopy, pieceCopyKey } from '../order/item-id.js';
import { dot, measureIn, pointOf, rightOf, roundLength, unitBetween } from './frame.js';
import type { Measure, SettingFrame } from './frame.js';
import type { LaneRowSetting, LaneSetting, LaneStrapSetting } from './model.js';
import { arrowOnHide, markAt } from './piece-setting.js';
import type { PlacedCopy } from './placed-copy.js';

/** Marks of a first cut stand at round measures of the base line, so that only the other measure is rounded. */
const ROUND_MM = 50;
/** Nearer to the edge a mark is lost. */
const FROM_EDGE_MM = 5;
/** Marks nearer together than this share of the cut's run over the leather would leave its turn open. */
const FAR_ENOUGH = 0.6;

/** Where a lane's first cut goes, and from there each of its straps. */
export function laneSetting(
  lane: StrapLane,
  frame: SettingFrame,
  leather: Region,
  copies: ReadonlyMap<string, PlacedCopy>,
): LaneSetting {
  const [p, q] = marksOnCut(lane, frame, leather);
  const own = laneFrame(lane, p, q);
  let acrossMm = 0;
  const rows = lane.rows.map((row): LaneRowSetting => {
    const straps = row.straps
      .flatMap((copy) => copies.get(pieceCopyKey(copy)) ?? [])
      .map((placed) => strapSetting(placed, own))
      .sort((a, b) => a.startMm - b.startMm);
    const setting = { widthMm: row.widthMm, acrossMm, straps };
    acrossMm += row.widthMm + lane.kerfMm;
    return setting;
  });
  return { id: lane.id, p: markAt(frame, p), q: markAt(frame, q), rows };
}

/** The straps lie on the right of the way from the lane's `from` to its `to`, whichever way it is measured. */
export function laneFrame(lane: Pick<StrapLane, 'from' | 'to'>, p: Point, q: Point): SettingFrame {
  return { origin: p, axis: unitBetween(p, q), out: rightOf(unitBetween(lane.from, lane.to)) };
}

/** Two places on the first cut, well within the leather, the one nearer to the base line's zero first. */
function marksOnCut(lane: StrapLane, frame: SettingFrame, leather: Region): readonly [Point, Point] {
  const stretches = lineInRegion(lane.from, lane.to, { outer: leather.outer, openings: [] });
  const [a, b] = stretches.reduce<readonly [Point, Point]>(
    (best, each) => {
      const part = withinLane(each, lane);
      return part !== undefined &&
        (best[0] === lane.from || distanceBetween(...part) > distanceBetween(...best))
        ? part
        : best;
    },
    [lane.from, lane.to],
  );
  return atRoundMeasures(measureIn(frame, a), measureIn(frame, b)).map((measure) =>
    pointOf(frame, measure),
  ) as unknown as readonly [Point, Point];
}

/** The part of a stretch that the lane's first cut covers. */
function withinLane(
  [s, t]: readonly [Point, Point],
  { from, to }: StrapLane,
): readonly [Point, Point] | undefined {
  const axis = unitBetween(from, to);
  const along = (p: Point): number => dot({ x: p.x - from.x, y: p.y - from.y }, axis);
  const first = Math.max(0, along(s));
  const last = Math.min(distanceBetween(from, to), along(t));
  if (last <= first) return undefined;
  const at = (mm: number): Point => ({ x: from.x + axis.x * mm, y: from.y + axis.y * mm });
  return [at(first), at(last)];
}

/** Two measures on the line between two others: at round alongs, or at round outs where it runs across. */
function atRoundMeasures(a: Measure, b: Measure): readonly [Measure, Measure] {
  const isAlong = Math.abs(b.alongMm - a.alongMm) >= Math.abs(b.outMm - a.outMm);
  const key = isAlong ? 'alongMm' : 'outMm';
  const [low, high] = a[key] <= b[key] ? [a, b] : [b, a];
  const span = high[key] - low[key];
  const first = Math.ceil((low[key] + FROM_EDGE_MM) / ROUND_MM) * ROUND_MM;
  const last = Math.floor((high[key] - FROM_EDGE_MM) / ROUND_MM) * ROUND_MM;
  if (last - first < FAR_ENOUGH * span) return [low, high];
  const at = (value: number): Measure => {
    const share = (value - low[key]) / span;
    return {
      alongMm: low.alongMm + share * (high.alongMm - low.alongMm),
      outMm: low.outMm + share * (high.outMm - low.outMm),
    };
  };
  return [at(first), at(last)];
}

function strapSetting({ placement, piece, number }: PlacedCopy, lane: SettingFrame): LaneStrapSetting {
  const { minX, maxX, minY, maxY } = curveBox(piece.shape.cut);
  const map = placementTransform(placement);
  const ends = [minX, maxX].map(
    (x) => measureIn(lane, applyAffine(map, { x, y: (minY + maxY) / 2 })).alongMm,
  );
  return {
    copy: bareCopy(placement),
    number,
    startMm: roundLength(Math.min(...ends)),
    lengthMm: maxX - minX,
    isForward: dot(arrowOnHide(placement, piece.arrowDeg), lane.axis) > 0,
  };
}
