import type { CopyRef } from '../types/problem.js';
import type { CheckContext } from './context.js';
import { copiesOfSet, demandByItem, isDemanded } from './demand.js';
import type { Finding } from './violation.js';
import { copyKey, copyRef } from './violation.js';

/** Objectives under which each copy of a numbered set is accounted for: laid, or told as not laid. */
const ACCOUNTED_MODES: readonly string[] = ['placeAll', 'sets', 'strip'];

/**
 * Rule `count`: no copy is laid that isn't asked for, none twice, none is told as not laid that is laid, and
 * each copy that is asked for by number is either laid or told as not laid (except in a `fill`).
 */
export function findCountFaults(context: CheckContext): readonly Finding[] {
  const laid = new Set<string>();
  const left = new Set<string>();
  const findings: Finding[] = [];
  const demands = demandByItem(context.problem);
  const account = (copy: CopyRef, sheet: string | undefined, own: Set<string>, clash: Set<string>): void => {
    const key = copyKey(copy);
    const isWanted = isDemanded(copy, demands.get(copy.item));
    if (!isWanted || own.has(key) || clash.has(key)) {
      findings.push({ rule: 'count', at: copyRef(copy), ...(sheet === undefined ? {} : { sheet }) });
    }
    own.add(key);
  };
  for (const placed of context.placed) account(placed.copy, placed.placement.sheet, laid, left);
  for (const copy of context.answer.unplaced) account(copy, undefined, left, laid);
  return [...findings, ...unaccounted(context, laid, left)];
}

function unaccounted(
  context: CheckContext,
  laid: ReadonlySet<string>,
  left: ReadonlySet<string>,
): readonly Finding[] {
  const { problem } = context;
  if (!ACCOUNTED_MODES.includes(problem.objective.mode)) return [];
  const findings: Finding[] = [];
  for (const kind of problem.setKinds) {
    if (kind.sets === 'many') continue;
    for (let set = 1; set <= kind.sets; set++) {
      for (const copy of copiesOfSet(kind, set)) {
        const key = copyKey(copy);
        if (!laid.has(key) && !left.has(key)) findings.push({ rule: 'count', at: copy, other: kind.id });
      }
    }
  }
  return findings;
}
