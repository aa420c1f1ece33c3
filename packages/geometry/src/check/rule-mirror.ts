import type { Item, PairRule } from '../types/problem.js';
import type { Point, Region } from '../types/shape.js';
import { areaOfRegion } from './area.js';
import type { Area } from './area.js';
import { distanceToBoundary } from './boundary-distance.js';
import { centroidOf } from './context.js';
import type { CheckContext, Placed } from './context.js';
import { directionAt, distanceToAxis } from './direction-at.js';
import { farStretches } from './far-stretches.js';
import { FORGIVEN_DEG, FORGIVEN_MM } from './forgiven.js';
import { arrowOnSheetDeg } from './rule-angle.js';
import { angleApartDeg } from './turn.js';
import { copyKey } from './violation.js';
import type { Finding } from './violation.js';

/** Rule `mirrored`: an item that says so is the mirror image (x to -x) of the one that it names. */
export function findMirrorFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const item of context.problem.items) {
    const plain = item.mirrorOf === undefined ? undefined : context.items.get(item.mirrorOf);
    if (plain === undefined) continue;
    const off = differenceFromMirror(item.region, plain.region);
    if (off === undefined) continue;
    const laid = context.placed.find((placed) => placed.item === item);
    findings.push({
      rule: 'mirrored',
      at: laid?.copy ?? { item: item.id, set: 1, copy: 1 },
      other: plain.id,
      measured: off,
      required: 0,
    });
  }
  return findings;
}

/**
 * Rule `pair`: plain copy k and mirrored copy k of a set lie at opposite angles to the local direction (modulo a
 * half turn) and alike far from the axis, each measured at its centroid on its own sheet. Where a direction is
 * unknown, or only one of the two sheets has an axis, that can't be shown. Without any axis no distance counts.
 */
export function findPairFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const mirrored of context.placed) {
    const { mirrorOf, pair } = mirrored.item;
    if (mirrorOf === undefined || pair === undefined) continue;
    const plain = context.byCopy.get(copyKey({ ...mirrored.copy, item: mirrorOf }));
    if (plain !== undefined) findings.push(...pairFaults(plain, mirrored, pair));
  }
  return findings;
}

function pairFaults(plain: Placed, mirrored: Placed, pair: PairRule): readonly Finding[] {
  const place = centroidOf(mirrored);
  const base: Finding = {
    rule: 'pair',
    at: mirrored.copy,
    other: plain.copy,
    sheet: mirrored.placement.sheet,
    place,
  };
  return [
    angleFault(plain, mirrored, place, pair, base),
    distanceFault(plain, place, mirrored, pair, base),
  ].filter((finding) => finding !== undefined);
}

function angleFault(
  plain: Placed,
  mirrored: Placed,
  place: Point,
  pair: PairRule,
  base: Finding,
): Finding | undefined {
  const one = directionAt(plain.sheet.sheet.direction, centroidOf(plain));
  const other = directionAt(mirrored.sheet.sheet.direction, place);
  if (one === undefined || other === undefined) return base;
  const plainDeg = arrowOnSheetDeg(plain) - one.angleDeg;
  const mirroredDeg = arrowOnSheetDeg(mirrored) - other.angleDeg;
  const measured = angleApartDeg(plainDeg, -mirroredDeg, 180);
  if (measured <= pair.toleranceDeg + FORGIVEN_DEG) return undefined;
  return { ...base, measured, required: pair.toleranceDeg };
}

function distanceFault(
  plain: Placed,
  place: Point,
  mirrored: Placed,
  pair: PairRule,
  base: Finding,
): Finding | undefined {
  const one = distanceToAxis(plain.sheet.sheet.direction, centroidOf(plain));
  const other = distanceToAxis(mirrored.sheet.sheet.direction, place);
  if (one === undefined && other === undefined) return undefined;
  if (one === undefined || other === undefined) return base;
  const measured = Math.abs(one - other);
  if (measured <= pair.distanceMm + FORGIVEN_MM) return undefined;
  return { ...base, measured, required: pair.distanceMm };
}

/** How far (mm) the region's boundary lies off the mirrored one; undefined when within what is forgiven. */
function differenceFromMirror(region: Item['region'], plain: Region): number | undefined {
  const one = areaOfRegion(region);
  const other = areaOfRegion(mirrorRegion(plain));
  return farthestFrom(one, other) ?? farthestFrom(other, one);
}

function farthestFrom(one: Area, other: Area): number | undefined {
  let farthest: number | undefined;
  for (let i = 0; i < one.count; i++) {
    const [px, py, qx, qy] = [one.ax[i]!, one.ay[i]!, one.bx[i]!, one.by[i]!];
    for (const stretch of farStretches(px, py, qx, qy, [other], FORGIVEN_MM)) {
      for (const t of [stretch[0], (stretch[0] + stretch[1]) / 2, stretch[1]]) {
        const distance = distanceToBoundary(other, px + t * (qx - px), py + t * (qy - py));
        farthest = Math.max(farthest ?? 0, distance);
      }
    }
  }
  return farthest;
}

function mirrorRegion(region: Region): Region {
  return {
    outer: region.outer.map((point) => ({ x: -point.x, y: point.y })),
    openings: region.openings.map((ring) => ring.map((point) => ({ x: -point.x, y: point.y }))),
  };
}
