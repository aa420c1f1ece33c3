import type { Random } from '../number/random.js';
import {
  COMPRESS_LEAST,
  COMPRESS_MOST,
  COMPRESS_SHARE,
  INSERTS_BEFORE_EXPLORING,
  MOST_IN_POOL,
  SQUEEZE_FIRST,
  SMALL_ATTEMPTS,
  SMALL_ROUNDS,
  SQUEEZE_LEAST,
  SQUEEZE_SOON,
  SWAPS_BEFORE_COMPRESSING,
} from './constants.js';
import type { ContactShapes } from './exact-contacts.js';
import { settleSheets } from './exact-contacts.js';
import { movePiece } from './move.js';
import { separate } from './separate.js';
import type { SeparateEffort } from './separate.js';
import { reachOf, reachesIn, squeezeSheet } from './squeeze.js';
import { areaUpTo, limitForArea } from './used-length.js';
import type { Snapshot, World } from './world.js';
import {
  moveTo,
  put,
  refreshAll,
  restoreSnapshot,
  setEase,
  snapshotOf,
  totalSeverity,
  withinU,
  withinV,
} from './world.js';
import type { Scene } from './world-of-layout.js';

/** A state of the world that is not free of overlaps, and how bad it is. */
interface Draft {
  readonly snapshot: Snapshot;
  readonly severity: number;
}

/** Pieces that are laid together or not at all, and what it counts to lay them. */
export interface Unit {
  readonly pieces: readonly number[];
  readonly worth: number;
}

/** A layout in which nothing meets. What is missing counts first, then opened sheets, then the area used up, about. */
export interface Find {
  readonly snapshot: Snapshot;
  readonly missing: number;
  /** Sheets on which something lies. */
  readonly opened: number;
  readonly areaMm2: number;
}

/** The search for layouts that hold more and use less: lays what is missing, explores and compresses, for ever. */
export interface Hunt {
  readonly scene: Scene;
  readonly world: World;
  readonly random: Random;
  readonly contacts: ContactShapes | undefined;
  readonly units: readonly Unit[];
  best: Find;
  /** Counts the layouts that were better than all before. */
  found: number;
  /** By sheet: the share of its used area that the next squeeze takes off. */
  readonly step: Float64Array;
  pool: Draft[];
  /** The sheet whose squeeze the pool is about. */
  squeezed: number;
  swapsInVain: number;
  insertsInVain: number;
  /** Work spent on each way. */
  inserted: number;
  explored: number;
  compressed: number;
}

/** From a world in which nothing meets. */
export function startHunt(
  scene: Scene,
  world: World,
  contacts: ContactShapes | undefined,
  units: readonly Unit[],
): Hunt {
  tightenLimits(world);
  return {
    scene,
    world,
    random: world.random,
    contacts,
    units,
    best: findOf(world, units),
    found: 0,
    step: new Float64Array(world.sheets.length).fill(SQUEEZE_FIRST),
    pool: [],
    squeezed: 0,
    swapsInVain: 0,
    insertsInVain: 0,
    inserted: 0,
    explored: 0,
    compressed: 0,
  };
}

function findOf(world: World, units: readonly Unit[]): Find {
  const snapshot = snapshotOf(world);
  const missing = missingIn(world.sheetOf, units);
  return { snapshot, missing, opened: openedIn(snapshot), areaMm2: usedArea(world) };
}

function openedIn({ sheetOf }: Snapshot): number {
  return new Set(sheetOf.filter((s) => s >= 0)).size;
}

function missingIn(sheetOf: Int32Array, units: readonly Unit[]): number {
  let missing = 0;
  for (const { pieces, worth } of units) if (isMissing(sheetOf, pieces)) missing += worth;
  return missing;
}

/** A snapshot in which nothing meets, with its limits drawn in. */
export function findIn({ world, units }: Hunt, snapshot: Snapshot): Find {
  const limits = reachesIn(world, snapshot);
  const drawnIn = { ...snapshot, limits };
  const areaMm2 = world.sheets.reduce((sum, sheet, s) => sum + areaUpTo(sheet, limits[s]!), 0);
  return {
    snapshot: drawnIn,
    missing: missingIn(snapshot.sheetOf, units),
    opened: openedIn(snapshot),
    areaMm2,
  };
}

