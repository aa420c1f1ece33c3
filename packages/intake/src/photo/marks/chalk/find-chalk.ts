import {
  curveFromPolyline,
  offsetRegions,
  orientRing,
  roundPoint,
  simpleLine,
  simplifyGrowing,
} from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';
import type { Flaw, FlawShape, Side } from '@hidebound/leather';
import { tell } from '../../../findings.js';
import type { Findings } from '../../../findings.js';
import type { StraightPicture } from '../../straight/straight-picture.js';
import type { Vision } from '../../vision/vision.js';
import { outerEdges } from '../map/contours.js';
import { fillRings } from '../map/fill-rings.js';
import { gridToFloor, ringsOnGrid } from '../map/grid.js';
import type { Grid } from '../map/grid.js';
import { leatherCells, leatherMap } from '../map/leather-map.js';
import type { LeatherCells, LeatherMap } from '../map/leather-map.js';
import { closingLink, drawLink, linksBetween } from '../map/link-lines.js';
import { globalIndex, patchesOf } from '../map/patches-of.js';
import { softLine } from '../map/soft-line.js';
import { indicesOf } from '../map/thin.js';
import type { Patch } from '../map/thin.js';
import { chalkShares } from './chalk-share.js';
import type { ChalkShares } from './chalk-share.js';
import { chalkinessOf } from './chalky.js';
import type { Chalkiness } from './chalky.js';
import { crossOf } from './crosses.js';
import { outsideRings, ringsIn } from './rings.js';
import { findStrokes, strokeOf } from './strokes.js';
import type { Stroke } from './strokes.js';

/** What a person chalked on the leather. */
export interface ChalkMarks {
  /** Rings as areas and lines with their width, all never to be used; ids "chalk-1" and so on. */
  readonly flaws: readonly Flaw[];
  /** Where two short strokes cross, floor mm. */
  readonly crosses: readonly Point[];
  /** What chalk covers or rings close in: nothing else is to be searched there. */
  readonly covered: readonly Region[];
  /** The leather without such of its openings as are chalk: on a floor of chalk's colour it looks like a hole. */
  readonly leather: Region;
  /** What was searched, so that a search for something else need not make it anew; absent where the picture shows no leather. */
  readonly cells?: LeatherCells;
}

export interface ChalkOptions {
  /** The side that lies upwards in the picture; the flaws are said to be on it. */
  readonly side?: Side;
}

/** Beside the edge, floor shines through and the outline may be wrong. */
const EDGE_MM = 4;

/** Chalk shorter than this is a dab, no line along a flaw. */
const LEAST_LINE_MM = 35;

/** The hand lifts, or the chalk skips. */
const MOST_GAP_MM = 30;

/** Corners are left out that lie nearer to the line than this. */
const SIMPLE_MM = 1;

/** Room around chalk, so that its dust is taken for nothing else. */
const COVER_ROOM_MM = 4;

/** On leather lighter than this, white chalk and bare leather are nearly alike. */
const PALE_LIGHTNESS = 82;
const PALE_SHARE = 0.5;

const NEVER_HERE = { looks: 'C', strength: 'weak', isVoid: true } as const;

/**
 * Rings, lines and crosses of white, pale yellow, pale blue or silver chalk. Strict: a scar that is paler than the leather
 * but of its colour, and smooth, is no chalk.
 */
export function findChalk(
  picture: StraightPicture,
  leather: Region,
  options: ChalkOptions,
  vision: Vision,
  findings: Findings,
): ChalkMarks {
  const cells = leatherCells(picture, leather.outer, vision);
  if (cells === undefined) return { flaws: [], crosses: [], covered: [], leather };
  const unbroken = { outer: leather.outer, openings: [] };
  const map = leatherMap(cells, unbroken, { edgeMm: EDGE_MM }, vision);
  const shares = chalkShares(map, vision);
  if (paleShare(map, shares) > PALE_SHARE) tell(findings, 'note', 'chalk-hardly-shows');
  const strokes = findStrokes(shares, map.grid, vision);
  const { patches, ...found } = sorted(strokes, map, shares, options, vision);
  return {
    ...found,
    covered: patches.flatMap((patch) => coverOf(patch, map.grid, vision)),
    leather: { ...leather, openings: openingsLeft(leather, patches, map.grid) },
    cells,
  };
}

function paleShare({ mask }: LeatherMap, { ground }: ChalkShares): number {
  let all = 0;
  let pale = 0;
  for (let i = 0; i < mask.length; i += 7) {
    if (mask[i] === 0) continue;
    all++;
    if (ground.lightness[i]! > PALE_LIGHTNESS) pale++;
  }
  return all === 0 ? 0 : pale / all;
}

interface Sorted extends Pick<ChalkMarks, 'flaws' | 'crosses'> {
  /** The chalk that these are made of. */
  readonly patches: readonly Patch[];
}

function sorted(
  strokes: readonly Stroke[],
  map: LeatherMap,
  shares: ChalkShares,
  { side = 'grain' }: ChalkOptions,
  vision: Vision,
): Sorted {
  const { grid } = map;
  const chalk = strokes.filter(({ patch }) => isFigure(chalkinessOf(map, shares, patch)));
  const crosses = chalk.flatMap(({ patch }) => {
    const cross = crossOf(patch, grid.stepX);
    return cross === undefined ? [] : [{ patch, at: gridToFloor(grid, cross.at.x, cross.at.y) }];
  });
  const others = chalk.filter(({ patch }) => !crosses.some((cross) => cross.patch === patch));
  const figures = linked(others, grid).map((patch) => {
    const { widthMm } = strokeOf(patch, grid);
    const rings = ringsIn(patch, widthMm, grid, vision);
    const areas = rings.map((ring): FlawShape => {
      return { kind: 'area', outline: curveFromPolyline(simpleRing(ring), true) };
    });
    return { patch, shapes: [...areas, ...linesIn(patch, rings, widthMm, map, shares)] };
  });
  const taken = figures.filter(({ shapes }) => shapes.length > 0);
  const flaws = taken
    .flatMap(({ shapes }) => shapes)
    .map((shape, i): Flaw => ({ id: `chalk-${i + 1}`, side, shape, effect: NEVER_HERE }));
  return {
    flaws,
    crosses: crosses.map(({ at }) => at),
    patches: [...crosses, ...taken].map(({ patch }) => patch),
  };
}

