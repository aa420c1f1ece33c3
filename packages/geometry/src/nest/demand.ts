import type { CopyRef, NestProblem, SetKind } from '../types/problem.js';
import type { PreparedItem } from './prepared-item.js';

/** One copy that may be laid. */
export interface Copy {
  readonly index: number;
  readonly ref: CopyRef;
  readonly prepared: PreparedItem;
  /** Index of its set among all sets. */
  readonly set: number;
  readonly isFixed: boolean;
  /** Index of the copy that it forms a pair with, or -1. */
  readonly partner: number;
  /** It is the mirrored one of its pair: the rule stands on it. */
  readonly isMirrored: boolean;
}

/** One set of one kind. */
export interface SetOfCopies {
  readonly index: number;
  readonly kind: SetKind;
  readonly kindIndex: number;
  /** From 1. */
  readonly number: number;
  readonly copies: readonly number[];
}

export interface Demand {
  readonly copies: readonly Copy[];
  readonly sets: readonly SetOfCopies[];
  /** Sets of each kind, in order of their number. */
  readonly setsOfKind: readonly (readonly number[])[];
}

/** Sets of a kind of which as many as fit are wanted: an area bound, and no more than this. */
const MOST_SETS = 2000;

export function buildDemand(
  problem: NestProblem,
  items: readonly PreparedItem[],
  usableAreaMm2: number,
): Demand {
  const byId = new Map(items.map((prepared) => [prepared.item.id, prepared]));
  const fixed = new Set(problem.fixed.map(refKey));
  const copies: Copy[] = [];
  const sets: SetOfCopies[] = [];
  const setsOfKind = problem.setKinds.map((kind, kindIndex) => {
    const count = kind.sets === 'many' ? manySets(kind, byId, usableAreaMm2, problem) : kind.sets;
    const own: number[] = [];
    for (let number = 1; number <= count; number++) {
      const index = sets.length;
      const members: number[] = [];
      for (const member of kind.members) {
        const prepared = byId.get(member.item)!;
        for (let copy = 1; copy <= member.count; copy++) {
          const ref = { item: member.item, set: number, copy };
          members.push(copies.length);
          copies.push({
            index: copies.length,
            ref,
            prepared,
            set: index,
            isFixed: fixed.has(refKey(ref)),
            partner: -1,
            isMirrored: false,
          });
        }
      }
      sets.push({ index, kind, kindIndex, number, copies: members });
      own.push(index);
    }
    return own;
  });
  return { copies: withPartners(copies), sets, setsOfKind };
}

export function refKey(ref: CopyRef): string {
  return `${ref.set}/${ref.copy}/${ref.item}`;
}

/** At least as many as fixed placements name. */
function manySets(
  kind: SetKind,
  byId: ReadonlyMap<string, PreparedItem>,
  usableAreaMm2: number,
  problem: NestProblem,
): number {
  let area = 0;
  for (const { item, count } of kind.members) area += count * byId.get(item)!.areaMm2;
  const members = new Set(kind.members.map(({ item }) => item));
  let named = 0;
  for (const { item, set } of problem.fixed) if (members.has(item)) named = Math.max(named, set);
  const bound = area > 0 ? Math.floor(usableAreaMm2 / area) : 0;
  return Math.max(named, Math.min(MOST_SETS, bound));
}

function withPartners(copies: readonly Copy[]): Copy[] {
  const byKey = new Map(copies.map((copy) => [refKey(copy.ref), copy.index]));
  const partners = new Int32Array(copies.length).fill(-1);
  const mirrored = new Set<number>();
  for (const copy of copies) {
    const { mirrorOf, pair } = copy.prepared.item;
    if (mirrorOf === undefined || pair === undefined) continue;
    const plain = byKey.get(refKey({ ...copy.ref, item: mirrorOf }));
    if (plain === undefined) continue;
    partners[copy.index] = plain;
    partners[plain] = copy.index;
    mirrored.add(copy.index);
  }
  return copies.map((copy) => ({
    ...copy,
    partner: partners[copy.index]!,
    isMirrored: mirrored.has(copy.index),
  }));
}
