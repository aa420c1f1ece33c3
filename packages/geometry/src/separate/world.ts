import type { Frame } from '../nest/frame.js';
import type { Random } from '../number/random.js';
import { sinCosDeg } from '../number/trigonometry.js';
import type { Ground } from './ground.js';
import { groundSeverity } from './ground.js';
import { overlapSeverity } from './overlap.js';
import type { SepShape } from './shape.js';
import type { Turned } from './turned.js';
import { createTurned, turnInto } from './turned.js';

/** A sheet in its search frame. Outlines keep within the box; `limit` moves as the sheet is squeezed. */
export interface SepSheet {
  readonly frame: Frame;
  readonly minU: number;
  readonly minV: number;
  readonly maxV: number;
  readonly maxU: number;
  /** Nothing may reach beyond; the freeing cut, or the strip's end. At most `maxU`. */
  limit: number;
  /** Nothing may lie on it anywhere. */
  readonly isEmpty: boolean;
  /** By ground index; undefined where the box says all. */
  readonly grounds: readonly (Ground | undefined)[];
}

/** At which angles copies of a kind may lie. */
export interface Angles {
  /** All of them, where they are few and the same everywhere. */
  readonly listDeg: readonly number[] | undefined;
  /** A rotation that may be right at a place; NaN if none is. */
  draw(random: Random, sheet: number, u: number, v: number): number;
  /** The nearest one that may be right at a place; NaN if none is. */
  nearest(deg: number, sheet: number, u: number, v: number): number;
}

/** What equal copies have in common. */
export interface Kind {
  /** One shape for each level of ease, the loosest first. */
  readonly shapes: readonly SepShape[];
  readonly angles: Angles;
  readonly group: number;
}

/** Rules that depend on the place: 0 if the piece may lie there, else how far off it is (1: a plain no). */
export interface Rules {
  /** Quick and a little too strict: for places that are looked at. */
  look(piece: number, sheet: number, turned: Turned, x: number, y: number): number;
  /** The proof, for places that are taken. */
  prove(piece: number, sheet: number, turned: Turned, x: number, y: number): number;
}

/** All pieces where they lie now, overlaps and all. Only this folder changes it. */
export interface World {
  readonly count: number;
  readonly kinds: readonly Kind[];
  readonly kindOf: Int32Array;
  readonly sheets: readonly SepSheet[];
  readonly mayLie: (readonly number[])[];
  readonly isFixed: Uint8Array;
  readonly groupOf: Int32Array;
  readonly random: Random;
  readonly rules: Rules | undefined;
  /** -1: lies nowhere. */
  readonly sheetOf: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly turned: Turned[];
  readonly minX: Float64Array;
  readonly minY: Float64Array;
  readonly maxX: Float64Array;
  readonly maxY: Float64Array;
  /** By pair, both ways round. */
  readonly weight: Float64Array;
  readonly severity: Float64Array;
  readonly groundWeight: Float64Array;
  readonly groundSeverity: Float64Array;
  readonly ruleWeight: Float64Array;
  readonly ruleSeverity: Float64Array;
  /** Turned shapes of kinds with a list of angles: by ease, kind and frame. */
  readonly listed: Map<string, Turned[]>;
  readonly spare: Map<SepShape, Turned[]>;
  ease: number;
  /** Work done: places looked at and pairs tested. */
  work: number;
}

export interface WorldParts {
  readonly kinds: readonly Kind[];
  readonly kindOf: readonly number[];
  readonly sheets: readonly SepSheet[];
  readonly mayLie: readonly (readonly number[])[];
  readonly isFixed: readonly boolean[];
  readonly random: Random;
  readonly rules?: Rules;
}

