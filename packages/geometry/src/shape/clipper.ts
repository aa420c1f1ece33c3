import clipper from 'clipper-lib';
import type { IntPoint, Path, Paths } from 'clipper-lib';
import {
  GRID_STEPS_PER_MM,
  OFFSET_ARC_TOLERANCE_MM,
  OFFSET_MITRE_LIMIT,
  SLIVER_WIDTH_MM,
} from '../tolerance.js';
import type { Region, Ring } from '../types/shape.js';
import { nestRings } from './ring-nesting.js';
import { orientRing, ringArea, ringPerimeter } from './ring.js';

/** How the corners of an offset are joined. */
export interface OffsetOptions {
  readonly join: 'round' | 'mitre';
  /** A mitred corner reaches at most this many times the distance; beyond, it is cut square. Default 2. */
  readonly mitreLimit?: number;
  /** Greatest distance in mm of a round corner's chords from its arc (they lie inside it). Default 0.01. */
  readonly arcTolerance?: number;
}

/**
 * All that lies in at least one of the regions. Works on the 1 µm grid: input is rounded to it, every corner of
 * the result is on it and within about 1 µm of the true place. A ring of less than 1 µm mean width is dropped.
 * A region within an opening of another is a region of its own. The order of the result is clipper-lib's, which
 * follows from the input alone.
 */
export function unionRegions(regions: readonly Region[]): Region[] {
  return combine(clipper.ClipType.ctUnion, regions, []);
}

/** All that lies in one of `a` and in one of `b`; grid and slivers as for `unionRegions`. */
export function intersectRegions(a: readonly Region[], b: readonly Region[]): Region[] {
  if (a.length === 0 || b.length === 0) return [];
  return combine(clipper.ClipType.ctIntersection, a, b);
}

/** All that lies in one of `a` and in none of `b`; grid and slivers as for `unionRegions`. */
export function subtractRegions(a: readonly Region[], b: readonly Region[]): Region[] {
  if (a.length === 0) return [];
  return combine(clipper.ClipType.ctDifference, a, b);
}

/**
 * clipper-lib rounds the number of chords of a corner: of 1.5 chords it draws one, whose distance from the arc is
 * 1.5 squared times the one asked for.
 */
const ARC_EXCESS = 2.25;

/**
 * The regions grown by `distance` mm (shrunk if negative), united first. Openings shrink as outer rings grow.
 * A round corner may fall short of the true arc by the arc tolerance plus 1 µm: where a margin is promised, offset by
 * the margin plus both.
 */
export function offsetRegions(
  regions: readonly Region[],
  distance: number,
  options: OffsetOptions,
): Region[] {
  const united = unionRegions(regions);
  if (distance === 0 || united.length === 0) return united;
  // Each on its own, then united in groups: grown together, all of them cross in one sweep, which takes far longer.
  return uniteGroups(united.map((region) => offsetPaths(toPaths([region]), distance, options)));
}

function offsetPaths(paths: Paths, distance: number, options: OffsetOptions): Paths {
  const offset = new clipper.ClipperOffset(
    options.mitreLimit ?? OFFSET_MITRE_LIMIT,
    ((options.arcTolerance ?? OFFSET_ARC_TOLERANCE_MM) * GRID_STEPS_PER_MM) / ARC_EXCESS,
  );
  const join = options.join === 'round' ? clipper.JoinType.jtRound : clipper.JoinType.jtMiter;
  offset.AddPaths(paths, join, clipper.EndType.etClosedPolygon);
  const moved: Paths = [];
  offset.Execute(moved, distance * GRID_STEPS_PER_MM);
  return moved;
}

/** Corners in grid steps. */
export function toPath(ring: Ring): Path {
  return ring.map((p) => ({
    X: Math.round(p.x * GRID_STEPS_PER_MM),
    Y: Math.round(p.y * GRID_STEPS_PER_MM),
  }));
}

/** Groups that clipper-lib unites at once; fewer mean more passes, more mean longer sweeps with more crossings. */
const GROUPS_AT_ONCE = 8;

/** Unites closed paths by their winding (what is wound round once or more is inside), in groups, then groups of those. */
export function unitePaths(paths: Paths): Region[] {
  return uniteGroups(paths.map((path) => [path]));
}

