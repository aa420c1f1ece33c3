import { curveFromPolyline, offsetRegions, roundPoint, simplifyGrowing } from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';
import { bufferedLine } from '@hidebound/leather';
import type { Flaw, Side } from '@hidebound/leather';
import { tell } from '../../../findings.js';
import type { Findings } from '../../../findings.js';
import type { StraightPicture } from '../../straight/straight-picture.js';
import type { Vision } from '../../vision/vision.js';
import { gridToFloor } from '../map/grid.js';
import type { Grid } from '../map/grid.js';
import { leatherMap } from '../map/leather-map.js';
import type { LeatherMap } from '../map/leather-map.js';
import { closingLink, drawLink, linksBetween } from '../map/link-lines.js';
import { patchesOf } from '../map/patches-of.js';
import { simpleLine, softLine } from '../map/simple-line.js';
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
  const map = leatherMap(picture, leather, { edgeMm: EDGE_MM }, vision);
  if (map === undefined) return { flaws: [], crosses: [], covered: [] };
  const shares = chalkShares(map, vision);
  if (paleShare(map, shares) > PALE_SHARE) tell(findings, 'note', 'chalk-hardly-shows');
  const strokes = findStrokes(shares, map.grid, vision);
  return sorted(strokes, map, shares, options, vision);
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

function sorted(
  strokes: readonly Stroke[],
  map: LeatherMap,
  shares: ChalkShares,
  { side = 'grain' }: ChalkOptions,
  vision: Vision,
): ChalkMarks {
  const { grid } = map;
  const crosses: Point[] = [];
  const covered: Region[] = [];
  const others: Stroke[] = [];
  for (const stroke of strokes) {
    const cross = crossOf(stroke.patch, grid.stepX);
    const isChalk = isFigure(chalkinessOf(map, shares, stroke.patch));
    if (cross !== undefined && isChalk) {
      crosses.push(gridToFloor(grid, cross.at.x, cross.at.y));
      covered.push(boxAround(stroke.patch, grid));
    } else if (isChalk) others.push(stroke);
  }
  const flaws: Flaw[] = [];
  const take = (shape: Flaw['shape']): void => {
    flaws.push({ id: `chalk-${flaws.length + 1}`, side, shape, effect: NEVER_HERE });
  };
  for (const patch of linked(others, grid)) {
    const widthMm = strokeOf(patch, grid).widthMm;
    const rings = ringsIn(patch, widthMm, grid, vision);
    for (const ring of rings) {
      take({ kind: 'area', outline: curveFromPolyline(simpleRing(ring), true) });
      covered.push(
        ...offsetRegions([{ outer: ring, openings: [] }], widthMm / 2 + COVER_ROOM_MM, { join: 'round' }),
      );
    }
    for (const line of linesIn(patch, rings, widthMm, map, shares)) {
      take(line);
      covered.push(...bufferedLine(line.line, line.widthMm / 2 + COVER_ROOM_MM));
    }
  }
  return { flaws, crosses, covered };
}

function simpleRing(ring: Ring): Ring {
  return simplifyGrowing(ring, SIMPLE_MM).map(roundPoint);
}

function boxAround(patch: Patch, grid: Grid): Region {
  const low = gridToFloor(grid, patch.x - COVER_ROOM_MM, patch.y - COVER_ROOM_MM);
  const high = gridToFloor(
    grid,
    patch.x + patch.width + COVER_ROOM_MM,
    patch.y + patch.height + COVER_ROOM_MM,
  );
  return { outer: [low, { x: high.x, y: low.y }, high, { x: low.x, y: high.y }], openings: [] };
}

/** The strokes with their gaps closed, as patches of strokes that touch: first those that go on in each other, then rings. */
function linked(strokes: readonly Stroke[], grid: Grid): Patch[] {
  const mask = new Uint8Array(grid.width * grid.height);
  for (const { patch } of strokes) {
    for (const i of indicesOf(patch.cells)) {
      const x = i % patch.width;
      mask[(patch.y + (i - x) / patch.width) * grid.width + patch.x + x] = 255;
    }
  }
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
) {
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

/** A line could be a scar: it must be bright, of chalk's colour, and uneven as the grain takes chalk. */
function isLine({ cover, neutral, uneven }: Chalkiness): boolean {
  if (neutral === undefined) return cover >= 0.45 && uneven >= 0.1;
  return cover >= 0.32 && neutral >= 0.6 && uneven >= 0.08;
}
