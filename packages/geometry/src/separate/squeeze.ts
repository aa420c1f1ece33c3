import type { Snapshot, World } from './world.js';
import { moveTo, shapeNow, turnInFrame, withinU, withinV } from './world.js';

/**
 * Takes a sheet's limit back by `by`: all that lies beyond the line at `at` is moved back with it, and what would
 * reach beyond the limit is pushed within.
 */
export function squeezeSheet(world: World, sheet: number, by: number, at: number): void {
  const one = world.sheets[sheet]!;
  one.limit -= by;
  for (let i = 0; i < world.count; i++) {
    if (world.sheetOf[i] !== sheet || world.isFixed[i] === 1) continue;
    const turned = world.turned[i]!;
    const x = world.x[i]! > at ? world.x[i]! - by : world.x[i]!;
    moveTo(world, i, withinU(one, turned, x), withinV(one, turned, world.y[i]!));
  }
}

/** The least limit that holds all that lies on the sheet; its near end if nothing does. */
export function reachOf(world: World, sheet: number): number {
  let reach = world.sheets[sheet]!.minU;
  for (let i = 0; i < world.count; i++) {
    if (world.sheetOf[i] === sheet) reach = Math.max(reach, world.x[i]! + world.turned[i]!.outline.maxX);
  }
  return reach;
}

/** For each sheet the least limit that holds all that lies on it in a snapshot. */
export function reachesIn(world: World, { sheetOf, x, deg }: Snapshot): number[] {
  const reaches = world.sheets.map(({ minU }) => minU);
  for (let i = 0; i < world.count; i++) {
    const s = sheetOf[i]!;
    if (s < 0) continue;
    const { cos, sin } = turnInFrame(deg[i]!, world.sheets[s]!.frame);
    const { outline } = shapeNow(world, world.kindOf[i]!);
    for (let k = 0; k < outline.x.length; k++) {
      const u = x[i]! + outline.x[k]! * cos - outline.y[k]! * sin;
      if (u > reaches[s]!) reaches[s] = u;
    }
  }
  return reaches.map((reach, s) => Math.min(reach, world.sheets[s]!.maxU));
}
