import { roundDeg } from '../nest/angle.js';
import {
  APART_SHARE,
  FINE_STEP_SHARE,
  FIRST_STEP_SHARE,
  FIRST_TURN_DEG,
  KEPT_SAMPLES,
  LAST_STEP_SHARE,
  LAST_TURN_DEG,
  NEAR_SHARE,
  NEAR_TURN_DEG,
  ROUGH_STEP_SHARE,
  SAMPLES_ANYWHERE,
  SAMPLES_NEAR,
} from './constants.js';
import { drawOnGround } from './ground.js';
import type { Turned } from './turned.js';
import type { World } from './world.js';
import {
  costAt,
  fitsBox,
  giveSpare,
  listedTurns,
  put,
  refresh,
  shapeNow,
  takeSpare,
  turnFor,
  withinU,
  withinV,
} from './world.js';

/** A place that was looked at. Its turned shape is its own, or shared where the kind's angles are listed. */
interface Candidate {
  cost: number;
  sheet: number;
  x: number;
  y: number;
  turned: Turned;
}

/**
 * Moves one piece to the best place found for it: places anywhere and nearby are drawn, the best that are apart are
 * refined step by step, the angle as one more coordinate. Returns false if it stays.
 */
export function movePiece(world: World, i: number): boolean {
  const kept: Candidate[] = [];
  const stay = presentOf(world, i);
  if (stay !== undefined) keep(world, i, kept, stay);
  for (let k = 0; k < SAMPLES_ANYWHERE; k++) consider(world, i, kept, drawAnywhere(world, i));
  if (stay !== undefined) {
    for (let k = 0; k < SAMPLES_NEAR; k++) consider(world, i, kept, drawNear(world, i));
  }
  if (kept.length === 0) return false;
  for (const candidate of kept) refine(world, i, candidate, FIRST_STEP_SHARE, ROUGH_STEP_SHARE);
  let best = kept[0]!;
  for (const candidate of kept) if (candidate.cost < best.cost) best = candidate;
  refine(world, i, best, FINE_STEP_SHARE, LAST_STEP_SHARE);
  const moved =
    best.sheet !== world.sheetOf[i] ||
    best.x !== world.x[i] ||
    best.y !== world.y[i] ||
    best.turned.deg !== world.turned[i]!.deg;
  if (moved) {
    put(world, i, best.sheet, best.turned.deg, best.x, best.y);
    refresh(world, i);
  }
  for (const candidate of kept) release(world, i, candidate.turned);
  return moved;
}

function isListed(world: World, i: number): boolean {
  return world.kinds[world.kindOf[i]!]!.angles.listDeg !== undefined;
}

function release(world: World, i: number, turned: Turned): void {
  if (!isListed(world, i)) giveSpare(world, turned);
}

/** The shape turned to an angle, to be released again. */
function turnedTo(world: World, i: number, sheet: number, deg: number): Turned {
  const spare = takeSpare(world, shapeNow(world, world.kindOf[i]!));
  turnFor(spare, roundDeg(deg), world.sheets[sheet]!.frame);
  return spare;
}

function presentOf(world: World, i: number): Candidate | undefined {
  const sheet = world.sheetOf[i]!;
  if (sheet < 0) return undefined;
  const x = world.x[i]!;
  const y = world.y[i]!;
  const own = world.turned[i]!;
  const turned = isListed(world, i) ? own : turnedTo(world, i, sheet, own.deg);
  if (!fitsBox(world.sheets[sheet]!, turned)) {
    release(world, i, turned);
    return undefined;
  }
  const cost = costAt(world, i, sheet, turned, x, y, Infinity);
  // A quick look may miss what the proof found.
  const proven = world.ruleSeverity[i]! * world.ruleWeight[i]!;
  return { cost: Math.max(cost, proven), sheet, x, y, turned };
}

