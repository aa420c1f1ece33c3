import { refKey } from '../nest/demand.js';
import { compareQuick, quickScore } from '../nest/score.js';
import type { CopyRef, Item, NestProblem, SetKind } from '../types/problem.js';
import type { LaneLayout } from './lay-lanes.js';
import { layLanes, numberedCopies } from './lay-lanes.js';
import type { LaneCopy } from './lane-search.js';

/** Straps that must share a sheet or a lot, and what they may share, in the order in which it is tried. */
interface BoundStraps {
  readonly copies: readonly CopyRef[];
  /** Each as the sheets that it stands for. */
  readonly shares: readonly (readonly string[])[];
  /** Which share is tried now. */
  at: number;
}

/** Rounds in which sets move on to their next share: each lays all lanes anew. */
const MOST_ROUNDS = 12;

/**
 * Lays all straps that are asked for by number in lanes, those of one set on one sheet or lot where the set wants it:
 * each set begins with the first sheets that would do, and moves on to the next ones while some of its straps find no
 * place there. The best round is the answer.
 */
export function laySetLanes(problem: NestProblem): LaneLayout {
  const bound = boundStraps(problem);
  if (bound.length === 0) return layLanes(problem);
  let best: LaneLayout | undefined;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const laid = layLanes(problem, { copies: narrowed(problem, bound) });
    if (best === undefined || isBetter(problem, laid, best)) best = laid;
    if (!moveOn(bound, laid)) break;
  }
  return best!;
}

function isBetter(problem: NestProblem, laid: LaneLayout, best: LaneLayout): boolean {
  return compareQuick(quickScore(problem, laid.placements), quickScore(problem, best.placements)) < 0;
}

/** Sets of which a strap found no place try their next share; false if none can. */
function moveOn(bound: readonly BoundStraps[], { left }: LaneLayout): boolean {
  const missed = new Set(left.map(refKey));
  let hasMoved = false;
  for (const one of bound) {
    if (one.at + 1 >= one.shares.length || !one.copies.some((copy) => missed.has(refKey(copy)))) continue;
    one.at++;
    hasMoved = true;
  }
  return hasMoved;
}

function narrowed(problem: NestProblem, bound: readonly BoundStraps[]): LaneCopy[] {
  const sheets = new Map(
    bound.flatMap(({ copies, shares, at }) => copies.map((copy) => [refKey(copy), shares[at]!] as const)),
  );
  return numberedCopies(problem).map((copy) => {
    const own = sheets.get(refKey(copy));
    return own === undefined ? copy : { ...copy, sheets: own };
  });
}

function boundStraps(problem: NestProblem): BoundStraps[] {
  const items = new Map(problem.items.map((item) => [item.id, item]));
  return problem.setKinds.flatMap((kind) => {
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
  { keep, members }: SetKind,
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
  const isFree = shares.length === 1 && problem.sheets.every(({ id }) => shares[0]!.includes(id));
  return shares.length === 0 || isFree ? [] : [{ copies, shares, at: 0 }];
}

function canTake(items: readonly Item[], share: readonly string[]): boolean {
  return items.every(({ sheets }) => sheets.some((id) => share.includes(id)));
}

function sharesOf({ sheets }: NestProblem, keep: SetKind['keep']): string[][] {
  if (keep === 'sheet') return sheets.map(({ id }) => [id]);
  const lots = [...new Set(sheets.map(({ lot }) => lot))];
  return lots.map((lot) => sheets.filter((sheet) => sheet.lot === lot).map(({ id }) => id));
}
