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

/** After a newer change of the file. `drops`: numbers of those that nobody needs any more. */
export function withChange(
  waiting: Waiting | undefined,
  change: Change,
): { readonly waiting: Waiting; readonly drops: readonly number[] } {
  const { path, base } = change;
  if (waiting === undefined)
    return { waiting: { path, base, last: change, isLastTried: false, tried: [] }, drops: [] };
  const steps = [...new Set([...waiting.last.steps, ...change.steps])];
  const last = { ...change, base: waiting.base, steps };
  return {
    waiting: {
      ...waiting,
      last,
      isLastTried: false,
      tried: waiting.isLastTried ? [...waiting.tried, waiting.last] : waiting.tried,
    },
    drops: waiting.isLastTried ? [] : [waiting.last.order],
  };
}

/** Changes that another writer left: none is known not to have reached the store. */
export function waitingOf(changes: readonly Change[]): WaitingFiles {
  const files = new Map<string, Waiting>();
  for (const change of changes) {
    const older = files.get(change.path);
    const { waiting } = withChange(older, change);
    files.set(change.path, { ...waiting, isLastTried: true });
  }
  return files;
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