function drawAnywhere(world: World, i: number): Candidate | undefined {
  const { random } = world;
  const sheets = world.mayLie[i]!;
  if (sheets.length === 0) return undefined;
  const s = sheets.length === 1 ? sheets[0]! : drawSheet(world, sheets);
  const sheet = world.sheets[s]!;
  const turnedFirst = isListed(world, i) ? drawListed(world, i, s) : undefined;
  const { bodies } = shapeNow(world, world.kindOf[i]!);
  const ground = bodies.length > 0 ? sheet.grounds[bodies[0]!.ground] : undefined;
  let x: number;
  let y: number;
  if (ground !== undefined) {
    const cell = drawOnGround(ground, random, sheet.limit);
    if (cell < 0) return undefined;
    x = ground.cellU[cell]! + (random.next() - 0.5) * ground.pitch;
    y = ground.cellV[cell]! + (random.next() - 0.5) * ground.pitch;
  } else {
    x = sheet.minU + random.next() * (sheet.limit - sheet.minU);
    y = sheet.minV + random.next() * (sheet.maxV - sheet.minV);
  }
  const turned = turnedFirst ?? drawTurned(world, i, s, x, y);
  if (turned === undefined) return undefined;
  if (!fitsBox(sheet, turned)) {
    release(world, i, turned);
    return undefined;
  }
  if (ground === undefined) {
    // Spread over the places that the turned shape has, so that the sides get their share.
    x = spread(sheet.minU - turned.outline.minX, sheet.limit - turned.outline.maxX, random.next());
    y = spread(sheet.minV - turned.outline.minY, sheet.maxV - turned.outline.maxY, random.next());
  } else {
    x = withinU(sheet, turned, x);
    y = withinV(sheet, turned, y);
  }
  return { cost: Infinity, sheet: s, x, y, turned };
}

function spread(least: number, most: number, share: number): number {
  return least + share * (most - least);
}

/** Sheets by the length that may be used. */
function drawSheet(world: World, sheets: readonly number[]): number {
  let sum = 0;
  for (const s of sheets) sum += Math.max(0, world.sheets[s]!.limit - world.sheets[s]!.minU);
  let draw = world.random.next() * sum;
  for (const s of sheets) {
    draw -= Math.max(0, world.sheets[s]!.limit - world.sheets[s]!.minU);
    if (draw < 0) return s;
  }
  return sheets[0]!;
}

function drawListed(world: World, i: number, sheet: number): Turned {
  const turns = listedTurns(world, world.kindOf[i]!, sheet);
  return turns.length === 1 ? turns[0]! : turns[world.random.integer(turns.length)]!;
}

function drawTurned(world: World, i: number, sheet: number, x: number, y: number): Turned | undefined {
  const deg = world.kinds[world.kindOf[i]!]!.angles.draw(world.random, sheet, x, y);
  return Number.isNaN(deg) ? undefined : turnedTo(world, i, sheet, deg);
}

/** Share of nearby samples that keep a listed angle. */
const KEEP_ANGLE = 0.7;

function drawNear(world: World, i: number): Candidate | undefined {
  const { random } = world;
  const s = world.sheetOf[i]!;
  const sheet = world.sheets[s]!;
  const present = world.turned[i]!;
  const reach = NEAR_SHARE * present.shape.diameter;
  const x = world.x[i]! + (2 * random.next() - 1) * reach;
  const y = world.y[i]! + (2 * random.next() - 1) * reach;
  let turned: Turned;
  if (isListed(world, i)) {
    turned = random.next() < KEEP_ANGLE ? present : drawListed(world, i, s);
  } else {
    const wish = present.deg + (2 * random.next() - 1) * NEAR_TURN_DEG;
    const deg = world.kinds[world.kindOf[i]!]!.angles.nearest(wish, s, x, y);
    if (Number.isNaN(deg)) return undefined;
    turned = turnedTo(world, i, s, deg);
  }
  if (!fitsBox(sheet, turned)) {
    release(world, i, turned);
    return undefined;
  }
  return { cost: Infinity, sheet: s, x: withinU(sheet, turned, x), y: withinV(sheet, turned, y), turned };
}

function consider(world: World, i: number, kept: Candidate[], drawn: Candidate | undefined): void {
  if (drawn === undefined) return;
  const limit = kept.length < KEPT_SAMPLES ? Infinity : kept[kept.length - 1]!.cost;
  drawn.cost = costAt(world, i, drawn.sheet, drawn.turned, drawn.x, drawn.y, limit);
  if (drawn.cost < limit) keep(world, i, kept, drawn);
  else release(world, i, drawn.turned);
}