export function createWorld(parts: WorldParts): World {
  const n = parts.kindOf.length;
  const kindOf = Int32Array.from(parts.kindOf);
  return {
    count: n,
    kinds: parts.kinds,
    kindOf,
    sheets: parts.sheets,
    mayLie: [...parts.mayLie],
    isFixed: Uint8Array.from(parts.isFixed, Number),
    groupOf: Int32Array.from(parts.kindOf, (kind) => parts.kinds[kind]!.group),
    random: parts.random,
    rules: parts.rules,
    sheetOf: new Int32Array(n).fill(-1),
    x: new Float64Array(n),
    y: new Float64Array(n),
    turned: Array.from(kindOf, (kind) => createTurned(parts.kinds[kind]!.shapes[0]!)),
    minX: new Float64Array(n),
    minY: new Float64Array(n),
    maxX: new Float64Array(n),
    maxY: new Float64Array(n),
    weight: new Float64Array(n * n).fill(1),
    severity: new Float64Array(n * n),
    groundWeight: new Float64Array(n).fill(1),
    groundSeverity: new Float64Array(n),
    ruleWeight: new Float64Array(n).fill(1),
    ruleSeverity: new Float64Array(n),
    listed: new Map(),
    spare: new Map(),
    ease: 0,
    work: 0,
  };
}

/** The shape of a kind at the present ease. */
export function shapeNow(world: World, kind: number): SepShape {
  const { shapes } = world.kinds[kind]!;
  return shapes[Math.min(world.ease, shapes.length - 1)]!;
}

/** Turned shapes for a kind's list of angles; they are shared and must not be written to. */
export function listedTurns(world: World, kind: number, sheet: number): readonly Turned[] {
  const { frame } = world.sheets[sheet]!;
  const key = `${world.ease}/${kind}/${frame.fx}/${frame.fy}`;
  const known = world.listed.get(key);
  if (known !== undefined) return known;
  const shape = shapeNow(world, kind);
  const turns = world.kinds[kind]!.angles.listDeg!.map((deg) => {
    const turned = createTurned(shape);
    turnFor(turned, deg, frame);
    return turned;
  });
  world.listed.set(key, turns);
  return turns;
}

/** Turns a shape to a rotation on a sheet, seen in the sheet's search frame. */
export function turnFor(turned: Turned, deg: number, frame: Frame): void {
  const { cos, sin } = turnInFrame(deg, frame);
  turnInto(turned, deg, cos, sin);
}

/** Cosine and sine of a rotation on the sheet as it is in the search frame. */
export function turnInFrame(deg: number, frame: Frame): { cos: number; sin: number } {
  const { sin, cos } = sinCosDeg(deg);
  return { cos: cos * frame.fx + sin * frame.fy, sin: sin * frame.fx - cos * frame.fy };
}

/** A turned shape to write to; give it back with `giveSpare`. */
export function takeSpare(world: World, shape: SepShape): Turned {
  return world.spare.get(shape)?.pop() ?? createTurned(shape);
}

export function giveSpare(world: World, turned: Turned): void {
  const pile = world.spare.get(turned.shape);
  if (pile === undefined) world.spare.set(turned.shape, [turned]);
  else pile.push(turned);
}

/** Lays a piece at a place, without a look at what it meets. */
export function put(world: World, i: number, sheet: number, deg: number, x: number, y: number): void {
  const kind = world.kindOf[i]!;
  const { listDeg } = world.kinds[kind]!.angles;
  const at = listDeg === undefined || world.isFixed[i] === 1 ? -1 : listDeg.indexOf(deg);
  if (at >= 0) {
    world.turned[i] = listedTurns(world, kind, sheet)[at]!;
  } else {
    let own = world.turned[i]!;
    const shape = shapeNow(world, kind);
    const isOwn = listDeg === undefined && own.shape === shape;
    if (!isOwn) own = createTurned(shape);
    turnFor(own, deg, world.sheets[sheet]!.frame);
    world.turned[i] = own;
  }
  world.sheetOf[i] = sheet;
  moveTo(world, i, x, y);
}

/** Moves a piece, as it is turned. */
export function moveTo(world: World, i: number, x: number, y: number): void {
  const box = world.turned[i]!.far;
  world.x[i] = x;
  world.y[i] = y;
  world.minX[i] = x + box.minX;
  world.maxX[i] = x + box.maxX;
  world.minY[i] = y + box.minY;
  world.maxY[i] = y + box.maxY;
}

/** Takes a piece off: it meets nothing. */
export function takeOff(world: World, i: number): void {
  world.sheetOf[i] = -1;
}