function isMissing(sheetOf: Int32Array, pieces: readonly number[]): boolean {
  return pieces.some((i) => sheetOf[i]! < 0);
}

export function isBetterFind(a: Find, b: Find): boolean {
  if (a.missing !== b.missing) return a.missing < b.missing;
  return a.opened !== b.opened ? a.opened < b.opened : a.areaMm2 < b.areaMm2;
}

/**
 * Takes over another layout in which nothing meets, as found elsewhere: the next attempts start from it. The one
 * under way goes on, for it may be after still less.
 */
export function adopt(hunt: Hunt, find: Find): void {
  hunt.best = find;
  hunt.pool = [];
  hunt.swapsInVain = 0;
  hunt.insertsInVain = 0;
}

/** Yields after each small unit of work; never ends. */
export function* pursue(hunt: Hunt): Generator<undefined, never> {
  const { world } = hunt;
  for (;;) {
    const before = world.work;
    if (wantsInserting(hunt)) {
      yield* insert(hunt);
      hunt.inserted += world.work - before;
    } else if (wantsCompressing(hunt)) {
      yield* compress(hunt);
      hunt.compressed += world.work - before;
    } else {
      if (hunt.pool.length === 0) yield* squeeze(hunt);
      else yield* swap(hunt);
      hunt.explored += world.work - before;
    }
    yield;
  }
}

function wantsInserting({ best, insertsInVain, inserted, explored, compressed }: Hunt): boolean {
  if (best.missing === 0) return false;
  return insertsInVain < INSERTS_BEFORE_EXPLORING || inserted <= explored + compressed;
}

function wantsCompressing({ swapsInVain, compressed, explored }: Hunt): boolean {
  return swapsInVain >= SWAPS_BEFORE_COMPRESSING && compressed < COMPRESS_SHARE * (explored + compressed);
}

/** Tries to lay one of the units that are missing, anywhere on the sheets, where all else makes room. */
function* insert(hunt: Hunt): Generator<undefined, void> {
  const { world, random, units } = hunt;
  startFromBest(hunt);
  const open = units.filter(({ pieces }) => isMissing(world.sheetOf, pieces));
  for (const sheet of world.sheets) sheet.limit = sheet.maxU;
  for (const i of chosen(open, random).pieces) {
    if (world.sheetOf[i]! < 0 && !movePiece(world, i)) break;
    yield;
  }
  if (yield* tryToSeparate(hunt, INSERTING)) hunt.insertsInVain = 0;
  else hunt.insertsInVain++;
}

/** By worth for the most part, now and then any. */
function chosen(open: readonly Unit[], random: Random): Unit {
  const any = open[random.integer(open.length)]!;
  if (random.next() < ANY_UNIT_SHARE) return any;
  const most = Math.max(...open.map(({ worth }) => worth));
  const best = open.filter(({ worth }) => worth === most);
  return best[random.integer(best.length)]!;
}

const ANY_UNIT_SHARE = 0.3;

const LARGE_STEP: SeparateEffort = { attempts: 2, rounds: 60 };
const SMALL_STEP: SeparateEffort = { attempts: SMALL_ATTEMPTS, rounds: SMALL_ROUNDS };
const COMPRESSING: SeparateEffort = { attempts: 5, rounds: 100 };
const INSERTING: SeparateEffort = { attempts: 2, rounds: 100 };

/** A step from the best layout: a large one while such steps succeed. */
function* squeeze(hunt: Hunt): Generator<undefined, void> {
  startFromBest(hunt);
  const s = chooseSheet(hunt);
  if (s < 0) return;
  const step = nextStep(hunt, s);
  squeezeBy(hunt, s, step);
  const isLarge = step > SQUEEZE_LEAST;
  if (yield* tryToSeparate(hunt, isLarge ? LARGE_STEP : SMALL_STEP)) return;
  hunt.step[s] = Math.max(SQUEEZE_LEAST, step / 2);
  if (isLarge) return;
  hunt.squeezed = s;
  keepDraft(hunt);
}

