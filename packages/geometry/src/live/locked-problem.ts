import { copyKey, copyRef } from '../check/violation.js';
import { GeometryError } from '../error.js';
import type { CopyRef, FixedPlacement, NestProblem, Placement, RuleName } from '../types/problem.js';

/** A copy that is to stay where it lies, with the rules that it may break because someone accepted that by hand. */
export interface LockedCopy extends CopyRef {
  readonly accepted?: readonly RuleName[];
}

/**
 * The problem in which the locked copies stay where the placements have them, so that a search lays everything else
 * anew around them. What was fixed before stays fixed where it was, unless it is locked anew at another place.
 * Throws `bad-argument` for a locked copy that is not among the placements.
 */
export function lockedProblem(
  problem: NestProblem,
  placements: readonly Placement[],
  locked: readonly LockedCopy[],
): NestProblem {
  const places = new Map(placements.map((placement) => [copyKey(placement), placement]));
  const fixed = new Map<string, FixedPlacement>(problem.fixed.map((one) => [copyKey(one), one]));
  for (const one of locked) {
    const key = copyKey(one);
    const place = places.get(key);
    if (place === undefined) {
      const name = `Copy ${one.copy} of ${one.item} in set ${one.set}`;
      throw new GeometryError('bad-argument', `${name} can't be locked: it lies nowhere.`);
    }
    const { sheet, x, y, rotationDeg } = place;
    const accepted = one.accepted ?? fixed.get(key)?.accepted ?? [];
    fixed.set(key, { ...copyRef(place), sheet, x, y, rotationDeg, accepted });
  }
  return { ...problem, fixed: [...fixed.values()] };
}
