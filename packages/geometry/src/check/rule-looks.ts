import type { QualityRegion, RuleName } from '../types/problem.js';
import type { Area } from './area.js';
import type { CheckContext, Placed, PlacedNeed } from './context.js';
import { FORGIVEN_MM } from './forgiven.js';
import { overlapDeeperThan } from './overlap-depth.js';
import type { Depth } from './overlap-depth.js';
import type { Finding } from './violation.js';

/** Rules `looks` and `strength`: no part of an item reaches into leather that is worse, or weaker, than it bears. */
export function findLooksFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const placed of context.placed) {
    for (const need of context.needsOf(placed)) {
      for (const { quality, areas } of placed.sheet.qualities) {
        const rules = brokenBy(quality, need);
        if (rules.length === 0) continue;
        const depth = firstOverlap(need.areas, areas);
        if (depth !== undefined)
          findings.push(...rules.map((rule) => finding(rule, placed, need, quality, depth)));
      }
    }
  }
  return findings;
}

function brokenBy(quality: QualityRegion, { need }: PlacedNeed): readonly RuleName[] {
  const rules: RuleName[] = [];
  if (quality.grade > need.maxGrade) rules.push('looks');
  if (quality.weak && need.strong) rules.push('strength');
  return rules;
}

function firstOverlap(ones: readonly Area[], others: readonly Area[]): Depth | undefined {
  for (const one of ones) {
    for (const other of others) {
      const depth = overlapDeeperThan(one, other, FORGIVEN_MM);
      if (depth !== undefined) return depth;
    }
  }
  return undefined;
}

function finding(
  rule: RuleName,
  placed: Placed,
  { part }: PlacedNeed,
  quality: QualityRegion,
  depth: Depth,
): Finding {
  return {
    rule,
    at: placed.copy,
    other: quality.id,
    ...(part === undefined ? {} : { part }),
    sheet: placed.placement.sheet,
    place: depth.place,
    measured: -depth.depth,
    required: 0,
  };
}
