import { unionRegions } from '../shape/clipper.js';
import { flatRings } from '../shape/flat-rings.js';
import { regionArea } from '../shape/ring.js';
import type { Distances, Need, QualityRegion, Sheet } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { SKIN_MM } from './constants.js';
import type { Frame } from './frame.js';
import { frameOf, ringToFrame } from './frame.js';
import type { Lattice, Layer } from './raster.js';
import {
  clearRuns,
  addRuns,
  createLayer,
  copyLayer,
  edgeRuns,
  interiorRuns,
  refreshJumps,
} from './raster.js';
import type { Soup } from './soup.js';
import { buildSoup } from './soup.js';

/** Rings to keep off, and how far (the skin included). */
export interface Obstacle {
  readonly soup: Soup;
  readonly distance: number;
}

/** What one distinct need forbids on one sheet. */
export interface NeedSpace {
  /** Regions that it must not touch. */
  readonly bad: readonly Obstacle[];
  /** The union of its zones, which it must not leave. */
  readonly zone: Obstacle | undefined;
  /** The same on the lattice; absent where nothing is forbidden. */
  readonly layer: Layer | undefined;
}

/** What never changes about a sheet during a search, in its search frame. */
export interface SheetSpace {
  readonly index: number;
  readonly sheet: Sheet;
  readonly frame: Frame;
  readonly lattice: Lattice;
  readonly region: Soup;
  /** Outline and openings, each with the distance that bodies keep. */
  readonly edge: Obstacle;
  readonly voids: readonly Obstacle[];
  readonly needs: readonly NeedSpace[];
  /** The need that this sheet has least leather for, which others leave it; undefined if none forbids anything. */
  readonly strictest: number | undefined;
  /** The sheet without pieces: everything that a body can't cover. */
  readonly empty: Layer;
  readonly netAreaMm2: number;
}

export function buildSheetSpace(
  sheet: Sheet,
  index: number,
  distances: Distances,
  needs: readonly Need[],
  pitch: number,
): SheetSpace {
  const frame = frameOf(sheet.useFrom);
  const region = soupOf(frame, [sheet.region]);
  const lattice = latticeOver(region, pitch);
  const edge = { soup: region, distance: distances.edge + SKIN_MM };
  const voids = sheet.qualities
    .filter((quality) => quality.isVoid)
    .map((quality) => ({
      soup: soupOf(frame, joined(quality.areas)),
      distance: distances.void + quality.uncertaintyMm + SKIN_MM,
    }))
    .filter(({ soup }) => soup.count > 0);
  const empty = emptyLayer(lattice, edge, voids);
  const needSpaces = needs.map((need) => buildNeedSpace(need, sheet, frame, lattice));
  return {
    index,
    sheet,
    frame,
    lattice,
    region,
    edge,
    voids,
    needs: needSpaces,
    strictest: strictestOf(needSpaces, empty),
    empty,
    netAreaMm2: regionArea(sheet.region),
  };
}

function strictestOf(needs: readonly NeedSpace[], empty: Layer): number | undefined {
  let strictest: number | undefined;
  let most = 0;
  needs.forEach(({ layer }, i) => {
    if (layer === undefined) return;
    let blocked = 0;
    for (let k = 0; k < layer.count.length; k++) if (layer.count[k] !== 0 && empty.count[k] === 0) blocked++;
    if (blocked > most) {
      most = blocked;
      strictest = i;
    }
  });
  return strictest;
}

function joined(areas: readonly Region[]): readonly Region[] {
  return areas.length > 1 ? unionRegions(areas) : areas;
}

function soupOf(frame: Frame, regions: readonly Region[]): Soup {
  return buildSoup(flatRings(regions).map((ring) => ringToFrame(frame, ring)));
}

/** Sample points lie in the middle of the pitch, and a rim of points lies outside on every side. */
function latticeOver(region: Soup, pitch: number): Lattice {
  return {
    minX: region.minX - pitch * 0.5,
    minY: region.minY - pitch * 0.5,
    pitch,
    columns: Math.ceil((region.maxX - region.minX) / pitch) + 2,
    rows: Math.ceil((region.maxY - region.minY) / pitch) + 2,
  };
}

function emptyLayer(lattice: Lattice, edge: Obstacle, voids: readonly Obstacle[]): Layer {
  const layer = createLayer(lattice, 1);
  clearRuns(layer, Int32Array.from(interiorRuns(edge.soup, lattice)));
  addRuns(layer, Int32Array.from(edgeRuns(edge.soup, edge.distance, lattice)), 1);
  for (const { soup, distance } of voids) {
    addRuns(layer, Int32Array.from(interiorRuns(soup, lattice)), 1);
    addRuns(layer, Int32Array.from(edgeRuns(soup, distance, lattice)), 1);
  }
  refreshJumps(layer, 0, lattice.rows - 1);
  return layer;
}

function isBadFor(quality: QualityRegion, need: Need): boolean {
  return !quality.isVoid && (quality.grade > need.maxGrade || (need.strong && quality.weak));
}

function buildNeedSpace(need: Need, sheet: Sheet, frame: Frame, lattice: Lattice): NeedSpace {
  const bad = sheet.qualities
    .filter((quality) => isBadFor(quality, need))
    .map((quality) => ({ soup: soupOf(frame, joined(quality.areas)), distance: SKIN_MM }))
    .filter(({ soup }) => soup.count > 0);
  const zone = need.zones === undefined ? undefined : zoneOf(need.zones, sheet, frame);
  if (bad.length === 0 && zone === undefined) return { bad, zone, layer: undefined };
  const layer = createLayer(lattice, zone === undefined ? 0 : 1);
  if (zone !== undefined) clearRuns(layer, Int32Array.from(interiorRuns(zone.soup, lattice)));
  for (const { soup } of bad) addRuns(layer, Int32Array.from(interiorRuns(soup, lattice)), 1);
  refreshJumps(layer, 0, lattice.rows - 1);
  return { bad, zone, layer };
}

function zoneOf(zones: readonly string[], sheet: Sheet, frame: Frame): Obstacle {
  const areas = sheet.qualities
    .filter((quality) => quality.zone !== undefined && zones.includes(quality.zone))
    .flatMap((quality) => quality.areas);
  return { soup: soupOf(frame, unionRegions(areas)), distance: SKIN_MM };
}

/** A layer that pieces can be added to. */
export function layerForPieces(space: SheetSpace): Layer {
  return copyLayer(space.empty);
}