/** On hides the first step is a small one: something better than the first layout is wanted soon. */
function nextStep({ step, found, contacts }: Hunt, s: number): number {
  return found === 0 && contacts === undefined ? Math.min(SQUEEZE_SOON, step[s]!) : step[s]!;
}

/** Another draft: one of those kept, the better ones more often, with two large pieces exchanged. */
function* swap(hunt: Hunt): Generator<undefined, void> {
  const { world, random, pool } = hunt;
  setEase(world, 0);
  const draw = Math.abs((random.next() + random.next() + random.next() - 1.5) / 1.5);
  restoreSnapshot(world, pool[Math.min(pool.length - 1, Math.floor(draw * pool.length))]!.snapshot);
  exchangeTwo(world, random);
  if (yield* tryToSeparate(hunt, SMALL_STEP)) return;
  hunt.swapsInVain++;
  keepDraft(hunt);
  // Other sheets have their turn.
  if (hunt.swapsInVain % SWAPS_A_SHEET === 0 && usedSheets(world).length > 1) hunt.pool = [];
}

/** Swaps that one sheet's squeeze is worth where there are several. */
const SWAPS_A_SHEET = 4;

/** A small step from the best layout, which leaves everything about where it is. */
function* compress(hunt: Hunt): Generator<undefined, void> {
  startFromBest(hunt);
  const s = chooseSheet(hunt);
  if (s < 0) return;
  const share = hunt.random.next();
  squeezeBy(hunt, s, COMPRESS_LEAST + (COMPRESS_MOST - COMPRESS_LEAST) * share * share);
  yield* tryToSeparate(hunt, COMPRESSING);
}

function startFromBest({ world, best }: Hunt): void {
  setEase(world, 0);
  restoreSnapshot(world, best.snapshot);
}

function keepDraft({ world, pool }: Hunt): void {
  pool.push({ snapshot: snapshotOf(world), severity: totalSeverity(world) });
  pool.sort((a, b) => a.severity - b.severity);
  if (pool.length > MOST_IN_POOL) pool.pop();
}

/** Separates; at the loosest ease first, then in truth. True if a better layout came of it, which is then the best. */
function* tryToSeparate(hunt: Hunt, effort: SeparateEffort): Generator<undefined, boolean> {
  const { scene, world, contacts } = hunt;
  if (!(yield* separate(world, effort))) return false;
  if (contacts !== undefined) {
    const isSettled = settleSheets(scene, world, contacts, (s) => farthestOf(hunt, s));
    yield;
    if (!isSettled && !(yield* separate(world, TIGHTENING))) {
      setEase(world, 0);
      return false;
    }
  }
  return accept(hunt);
}

/** What a layout gets that could not be settled: what meets in truth is little, or can't be helped. */
const TIGHTENING: SeparateEffort = { attempts: 1, rounds: 50 };

/** While pieces are missing, they may lie anywhere; else nothing may reach beyond where it reached before. */
function farthestOf({ world, best }: Hunt, sheet: number): number {
  const { limit, maxU } = world.sheets[sheet]!;
  return best.missing > 0 || limit > best.snapshot.limits[sheet]! ? maxU : best.snapshot.limits[sheet]!;
}

/** Takes the world as the best layout if it is better than that. */
function accept(hunt: Hunt): boolean {
  const { world } = hunt;
  tightenLimits(world);
  const find = findOf(world, hunt.units);
  const isBetter = isBetterFind(find, hunt.best);
  if (isBetter) {
    hunt.best = find;
    hunt.found++;
    hunt.pool = [];
    hunt.swapsInVain = 0;
  }
  setEase(world, 0);
  return isBetter;
}

