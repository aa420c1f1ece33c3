import type { FixedPlacement, Placement } from '../types/problem.js';
import type { CheckContext } from './context.js';
import { FORGIVEN_DEG, FORGIVEN_MM } from './forgiven.js';
import { copyKey, copyRef } from './violation.js';
import type { Finding } from './violation.js';

/** Rule `locked`: what was fixed lies where it was fixed. */
export function findLockedFaults(context: CheckContext): readonly Finding[] {
  return context.problem.fixed.flatMap((fixed) => {
    const fault = faultOf(fixed, context.byCopy.get(copyKey(fixed))?.placement);
    return fault === undefined
      ? []
      : [{ rule: 'locked' as const, at: copyRef(fixed), sheet: fixed.sheet, ...fault }];
  });
}

/** Nothing where it still lies as it was fixed; else what was measured, as far as there is something to measure. */
function faultOf(fixed: FixedPlacement, placement: Placement | undefined): Partial<Finding> | undefined {
  if (placement === undefined) return {};
  const place = { x: fixed.x, y: fixed.y };
  if (placement.sheet !== fixed.sheet) return { place };
  const movedMm = Math.hypot(placement.x - fixed.x, placement.y - fixed.y);
  if (movedMm > FORGIVEN_MM) return { place, measured: movedMm, required: 0 };
  const turnedDeg = angleBetween(placement.rotationDeg, fixed.rotationDeg);
  if (turnedDeg > FORGIVEN_DEG) return { place, measured: turnedDeg, required: 0 };
  return undefined;
}

/** The smaller angle between two directions, 0 to 180 degrees. */
function angleBetween(aDeg: number, bDeg: number): number {
  const turn = Math.abs(aDeg - bDeg) % 360;
  return Math.min(turn, 360 - turn);
}
