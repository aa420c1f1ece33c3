import { SKIN_MM } from '../nest/constants.js';
import type { Frame } from '../nest/frame.js';
import { ringToFrame } from '../nest/frame.js';
import type { Soup } from '../nest/soup.js';
import { buildSoup } from '../nest/soup.js';
import { sinCosDeg } from '../number/trigonometry.js';
import { unionRegions } from '../shape/clipper.js';
import { flatRings } from '../shape/flat-rings.js';
import type { Distances, Need, QualityRegion, Sheet } from '../types/problem.js';
import type { Region } from '../types/shape.js';

/** Rings to keep off, or within, and how far (the skin included). */
export interface Standing {
  readonly soup: Soup;
  readonly distance: number;
}

/** What one need forbids on a sheet. */
export interface NeedStanding {
  readonly bad: readonly Standing[];
  /** The union of its zones, which it must not leave. */
  readonly zone: Standing | undefined;
}

/** What lies on a sheet already, and what another lane takes up. */
export interface Occupied {
  readonly region: Region;
  readonly group: string | undefined;
}

/** A sheet turned so that u runs along a lane and v across it, to the right of u. */
export interface LaneSpace {
  readonly sheet: Sheet;
  readonly angleDeg: number;
  readonly frame: Frame;
  /** The outline alone, and all rings. */
  readonly outline: Soup;
  readonly rings: Soup;
  readonly voids: readonly Standing[];
  readonly needs: readonly NeedStanding[];
}

export function buildLaneSpace(
  sheet: Sheet,
  angleDeg: number,
  distances: Distances,
  needs: readonly Need[],
): LaneSpace {
  const { sin, cos } = sinCosDeg(angleDeg);
  const frame: Frame = { fx: cos, fy: sin };
  return {
    sheet,
    angleDeg,
    frame,
    outline: soupInFrame(frame, [{ outer: sheet.region.outer, openings: [] }]),
    rings: soupInFrame(frame, [sheet.region]),
    voids: sheet.qualities
      .filter((quality) => quality.isVoid)
      .map((quality) => ({
        soup: soupInFrame(frame, joined(quality.areas)),
        distance: distances.void + quality.uncertaintyMm + SKIN_MM,
      }))
      .filter(({ soup }) => soup.count > 0),
    needs: needs.map((need) => needStanding(need, sheet, frame)),
  };
}

export function soupInFrame(frame: Frame, regions: readonly Region[]): Soup {
  return buildSoup(flatRings(regions).map((ring) => ringToFrame(frame, ring)));
}

function joined(areas: readonly Region[]): readonly Region[] {
  return areas.length > 1 ? unionRegions(areas) : areas;
}

function needStanding(need: Need, sheet: Sheet, frame: Frame): NeedStanding {
  const bad = sheet.qualities
    .filter((quality) => isBadFor(quality, need))
    .map((quality) => ({ soup: soupInFrame(frame, joined(quality.areas)), distance: SKIN_MM }))
    .filter(({ soup }) => soup.count > 0);
  return { bad, zone: need.zones === undefined ? undefined : zoneStanding(need.zones, sheet, frame) };
}

/** A void is kept off by every strap, whatever it needs. */
function isBadFor(quality: QualityRegion, need: Need): boolean {
  return !quality.isVoid && (quality.grade > need.maxGrade || (need.strong && quality.weak));
}

function zoneStanding(zones: readonly string[], sheet: Sheet, frame: Frame): Standing {
  const areas = sheet.qualities
    .filter((quality) => quality.zone !== undefined && zones.includes(quality.zone))
    .flatMap((quality) => quality.areas);
  return { soup: soupInFrame(frame, unionRegions(areas)), distance: SKIN_MM };
}