/** Every sheet's limit at what lies farthest on it. */
function tightenLimits(world: World): void {
  world.sheets.forEach((sheet, s) => {
    sheet.limit = Math.min(sheet.maxU, reachOf(world, s));
  });
}

function usedArea(world: World): number {
  let sum = 0;
  for (const sheet of world.sheets) sum += areaUpTo(sheet, sheet.limit);
  return sum;
}

/** Takes a share of its used area from a sheet. */
function squeezeBy(hunt: Hunt, s: number, share: number): void {
  const { world, random } = hunt;
  const sheet = world.sheets[s]!;
  const area = (1 - share) * areaUpTo(sheet, sheet.limit);
  const target = Math.min(sheet.limit - LEAST_SQUEEZE_MM, limitForArea(sheet, area));
  const by = sheet.limit - Math.max(sheet.minU, target);
  squeezeSheet(world, s, by, sheet.minU + random.next() * (sheet.limit - sheet.minU));
  refreshAll(world);
}

/** A sheet to be squeezed: of those that some piece may lie on mostly the last one that is used; -1 if none can be. */
function chooseSheet({ world, random }: Hunt): number {
  const used = usedSheets(world);
  if (used.length < 2) return used[0] ?? -1;
  if (random.next() < ANY_SHEET_SHARE) return used[random.integer(used.length)]!;
  const free: number[] = [];
  for (let i = 0; i < world.count; i++) if (world.sheetOf[i]! >= 0 && world.isFixed[i] === 0) free.push(i);
  const own = world.mayLie[free[random.integer(free.length)]!]!.filter((s) => used.includes(s));
  return own[own.length - 1] ?? used[used.length - 1]!;
}

/** Sheets on which something lies that may move. */
function usedSheets(world: World): number[] {
  return world.sheets.flatMap((_, s) => (hasFreePiece(world, s) ? [s] : []));
}

const ANY_SHEET_SHARE = 0.3;
const LEAST_SQUEEZE_MM = 0.002;

function hasFreePiece(world: World, sheet: number): boolean {
  for (let i = 0; i < world.count; i++) if (world.sheetOf[i] === sheet && world.isFixed[i] === 0) return true;
  return false;
}

/** Of the pieces that are hardest to move, this share, but no fewer than so many, may be exchanged. */
const LARGE_SHARE = 0.4;
const LEAST_LARGE = 4;
const TRIES = 20;

/** Exchanges two large pieces of different kinds, as they are turned. */
function exchangeTwo(world: World, random: Random): void {
  const free: number[] = [];
  for (let i = 0; i < world.count; i++) if (world.isFixed[i] === 0 && world.sheetOf[i]! >= 0) free.push(i);
  if (free.length < 2) return;
  free.sort((a, b) => world.turned[b]!.shape.lambda - world.turned[a]!.shape.lambda || a - b);
  const large = free.slice(0, Math.max(LEAST_LARGE, Math.floor(LARGE_SHARE * free.length)));
  const a = large[random.integer(large.length)]!;
  for (let k = 0; k < TRIES; k++) {
    const b = large[random.integer(large.length)]!;
    if (world.kindOf[a] === world.kindOf[b]) continue;
    if (!world.mayLie[a]!.includes(world.sheetOf[b]!) || !world.mayLie[b]!.includes(world.sheetOf[a]!))
      continue;
    exchange(world, a, b);
    break;
  }
  refreshAll(world);
}

function exchange(world: World, a: number, b: number): void {
  const [sheetA, xA, yA] = [world.sheetOf[a]!, world.x[a]!, world.y[a]!];
  moveNear(world, a, world.sheetOf[b]!, world.x[b]!, world.y[b]!);
  moveNear(world, b, sheetA, xA, yA);
}

function moveNear(world: World, i: number, s: number, x: number, y: number): void {
  const sheet = world.sheets[s]!;
  if (world.sheetOf[i] !== s) put(world, i, s, world.turned[i]!.deg, x, y);
  const turned = world.turned[i]!;
  moveTo(world, i, withinU(sheet, turned, x), withinV(sheet, turned, y));
}