/** Puts a candidate among the kept ones, which are sorted; of two that are near each other the better one stays. */
function keep(world: World, i: number, kept: Candidate[], one: Candidate): void {
  const apart = APART_SHARE * one.turned.shape.diameter;
  for (let k = 0; k < kept.length; k++) {
    const other = kept[k]!;
    const isNear =
      other.sheet === one.sheet &&
      Math.abs(other.x - one.x) + Math.abs(other.y - one.y) < apart &&
      Math.abs(other.turned.deg - one.turned.deg) < FIRST_TURN_DEG;
    if (!isNear) continue;
    if (one.cost >= other.cost) {
      release(world, i, one.turned);
      return;
    }
    kept.splice(k, 1);
    release(world, i, other.turned);
    break;
  }
  let at = kept.length;
  while (at > 0 && kept[at - 1]!.cost > one.cost) at--;
  kept.splice(at, 0, one);
  if (kept.length > KEPT_SAMPLES) release(world, i, kept.pop()!.turned);
}

const ALONG_U = 0;
const ALONG_V = 1;
const SLANTED = 2;
const TURN = 3;

/** Growth and shrinking of a step that led on, or did not. */
const STEP_GROWS = 1.1;
const STEP_SHRINKS = 0.5;
const SLANT_SHRINKS = 0.7;

/**
 * Walks downhill from a candidate in steps along random axes that grow with success and shrink without, until they are
 * small. First and last step are shares of the piece's diameter.
 */
function refine(world: World, i: number, one: Candidate, from: number, to: number): void {
  if (one.cost === 0) return;
  const { random } = world;
  const sheet = world.sheets[one.sheet]!;
  const { diameter } = one.turned.shape;
  const least = to * diameter;
  const canTurn = !isListed(world, i);
  let stepU = from * diameter;
  let stepV = stepU;
  let stepDeg = canTurn ? (FIRST_TURN_DEG * from) / FIRST_STEP_SHARE : 0;
  while ((stepU > least || stepV > least) && one.cost > 0) {
    const axis = random.integer(canTurn ? 4 : 3);
    if (axis === TURN) {
      if (stepDeg > (LAST_TURN_DEG * to) / LAST_STEP_SHARE)
        stepDeg *= turnStep(world, i, one, stepDeg) ? STEP_GROWS : STEP_SHRINKS;
      continue;
    }
    const sign = random.next() < 0.5 ? 1 : -1;
    const du = axis === ALONG_V ? 0 : axis === SLANTED ? SLANT_SHRINKS * stepU : stepU;
    const dv = axis === ALONG_U ? 0 : axis === SLANTED ? SLANT_SHRINKS * stepV : stepV;
    const slant = axis === SLANTED && random.next() < 0.5 ? -1 : 1;
    const better =
      step(world, i, one, sheet, sign * du, sign * slant * dv) ||
      step(world, i, one, sheet, -sign * du, -sign * slant * dv);
    if (axis === ALONG_U) stepU *= better ? STEP_GROWS : STEP_SHRINKS;
    else if (axis === ALONG_V) stepV *= better ? STEP_GROWS : STEP_SHRINKS;
    else {
      stepU *= better ? STEP_GROWS : SLANT_SHRINKS;
      stepV *= better ? STEP_GROWS : SLANT_SHRINKS;
    }
  }
}

function step(
  world: World,
  i: number,
  one: Candidate,
  sheet: World['sheets'][number],
  du: number,
  dv: number,
): boolean {
  const x = withinU(sheet, one.turned, one.x + du);
  const y = withinV(sheet, one.turned, one.y + dv);
  if (x === one.x && y === one.y) return false;
  const cost = costAt(world, i, one.sheet, one.turned, x, y, one.cost);
  if (cost >= one.cost) return false;
  one.cost = cost;
  one.x = x;
  one.y = y;
  return true;
}

function turnStep(world: World, i: number, one: Candidate, stepDeg: number): boolean {
  const sheet = world.sheets[one.sheet]!;
  const { angles } = world.kinds[world.kindOf[i]!]!;
  for (const turn of [stepDeg, -stepDeg]) {
    const deg = angles.nearest(one.turned.deg + turn, one.sheet, one.x, one.y);
    if (Number.isNaN(deg) || roundDeg(deg) === one.turned.deg) continue;
    const turned = turnedTo(world, i, one.sheet, deg);
    if (fitsBox(sheet, turned)) {
      const x = withinU(sheet, turned, one.x);
      const y = withinV(sheet, turned, one.y);
      const cost = costAt(world, i, one.sheet, turned, x, y, one.cost);
      if (cost < one.cost) {
        giveSpare(world, one.turned);
        Object.assign(one, { cost, x, y, turned });
        return true;
      }
    }
    giveSpare(world, turned);
  }
  return false;
}
