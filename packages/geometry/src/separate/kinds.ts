import type { PreparedItem } from '../nest/prepared-item.js';
import { offsetRegions } from '../shape/clipper.js';
import { flatRings } from '../shape/flat-rings.js';
import { convexHull } from '../shape/hull.js';
import { insetRing } from '../shape/inset-ring.js';
import { ringArea, orientRing } from '../shape/ring.js';
import { simplifyGrowing, simplifyShrinking } from '../shape/simplify.js';
import { OFFSET_ARC_TOLERANCE_MM } from '../tolerance.js';
import type { Point, Region, Ring } from '../types/shape.js';
import { MOST_PART_POLES, MOST_POLES, SHAPE_CORNERS, SHAPE_SIMPLIFY_MM, TIGHT_EASE_MM } from './constants.js';
import { polesOf } from './poles.js';
import type { RingSet, SepShape, ShapeBody } from './shape.js';
import { poleColumns, radiusAbout, ringSetOf } from './shape.js';

/** What a kind's shapes depend on beside the item. */
export interface ShapeOptions {
  /** What outlines grow by on either side, against pieces of the same group and of others. */
  readonly pairGrowth: number;
  readonly farGrowth: number;
  /** What more than its outline must lie on the sheet: room for a rough cut. */
  readonly edgeGrowth: number;
  /** False where a sheet's box says all about where outlines may lie. */
  readonly hasGround: boolean;
  /** Need classes for which some sheet has leather that is not good enough. */
  readonly strictNeeds: ReadonlySet<number>;
  /** Insets, the loosest first. */
  readonly eases: readonly number[];
}

/** The shapes of an item, one for each ease. */
export function shapesOf(prepared: PreparedItem, options: ShapeOptions): SepShape[] {
  const region = simpler(prepared.item.region);
  const rings = flatRings([region]);
  const near = grown(region, options.pairGrowth);
  const far = options.farGrowth === options.pairGrowth ? near : grown(region, options.farGrowth);
  const edge = grown(region, options.edgeGrowth);
  const poles = polesOf(rings, prepared.areaMm2, MOST_POLES);
  const centreX = poles.length > 0 ? poles[0]! : rings[0]![0]!;
  const centreY = poles.length > 0 ? poles[1]! : rings[0]![1]!;
  const hull = convexHull(pointsOf(rings[0]!));
  const parts = prepared.needs.filter(({ needClass }) => options.strictNeeds.has(needClass));
  const partPoles = parts.map(({ insetRings }) => polesOf(insetRings, flatArea(insetRings), MOST_PART_POLES));
  return options.eases.map((ease): SepShape => {
    const inset = (all: readonly Float64Array[]): Float64Array[] => all.map((ring) => insetRing(ring, ease));
    const plain = ringSetOf(inset(rings), centreX, centreY);
    const outline = edge === undefined ? plain : ringSetOf(inset(edge), centreX, centreY);
    const pair = near === undefined ? plain : ringSetOf(inset(near), centreX, centreY);
    const columns = poleColumns(poles, centreX, centreY);
    const bodies: ShapeBody[] = [];
    if (options.hasGround) bodies.push(bodyOf(0, outline, columns));
    parts.forEach(({ needClass, insetRings }, k) => {
      const rings = ringSetOf(insetRings, centreX, centreY);
      bodies.push(bodyOf(1 + needClass, rings, poleColumns(partPoles[k]!, centreX, centreY)));
    });
    return {
      pair,
      far: far === near ? pair : ringSetOf(inset(far!), centreX, centreY),
      ...columns,
      pairGrowth: options.pairGrowth - ease,
      farGrowth: options.farGrowth - ease,
      outline,
      bodies,
      lambda: Math.sqrt(ringArea(hull)),
      diameter: diameterOf(hull),
      areaMm2: prepared.areaMm2,
      centreX,
      centreY,
    };
  });
}

function bodyOf(ground: number, rings: RingSet, columns: ReturnType<typeof poleColumns>): ShapeBody {
  const { poleX, poleY } = columns;
  return { ground, rings, radius: radiusAbout(rings, poleX[0] ?? 0, poleY[0] ?? 0), ...columns };
}

/** Fewer corners, only ever so that the material grows. */
function simpler(region: Region): Region {
  return {
    outer:
      region.outer.length > SHAPE_CORNERS ? simplifyGrowing(region.outer, SHAPE_SIMPLIFY_MM) : region.outer,
    openings: region.openings.map((ring) =>
      ring.length > SHAPE_CORNERS ? orientRing(simplifyShrinking(ring, SHAPE_SIMPLIFY_MM), 'opening') : ring,
    ),
  };
}

/** Undefined for no growth: the rings as they are. */
function grown(region: Region, growth: number): Float64Array[] | undefined {
  if (growth <= 0) return undefined;
  const offset = offsetRegions([region], growth + OFFSET_ARC_TOLERANCE_MM + TIGHT_EASE_MM, {
    join: 'round',
  });
  return flatRings(offset.map(simpler));
}

function pointsOf(ring: Float64Array): Point[] {
  const points: Point[] = [];
  for (let i = 0; i < ring.length; i += 2) points.push({ x: ring[i]!, y: ring[i + 1]! });
  return points;
}

function flatArea(rings: readonly Float64Array[]): number {
  return rings.reduce((sum, ring) => sum + ringArea(pointsOf(ring)), 0);
}

function diameterOf(hull: Ring): number {
  let most = 0;
  for (const a of hull) {
    for (const b of hull) {
      const dx = a.x - b.x;
      const dy = a.y - b.y;
      most = Math.max(most, dx * dx + dy * dy);
    }
  }
  return Math.sqrt(most);
}
