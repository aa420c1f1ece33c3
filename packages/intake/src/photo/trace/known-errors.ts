import { distanceSq, pointInRegion, regionArea, regionCentroid, ringPerimeter } from '@hidebound/geometry';
import type { Point, Polyline, Region } from '@hidebound/geometry';
import type { UnsureEdge } from '@hidebound/leather';
import type { FloorError } from '../camera/solved-floor.js';

/** What is not known better of where the leather ends and the floor begins. */
export interface EdgeError {
  /** How far the whole outline may lie to one side, mm. */
  readonly offByMm: number;
  readonly unsure: readonly UnsureEdge[];
}

/** How far off the hide can be; each is meant to cover the truth in nine cases of ten. */
export interface HideErrors {
  readonly scaleShare: number;
  readonly areaShare: number;
  readonly leastMm: number;
  readonly mostMm: number;
  /** At places of the hide, in the frame of the floor. */
  readonly at: FloorError['at'];
}

/**
 * Errors of the floor and of the edge together. They have nothing to do with each other, so their squares add up;
 * neither have unsure stretches with one another.
 */
export function hideErrors(leather: Region, floor: FloorError, edge: EdgeError): HideErrors {
  const areaMm2 = Math.abs(regionArea(leather));
  const edgeShare = (ringPerimeter(leather.outer) * edge.offByMm) / areaMm2;
  const unsureShares = edge.unsure.map(({ line, offByMm }) => (lineLength(line) * offByMm) / 2 / areaMm2);
  const at = placesOn(leather, floor.at);
  const all = at.map(({ mm }) => Math.hypot(mm, edge.offByMm));
  return {
    scaleShare: floor.scaleShare,
    areaShare: Math.min(1, Math.hypot(floor.areaShare, edgeShare, ...unsureShares)),
    leastMm: Math.min(...all),
    mostMm: Math.max(...all),
    at: at.map((place, i) => ({ at: place.at, mm: all[i]! })),
  };
}

/** Those within the leather; where none is, the one nearest to its middle. */
function placesOn(leather: Region, at: FloorError['at']): FloorError['at'] {
  const inside = at.filter((place) => pointInRegion(place.at, leather) !== 'outside');
  const [first, ...rest] = at;
  if (inside.length > 0 || first === undefined) return inside;
  const middle = regionCentroid(leather);
  const isNearer = (a: Point, b: Point) => distanceSq(a, middle) < distanceSq(b, middle);
  return [rest.reduce((best, each) => (isNearer(each.at, best.at) ? each : best), first)];
}

export function lineLength(line: Polyline): number {
  return line.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - line[i]!.x, y - line[i]!.y), 0);
}
