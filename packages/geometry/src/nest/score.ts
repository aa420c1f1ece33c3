import { placedRings, usedUpArea } from '../leftover/used-up.js';
import { atan2Deg } from '../number/trigonometry.js';
import { largestRectangle } from '../shape/inscribed-rectangle.js';
import type { Item, NestAnswer, NestProblem, Placement } from '../types/problem.js';
import type { Point, Region } from '../types/shape.js';

/** How good an answer is, in the order in which better is decided. Areas in mm², rounded to 0.01. */
export interface AnswerScore {
  /** Copies that are asked for by number and not laid, for each priority, the highest first. */
  readonly missed: readonly number[];
  /** Sets that are laid whole, for each priority of set kinds, the highest first. */
  readonly wholeSets: readonly number[];
  /** Value of all laid items and whole sets. */
  readonly value: number;
  /** Indexes of the sheets that are opened, in order. */
  readonly opened: readonly number[];
  readonly usedUpMm2: number;
  readonly largestLeftoverMm2: number;
  /** The placements as text: decides between answers that are equal in all else. */
  readonly placements: string;
}

/** The parts of a score that cost little: everything before the used-up area. */
export type QuickScore = Pick<AnswerScore, 'missed' | 'wholeSets' | 'value' | 'opened'>;

export function scoreAnswer(problem: NestProblem, answer: NestAnswer): AnswerScore {
  const areas = leftoverOf(problem, answer.placements);
  return {
    ...quickScore(problem, answer.placements),
    ...areas,
    placements: JSON.stringify(answer.placements),
  };
}

/**
 * Below 0 if `a` is better, above 0 if `b` is: required pieces by priority, whole sets, value, sheets opened (fewer,
 * then earlier ones), used-up area, largest rectangle in the leftover, the serialised placements.
 */
export function compareAnswers(problem: NestProblem, a: NestAnswer, b: NestAnswer): number {
  const quick = compareQuick(quickScore(problem, a.placements), quickScore(problem, b.placements));
  return quick !== 0 ? quick : compareScores(scoreAnswer(problem, a), scoreAnswer(problem, b));
}

/** Below 0 if `a` is better, above 0 if `b` is, 0 if they are the same. */
export function compareScores(a: AnswerScore, b: AnswerScore): number {
  const quick = compareQuick(a, b);
  if (quick !== 0) return quick;
  if (a.usedUpMm2 !== b.usedUpMm2) return a.usedUpMm2 - b.usedUpMm2;
  if (a.largestLeftoverMm2 !== b.largestLeftoverMm2) return b.largestLeftoverMm2 - a.largestLeftoverMm2;
  return a.placements < b.placements ? -1 : a.placements > b.placements ? 1 : 0;
}

export function compareQuick(a: QuickScore, b: QuickScore): number {
  const missed = compareLists(a.missed, b.missed);
  if (missed !== 0) return missed;
  const sets = compareLists(b.wholeSets, a.wholeSets);
  if (sets !== 0) return sets;
  if (a.value !== b.value) return b.value - a.value;
  if (a.opened.length !== b.opened.length) return a.opened.length - b.opened.length;
  return compareLists(a.opened, b.opened);
}

export function quickScore(problem: NestProblem, placements: readonly Placement[]): QuickScore {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  const bySet = new Map<string, number>();
  const byItem = new Map<string, number>();
  const kindOf = new Map<string, number>();
  problem.setKinds.forEach((kind, k) => {
    for (const member of kind.members) kindOf.set(member.item, k);
  });
  let value = 0;
  for (const { item, set } of placements) {
    const key = `${kindOf.get(item)}/${set}`;
    bySet.set(key, (bySet.get(key) ?? 0) + 1);
    byItem.set(item, (byItem.get(item) ?? 0) + 1);
    value += items.get(item)?.value ?? 0;
  }
  const whole = wholeSetsByKind(problem, bySet);
  problem.setKinds.forEach((kind, k) => (value += kind.value * whole[k]!));
  const sheets = new Set(placements.map((placement) => placement.sheet));
  return {
    missed: missedByPriority(problem, items, byItem),
    wholeSets: sumBy(problem.setKinds.map((kind, k) => [kind.priority, whole[k]!])),
    value,
    opened: problem.sheets.flatMap((sheet, i) => (sheets.has(sheet.id) ? [i] : [])),
  };
}

function wholeSetsByKind(problem: NestProblem, bySet: ReadonlyMap<string, number>): number[] {
  const sizes = problem.setKinds.map((kind) => kind.members.reduce((sum, { count }) => sum + count, 0));
  const whole = problem.setKinds.map(() => 0);
  for (const [key, count] of bySet) {
    const k = Number(key.split('/')[0]);
    if (count === sizes[k]) whole[k]!++;
  }
  return whole;
}

/** In `sets`, a piece is missed only together with its whole set, which is counted as such. */
function missedByPriority(
  problem: NestProblem,
  items: ReadonlyMap<string, Item>,
  byItem: ReadonlyMap<string, number>,
): number[] {
  const missed: [number, number][] = [];
  for (const kind of problem.setKinds) {
    for (const member of kind.members) {
      const { priority } = items.get(member.item)!;
      // What is not laid when a hide is filled is told by the value alone.
      const wanted = kind.sets === 'many' || problem.objective.mode === 'fill' ? 0 : kind.sets * member.count;
      missed.push([priority, Math.max(0, wanted - (byItem.get(member.item) ?? 0))]);
    }
  }
  return sumBy(missed);
}

/** Sums of the second numbers for each distinct first number, the highest first. */
function sumBy(pairs: readonly (readonly [number, number])[]): number[] {
  const sums = new Map<number, number>();
  for (const [key, count] of pairs) sums.set(key, (sums.get(key) ?? 0) + count);
  return [...sums.entries()].sort((a, b) => b[0] - a[0]).map(([, sum]) => sum);
}

function leftoverOf(
  problem: NestProblem,
  placements: readonly Placement[],
): { usedUpMm2: number; largestLeftoverMm2: number } {
  let usedUpMm2 = 0;
  let largestLeftoverMm2 = 0;
  for (const sheet of problem.sheets) {
    const own = placements.filter((placement) => placement.sheet === sheet.id);
    if (own.length === 0) continue;
    const used = usedUpArea(sheet, placedRings(own, problem.items), problem.objective.keepMm);
    usedUpMm2 += used.areaMm2;
    largestLeftoverMm2 = Math.max(largestLeftoverMm2, largestRectangleIn(used.leftovers, sheet.useFrom));
  }
  return { usedUpMm2: roundArea(usedUpMm2), largestLeftoverMm2: roundArea(largestLeftoverMm2) };
}

function largestRectangleIn(regions: readonly Region[], useFrom: Point): number {
  const angleDeg = atan2Deg(useFrom.y, useFrom.x);
  let largest = 0;
  for (const region of regions) {
    const found = largestRectangle(region, { angleDeg });
    if (found !== undefined) largest = Math.max(largest, found.alongMm * found.acrossMm);
  }
  return largest;
}

function roundArea(mm2: number): number {
  return Math.round(mm2 * 100) / 100;
}

function compareLists(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const off = (a[i] ?? -1) - (b[i] ?? -1);
    if (off !== 0) return off;
  }
  return 0;
}
