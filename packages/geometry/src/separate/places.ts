import { roundedPlace, toU, toV } from '../nest/frame.js';
import type { Turned } from './turned.js';
import type { Snapshot, World } from './world.js';
import { turnInFrame } from './world.js';

/** Where the item's own origin lies when the shape's centre lies at (x, y), in the search frame. */
export function originOf(turned: Turned, x: number, y: number): { u: number; v: number } {
  const { cos, sin, shape } = turned;
  return {
    u: x - (shape.centreX * cos - shape.centreY * sin),
    v: y - (shape.centreX * sin + shape.centreY * cos),
  };
}

/** The places of an answer as a snapshot, without touching the world; the limits are those of the world's sheets. */
export function snapshotAt(world: World, at: readonly (PlaceOnSheet | undefined)[]): Snapshot {
  const { count } = world;
  const snapshot = {
    sheetOf: new Int32Array(count).fill(-1),
    x: new Float64Array(count),
    y: new Float64Array(count),
    deg: new Float64Array(count),
    limits: world.sheets.map(({ maxU }) => maxU),
  };
  at.forEach((place, i) => {
    if (place === undefined) return;
    const { frame } = world.sheets[place.sheet]!;
    const { centreX, centreY } = world.kinds[world.kindOf[i]!]!.shapes[0]!;
    const { cos, sin } = turnInFrame(place.rotationDeg, frame);
    snapshot.sheetOf[i] = place.sheet;
    snapshot.x[i] = toU(frame, place.x, place.y) + centreX * cos - centreY * sin;
    snapshot.y[i] = toV(frame, place.x, place.y) + centreX * sin + centreY * cos;
    snapshot.deg[i] = place.rotationDeg;
  });
  return snapshot;
}

export interface PlaceOnSheet {
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
  readonly rotationDeg: number;
}

/** The place of a piece in a snapshot, on the 0.001 mm grid. */
export function placeIn(world: World, { sheetOf, x, y, deg }: Snapshot, i: number): PlaceOnSheet | undefined {
  const sheet = sheetOf[i]!;
  if (sheet < 0) return undefined;
  const { frame } = world.sheets[sheet]!;
  const { centreX, centreY } = world.kinds[world.kindOf[i]!]!.shapes[0]!;
  const { cos, sin } = turnInFrame(deg[i]!, frame);
  const u = x[i]! - (centreX * cos - centreY * sin);
  const v = y[i]! - (centreX * sin + centreY * cos);
  return { sheet, ...roundedPlace(frame, u, v), rotationDeg: deg[i]! };
}