/** The x nearest to the given one at which the outline keeps within the box; the near end if it is too long. */
export function withinU(sheet: SepSheet, turned: Turned, x: number): number {
  const most = sheet.limit - turned.outline.maxX;
  const least = sheet.minU - turned.outline.minX;
  const bounded = x > most ? most : x;
  return bounded < least ? least : bounded;
}

export function withinV(sheet: SepSheet, turned: Turned, y: number): number {
  const most = sheet.maxV - turned.outline.maxY;
  const least = sheet.minV - turned.outline.minY;
  const bounded = y > most ? most : y;
  return bounded < least ? least : bounded;
}

/** True if the outline is no longer or wider than the box. */
export function fitsBox(sheet: SepSheet, turned: Turned): boolean {
  const { minX, maxX, minY, maxY } = turned.outline;
  return maxX - minX <= sheet.limit - sheet.minU && maxY - minY <= sheet.maxV - sheet.minV;
}

/** Weighted severity of all that piece `i` would meet at a place; at or above `limit` it may be anything above. */
export function costAt(
  world: World,
  i: number,
  sheet: number,
  turned: Turned,
  x: number,
  y: number,
  limit: number,
): number {
  const { minX, minY, maxX, maxY, sheetOf, weight, count, groupOf } = world;
  const box = turned.far;
  const left = x + box.minX;
  const right = x + box.maxX;
  const top = y + box.minY;
  const bottom = y + box.maxY;
  const row = i * count;
  const group = groupOf[i]!;
  let cost = 0;
  world.work++;
  for (let j = 0; j < count && cost < limit; j++) {
    if (left < maxX[j]! && right > minX[j]! && top < maxY[j]! && bottom > minY[j]! && j !== i) {
      if (sheetOf[j] !== sheet) continue;
      const w = weight[row + j]!;
      const isFar = groupOf[j] !== group;
      world.work++;
      const severity = overlapSeverity(
        turned,
        world.turned[j]!,
        x - world.x[j]!,
        y - world.y[j]!,
        isFar,
        (limit - cost) / w,
      );
      cost += severity * w;
    }
  }
  // Last, because it takes longest: most places are ruled out by other pieces.
  return cost < limit ? cost + elsewhereCost(world, i, sheet, turned, x, y) : cost;
}

/** What the sheet and the rules cost. */
function elsewhereCost(world: World, i: number, sheet: number, turned: Turned, x: number, y: number): number {
  let cost = 0;
  if (turned.bodies.length > 0) {
    const severity = groundSeverityAt(world, sheet, turned, x, y);
    if (severity > 0) cost += severity * world.groundWeight[i]!;
  }
  if (world.rules !== undefined) {
    const excess = world.rules.look(i, sheet, turned, x, y);
    if (excess > 0) cost += excess * turned.shape.lambda * turned.shape.lambda * world.ruleWeight[i]!;
  }
  return cost;
}

function groundSeverityAt(world: World, sheet: number, turned: Turned, x: number, y: number): number {
  const { grounds } = world.sheets[sheet]!;
  const { bodies } = turned.shape;
  let sum = 0;
  for (let k = 0; k < bodies.length; k++) {
    const ground = grounds[bodies[k]!.ground];
    if (ground === undefined) continue;
    world.work++;
    sum += groundSeverity(ground, bodies[k]!, turned.bodies[k]!, x, y, turned.shape);
  }
  return sum;
}

/** Looks again at all that piece `i` meets where it lies. */
export function refresh(world: World, i: number): void {
  const { count, severity } = world;
  for (let j = 0; j < count; j++) {
    if (j === i) continue;
    const s = pairSeverity(world, i, j);
    severity[i * count + j] = s;
    severity[j * count + i] = s;
  }
  refreshOwn(world, i);
}

