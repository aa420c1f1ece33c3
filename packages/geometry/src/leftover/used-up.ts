import { sinCosDeg } from '../number/trigonometry.js';
import { intersectRegions } from '../shape/clipper.js';
import { regionArea, ringBox } from '../shape/ring.js';
import type { Item, Objective, Placement, Sheet } from '../types/problem.js';
import type { Point, Region, Ring } from '../types/shape.js';
import { holdsRectangle } from './holds-rectangle.js';

/** What a sheet loses to the pieces that lie on it, and what is left of it. */
export interface UsedUp {
  /**
   * Where one straight cut across `useFrom` frees the pieces: the distance of the cut from (0, 0) along
   * `useFrom`, in mm, at the farthest corner of the pieces. Absent on a sheet without pieces, which isn't cut.
   */
  readonly cutAtMm?: number;
  /** Net area on the pieces' side of the cut, and what lies beyond it but is too small to keep, in mm². */
  readonly areaMm2: number;
  /** What lies beyond the cut and is worth keeping; the whole sheet if it isn't cut. */
  readonly leftovers: readonly Region[];
}

/** Beyond the sheet's box by this much, so that the half plane of a cut can be a rectangle. */
const BEYOND_MM = 10;

/**
 * How far a sheet is used up by pieces that lie on it: its net area (openings taken off) on the pieces' side of
 * one straight freeing cut across `useFrom`, and every part beyond the cut that doesn't hold a rectangle of
 * `keepMm`, either way round, with sides along and across the cut. A sheet without pieces counts 0.
 * Cuts run on the 0.001 mm grid, so areas are right to about 1 µm times the length of the cut.
 */
export function usedUpArea(sheet: Sheet, pieces: readonly Ring[], keepMm: Objective['keepMm']): UsedUp {
  const cutAtMm = freeingCutMm(sheet.useFrom, pieces);
  if (cutAtMm === undefined) return { areaMm2: 0, leftovers: [sheet.region] };
  const beyond = intersectRegions([sheet.region], [halfPlane(sheet, cutAtMm)]);
  const leftovers = beyond.filter((part) => isWorthKeeping(part, sheet.useFrom, keepMm));
  let areaMm2 = regionArea(sheet.region);
  for (const part of leftovers) areaMm2 -= regionArea(part);
  return { cutAtMm, areaMm2: Math.max(0, areaMm2), leftovers };
}

/** Outer rings of placed items where they lie on their sheet, in the order of the placements. */
export function placedRings(placements: readonly Placement[], items: readonly Item[]): Ring[] {
  const byId = new Map(items.map((item) => [item.id, item]));
  return placements.map((placement) => {
    const { sin, cos } = sinCosDeg(placement.rotationDeg);
    return byId.get(placement.item)!.region.outer.map(({ x, y }) => ({
      x: x * cos - y * sin + placement.x,
      y: x * sin + y * cos + placement.y,
    }));
  });
}

/** Where the freeing cut lies along `useFrom`: at the farthest corner of the pieces; undefined without pieces. */
export function freeingCutMm(useFrom: Point, pieces: readonly Ring[]): number | undefined {
  let farthest: number | undefined;
  for (const ring of pieces) {
    for (const { x, y } of ring) {
      const along = x * useFrom.x + y * useFrom.y;
      if (farthest === undefined || along > farthest) farthest = along;
    }
  }
  return farthest;
}

function isWorthKeeping(part: Region, useFrom: Point, keepMm: Objective['keepMm']): boolean {
  const [a, b] = keepMm;
  return holdsRectangle(part, useFrom, a, b) || (a !== b && holdsRectangle(part, useFrom, b, a));
}

/** A rectangle that covers the sheet beyond the cut. */
function halfPlane(sheet: Sheet, cutAtMm: number): Region {
  const { useFrom } = sheet;
  const turned = sheet.region.outer.map(({ x, y }) => ({
    x: x * useFrom.x + y * useFrom.y,
    y: y * useFrom.x - x * useFrom.y,
  }));
  const box = ringBox(turned);
  const far = Math.max(box.maxX, cutAtMm) + BEYOND_MM;
  const corners: readonly (readonly [number, number])[] = [
    [cutAtMm, box.minY - BEYOND_MM],
    [far, box.minY - BEYOND_MM],
    [far, box.maxY + BEYOND_MM],
    [cutAtMm, box.maxY + BEYOND_MM],
  ];
  const outer = corners.map(([u, v]) => ({
    x: u * useFrom.x - v * useFrom.y,
    y: u * useFrom.y + v * useFrom.x,
  }));
  return { outer, openings: [] };
}
