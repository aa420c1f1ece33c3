import { convexHull } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { distanceToMarked } from './grid.js';
import { GROUND } from './known-ground.js';
import type { Level } from './level.js';
import { paintRing } from './paint.js';

/** How likely leather is at the picture's border, in its middle, and right beside a sheet. A photo is taken of a hide. */
const AT_BORDER = 0.04;
const IN_MIDDLE = 0.8;
const BESIDE_PAPER = 0.15;
/** Sheets are laid beside the hide: leather beyond all of them is a leg or a belly that reaches out. */
const BEYOND_PAPERS = 0.25;
/** How far floor is to be expected around a sheet. */
const BESIDE_PAPER_MM = 50;

/** How likely each pixel is leather by its place alone, 0 to 1. */
export function likelyPlace(level: Level, ground: Uint8Array): Float32Array {
  const toBorder = distanceToMarked(level, (i) => ground[i] === GROUND.unseen, true);
  const toPaper = distanceToMarked(level, (i) => ground[i] === GROUND.paper, false);
  const deepest = toBorder.reduce((most, away) => Math.max(most, away), 1);
  const likely = toBorder.map((away) => {
    const share = Math.min(1, away / (0.6 * deepest));
    return AT_BORDER + (IN_MIDDLE - AT_BORDER) * share * share * (3 - 2 * share);
  });
  const beside = BESIDE_PAPER_MM * level.pxPerMm;
  for (let i = 0; i < likely.length; i++)
    if (toPaper[i]! < beside) likely[i] = Math.min(likely[i]!, BESIDE_PAPER);
  const within = withinPapers(level, ground);
  if (within !== undefined)
    for (let i = 0; i < likely.length; i++)
      if (within[i] === 0) likely[i] = Math.min(likely[i]!, BEYOND_PAPERS);
  return likely;
}

/** 1 within the hull of all sheets; nothing where they do not lie around something. */
function withinPapers(level: Level, ground: Uint8Array): Uint8Array | undefined {
  const corners: Point[] = [];
  for (let i = 0; i < ground.length; i++)
    if (ground[i] === GROUND.paper) corners.push({ x: i % level.width, y: Math.floor(i / level.width) });
  if (corners.length < 3) return undefined;
  const hull = convexHull(corners);
  const within = new Uint8Array(ground.length);
  let count = 0;
  paintRing(level, hull, (pixel) => {
    within[pixel] = 1;
    count += 1;
  });
  // A hull of one sheet, or of two side by side, surrounds no hide.
  return count > 0.3 * ground.length ? within : undefined;
}
