import { groupRanks } from '../rough/group-ranks.js';
import { unionRegions } from '../shape/clipper.js';
import { flatRings } from '../shape/flat-rings.js';
import { insetRing } from '../shape/inset-ring.js';
import { regionArea, regionCentroid } from '../shape/ring.js';
import { FIELD_GRID_MM } from '../tolerance.js';
import type { Item, Need, NestProblem } from '../types/problem.js';
import type { Point, Region } from '../types/shape.js';
import { SKIN_MM } from './constants.js';
import { hullAnglesDeg } from './hull-angles.js';
import { buildSoup, isInSoup } from './soup.js';

/** Directions of long edges that are worth laying along something. */
const MOST_EDGE_ANGLES = 6;

/** An item as the search sees it, in its own frame. */
export interface PreparedItem {
  readonly index: number;
  readonly item: Item;
  readonly areaMm2: number;
  readonly centroid: Point;
  /** Rings as they are, for others to keep off; and shrunk by the skin, for moving. */
  readonly rings: readonly Float64Array[];
  readonly insetRings: readonly Float64Array[];
  readonly needs: readonly PreparedNeed[];
  /** Where rules about direction and thickness must hold: [x0, y0, …], the centroid first. */
  readonly proofPoints: Float64Array;
  /** Index of its group among `PreparedItems.groups`. */
  readonly group: number;
  /** Among items alike urgent, those of lower rank are laid first: pieces that share rough cuts one after the other. */
  readonly rank: number;
  /** Angles of its longest hull edges, degrees in its own frame, longest first. */
  readonly edgeAnglesDeg: readonly number[];
}

/** A need and where on the item it holds. */
export interface PreparedNeed {
  /** Index among the distinct needs of the problem. */
  readonly needClass: number;
  readonly insetRings: readonly Float64Array[];
}

/** The distinct needs, and the items that have them. */
export interface PreparedItems {
  readonly items: readonly PreparedItem[];
  readonly needs: readonly Need[];
  /** One for each group, and one more where some of its items have a rough cut and others have none. */
  readonly groups: readonly string[];
}

export function prepareItems(problem: NestProblem): PreparedItems {
  const needs = new Map<string, { index: number; need: Need }>();
  const groups = new Map<string, number>();
  const ranks = groupRanks(problem);
  const classOf = (need: Need): number => {
    const key = needKey(need);
    const known = needs.get(key) ?? { index: needs.size, need };
    needs.set(key, known);
    return known.index;
  };
  const items = problem.items.map((item, index): PreparedItem => {
    const key = groupKey(item);
    const group = groups.get(key) ?? groups.size;
    groups.set(key, group);
    const rings = flatRings([item.region]);
    return {
      index,
      item,
      areaMm2: regionArea(item.region),
      centroid: regionCentroid(item.region),
      rings,
      insetRings: rings.map(shrunk),
      needs: prepareNeeds(item, classOf),
      proofPoints: proofPoints(item.region, rings),
      group,
      rank: ranks.get(item.id)!,
      edgeAnglesDeg: hullAnglesDeg(rings[0]!, MOST_EDGE_ANGLES),
    };
  });
  return { items, needs: [...needs.values()].map(({ need }) => need), groups: [...groups.keys()] };
}

function shrunk(ring: Float64Array): Float64Array {
  return insetRing(ring, SKIN_MM);
}

/** An item without a rough cut keeps out of those of its own group as of any other. */
function groupKey({ group, roughMargin }: Item): string {
  return JSON.stringify([group ?? null, roughMargin !== undefined]);
}

function needKey(need: Need): string {
  const zones = need.zones === undefined ? '' : JSON.stringify([...need.zones].sort());
  return `${need.maxGrade}/${String(need.strong)}/${zones}`;
}

/** The item's own need holds everywhere, each part's need within the part. */
function prepareNeeds(item: Item, classOf: (need: Need) => number): PreparedNeed[] {
  const parts = item.parts.filter((part) => part.areas.length > 0);
  const needs: PreparedNeed[] = [];
  const push = (need: Need, regions: readonly Region[]): void => {
    const rings = flatRings(regions).map(shrunk);
    if (rings.length > 0) needs.push({ needClass: classOf(need), insetRings: rings });
  };
  push(item.need, [item.region]);
  for (const part of parts) push(part.need, part.areas.length > 1 ? unionRegions(part.areas) : part.areas);
  return needs;
}

/** The centroid, then the crossings of a 50 mm grid through (0, 0) that lie within. */
function proofPoints(region: Region, rings: readonly Float64Array[]): Float64Array {
  const soup = buildSoup(rings);
  const centre = regionCentroid(region);
  const points = [centre.x, centre.y];
  for (let j = Math.ceil(soup.minY / FIELD_GRID_MM); j * FIELD_GRID_MM <= soup.maxY; j++) {
    for (let i = Math.ceil(soup.minX / FIELD_GRID_MM); i * FIELD_GRID_MM <= soup.maxX; i++) {
      const x = i * FIELD_GRID_MM;
      const y = j * FIELD_GRID_MM;
      if (isInSoup(soup, x, y)) points.push(x, y);
    }
  }
  return Float64Array.from(points);
}
