import type { JobFile } from '../job/job.js';
import { createKeeper } from './keeper.js';
import type { Keeper } from './keeper.js';
import { readAll } from './read-all.js';
import { deskOf, journalOf, storeOf, textFile, textOf } from './test-world.js';
import type { World } from './test-world.js';

/** What each content was made from, over all tabs: a content that something was made from may go. */
export interface Descent {
  readonly madeFrom: Map<string, Set<string>>;
  /** Contents that a person saw and took away. */
  readonly takenAway: Set<string>;
  /** Contents of which a tab said that they are kept. */
  readonly promised: Set<string>;
}

export function createDescent(): Descent {
  return { madeFrom: new Map(), takenAway: new Set(), promised: new Set() };
}

/** A tab of a simulated world: an app that knows but texts. */
export interface TestTab {
  readonly number: number;
  readonly keeper: Keeper;
  readonly files: Map<string, string>;
  readonly asides: (readonly [string, string])[];
  /** Undefined: taken away. One step. */
  change(edits: ReadonlyMap<string, string | undefined>): void;
  /** As when the browser is killed: nothing of it goes on. */
  kill(): void;
}

export async function openTab(world: World, number: number, descent: Descent): Promise<TestTab> {
  const store = storeOf(world, number);
  const desk = deskOf(world, number);
  const read = await readAll(store, desk, (await store.list()).files);
  const keeper = createKeeper({
    store,
    journal: journalOf(world, number),
    desk,
    revisions: read.revisions,
    pause: () => world.turns.wait(number),
  });
  const files = new Map([...read.files].map(([path, file]) => [path, textOf(file)!]));
  const asides: (readonly [string, string])[] = [];
  const made = new Set<string>();
  keeper.hear({
    onOthers: (edits) => takeOver(files, edits),
    onAside: (path, aside) => asides.push([path, aside]),
  });
  keeper.state.watch(({ kind }) => {
    if (kind !== 'saved' && kind !== 'waiting') return;
    for (const text of made) descent.promised.add(text);
  });
  await keeper.adopt();
  return {
    number,
    keeper,
    files,
    asides,
    change: (edits) => {
      for (const [path, text] of edits) {
        noteDescent(descent, files.get(path), text);
        if (text !== undefined) made.add(text);
      }
      const asFiles = new Map(
        [...edits].map(([path, text]) => [path, text === undefined ? text : textFile(text)]),
      );
      takeOver(files, asFiles);
      keeper.keep(asFiles);
    },
    kill: () => {
      world.turns.end(number);
      world.listeners.delete(number);
      world.gone.add(number);
    },
  };
}

function takeOver(files: Map<string, string>, edits: ReadonlyMap<string, JobFile | undefined>): void {
  for (const [path, file] of edits) {
    const text = textOf(file);
    if (text === undefined) files.delete(path);
    else files.set(path, text);
  }
}

function noteDescent(
  { madeFrom, takenAway }: Descent,
  from: string | undefined,
  text: string | undefined,
): void {
  if (from === undefined) return;
  if (text === undefined) takenAway.add(from);
  else madeFrom.set(text, new Set([...(madeFrom.get(text) ?? []), from]));
}

/** Promised contents that are neither there, nor was anything that is there made from them, nor did a person take them away. */
export function lostOf(
  world: World,
  { madeFrom, takenAway, promised }: Descent,
  where: 'anywhere' | 'store',
): string[] {
  const there = [...world.stored.values()].map(({ text }) => text);
  if (where === 'anywhere')
    for (const { change } of world.journal.values()) there.push(textOf(change.file) ?? '');
  const accounted = new Set<string>();
  const open = [...there, ...takenAway];
  for (let text = open.pop(); text !== undefined; text = open.pop()) {
    if (accounted.has(text)) continue;
    accounted.add(text);
    open.push(...(madeFrom.get(text) ?? []));
  }
  return [...promised].filter((text) => !accounted.has(text));
}
