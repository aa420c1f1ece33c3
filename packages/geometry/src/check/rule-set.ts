import type { RuleName, SetKind } from '../types/problem.js';
import type { CheckContext, Placed } from './context.js';
import { copiesOfSet } from './demand.js';
import { copyKey } from './violation.js';
import type { Finding } from './violation.js';

/**
 * Rules about whole sets. `set`: where sets are laid, a set is laid whole or not at all. `sheet` and `lot`: all laid
 * copies of a set share their sheet, or those of one group (or its faces) their lot; and an item lies on a sheet that
 * it allows.
 */
export function findSetFaults(context: CheckContext): readonly Finding[] {
  const findings: Finding[] = [];
  for (const kind of context.problem.setKinds) {
    for (const set of setNumbersOf(context, kind)) {
      const copies = copiesOfSet(kind, set);
      const laid = copies
        .map((copy) => context.byCopy.get(copyKey(copy)))
        .filter((copy) => copy !== undefined);
      if (laid.length === 0) continue;
      findings.push(...keptTogether(kind, laid));
      if (context.problem.objective.mode !== 'sets') continue;
      for (const copy of copies) {
        if (context.byCopy.has(copyKey(copy))) continue;
        findings.push({
          rule: 'set',
          at: spokesman(context, laid).copy,
          other: copy,
          measured: laid.length,
          required: copies.length,
        });
      }
    }
  }
  return findings;
}

/** Rule `sheet`, as far as the item itself names the sheets that it may lie on. */
export function findSheetFaults(context: CheckContext): readonly Finding[] {
  return context.placed
    .filter(({ item, placement }) => !item.sheets.includes(placement.sheet))
    .map(({ copy, placement }) => ({ rule: 'sheet', at: copy, sheet: placement.sheet }));
}

/** The copy that stands for its set: one whose placement lists the rule as accepted, else the first. */
function spokesman({ problem }: CheckContext, laid: readonly Placed[]): Placed {
  const accepted = new Set(
    problem.fixed.filter((one) => one.accepted.includes('set')).map((one) => copyKey(one)),
  );
  return laid.find(({ copy }) => accepted.has(copyKey(copy))) ?? laid[0]!;
}

function setNumbersOf(context: CheckContext, kind: SetKind): readonly number[] {
  const items = new Set(kind.members.map((member) => member.item));
  const numbers = new Set<number>();
  for (const { copy } of context.placed) if (items.has(copy.item)) numbers.add(copy.set);
  return [...numbers].sort((one, other) => one - other);
}

function keptTogether(kind: SetKind, laid: readonly Placed[]): readonly Finding[] {
  if (kind.keep === 'nothing') return [];
  const rule: RuleName = kind.keep === 'sheet' ? 'sheet' : 'lot';
  const bound = kind.keep === 'faceLot' ? laid.filter(({ item }) => item.isFace) : laid;
  const shared = ({ sheet }: Placed): string => (rule === 'sheet' ? sheet.sheet.id : sheet.sheet.lot);
  const firstOf = (placed: Placed): Placed =>
    bound.find(({ item }) => rule === 'sheet' || item.group === placed.item.group) ?? placed;
  return bound
    .filter((placed) => shared(placed) !== shared(firstOf(placed)))
    .map((placed) => ({ rule, at: placed.copy, other: firstOf(placed).copy, sheet: placed.placement.sheet }));
}
