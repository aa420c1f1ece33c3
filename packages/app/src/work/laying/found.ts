import type { RuleName } from '@hidebound/geometry';
import { bareCopy, pieceCopyOf } from '@hidebound/leather';
import type { ItemMeaning, LayoutCheck, LayoutViolation, PieceCopy } from '@hidebound/leather';
import type { FoundViolation } from '@hidebound/geometry/check';
import type { Told } from '../../words/told.js';
import { told } from '../told.js';

/** A broken rule as plain data; the words for it are the panel's. */
export interface Broken {
  readonly rule: RuleName;
  /** The piece that breaks it; absent where a whole set, lane or rough cut does. */
  readonly who?: PieceCopy;
  /** The other party: a piece, or what a hide has there ("flaw:3"). */
  readonly other?: PieceCopy | string;
  /** mm or degrees, by the rule. */
  readonly measured?: number;
  readonly required?: number;
  readonly accepted: boolean;
}

/** Whether a layout is proven, and if not, why. */
export interface Verdict {
  readonly proven: boolean;
  readonly broken: readonly Broken[];
  /** Other faults, as the check tells them. */
  readonly told: readonly Told[];
}

/** Told by the panel in its own words: the leather is not the one that the pieces were laid on. */
const TOLD_OTHERWISE = ['layout-hide-changed', 'layout-hide-missing'];
/** Follows from another leather, and is made right with the layout: nothing that she has to hear of then. */
const FOLLOWS_FROM_IT = 'layout-yield-differs';

export function verdictOf(check: LayoutCheck): Verdict {
  const isOtherLeather = check.diagnostics.some(({ code }) => TOLD_OTHERWISE.includes(code));
  const isTold = (code: string): boolean =>
    !TOLD_OTHERWISE.includes(code) && !(isOtherLeather && code === FOLLOWS_FROM_IT);
  return {
    proven: check.proven,
    broken: check.violations.map(brokenOf),
    told: check.diagnostics
      .filter(({ severity, code }) => severity === 'error' && isTold(code))
      .map((each) => told(each)),
  };
}

function brokenOf({ rule, at, other, measured, required, accepted }: LayoutViolation): Broken {
  return {
    rule,
    ...(at === undefined ? {} : { who: bareCopy(at) }),
    ...(other === undefined ? {} : { other: typeof other === 'string' ? other : bareCopy(other) }),
    ...(measured === undefined ? {} : { measured }),
    ...(required === undefined ? {} : { required }),
    accepted,
  };
}

/** What a move breaks, seen from the piece that is moved: it is `who`, whichever party the check names first. */
export function brokenByMove(
  found: readonly FoundViolation[],
  copy: PieceCopy,
  ref: { readonly item: string; readonly set: number; readonly copy: number },
  items: ReadonlyMap<string, ItemMeaning>,
): Broken[] {
  return found.map(({ rule, at, other, measured, required, accepted }) => {
    const isFirst = at?.item === ref.item && at.set === ref.set && at.copy === ref.copy;
    const party = isFirst ? other : at;
    const named = typeof party === 'object' ? (pieceCopyOf(party, items) ?? party.item) : party;
    return {
      rule,
      who: copy,
      ...(named === undefined ? {} : { other: typeof named === 'string' ? named : bareCopy(named) }),
      ...(measured === undefined ? {} : { measured }),
      ...(required === undefined ? {} : { required }),
      accepted,
    };
  });
}
