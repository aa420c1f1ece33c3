import type { Item, Need, NestProblem, SetKind, Sheet } from '../types/problem.js';
import {
  isOrdinal,
  isSaneAngle,
  isSaneDistance,
  isSaneLength,
  isSaneLine,
  isSanePoint,
  isSaneRegion,
} from './sane.js';
import type { Finding } from './violation.js';

/** No set kind asks for more copies than this: each is gone through one by one. */
const MOST_COPIES = 1_000_000;

/**
 * Rule `finite`, for the problem: every number finite and of a sane size, every id known and given once, every
 * item in one set kind. `other` names the item, set kind or sheet. Nothing can be proven of a problem that fails.
 */
export function findProblemFaults(problem: NestProblem): readonly Finding[] {
  const items = new Set(problem.items.map(({ id }) => id));
  const sheets = new Set(problem.sheets.map(({ id }) => id));
  const faulty = [
    ...problem.items.filter((item) => !isSaneItem(item, items, sheets)).map(({ id }) => id),
    ...problem.sheets.filter((sheet) => !isSaneSheet(sheet)).map(({ id }) => id),
    ...problem.setKinds.filter((kind) => !isSaneSetKind(kind, items)).map(({ id }) => id),
    ...repeated(problem.items.map(({ id }) => id)),
    ...repeated(problem.sheets.map(({ id }) => id)),
    ...repeated(problem.setKinds.map(({ id }) => id)),
    ...repeated(problem.setKinds.flatMap(({ members }) => members.map(({ item }) => item))),
    ...(areSaneDistances(problem) ? [] : ['distances']),
  ];
  return faulty.map((other) => ({ rule: 'finite', other }));
}

function repeated(ids: readonly string[]): readonly string[] {
  return [...new Set(ids.filter((id, index) => ids.indexOf(id) !== index))];
}

function areSaneDistances({ distances }: NestProblem): boolean {
  const { gap, edge, void: fromVoid, betweenGroups, kerf } = distances;
  return [gap, edge, fromVoid, betweenGroups ?? 0, kerf ?? 0].every(isSaneDistance);
}

function isSaneItem(item: Item, items: ReadonlySet<string>, sheets: ReadonlySet<string>): boolean {
  const { angleRule, thickness, pair, lane } = item;
  return (
    isSaneRegion(item.region) &&
    isSaneNeed(item.need) &&
    item.parts.every((part) => part.areas.every(isSaneRegion) && isSaneNeed(part.need)) &&
    [angleRule.arrowDeg, ...angleRule.targetsDeg].every(isSaneAngle) &&
    isSaneDistance(angleRule.toleranceDeg) &&
    (angleRule.frame === 'free' || angleRule.targetsDeg.length > 0) &&
    (thickness === undefined || (isSaneDistance(thickness.minMm) && isSaneDistance(thickness.maxMm))) &&
    (item.mirrorOf === undefined || items.has(item.mirrorOf)) &&
    (pair === undefined || (isSaneDistance(pair.toleranceDeg) && isSaneDistance(pair.distanceMm))) &&
    (lane === undefined || isSaneDistance(lane.widthMm)) &&
    (item.roughMargin === undefined || isSaneDistance(item.roughMargin)) &&
    item.sheets.every((sheet) => sheets.has(sheet))
  );
}

function isSaneNeed(need: Need): boolean {
  return Number.isFinite(need.maxGrade);
}

function isSaneSetKind(kind: SetKind, items: ReadonlySet<string>): boolean {
  return (
    (kind.sets === 'many' || kind.sets === 0 || isOrdinal(kind.sets)) &&
    kind.members.every(({ item, count }) => items.has(item) && (count === 0 || isOrdinal(count))) &&
    (kind.sets === 'many' ? 1 : kind.sets) * kind.members.reduce((sum, { count }) => sum + count, 0) <=
      MOST_COPIES
  );
}

function isSaneSheet(sheet: Sheet): boolean {
  const { direction, thickness } = sheet;
  const lines = [...(direction?.axis === undefined ? [] : [direction.axis]), ...(direction?.strokes ?? [])];
  return (
    isSaneRegion(sheet.region) &&
    sheet.qualities.every(
      (quality) =>
        quality.areas.every(isSaneRegion) &&
        Number.isFinite(quality.grade) &&
        isSaneDistance(quality.uncertaintyMm),
    ) &&
    lines.every(isSaneLine) &&
    (thickness === undefined ||
      (thickness.rangeMm.every(isSaneLength) &&
        thickness.readings.every(({ at, mm }) => isSanePoint(at) && isSaneDistance(mm))))
  );
}
