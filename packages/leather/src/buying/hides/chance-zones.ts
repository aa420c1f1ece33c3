import {
  curveFromPolyline,
  flattenCurve,
  intersectRegions,
  orientRing,
  regionArea,
  roundPoint,
} from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import type { Zone } from '../../model/hide.js';
import type { CutFrame } from './cut-frame.js';
import type { HidePlan, PlannedZone } from './hide-plan.js';

/** Parts of a zone that are smaller than this share of the hide are slivers along the edge. */
const LEAST_SHARE = 0.002;
/** How near the edge zones end, mm: nobody draws them nearer. */
const EDGE_TOLERANCE_MM = 0.5;

/** The zones of a plan, clipped to the outline. */
export function chanceZones(plan: HidePlan, frame: CutFrame): Zone[] {
  const outer = orientRing(flattenCurve(frame.outline, EDGE_TOLERANCE_MM).slice(0, -1), 'outer');
  const counts = new Map<string, number>();
  return plan.zones.flatMap((zone) =>
    ringsOf(zone, plan, frame).flatMap((ring) =>
      intersectRegions([{ outer: orientRing(ring, 'outer'), openings: [] }], [{ outer, openings: [] }])
        .filter((part) => regionArea(part) > LEAST_SHARE * frame.areaMm2)
        .map((part) => {
          const count = (counts.get(zone.kind) ?? 0) + 1;
          counts.set(zone.kind, count);
          const outline = curveFromPolyline(part.outer.map(roundPoint), true);
          return { id: `${zone.kind}-${count}`, kind: zone.kind, outline };
        }),
    ),
  );
}

function ringsOf({ points, joins }: PlannedZone, { isWhole }: HidePlan, frame: CutFrame): Ring[] {
  const near = points.map(frame.at);
  if (!isWhole) return [near];
  const far: Point[] = points.map(([along, out]) => frame.at([along, -out])).reverse();
  // Both halves start and end on the base line; the far one adds only what lies beyond it.
  return joins ? [[...near, ...far.slice(1, -1)]] : [near, far];
}