/** The chalk with what it closes in, and some room around. */
function coverOf(patch: Patch, grid: Grid, vision: Vision): Region[] {
  const edges = outerEdges(patch, vision).filter((ring) => ring.length >= 3);
  const regions = edges.map((ring) => ({
    outer: orientRing(
      ring.map(({ x, y }) => gridToFloor(grid, x, y)),
      'outer',
    ),
    openings: [],
  }));
  return offsetRegions(regions, COVER_ROOM_MM, { join: 'round', arcTolerance: 0.2 });
}

/** So much of what looks like an opening is chalk, if it is one. */
const CHALK_SHARE = 0.6;

function openingsLeft(leather: Region, patches: readonly Patch[], grid: Grid): readonly Ring[] {
  if (patches.length === 0) return leather.openings;
  const chalk = cellsOf(patches, grid);
  return leather.openings.filter((opening) => {
    const inside = fillRings(ringsOnGrid(grid, [opening]), grid.width, grid.height, 'any');
    let all = 0;
    let chalked = 0;
    for (let i = 0; i < inside.length; i++) {
      if (inside[i] === 0) continue;
      all++;
      if (chalk[i] !== 0) chalked++;
    }
    return chalked < CHALK_SHARE * all || all === 0;
  });
}

function cellsOf(patches: readonly Patch[], grid: Grid): Uint8Array {
  const mask = new Uint8Array(grid.width * grid.height);
  for (const patch of patches) {
    for (const i of indicesOf(patch.cells)) {
      mask[globalIndex(patch, i, grid.width)] = 255;
    }
  }
  return mask;
}

function simpleRing(ring: Ring): Ring {
  return simplifyGrowing(ring, SIMPLE_MM).map(roundPoint);
}

/** The strokes with their gaps closed, as patches of strokes that touch: first those that go on in each other, then rings. */
function linked(strokes: readonly Stroke[], grid: Grid): Patch[] {
  const mask = cellsOf(
    strokes.map(({ patch }) => patch),
    grid,
  );
  for (const link of linksBetween(strokes, { stepMm: grid.stepX, mostGapMm: MOST_GAP_MM }))
    drawLink(link, mask, grid);
  for (const patch of patchesOf(mask, grid.width, grid.height, 1)) {
    const closing = closingLink(strokeOf(patch, grid), grid.stepX);
    if (closing !== undefined) drawLink(closing, mask, grid);
  }
  return patchesOf(mask, grid.width, grid.height, 1);
}

/** What is left of a patch beside its rings, where it is long enough and surely chalk. */
function linesIn(
  patch: Patch,
  rings: readonly Ring[],
  ringWidthMm: number,
  map: LeatherMap,
  shares: ChalkShares,
): FlawShape[] {
  const { grid } = map;
  const rest = rings.length === 0 ? patch : outsideRings(patch, rings, ringWidthMm, grid);
  return patchesOf(rest.cells, rest.width, rest.height, 10).flatMap((part) => {
    const whole = { ...part, x: part.x + rest.x, y: part.y + rest.y };
    const stroke = strokeOf(whole, grid);
    if (stroke.lengthMm < LEAST_LINE_MM || stroke.lengthMm < 4 * stroke.widthMm) return [];
    if (!isLine(chalkinessOf(map, shares, whole))) return [];
    const middle = softLine(
      stroke.way.map(({ x, y }) => gridToFloor(grid, x, y)),
      4,
    );
    const line = simpleLine(middle, SIMPLE_MM).map(roundPoint);
    return [{ kind: 'line' as const, line, widthMm: Math.round(10 * stroke.widthMm) / 10 }];
  });
}

/** A ring or a cross is hardly there by chance: less is asked of its colour. */
function isFigure({ cover, neutral }: Chalkiness): boolean {
  return cover >= 0.25 && (neutral === undefined || neutral >= 0.4);
}

/** No scar is so bright that this much of it could be chalk. */
const SURE_COVER = 0.62;

/** A line's colour goes this far towards the chalk's; scars, paler but of the leather's colour, reach 0.4. */
const LEAST_NEUTRAL = 0.6;
const LEAST_NEUTRAL_IF_BRIGHT = 0.5;

/** The colour goes farther towards the chalk's than the lightness: yellow or blue chalk, and nothing that leather has. */
const SURE_NEUTRAL = 1.2;

/** A line could be a scar: it must be very bright, or of chalk's colour and uneven as the grain takes chalk. */
function isLine({ cover, neutral, uneven }: Chalkiness): boolean {
  if (neutral === undefined) return cover >= SURE_COVER || (cover >= 0.45 && uneven >= 0.1);
  if (cover >= SURE_COVER) return neutral >= LEAST_NEUTRAL_IF_BRIGHT;
  return cover >= 0.32 && neutral >= LEAST_NEUTRAL && (uneven >= 0.08 || neutral >= SURE_NEUTRAL);
}
