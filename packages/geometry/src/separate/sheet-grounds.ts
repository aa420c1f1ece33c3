import type { Frame } from '../nest/frame.js';
import { frameOf, ringToFrame } from '../nest/frame.js';
import { isTaken } from '../nest/taken-region.js';
import { intersectRegions, offsetRegions, subtractRegions, unionRegions } from '../shape/clipper.js';
import { flatRings } from '../shape/flat-rings.js';
import { regionArea } from '../shape/ring.js';
import { OFFSET_ARC_TOLERANCE_MM } from '../tolerance.js';
import type { Distances, Need, QualityRegion, Sheet } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import type { Ground } from './ground.js';
import { buildGround } from './ground.js';
import type { SepSheet } from './world.js';

/** What an offset may fall short of its distance: its arcs, and the 1 µm grid on both sides. */
const OFFSET_SHORT_MM = OFFSET_ARC_TOLERANCE_MM + 0.002;

const ROUND = { join: 'round' } as const;

/** A sheet as the search sees it: grounds[0] is for whole outlines, grounds[1 + c] for need class c. */
export function buildSepSheet(sheet: Sheet, distances: Distances, needs: readonly Need[]): SepSheet {
  const frame = frameOf(sheet.useFrom);
  const allowed = allowedForBodies(sheet, distances);
  const rings = ringsInFrame(allowed, frame);
  const box = boxOf(rings);
  const isBox = allowed.length === 1 && isRectangle(rings, box);
  const grounds: (Ground | undefined)[] = [isBox ? undefined : groundOf(allowed, frame)];
  for (const need of needs) {
    const better = allowedForNeed(need, sheet);
    grounds.push(better === undefined ? undefined : groundOf(better, frame));
  }
  const { minU, minV, maxU, maxV } = box;
  return { frame, minU, minV, maxV, maxU, limit: maxU, grounds, isEmpty: rings.length === 0 };
}

function groundOf(regions: readonly Region[], frame: Frame): Ground | undefined {
  return buildGround(ringsInFrame(regions, frame));
}

function allowedForBodies(sheet: Sheet, distances: Distances): readonly Region[] {
  const { edge } = distances;
  const within = edge > 0 ? offsetRegions([sheet.region], -(edge + OFFSET_SHORT_MM), ROUND) : [sheet.region];
  const voids = sheet.qualities
    .filter(({ isVoid }) => isVoid)
    .flatMap((quality) => keptOff(quality, distances));
  return voids.length === 0 ? within : subtractRegions(within, unionRegions(voids));
}

function keptOff(quality: QualityRegion, distances: Distances): readonly Region[] {
  const distance = isTaken(quality) ? quality.searchClearMm : distances.void + quality.uncertaintyMm;
  return distance > 0 ? offsetRegions(quality.areas, distance + OFFSET_SHORT_MM, ROUND) : quality.areas;
}

/** Undefined where the need forbids nothing on this sheet. */
function allowedForNeed(need: Need, sheet: Sheet): readonly Region[] | undefined {
  const bad = sheet.qualities
    .filter((quality) => !quality.isVoid && (quality.grade > need.maxGrade || (need.strong && quality.weak)))
    .flatMap(({ areas }) => areas);
  if (need.zones === undefined) {
    return bad.length === 0 ? undefined : subtractRegions([sheet.region], unionRegions(bad));
  }
  const { zones } = need;
  const good = sheet.qualities
    .filter(({ zone }) => zone !== undefined && zones.includes(zone))
    .flatMap(({ areas }) => areas);
  const within = intersectRegions([sheet.region], unionRegions(good));
  return bad.length === 0 ? within : subtractRegions(within, unionRegions(bad));
}

function ringsInFrame(regions: readonly Region[], frame: Frame): Float64Array[] {
  const real = regions.filter((region) => regionArea(region) > 0);
  return flatRings(real).map((ring) => ringToFrame(frame, ring));
}

interface FrameBox {
  readonly minU: number;
  readonly minV: number;
  readonly maxU: number;
  readonly maxV: number;
}

function boxOf(rings: readonly Float64Array[]): FrameBox {
  let minU = Infinity;
  let minV = Infinity;
  let maxU = -Infinity;
  let maxV = -Infinity;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      minU = Math.min(minU, ring[i]!);
      maxU = Math.max(maxU, ring[i]!);
      minV = Math.min(minV, ring[i + 1]!);
      maxV = Math.max(maxV, ring[i + 1]!);
    }
  }
  return rings.length === 0 ? { minU: 0, minV: 0, maxU: 0, maxV: 0 } : { minU, minV, maxU, maxV };
}

function isRectangle(rings: readonly Float64Array[], box: FrameBox): boolean {
  const ring = rings[0];
  if (rings.length !== 1 || ring?.length !== 8) return false;
  for (let i = 0; i < 8; i += 2) {
    const onU = ring[i] === box.minU || ring[i] === box.maxU;
    const onV = ring[i + 1] === box.minV || ring[i + 1] === box.maxV;
    if (!onU || !onV) return false;
  }
  return true;
}
