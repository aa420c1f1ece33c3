import type { RoughCut } from '../types/problem.js';
import { areaOfRings } from './area.js';
import type { Area } from './area.js';
import { findTooNearEdge } from './clearance.js';
import type { CheckContext } from './context.js';
import { FORGIVEN_MM } from './forgiven.js';
import { outsideDeeperThan, overlapDeeperThan } from './overlap-depth.js';
import { copyKey, copyRef } from './violation.js';
import type { Finding } from './violation.js';

interface Block {
  readonly cut: RoughCut;
  readonly area: Area;
}

/**
 * Rule `rough-cut`: an item that has a rough cut is in exactly one, with its group, on its sheet, and keeps the
 * margin to its outline. A rough cut lies within its sheet's outline, and neither another one nor an item that
 * is not its own reaches into it.
 */
export function findRoughCutFaults(context: CheckContext): readonly Finding[] {
  const blocks = context.answer.roughCuts
    .filter((cut) => context.sheets.has(cut.sheet))
    .map((cut) => ({ cut, area: areaOfRings([cut.outline]) }));
  const homeless = context.answer.roughCuts.filter((cut) => !context.sheets.has(cut.sheet));
  return [
    ...homeless.map((cut): Finding => ({ rule: 'rough-cut', other: cut.id, sheet: cut.sheet })),
    ...membershipFaults(context),
    ...blocks.flatMap((block) => [
      ...sheetFaults(context, block),
      ...memberFaults(context, block),
      ...intruderFaults(context, block),
    ]),
    ...blocks.flatMap((block, i) => clashFaults(block, blocks.slice(i + 1))),
  ];
}

function membershipFaults(context: CheckContext): readonly Finding[] {
  const counts = new Map<string, number>();
  for (const member of context.answer.roughCuts.flatMap((cut) => cut.members)) {
    counts.set(copyKey(member), (counts.get(copyKey(member)) ?? 0) + 1);
  }
  return context.placed
    .filter(({ item, copy }) => {
      const count = counts.get(copyKey(copy)) ?? 0;
      return item.roughMargin === undefined ? count > 1 : count !== 1;
    })
    .map(({ copy, placement }) => ({
      rule: 'rough-cut',
      at: copy,
      sheet: placement.sheet,
      measured: counts.get(copyKey(copy)) ?? 0,
      required: 1,
    }));
}

function sheetFaults(context: CheckContext, { cut, area }: Block): readonly Finding[] {
  const outline = areaOfRings([context.sheets.get(cut.sheet)!.sheet.region.outer]);
  const outside = outsideDeeperThan(area, outline, FORGIVEN_MM);
  if (outside === undefined) return [];
  const { depth, place } = outside;
  return [{ rule: 'rough-cut', other: cut.id, sheet: cut.sheet, place, measured: -depth, required: 0 }];
}

function memberFaults(context: CheckContext, { cut, area }: Block): readonly Finding[] {
  const findings: Finding[] = [];
  for (const member of cut.members) {
    const placed = context.byCopy.get(copyKey(member));
    const base: Finding = { rule: 'rough-cut', at: copyRef(member), other: cut.id, sheet: cut.sheet };
    if (placed === undefined || placed.placement.sheet !== cut.sheet || placed.item.group !== cut.group) {
      findings.push(base);
      continue;
    }
    const required = Math.max(cut.marginMm, placed.item.roughMargin ?? 0);
    const shortfall = findTooNearEdge(placed.area, area, required);
    if (shortfall === undefined) continue;
    findings.push({ ...base, place: shortfall.place, measured: shortfall.measured, required });
  }
  return findings;
}

function intruderFaults(context: CheckContext, { cut, area }: Block): readonly Finding[] {
  const members = new Set(cut.members.map(copyKey));
  const findings: Finding[] = [];
  for (const placed of context.bySheet.get(cut.sheet) ?? []) {
    if (members.has(copyKey(placed.copy))) continue;
    const overlap = overlapDeeperThan(placed.area, area, FORGIVEN_MM);
    if (overlap === undefined) continue;
    const { depth, place } = overlap;
    findings.push({
      rule: 'rough-cut',
      at: placed.copy,
      other: cut.id,
      sheet: cut.sheet,
      place,
      measured: -depth,
      required: 0,
    });
  }
  return findings;
}

function clashFaults({ cut, area }: Block, others: readonly Block[]): readonly Finding[] {
  const findings: Finding[] = [];
  for (const other of others) {
    if (other.cut.sheet !== cut.sheet) continue;
    const overlap = overlapDeeperThan(area, other.area, FORGIVEN_MM);
    if (overlap === undefined) continue;
    const { depth, place } = overlap;
    // Both rough cuts are named: `other` is one, the first member of the second stands for it.
    const member = other.cut.members[0];
    findings.push({
      rule: 'rough-cut',
      ...(member === undefined ? {} : { at: copyRef(member) }),
      other: cut.id,
      sheet: cut.sheet,
      place,
      measured: -depth,
      required: 0,
    });
  }
  return findings;
}