/** What piece `i` has against the sheet and the rules. */
function refreshOwn(world: World, i: number): void {
  const sheet = world.sheetOf[i]!;
  world.groundSeverity[i] = 0;
  world.ruleSeverity[i] = 0;
  if (sheet < 0 || world.isFixed[i] === 1) return;
  const turned = world.turned[i]!;
  const { lambda } = turned.shape;
  const { minX, maxX, minY, maxY } = turned.outline;
  const { minU, limit, minV, maxV } = world.sheets[sheet]!;
  let out = Math.max(minU - world.x[i]! - minX, world.x[i]! + maxX - limit);
  out = Math.max(out, minV - world.y[i]! - minY, world.y[i]! + maxY - maxV);
  // A piece that sticks out of the box, which `withinU` and `withinV` allow only to one that is too large for it.
  if (out > BOX_SLACK) world.groundSeverity[i] = Math.sqrt(out * lambda) * lambda;
  if (turned.bodies.length > 0) {
    world.groundSeverity[i] += groundSeverityAt(world, sheet, turned, world.x[i]!, world.y[i]!);
  }
  if (world.rules !== undefined) {
    world.ruleSeverity[i] = world.rules.prove(i, sheet, turned, world.x[i]!, world.y[i]!) * lambda * lambda;
  }
}

/** What settling leaves where outlines touch the box; well within what the exact check forgives. */
const BOX_SLACK = 0.0005;

function pairSeverity(world: World, i: number, j: number): number {
  if (world.sheetOf[i] !== world.sheetOf[j] || world.sheetOf[i]! < 0) return 0;
  if (world.isFixed[i] === 1 && world.isFixed[j] === 1) return 0;
  const { minX, maxX, minY, maxY } = world;
  if (minX[i]! >= maxX[j]! || maxX[i]! <= minX[j]! || minY[i]! >= maxY[j]! || maxY[i]! <= minY[j]!) return 0;
  world.work++;
  return overlapSeverity(
    world.turned[i]!,
    world.turned[j]!,
    world.x[i]! - world.x[j]!,
    world.y[i]! - world.y[j]!,
    world.groupOf[i] !== world.groupOf[j],
    Infinity,
  );
}

/** Looks at everything again; returns the sum of all severities. */
export function refreshAll(world: World): number {
  const { count, severity } = world;
  let total = 0;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      const s = pairSeverity(world, i, j);
      severity[i * count + j] = s;
      severity[j * count + i] = s;
      total += s;
    }
    refreshOwn(world, i);
    total += world.groundSeverity[i]! + world.ruleSeverity[i]!;
  }
  return total;
}

/** Sum of all severities as last looked at. */
export function totalSeverity(world: World): number {
  const { count, severity } = world;
  let total = 0;
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) total += severity[i * count + j]!;
    total += world.groundSeverity[i]! + world.ruleSeverity[i]!;
  }
  return total;
}

/** True if the piece meets anything that it must not. */
export function collides(world: World, i: number): boolean {
  if (world.groundSeverity[i]! > 0 || world.ruleSeverity[i]! > 0) return true;
  const { count, severity } = world;
  const row = i * count;
  for (let j = 0; j < count; j++) if (severity[row + j]! > 0) return true;
  return false;
}

/** Where everything lies, small enough to keep many of. */
export interface Snapshot {
  readonly sheetOf: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly deg: Float64Array;
  readonly limits: readonly number[];
}

export function snapshotOf(world: World): Snapshot {
  return {
    sheetOf: world.sheetOf.slice(),
    x: world.x.slice(),
    y: world.y.slice(),
    deg: Float64Array.from(world.turned, ({ deg }) => deg),
    limits: world.sheets.map(({ limit }) => limit),
  };
}

/** Everything back to where it lay; returns the sum of all severities. */
export function restoreSnapshot(world: World, snapshot: Snapshot): number {
  snapshot.limits.forEach((limit, s) => (world.sheets[s]!.limit = limit));
  for (let i = 0; i < world.count; i++) {
    const sheet = snapshot.sheetOf[i]!;
    if (sheet < 0) takeOff(world, i);
    else put(world, i, sheet, snapshot.deg[i]!, snapshot.x[i]!, snapshot.y[i]!);
  }
  return refreshAll(world);
}

/** Another level of ease: the shapes change where they lie. Returns the sum of all severities. */
export function setEase(world: World, ease: number): number {
  if (world.ease !== ease) {
    world.ease = ease;
    for (let i = 0; i < world.count; i++) {
      const sheet = world.sheetOf[i]!;
      if (sheet >= 0) put(world, i, sheet, world.turned[i]!.deg, world.x[i]!, world.y[i]!);
    }
  }
  return refreshAll(world);
}
