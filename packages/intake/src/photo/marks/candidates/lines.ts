import type { Point, Polyline } from '@hidebound/geometry';
import type { Vision } from '../../vision/vision.js';
import { gridToFloor } from '../map/grid.js';
import { drawLink, linksBetween } from '../map/link-lines.js';
import { globalIndex, patchesOf } from '../map/patches-of.js';
import { softLine } from '../map/soft-line.js';
import { longestWay, thinned } from '../map/thin.js';
import type { Patch } from '../map/thin.js';
import type { Level } from './level.js';
import { profileAcross } from './line-profile.js';
import { findRidges } from './ridges.js';
import type { Ridges } from './ridges.js';

/** A narrow mark with a length; mm. */
export interface LineMark {
  readonly line: Polyline;
  readonly widthMm: number;
  readonly lengthMm: number;
  /** L* above (pale) or below (dark) what lies beside it. */
  readonly contrast: number;
  /** How far it stands out as a whole, in deviations: a long faint line is as sure as a short strong one. */
  readonly strength: number;
}

/** A line is followed from where it stands out by so much ... */
const STRONG = 4.5;
/** ... and is so long, in mm and in cells of its level. */
const LEAST_LENGTH_MM = 14;
const LEAST_LENGTH_CELLS = 8;

/** Gaps are closed up to so many cells, as far as both ends point at each other. */
const MOST_GAP_CELLS = 12;

/** The filter looks at so many cells along a line, so the next independent answer lies as far on. */
const INDEPENDENT_CELLS = 9;

export function findLines(level: Level, vision: Vision): LineMark[] {
  const ridges = findRidges(level, vision);
  return [1, -1].flatMap((sign) => linesOfSign(level, ridges, sign));
}

/** Pale lines by themselves and dark ones by themselves: a pale line has a dark one on either side. */
function linesOfSign(level: Level, { strength, crest }: Ridges, sign: number): LineMark[] {
  const { width, height, stepX } = level.grid;
  const mask = new Uint8Array(crest.length);
  for (let i = 0; i < crest.length; i++) if (crest[i] !== 0 && sign * strength[i]! > 0) mask[i] = 255;
  const parts = patchesOf(mask, width, height, 4)
    .filter((patch) => isStrong(patch, strength, width))
    .map((patch) => ({ patch, way: wayOf(thinned(patch)) }));
  const kept = new Uint8Array(crest.length);
  for (const { patch } of parts) copyInto(kept, patch, width);
  const options = { stepMm: stepX, mostGapMm: MOST_GAP_CELLS * stepX };
  for (const link of linksBetween(parts, options)) drawLink(link, kept, level.grid);
  return patchesOf(kept, width, height, LEAST_LENGTH_CELLS).flatMap((patch) =>
    waysIn(patch).flatMap((way) => markOf(way, level, strength, sign)),
  );
}

function isStrong(patch: Patch, strength: Float32Array, width: number): boolean {
  let strong = 0;
  patch.cells.forEach((cell, i) => {
    if (cell !== 0 && Math.abs(strength[globalIndex(patch, i, width)]!) >= STRONG) strong++;
  });
  return strong >= 3;
}

function copyInto(mask: Uint8Array, patch: Patch, width: number): void {
  patch.cells.forEach((cell, i) => {
    if (cell !== 0) mask[globalIndex(patch, i, width)] = 255;
  });
}

function wayOf(thin: Patch): Point[] {
  return longestWay(thin).map((i) => ({
    x: thin.x + (i % thin.width),
    y: thin.y + Math.floor(i / thin.width),
  }));
}

/** A patch with branches has several ways: the longest first, then what is left beside it. */
function waysIn(patch: Patch): Point[][] {
  const thin = thinned(patch);
  const ways: Point[][] = [];
  let rest: Patch[] = [thin];
  while (rest.length > 0 && ways.length < MOST_BRANCHES) {
    const next = rest.pop()!;
    const way = longestWay(next);
    if (way.length < LEAST_LENGTH_CELLS) continue;
    ways.push(way.map((i) => ({ x: next.x + (i % next.width), y: next.y + Math.floor(i / next.width) })));
    const cells = next.cells.slice();
    for (const i of way) cells[i] = 0;
    const parts = patchesOf(cells, next.width, next.height, LEAST_LENGTH_CELLS);
    rest = [...rest, ...parts.map((part) => ({ ...part, x: part.x + next.x, y: part.y + next.y }))];
  }
  return ways;
}

const MOST_BRANCHES = 40;

function markOf(way: readonly Point[], level: Level, strength: Float32Array, sign: number): LineMark[] {
  const { grid } = level;
  const line = softLine(
    way.map(({ x, y }) => gridToFloor(grid, x, y)),
    3,
  );
  const lengthMm = lengthOf(line);
  if (lengthMm < LEAST_LENGTH_MM) return [];
  let sum = 0;
  for (const { x, y } of way) sum += Math.max(0, sign * strength[y * grid.width + x]!);
  const mean = sum / way.length;
  const { widthCells, contrast } = profileAcross(way, level);
  return [
    {
      line,
      lengthMm,
      widthMm: widthCells * grid.stepX,
      contrast,
      strength: mean * Math.sqrt(Math.max(1, lengthMm / grid.stepX / INDEPENDENT_CELLS)),
    },
  ];
}

export function lengthOf(line: Polyline): number {
  let length = 0;
  for (let i = 1; i < line.length; i++)
    length += Math.hypot(line[i]!.x - line[i - 1]!.x, line[i]!.y - line[i - 1]!.y);
  return length;
}
