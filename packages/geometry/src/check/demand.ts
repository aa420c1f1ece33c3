import type { CopyRef, NestProblem, SetKind } from '../types/problem.js';

/** The set kind of an item and how many copies of it one set holds. */
export interface Demand {
  readonly kind: SetKind;
  readonly perSet: number;
}

/** The demand for every item that a set kind names. */
export function demandByItem(problem: NestProblem): ReadonlyMap<string, Demand> {
  const demands = new Map<string, Demand>();
  for (const kind of problem.setKinds) {
    for (const member of kind.members) demands.set(member.item, { kind, perSet: member.count });
  }
  return demands;
}

/** Every copy of one set of a kind. */
export function copiesOfSet(kind: SetKind, set: number): readonly CopyRef[] {
  return kind.members.flatMap(({ item, count }) =>
    Array.from({ length: count }, (_, index) => ({ item, set, copy: index + 1 })),
  );
}

/** True when the copy is among those that are asked for. */
export function isDemanded(copy: CopyRef, demand: Demand | undefined): boolean {
  if (demand === undefined || copy.copy > demand.perSet) return false;
  return demand.kind.sets === 'many' || copy.set <= demand.kind.sets;
}
