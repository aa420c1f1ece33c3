import type { AngleRule } from '../types/problem.js';
import type { Point } from '../types/shape.js';
import { placePoint } from './area.js';
import type { CheckContext, Placed } from './context.js';
import { directionAt } from './direction-at.js';
import { FORGIVEN_DEG } from './forgiven.js';
import { angleApartDeg } from './turn.js';
import type { Finding } from './violation.js';

/**
 * Rule `angle`: an item's arrow points, within its tolerance, at one of the angles that its rule allows: against
 * the sheet, or against the local direction at its centroid and at each grid point within it. Where the local
 * direction is unknown, or head and tail matter and the sheet has no axis, only free items may lie.
 */
export function findAngleFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const placed of context.placed) {
    const fault = angleFaultOf(placed, context.proofPoints(placed.item));
    if (fault !== undefined) findings.push(fault);
  }
  return findings;
}

/** The arrow's angle on the sheet, in degrees. */
export function arrowOnSheetDeg(placed: Placed): number {
  return placed.item.angleRule.arrowDeg + placed.placement.rotationDeg;
}

function angleFaultOf(placed: Placed, ownPoints: readonly Point[]): Finding | undefined {
  const rule = placed.item.angleRule;
  if (rule.frame === 'free') return undefined;
  const points = rule.frame === 'sheet' ? ownPoints.slice(0, 1) : ownPoints;
  let worst: Finding | undefined;
  for (const own of points) {
    const place = placePoint(own.x, own.y, placed.placing);
    const frameDeg = rule.frame === 'sheet' ? 0 : localFrameDeg(placed, rule, place);
    const base = { rule: 'angle', at: placed.copy, sheet: placed.placement.sheet, place } as const;
    if (frameDeg === undefined) return base;
    const off = offTarget(arrowOnSheetDeg(placed) - frameDeg, rule);
    if (off <= rule.toleranceDeg + FORGIVEN_DEG) continue;
    if (worst === undefined || off > worst.measured!) {
      worst = { ...base, measured: off, required: rule.toleranceDeg };
    }
  }
  return worst;
}

function localFrameDeg(placed: Placed, rule: AngleRule, place: Point): number | undefined {
  const local = directionAt(placed.sheet.sheet.direction, place);
  if (local === undefined || (rule.modulo === 360 && !local.isDirected)) return undefined;
  return local.angleDeg;
}

function offTarget(angleDeg: number, rule: AngleRule): number {
  return rule.targetsDeg.reduce(
    (least, target) => Math.min(least, angleApartDeg(angleDeg, target, rule.modulo)),
    Infinity,
  );
}
