import type { Random } from '@hidebound/geometry';
import type { JobFile } from '../job/job.js';
import type { Desk } from '../work/desk.js';
import type { JobStore, SaveOutcome, StoreWrite } from './job-store.js';
import type { Change, Journal } from './journal.js';
import { StoreError } from './store-error.js';
import { createTurns } from './test-turns.js';
import type { Turns } from './test-turns.js';

/** How often things go wrong, as parts of 1. */
export interface Faults {
  /** The store is not reached. */
  readonly lost: number;
  /** It is reached, and its answer gets lost. */
  readonly answerLost: number;
  readonly noRoom: number;
  readonly journalNoRoom: number;
}

export const NO_FAULTS: Faults = { lost: 0, answerLost: 0, noRoom: 0, journalNoRoom: 0 };

/** A store and a journal that several tabs share, in memory; texts are all that files hold. */
export interface World {
  readonly turns: Turns;
  faults: Faults;
  readonly stored: Map<string, { readonly text: string; readonly revision: string }>;
  readonly journal: Map<string, { readonly writer: number; readonly change: Change }>;
  readonly gone: Set<number>;
  readonly listeners: Map<number, () => void>;
  readonly random: Random;
  lastRevision: number;
}

export function createWorld(random: Random): World {
  return {
    turns: createTurns(random.fork(1)),
    faults: NO_FAULTS,
    stored: new Map(),
    journal: new Map(),
    gone: new Set(),
    listeners: new Map(),
    random: random.fork(2),
    lastRevision: 0,
  };
}

export function textFile(text: string): JobFile {
  return { kind: 'text', text };
}

export function textOf(file: JobFile | undefined): string | undefined {
  return file?.kind === 'text' ? file.text : undefined;
}

/** What another program does to a file, all at once. */
export function writeOutside(world: World, path: string, text: string | undefined): void {
  if (text === undefined) world.stored.delete(path);
  else world.stored.set(path, { text, revision: `r${++world.lastRevision}` });
  for (const listener of world.listeners.values()) listener();
}

export function storeOf(world: World, tab: number): JobStore {
  const { turns, stored, listeners, random } = world;
  const reached = async (): Promise<void> => {
    await turns.wait(tab);
    if (random.next() < world.faults.lost) throw new StoreError('out of reach', 'lost');
  };
  return {
    kind: 'folder',
    list: async () => {
      await reached();
      const files = [...stored].map(([path, { text, revision }]) => ({ path, size: text.length, revision }));
      await turns.wait(tab);
      return { name: 'job', files };
    },
    read: async (path) => {
      await reached();
      const file = stored.get(path);
      await turns.wait(tab);
      return file && { bytes: new TextEncoder().encode(file.text), revision: file.revision };
    },
    save: async (writes) => {
      await turns.wait(tab);
      const { lost, answerLost, noRoom } = world.faults;
      if (random.next() < lost) return { kind: 'failed', reason: 'out of reach' };
      if (random.next() < noRoom) return { kind: 'failed', reason: 'no room' };
      const outcome = saveAll(world, tab, writes);
      await turns.wait(tab);
      return random.next() < answerLost ? { kind: 'failed', reason: 'out of reach' } : outcome;
    },
    watch: (listener) => {
      listeners.set(tab, listener);
      return () => listeners.delete(tab);
    },
  };
}

function saveAll(world: World, tab: number, writes: readonly StoreWrite[]): SaveOutcome {
  const { stored, listeners } = world;
  const conflicts = writes
    .map(({ path, base }) => ({ path, base, revision: stored.get(path)?.revision ?? null }))
    .filter(({ base, revision }) => base !== revision)
    .map(({ path, revision }) => ({ path, revision }));
  if (conflicts.length > 0) return { kind: 'conflict', conflicts };
  const files = writes.flatMap(({ path, bytes }) => {
    if (bytes === undefined) {
      stored.delete(path);
      return [];
    }
    const revision = `r${++world.lastRevision}`;
    stored.set(path, { text: new TextDecoder().decode(bytes), revision });
    return [{ path, size: bytes.length, revision }];
  });
  for (const [other, listener] of listeners) if (other !== tab) listener();
  return { kind: 'saved', files };
}

export function journalOf(world: World, tab: number): Journal {
  const { turns, journal, gone } = world;
  const key = (order: number): string => `${tab}:${order}`;
  return {
    writer: tab,
    write: async (puts, drops) => {
      await turns.wait(tab);
      if (world.random.next() < world.faults.journalNoRoom) throw new StoreError('no room', 'full');
      for (const order of drops) journal.delete(key(order));
      for (const change of puts) journal.set(key(change.order), { writer: tab, change });
      await turns.wait(tab);
    },
    adopt: async (nextOrder) => {
      await turns.wait(tab);
      const adopted = [...gone].map((other) => {
        const left = [...journal].filter(([, { writer }]) => writer === other);
        return left
          .sort(([, one], [, two]) => one.change.order - two.change.order)
          .map(([was, { change }]) => {
            const taken = { ...change, order: nextOrder() };
            journal.delete(was);
            journal.set(key(taken.order), { writer: tab, change: taken });
            return taken;
          });
      });
      await turns.wait(tab);
      return adopted.filter((changes) => changes.length > 0);
    },
    close: () => gone.add(tab),
  };
}

export function deskOf({ turns }: Pick<World, 'turns'>, tab: number): Pick<Desk, 'ask'> {
  const tasks = {
    writeFile: ({ file }: { file: JobFile }) => new TextEncoder().encode(textOf(file)),
    readFiles: (files: readonly { path: string; bytes: Uint8Array }[]) =>
      files.map(({ path, bytes }) => [path, textFile(new TextDecoder().decode(bytes))] as const),
  };
  return {
    ask: async (task, input) => {
      await turns.wait(tab);
      return tasks[task as keyof typeof tasks](input as never);
    },
  };
}
