import { refKey } from '../nest/demand.js';
import { compareQuick, quickScore } from '../nest/score.js';
import type { CopyRef, Item, NestProblem, SetKind } from '../types/problem.js';
import type { LaneLayout } from './lay-lanes.js';
import { layLanes, numberedCopies } from './lay-lanes.js';
import type { LaneCopy } from './lane-search.js';

/** Straps that must share a sheet or a lot, and what they may share, in the order in which it is tried. */
interface BoundStraps {
  readonly priority: number;
  readonly copies: readonly CopyRef[];
  /** Each as the sheets that it stands for. */
  readonly shares: readonly (readonly string[])[];
}

/** Bound straps and the sheets that they are given. */
interface Assigned {
  readonly bound: BoundStraps;
  readonly sheets: readonly string[];
}

/**
 * Lays all straps that are asked for by number in lanes, those of one set on one sheet or lot where the set wants it:
 * as many sets as find room for all their straps on the first sheets that would do, then as many as do on the next.
 */
export function laySetLanes(problem: NestProblem): LaneLayout {
  const bound = boundStraps(problem);
  if (bound.length === 0) return layLanes(problem);
  const held = new Set(bound.flatMap(({ copies }) => copies.map(refKey)));
  const loose = numberedCopies(problem).filter((copy) => !held.has(refKey(copy)));
  const layWith = (assigned: readonly Assigned[]): LaneLayout =>
    layLanes(problem, {
      copies: [
        ...assigned.flatMap(({ bound: { copies }, sheets }) =>
          copies.map((copy): LaneCopy => ({ ...copy, sheets })),
        ),
        ...loose,
      ],
    });
  const whole = assignShares(bound, layWith);
  const wholeLaid = layWith(whole);
  const done = new Set(whole.map((one) => one.bound));
  const others = bound.filter((one) => !done.has(one));
  if (others.length === 0) return wholeLaid;
  // Straps of sets that are nowhere whole are laid too where that costs no other ones.
  const allLaid = layWith([...whole, ...others.map((one) => ({ bound: one, sheets: one.shares[0]! }))]);
  return isBetter(problem, allLaid, wholeLaid) ? allLaid : withLeft(wholeLaid, others);
}

function withLeft(laid: LaneLayout, others: readonly BoundStraps[]): LaneLayout {
  return { ...laid, left: [...laid.left, ...others.flatMap(({ copies }) => copies)] };
}

function isBetter(problem: NestProblem, laid: LaneLayout, best: LaneLayout): boolean {
  return compareQuick(quickScore(problem, laid.placements), quickScore(problem, best.placements)) < 0;
}

/** Share after share, as many of the sets that are still open as all fit, found by halving. */
function assignShares(
  bound: readonly BoundStraps[],
  layWith: (assigned: readonly Assigned[]) => LaneLayout,
): Assigned[] {
  const done: Assigned[] = [];
  let open = bound;
  for (let at = 0; open.some(({ shares }) => at < shares.length); at++) {
    const here = open
      .filter(({ shares }) => at < shares.length)
      .map((one): Assigned => ({ bound: one, sheets: one.shares[at]! }));
    const fits = (count: number): boolean => isWhole(layWith, [...done, ...here.slice(0, count)]);
    let most = 0;
    for (
      let tooMany = here.length + 1, count = here.length;
      tooMany > most + 1;
      count = (most + tooMany) >> 1
    ) {
      if (fits(count)) most = count;
      else tooMany = count;
    }
    const taken = here.slice(0, most);
    done.push(...taken);
    open = open.filter((one) => !taken.some((other) => other.bound === one));
  }
  return done;
}

function isWhole(
  layWith: (assigned: readonly Assigned[]) => LaneLayout,
  assigned: readonly Assigned[],
): boolean {
  const missed = new Set(layWith(assigned).left.map(refKey));
  return assigned.every(({ bound }) => !bound.copies.some((copy) => missed.has(refKey(copy))));
}

/** The most urgent sets first. */
function boundStraps(problem: NestProblem): BoundStraps[] {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  const bound = problem.setKinds.flatMap((kind) => {
    const held = kind.members.flatMap(({ item: id }) => {
      const item = items.get(id);
      return item !== undefined && isHeld(kind.keep, item) ? [item] : [];
    });
    if (kind.sets === 'many') return [];
    const numbers = Array.from({ length: kind.sets }, (_, i) => i + 1);
    return groupsOf(kind, held).flatMap((group) =>
      numbers.flatMap((set) => boundSet(problem, kind, group, set)),
    );
  });
  return bound.sort((a, b) => b.priority - a.priority);
}

function isHeld(keep: SetKind['keep'], item: Item): boolean {
  return keep !== 'nothing' && (keep !== 'faceLot' || item.isFace);
}

/** Lots are compared within a group, sheets among all. */
function groupsOf({ keep }: SetKind, held: readonly Item[]): Item[][] {
  if (keep === 'sheet') return [[...held]];
  const names = [...new Set(held.map(({ group }) => group))];
  return names.map((name) => held.filter(({ group }) => group === name));
}

/** The straps of one set among items that share; empty if there is nothing to choose. */
function boundSet(
  problem: NestProblem,
  { keep, members, priority }: SetKind,
  held: readonly Item[],
  set: number,
): BoundStraps[] {
  const straps = held.filter(({ lane }) => lane !== undefined);
  if (straps.length === 0) return [];
  const copies = straps.flatMap(({ id: item }) => {
    const count = members.find((member) => member.item === item)?.count ?? 0;
    return Array.from({ length: count }, (_, i): CopyRef => ({ item, set, copy: i + 1 }));
  });
  const all = sharesOf(problem, keep).filter((share) => canTake(straps, share));
  const lying = problem.fixed.filter((one) => one.set === set && held.some(({ id }) => id === one.item));
  const withMates = all.filter((share) => lying.some(({ sheet }) => share.includes(sheet)));
  const forAll = all.filter((share) => canTake(held, share));
  const shares = [withMates, forAll, all].find((choice) => choice.length > 0) ?? [];
  const isFree = straps.every((item) => item.sheets.every((id) => shares[0]?.includes(id)));
  return shares.length === 0 || isFree ? [] : [{ priority, copies, shares }];
}

function canTake(items: readonly Item[], share: readonly string[]): boolean {
  return items.every(({ sheets }) => sheets.some((id) => share.includes(id)));
}

function sharesOf({ sheets }: NestProblem, keep: SetKind['keep']): string[][] {
  if (keep === 'sheet') return sheets.map(({ id }) => [id]);
  const lots = [...new Set(sheets.map(({ lot }) => lot))];
  return lots.map((lot) => sheets.filter((sheet) => sheet.lot === lot).map(({ id }) => id));
}
