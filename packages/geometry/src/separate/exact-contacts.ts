import { compactStrip } from '../settle/compact.js';
import type { SettleTask } from '../settle/contacts.js';
import type { SettleShape } from '../settle/settle-shape.js';
import { settleShapeOf, turnedShape } from '../settle/settle-shape.js';
import { settle } from '../settle/settle.js';
import { flatRings } from '../shape/flat-rings.js';
import type { Turned } from './turned.js';
import type { World } from './world.js';
import { moveTo, setEase } from './world.js';
import type { Scene } from './world-of-layout.js';

/** Turned outlines for settling, kept ready where angles are listed. */
export interface ContactShapes {
  readonly kinds: readonly SettleShape[];
  readonly turned: Map<string, SettleShape>;
}

/** Outlines about the centres of the search's shapes. */
export function contactShapes(scene: Scene): ContactShapes {
  const kinds = scene.kinds.map(({ shapes }, k) => {
    const { centreX, centreY } = shapes[0]!;
    const rings = flatRings([scene.layout.prepared.items[k]!.item.region]).map((ring) =>
      ring.map((value, i) => value - (i % 2 === 0 ? centreX : centreY)),
    );
    return settleShapeOf(rings);
  });
  return { kinds, turned: new Map() };
}

/** Turned shapes kept ready, at most. */
const MOST_TURNED = 3000;

function shapeFor(shapes: ContactShapes, kind: number, turned: Turned): SettleShape {
  const key = `${kind}/${turned.deg}/${turned.cos}`;
  const known = shapes.turned.get(key);
  if (known !== undefined) return known;
  if (shapes.turned.size >= MOST_TURNED) shapes.turned.clear();
  const made = turnedShape(shapes.kinds[kind]!, turned.sin, turned.cos);
  shapes.turned.set(key, made);
  return made;
}

/** What `settleSheets` asks of a sheet: the farthest that anything may reach. */
export type FarthestOf = (sheet: number) => number;

/**
 * Turns a layout in which nothing meets at the loosest ease into one in which nothing meets in truth, by moving pieces
 * as little as possible, then draws each sheet together along its contacts. False if that can't be done; the world is
 * then at the tightest ease, where something meets.
 */
export function settleSheets(
  scene: Scene,
  world: World,
  shapes: ContactShapes,
  farthest: FarthestOf,
): boolean {
  for (let s = 0; s < world.sheets.length; s++) {
    const pieces: number[] = [];
    for (let i = 0; i < world.count; i++) if (world.sheetOf[i] === s) pieces.push(i);
    if (pieces.length > 0 && !settleSheet(scene, world, shapes, s, pieces, farthest(s))) {
      setEase(world, scene.eases.length - 1);
      return false;
    }
  }
  return setEase(world, scene.eases.length - 1) === 0;
}

function settleSheet(
  scene: Scene,
  world: World,
  shapes: ContactShapes,
  s: number,
  pieces: readonly number[],
  maxX: number,
): boolean {
  const sheet = world.sheets[s]!;
  const task: SettleTask = {
    shapes: pieces.map((i) => shapeFor(shapes, world.kindOf[i]!, world.turned[i]!)),
    x: Float64Array.from(pieces, (i) => world.x[i]!),
    y: Float64Array.from(pieces, (i) => world.y[i]!),
    fixed: Uint8Array.from(pieces, (i) => world.isFixed[i]!),
    gap: gapOf(scene, world, pieces),
    bounds: { minX: sheet.minU, minY: sheet.minV, maxX, maxY: sheet.maxV },
  };
  const settled = settle(task);
  world.work += settled.pairs + settled.steps;
  if (!settled.isExact) return false;
  const drawn = compactStrip({ ...task, x: settled.x, y: settled.y });
  world.work += drawn.pairs + drawn.steps;
  pieces.forEach((i, k) => {
    if (world.isFixed[i] === 0) moveTo(world, i, drawn.x[k]!, drawn.y[k]!);
  });
  sheet.limit = Math.min(sheet.maxU, Math.max(sheet.limit, drawn.length + LIMIT_SLACK));
  return true;
}

/** Room for the arithmetic between a settled layout and its limit. */
const LIMIT_SLACK = 1e-6;

function gapOf(scene: Scene, world: World, pieces: readonly number[]): SettleTask['gap'] {
  const { gap, betweenGroups } = scene.distances;
  const isPlain = pieces.every((i) => world.groupOf[i] === world.groupOf[pieces[0]!]);
  if (isPlain || (betweenGroups ?? 0) <= gap) return gap;
  return (a, b) => (world.groupOf[pieces[a]!] === world.groupOf[pieces[b]!] ? gap : betweenGroups!);
}