function uniteGroups(all: Paths[]): Region[] {
  let groups = all;
  while (groups.length > GROUPS_AT_ONCE) {
    const merged: Paths[] = [];
    for (let i = 0; i < groups.length; i += GROUPS_AT_ONCE) {
      merged.push(unitedPaths(groups.slice(i, i + GROUPS_AT_ONCE).flat()));
    }
    groups = merged;
  }
  return combinePaths(clipper.ClipType.ctUnion, groups.flat(), []);
}

function unitedPaths(paths: Paths): Paths {
  const engine = new clipper.Clipper();
  engine.AddPaths(paths, clipper.PolyType.ptSubject, true);
  const united: Paths = [];
  const fill = clipper.PolyFillType.pftPositive;
  engine.Execute(clipper.ClipType.ctUnion, united, fill, fill);
  return united;
}

function toPaths(regions: readonly Region[]): Paths {
  const paths: Paths = [];
  for (const region of regions) {
    paths.push(toPath(orientRing(region.outer, 'outer')));
    for (const opening of region.openings) paths.push(toPath(orientRing(opening, 'opening')));
  }
  return paths;
}

function combine(clipType: number, a: readonly Region[], b: readonly Region[]): Region[] {
  return combinePaths(clipType, toPaths(a), toPaths(b));
}

/**
 * Paths rather than a tree: where borders coincide, clipper-lib cuts rings in many pieces and joins them again, and
 * after each cut seeks the place in the tree of every other ring, which took seconds.
 */
function combinePaths(clipType: number, subject: Paths, clip: Paths): Region[] {
  const engine = new clipper.Clipper();
  engine.StrictlySimple = true;
  // The last step of a strictly simple run compares all corners of a ring with each other: done here in one pass.
  engine.DoSimplePolygons = () => undefined;
  engine.AddPaths(subject, clipper.PolyType.ptSubject, true);
  engine.AddPaths(clip, clipper.PolyType.ptClip, true);
  const paths: Paths = [];
  // Positive winding: rounding can push an opening a step beyond its outer ring, which must not become leather.
  const fill = clipper.PolyFillType.pftPositive;
  engine.Execute(clipType, paths, fill, fill);
  const rings = paths.flatMap(splitWhereTouching).map(toRing);
  return nestRings(rings.filter((ring) => !isSliver(ring)));
}

/** A path that comes back to one of its corners, split there into paths that visit each corner once. */
function splitWhereTouching(path: Path): Paths {
  const visited = new Map<string, number>();
  const loops: Paths = [];
  const open: Path = [];
  for (const corner of path) {
    const key = cornerKey(corner);
    const since = visited.get(key);
    if (since !== undefined) {
      const loop = open.splice(since);
      for (const left of loop) visited.delete(cornerKey(left));
      if (loop.length > 2) loops.push(loop);
    }
    visited.set(key, open.length);
    open.push(corner);
  }
  return [open, ...loops];
}

function cornerKey({ X, Y }: IntPoint): string {
  return `${X},${Y}`;
}

function toRing(path: Path): Ring {
  return withoutStraightCorners(path).map(({ X, Y }) => ({
    x: X / GRID_STEPS_PER_MM + 0,
    y: Y / GRID_STEPS_PER_MM + 0,
  }));
}

/** Strictly simple results keep corners on straight runs; in whole numbers they are found exactly. */
function withoutStraightCorners(path: Path): Path {
  const kept: Path = [];
  for (const p of path) {
    while (kept.length > 1 && isStraight(kept[kept.length - 2]!, kept[kept.length - 1]!, p)) kept.pop();
    kept.push(p);
  }
  while (kept.length > 2 && isStraight(kept[kept.length - 2]!, kept[kept.length - 1]!, kept[0]!)) kept.pop();
  while (kept.length > 2 && isStraight(kept[kept.length - 1]!, kept[0]!, kept[1]!)) kept.shift();
  return kept;
}

function isStraight(a: IntPoint, b: IntPoint, c: IntPoint): boolean {
  return (b.X - a.X) * (c.Y - a.Y) === (b.Y - a.Y) * (c.X - a.X);
}

/** A strip of length l and width w has area l w and perimeter 2 (l + w). */
function isSliver(ring: Ring): boolean {
  if (ring.length < 3) return true;
  return 2 * Math.abs(ringArea(ring)) < SLIVER_WIDTH_MM * ringPerimeter(ring);
}
