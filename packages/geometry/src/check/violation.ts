import type { CopyRef, FixedPlacement, RuleName, Violation } from '../types/problem.js';

/** A broken rule as the check tells it: with the part of the item, where only a part is at fault. */
export interface FoundViolation extends Violation {
  /** Name of the item's part (its face, say) whose need is not met; absent: the whole item's. */
  readonly part?: string;
}

/** A broken rule before it is known whether someone accepted it. */
export type Finding = Omit<FoundViolation, 'accepted'>;

/** One word for a copy, for maps. */
export function copyKey(copy: CopyRef): string {
  return `${copy.set}/${copy.copy}/${copy.item}`;
}

/** The copy alone, without the rest of its placement. */
export function copyRef(copy: CopyRef): CopyRef {
  return { item: copy.item, set: copy.set, copy: copy.copy };
}

/** Marks the findings that the fixed placement of either party lists as accepted. */
export function markAccepted(
  findings: readonly Finding[],
  fixed: readonly FixedPlacement[],
): readonly FoundViolation[] {
  const accepted = new Map<string, readonly RuleName[]>();
  for (const placement of fixed) accepted.set(copyKey(placement), placement.accepted);
  const lists = (copy: CopyRef | string | undefined, rule: RuleName): boolean =>
    typeof copy === 'object' && (accepted.get(copyKey(copy))?.includes(rule) ?? false);
  return findings.map((finding) => ({
    ...finding,
    accepted: lists(finding.at, finding.rule) || lists(finding.other, finding.rule),
  }));
}

/** True when nothing is broken but what was accepted by hand. */
export function isProven(violations: readonly Violation[]): boolean {
  return violations.every((violation) => violation.accepted);
}
