import { createRandom } from '@hidebound/geometry';
import type { Random } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { createDescent, lostOf, openTab } from './test-tab.js';
import type { Descent, TestTab } from './test-tab.js';
import { NO_FAULTS, createWorld, writeOutside } from './test-world.js';
import type { Faults, World } from './test-world.js';

const PATHS = ['side.hide.json', 'bags.order.yaml', 'bags.layout.json', 'workshop.yaml'];
const RUNS = 150;
const STEPS = 220;

interface Play {
  readonly world: World;
  readonly descent: Descent;
  readonly random: Random;
  readonly tabs: TestTab[];
  lastTab: number;
  lastText: number;
}

/** Tabs open, change, undo, take away, are killed; the store and the journal fail; in an order of chance. */
async function play(seed: number, faults: Faults): Promise<Play> {
  const random = createRandom(seed);
  const world = createWorld(random.fork(1));
  for (const path of PATHS) writeOutside(world, path, `first of ${path}`);
  const now: Play = { world, descent: createDescent(), random, tabs: [], lastTab: 0, lastText: 0 };
  await open(now);
  await open(now);
  world.faults = faults;
  for (let step = 0; step < STEPS; step++) {
    await act(now);
    await world.turns.step();
    expect(lostOf(world, now.descent, 'anywhere'), `seed ${seed}, step ${step}`).toEqual([]);
  }
  world.faults = NO_FAULTS;
  return now;
}

async function act(now: Play): Promise<void> {
  const { random, tabs, world } = now;
  const chance = random.next();
  while (tabs.length === 0) await open(now);
  const tab = tabs[random.integer(tabs.length)]!;
  if (chance < 0.2) tab.change(someEdits(now, tab));
  else if (chance < 0.22) tab.keeper.retry();
  else if (chance < 0.24) {
    tab.kill();
    tabs.splice(tabs.indexOf(tab), 1);
  } else if (chance < 0.26 && tabs.length < 3) await open(now);
  else if (chance < 0.27) void tab.keeper.adopt();
  else if (chance < 0.28) {
    // Another program, which had the file open as it is.
    const path = PATHS[random.integer(PATHS.length)]!;
    const text = `outside ${++now.lastText}`;
    const was = world.stored.get(path)?.text;
    if (was !== undefined) now.descent.madeFrom.set(text, new Set([was]));
    writeOutside(world, path, text);
  }
}

function someEdits(now: Play, tab: TestTab): ReadonlyMap<string, string | undefined> {
  const { random } = now;
  const edits = new Map<string, string | undefined>();
  const count = 1 + random.integer(2);
  for (let i = 0; i < count; i++) {
    const path = PATHS[random.integer(PATHS.length)]!;
    const chance = random.next();
    const earlier = [...(now.descent.madeFrom.get(tab.files.get(path) ?? '') ?? [])][0];
    if (chance < 0.05) edits.set(path, undefined);
    else if (chance < 0.15 && earlier !== undefined) edits.set(path, earlier);
    else edits.set(path, `tab ${tab.number}, change ${++now.lastText}`);
  }
  return edits;
}

async function open(now: Play): Promise<void> {
  const opening = openTab(now.world, ++now.lastTab, now.descent);
  let tab: TestTab | undefined;
  let isRefused = false;
  void opening.then(
    (opened) => (tab = opened),
    () => (isRefused = true),
  );
  while (tab === undefined && !isRefused && (await now.world.turns.step()));
  if (tab !== undefined) now.tabs.push(tab);
}

/** Until nothing is under way any more. */
async function calm({ world, tabs }: Play): Promise<void> {
  for (const { keeper } of tabs) keeper.look();
  while (await world.turns.step());
}

describe('several tabs over one store', () => {
  it.each([
    ['nothing fails', NO_FAULTS],
    ['the store is often out of reach', { ...NO_FAULTS, lost: 0.25, answerLost: 0.25 }],
    ['all kinds of things fail', { lost: 0.1, answerLost: 0.15, noRoom: 0.1, journalNoRoom: 0.1 }],
  ])('when %s, no content that was told to be kept is ever lost, whatever the order', async (_, faults) => {
    for (let seed = 1; seed <= RUNS; seed++) {
      const now = await play(seed, faults);
      await calm(now);
      for (const tab of [...now.tabs]) tab.kill();
      now.tabs.length = 0;
      await open(now);
      await calm(now);
      const [last] = now.tabs;
      expect(last!.keeper.state.get(), `seed ${seed}`).toEqual({ kind: 'saved' });
      expect([...now.world.journal], `seed ${seed}`).toEqual([]);
      expect(lostOf(now.world, now.descent, 'store'), `seed ${seed}`).toEqual([]);
      const stored = new Map([...now.world.stored].map(([path, { text }]) => [path, text]));
      expect(last!.files, `seed ${seed}`).toEqual(stored);
    }
  });
});
