import type { Change } from './journal.js';

/** What waits of one file: its newest content, and older ones that may have reached the store unheard. */
export interface Waiting {
  readonly path: string;
  /** Of the store's file that `last` is to take the place of. */
  readonly base: string | null;
  readonly last: Change;
  /** True once it was sent and the answer is not known. */
  readonly isLastTried: boolean;
  /** Sent before `last` was made, their answers unknown. */
  readonly tried: readonly Change[];
}

export type WaitingFiles = ReadonlyMap<string, Waiting>;

/** What a journal has to put and to take off. */
export interface Notes {
  readonly puts: readonly Change[];
  readonly drops: readonly number[];
}

/** What waits of a file after something happened (undefined: nothing any more), and what the journal notes of it. */
export interface Moved {
  readonly waiting: Waiting | undefined;
  readonly notes: Notes;
}

export function firstWaiting(last: Change): Waiting {
  return { path: last.path, base: last.base, last, isLastTried: false, tried: [] };
}

/** After a newer change of the file. An older one that was never sent is needed no longer. */
export function withChange(
  before: Waiting | undefined,
  change: Change,
): Moved & { readonly waiting: Waiting } {
  if (before === undefined) return { waiting: firstWaiting(change), notes: { puts: [change], drops: [] } };
  const { base, last: older, isLastTried, tried } = before;
  const { strand } = older;
  const last = { ...change, base, strand, steps: [...new Set([...older.steps, ...change.steps])] };
  return {
    waiting: { ...before, last, isLastTried: false, tried: isLastTried ? [...tried, older] : tried },
    notes: { puts: [last], drops: isLastTried ? [] : [older.order] },
  };
}

/** While it is on its way to the store. */
export function asTried(waiting: Waiting): Waiting {
  return { ...waiting, isLastTried: true };
}

/** After an answer that tells that `sent` was not written. */
export function asNotWritten(now: Waiting, sent: Change): Moved {
  if (now.last.order === sent.order)
    return { waiting: { ...now, isLastTried: false }, notes: { puts: [], drops: [] } };
  const tried = now.tried.filter(({ order }) => order !== sent.order);
  return { waiting: { ...now, tried }, notes: { puts: [], drops: [sent.order] } };
}

/** After the store has `sent` under a new revision (null: taken away). What was changed since then still waits. */
export function asSaved(now: Waiting, sent: Change, revision: string | null): Moved {
  if (now.last.order === sent.order) return { waiting: undefined, notes: { puts: [], drops: ordersOf(now) } };
  return asRebased(now, revision);
}

/** Made to take the place of another revision: of one that came from here, so that nothing is lost by it. */
export function asRebased(now: Waiting, base: string | null): Moved & { readonly waiting: Waiting } {
  const last = { ...now.last, base };
  return {
    waiting: { ...now, base, last, tried: [] },
    notes: { puts: [last], drops: now.tried.map(({ order }) => order) },
  };
}

/** Changes that a writer left who is gone, strand by strand: none of them is known not to have reached the store. */
export function waitingOf(changes: readonly Change[]): readonly Waiting[] {
  const strands = new Map<string, Waiting>();
  for (const change of changes) {
    const { waiting } = withChange(strands.get(change.strand), change);
    strands.set(change.strand, asTried(waiting));
  }
  return [...strands.values()];
}

export function ordersOf({ last, tried }: Waiting): readonly number[] {
  return [...tried, last].map(({ order }) => order);
}

/** Files that have to be saved together, as they were changed in one step; the longest waiting first. */
export function groupsOf(files: WaitingFiles): readonly (readonly Waiting[])[] {
  const groupOfStep = new Map<string, Waiting[]>();
  const groups = new Set<Waiting[]>();
  for (const waiting of files.values()) {
    const joined = [waiting];
    for (const step of waiting.last.steps) {
      const group = groupOfStep.get(step);
      if (group === undefined || !groups.delete(group)) continue;
      joined.push(...group);
      for (const each of group) for (const theirs of each.last.steps) groupOfStep.set(theirs, joined);
    }
    for (const step of waiting.last.steps) groupOfStep.set(step, joined);
    groups.add(joined);
  }
  const oldest = (group: readonly Waiting[]): number => Math.min(...group.map(({ last }) => last.order));
  return [...groups].sort((one, other) => oldest(one) - oldest(other));
}
