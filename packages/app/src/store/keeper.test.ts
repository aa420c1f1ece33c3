import { createRandom } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { createKeeper } from './keeper.js';
import type { Keeper } from './keeper.js';
import type { SaveOutcome, StoreWrite } from './job-store.js';
import { createDescent, openTab } from './test-tab.js';
import type { TestTab } from './test-tab.js';
import { NO_FAULTS, createWorld, deskOf, journalOf, storeOf, textFile, writeOutside } from './test-world.js';
import type { World } from './test-world.js';

const HIDE = 'side.hide.json';
const ORDER = 'bags.order.yaml';

function worldWith(...paths: readonly string[]): World {
  const world = createWorld(createRandom(5));
  for (const path of paths) writeOutside(world, path, `first of ${path}`);
  return world;
}

async function run<T>(world: World, promise: Promise<T>): Promise<T> {
  let isDone = false;
  const done = promise.finally(() => (isDone = true));
  while (!isDone && (await world.turns.step()));
  return done;
}

async function calm(world: World): Promise<void> {
  while (await world.turns.step());
}

function open(world: World, number: number): Promise<TestTab> {
  return run(world, openTab(world, number, createDescent()));
}

/** A keeper over a store whose saves are noted and answered as told; tries again only when it is asked to. */
function keeperOver(
  world: World,
  answer: (writes: readonly StoreWrite[]) => SaveOutcome | undefined,
): { readonly keeper: Keeper; readonly saves: (readonly string[])[] } {
  const saves: (readonly string[])[] = [];
  const store = storeOf(world, 1);
  const keeper = createKeeper({
    store: {
      ...store,
      save: (writes) => {
        saves.push(writes.map(({ path }) => path));
        const outcome = answer(writes);
        return outcome === undefined ? store.save(writes) : Promise.resolve(outcome);
      },
    },
    journal: journalOf(world, 1),
    desk: deskOf(world, 1),
    revisions: new Map([...world.stored].map(([path, { revision }]) => [path, revision])),
    pause: (_, signal) => new Promise((done) => signal.addEventListener('abort', () => done())),
  });
  return { keeper, saves };
}

describe('what the keeper does with a change', () => {
  it('when all goes well, it is in the journal first, then in the store, then off the journal', async () => {
    const world = worldWith(HIDE);
    const { keeper } = keeperOver(world, () => {
      expect([...world.journal.values()].map(({ change }) => change.path)).toEqual([HIDE]);
      return undefined;
    });
    keeper.keep(new Map([[HIDE, textFile('new')]]));
    expect(keeper.state.get()).toEqual({ kind: 'saving' });
    await run(world, keeper.idle());
    expect(keeper.state.get()).toEqual({ kind: 'saved' });
    expect(world.stored.get(HIDE)!.text).toBe('new');
    expect(world.journal.size).toBe(0);
  });

  it('when files change in one step, they are saved together, and many changes of a file as one', async () => {
    const world = worldWith(HIDE, ORDER);
    const { keeper, saves } = keeperOver(world, () => undefined);
    keeper.keep(new Map([[HIDE, textFile('1')]]));
    keeper.keep(new Map([HIDE, ORDER].map((path) => [path, textFile('2')])));
    keeper.keep(new Map([[HIDE, textFile('3')]]));
    await run(world, keeper.idle());
    expect(saves.map((paths) => [...paths].sort())).toEqual([[ORDER, HIDE]]);
    expect(world.stored.get(HIDE)!.text).toBe('3');
  });

  it('when the store is out of reach, it waits in the journal until it is tried again', async () => {
    const world = worldWith(HIDE);
    let isThere = false;
    const { keeper } = keeperOver(world, () =>
      isThere ? undefined : { kind: 'failed', reason: 'out of reach' },
    );
    keeper.keep(new Map([[HIDE, textFile('new')]]));
    await run(world, keeper.idle());
    expect(keeper.state.get()).toEqual({ kind: 'waiting', reason: 'out of reach' });
    expect(world.journal.size).toBe(1);
    isThere = true;
    keeper.retry();
    await calm(world);
    expect(keeper.state.get()).toEqual({ kind: 'saved' });
    expect(world.stored.get(HIDE)!.text).toBe('new');
  });

  it('when there is room neither in the store nor in the journal, it is told that it is not safe', async () => {
    const world = worldWith(HIDE);
    world.faults = { ...NO_FAULTS, journalNoRoom: 1 };
    const { keeper } = keeperOver(world, () => ({ kind: 'failed', reason: 'no room' }));
    keeper.keep(new Map([[HIDE, textFile('new')]]));
    await run(world, keeper.idle());
    expect(keeper.state.get()).toEqual({ kind: 'unsafe', reason: 'no room' });
    world.faults = NO_FAULTS;
    keeper.retry();
    await calm(world);
    expect(keeper.state.get()).toEqual({ kind: 'waiting', reason: 'no room' });
  });

  it('when one file is too large, the others are saved', async () => {
    const world = worldWith(HIDE, ORDER);
    const { keeper } = keeperOver(world, (writes) =>
      writes.some(({ path }) => path === HIDE) ? { kind: 'failed', reason: 'too large' } : undefined,
    );
    keeper.keep(new Map([HIDE, ORDER].map((path) => [path, textFile('new')])));
    await run(world, keeper.idle());
    expect(world.stored.get(ORDER)!.text).toBe('new');
    expect(world.stored.get(HIDE)!.text).toBe(`first of ${HIDE}`);
    expect(keeper.state.get()).toEqual({ kind: 'waiting', reason: 'too large' });
  });

  it('when the store has it and only the answer got lost, nothing goes aside', async () => {
    const world = worldWith(HIDE);
    const tab = await open(world, 1);
    world.faults = { ...NO_FAULTS, answerLost: 1 };
    tab.change(new Map([[HIDE, 'one']]));
    for (let step = 0; step < 40; step++) {
      // Later changes while it is not known what became of the earlier ones.
      if (step === 10) tab.change(new Map([[HIDE, 'two']]));
      if (step === 20) tab.change(new Map([[HIDE, 'three']]));
      await world.turns.step();
    }
    world.faults = NO_FAULTS;
    await calm(world);
    expect([...world.stored].map(([path, { text }]) => [path, text])).toEqual([[HIDE, 'three']]);
    expect(tab.asides).toEqual([]);
    expect(tab.keeper.state.get()).toEqual({ kind: 'saved' });
  });
});

