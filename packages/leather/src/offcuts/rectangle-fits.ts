import {
  atan2Deg,
  distanceSq,
  minimumWidthBox,
  regionArea,
  regionBox,
  growBox,
  rotationDeg,
  subtractRegions,
  transformRegion,
  translation,
  unionRegions,
  widestInscribedCircle,
  orientRing,
} from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';

/** A leftover of exactly the size worth keeping is kept: the rectangle looked for is this much smaller, mm. */
const FIT_SLACK_MM = 0.02;
/** How closely the widest circle is found, mm. It decides early; in doubt the rectangle itself is tried. */
const CIRCLE_PRECISION_MM = 0.5;
/** Besides the long axis and the longest sides, the rectangle is tried at these steps, degrees. */
const ANGLE_STEP_DEG = 15;
const SIDES_TRIED = 6;

/**
 * True if a rectangle of `sizeMm`, either way round, fits into the region. Tried at every 15 degrees, along the
 * region's long axis and along its longest sides: a rectangle that fits at some angle between only is missed.
 */
export function rectangleFits(region: Region, sizeMm: readonly [number, number]): boolean {
  const [short, long] = [Math.min(...sizeMm) - FIT_SLACK_MM, Math.max(...sizeMm) - FIT_SLACK_MM];
  if (long <= 0) return true;
  if (regionArea(region) < Math.max(short, 0) * long) return false;
  const { radius } = widestInscribedCircle(region, CIRCLE_PRECISION_MM);
  if (2 * (radius - CIRCLE_PRECISION_MM) >= Math.sqrt(short * short + long * long)) return true;
  if (2 * (radius + CIRCLE_PRECISION_MM) < short) return false;
  return anglesToTry(region).some((deg) => fitsAt(region, deg, long, Math.max(short, FIT_SLACK_MM)));
}

/** True if a rectangle fits whose long side runs at this angle. */
function fitsAt(region: Region, deg: number, long: number, short: number): boolean {
  const turned = transformRegion(rotationDeg(-deg), region);
  const along = erodeAlong([turned], { x: long, y: 0 });
  return along.length > 0 && erodeAlong(along, { x: 0, y: short }).length > 0;
}

/** Middles of all straight runs `by` that lie within the regions. */
function erodeAlong(regions: readonly Region[], by: Point): Region[] {
  const box = growBox(
    regions.map(regionBox).reduce((a, b) => ({
      minX: Math.min(a.minX, b.minX),
      minY: Math.min(a.minY, b.minY),
      maxX: Math.max(a.maxX, b.maxX),
      maxY: Math.max(a.maxY, b.maxY),
    })),
    Math.abs(by.x) + Math.abs(by.y) + 1,
  );
  const frame: Region = {
    outer: [
      { x: box.minX, y: box.minY },
      { x: box.maxX, y: box.minY },
      { x: box.maxX, y: box.maxY },
      { x: box.minX, y: box.maxY },
    ],
    openings: [],
  };
  const outside = subtractRegions([frame], regions);
  const half = { x: by.x / 2, y: by.y / 2 };
  const swept = outside.flatMap((part) => [
    transformRegion(translation(half.x, half.y), part),
    transformRegion(translation(-half.x, -half.y), part),
    ...[part.outer, ...part.openings].flatMap((ring) => sweptSides(ring, half)),
  ]);
  return subtractRegions(regions, unionRegions(swept));
}

function sweptSides(ring: Ring, half: Point): Region[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    if ((b.x - a.x) * half.y - (b.y - a.y) * half.x === 0) return [];
    const side = [
      { x: a.x - half.x, y: a.y - half.y },
      { x: b.x - half.x, y: b.y - half.y },
      { x: b.x + half.x, y: b.y + half.y },
      { x: a.x + half.x, y: a.y + half.y },
    ];
    return [{ outer: orientRing(side, 'outer'), openings: [] }];
  });
}

function anglesToTry(region: Region): number[] {
  const sides = region.outer
    .map((a, i) => ({ a, b: region.outer[(i + 1) % region.outer.length]! }))
    .sort((one, other) => distanceSq(other.a, other.b) - distanceSq(one.a, one.b))
    .slice(0, SIDES_TRIED)
    .map(({ a, b }) => atan2Deg(b.y - a.y, b.x - a.x));
  const own = [minimumWidthBox(region.outer).angleDeg, ...sides];
  const steps = Array.from({ length: 180 / ANGLE_STEP_DEG }, (_, i) => i * ANGLE_STEP_DEG);
  return [...own.flatMap((deg) => [deg, deg + 90]), ...steps];
}