describe('two who change the same file', () => {
  it('when another program was quicker, its version keeps the name and the own one lies beside it', async () => {
    const world = worldWith(HIDE, 'side-mine.hide.json');
    const tab = await open(world, 1);
    writeOutside(world, HIDE, 'theirs');
    tab.change(new Map([[HIDE, 'mine']]));
    await calm(world);
    expect(tab.asides).toEqual([[HIDE, 'side-mine-2.hide.json']]);
    expect(Object.fromEntries(tab.files)).toEqual({
      [HIDE]: 'theirs',
      'side-mine.hide.json': 'first of side-mine.hide.json',
      'side-mine-2.hide.json': 'mine',
    });
    expect(world.stored.get(HIDE)!.text).toBe('theirs');
    expect(world.stored.get('side-mine-2.hide.json')!.text).toBe('mine');
  });

  it('when another took the file away that was changed here, it comes back', async () => {
    const world = worldWith(HIDE);
    const tab = await open(world, 1);
    writeOutside(world, HIDE, undefined);
    tab.change(new Map([[HIDE, 'mine']]));
    await calm(world);
    expect(world.stored.get(HIDE)!.text).toBe('mine');
    expect(tab.files.get(HIDE)).toBe('mine');
  });

  it('when another changed the file that was taken away here, it stays', async () => {
    const world = worldWith(HIDE);
    const tab = await open(world, 1);
    writeOutside(world, HIDE, 'theirs');
    tab.change(new Map([[HIDE, undefined]]));
    await calm(world);
    expect(world.stored.get(HIDE)!.text).toBe('theirs');
    expect(tab.files.get(HIDE)).toBe('theirs');
  });

  it('when another tab saves, this one shows it', async () => {
    const world = worldWith(HIDE);
    const [one, other] = [await open(world, 1), await open(world, 2)];
    one.change(
      new Map([
        [HIDE, 'new'],
        [ORDER, 'added'],
      ]),
    );
    await calm(world);
    expect(Object.fromEntries(other.files)).toEqual({ [HIDE]: 'new', [ORDER]: 'added' });
  });
});

describe('what a tab leaves that is killed', () => {
  it('when it had not been saved, the next tab has it and saves it', async () => {
    const world = worldWith(HIDE);
    const tab = await open(world, 1);
    world.faults = { ...NO_FAULTS, lost: 1 };
    tab.change(new Map([[HIDE, 'new']]));
    for (let step = 0; step < 30; step++) await world.turns.step();
    expect(tab.keeper.state.get().kind).toBe('waiting');
    tab.kill();
    world.faults = NO_FAULTS;
    const next = await open(world, 2);
    expect(next.files.get(HIDE)).toBe('new');
    await calm(world);
    expect(world.stored.get(HIDE)!.text).toBe('new');
    expect(next.asides).toEqual([]);
    expect(world.journal.size).toBe(0);
  });

  it('when somebody changed the file meanwhile, it goes aside', async () => {
    const world = worldWith(HIDE);
    const tab = await open(world, 1);
    world.faults = { ...NO_FAULTS, lost: 1 };
    tab.change(new Map([[HIDE, 'new']]));
    for (let step = 0; step < 30; step++) await world.turns.step();
    tab.kill();
    world.faults = NO_FAULTS;
    writeOutside(world, HIDE, 'theirs');
    const next = await open(world, 2);
    await calm(world);
    expect(next.asides).toEqual([[HIDE, 'side-mine.hide.json']]);
    expect(world.stored.get(HIDE)!.text).toBe('theirs');
    expect(world.stored.get('side-mine.hide.json')!.text).toBe('new');
  });
});
