import { intersectRegions, regionBox } from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';
import { netRegions } from '../hide/hide-region.js';
import { rectangleFits } from '../offcuts/rectangle-fits.js';

/** The straight cut across the hide that frees what lies beyond the last piece. */
export interface FreeingCut {
  readonly from: Point;
  readonly to: Point;
  /** Unit vector into the rest. */
  readonly towards: Point;
}

export interface Leftover {
  /** None where the pieces reach the hide's far end, or nothing is laid. */
  readonly freeingCut?: FreeingCut;
  /** What is beyond the cut and worth keeping, each part on its own. */
  readonly kept: readonly Region[];
}

/** Two cuts nearer than this are one, mm: nothing lies between them. */
const LEAST_REST_MM = 0.001;

/**
 * What is left of a hide: everything beyond one straight cut at a right angle to `useFrom`, laid along the piece that
 * reaches furthest; of that, the parts into which a rectangle of `keepMm` fits. An untouched hide is left whole.
 */
export function leftoverOf(input: {
  readonly hide: Region;
  /** Everything that was cut from it: pieces, rough cuts, swatches, spoiled copies. */
  readonly taken: readonly Region[];
  readonly useFrom: Point;
  readonly keepMm: readonly [number, number];
}): Leftover {
  const { hide, taken, useFrom, keepMm } = input;
  const net = netRegions(hide);
  if (taken.length === 0) return { kept: net };
  const reach = Math.max(...taken.flatMap(({ outer }) => outer.map((p) => along(p, useFrom))));
  const end = Math.max(...hide.outer.map((p) => along(p, useFrom)));
  if (reach >= end - LEAST_REST_MM) return { kept: [] };
  const beyond = intersectRegions(net, [halfPlane(hide, useFrom, reach)]);
  const kept = beyond.filter((part) => rectangleFits(part, keepMm));
  const ends = cutEnds(hide.outer, useFrom, reach);
  if (ends === undefined) return { kept };
  return { freeingCut: { ...ends, towards: useFrom }, kept };
}

function along(p: Point, axis: Point): number {
  return p.x * axis.x + p.y * axis.y;
}

/** All of the hide's neighbourhood beyond the line. */
function halfPlane(hide: Region, axis: Point, reach: number): Region {
  const box = regionBox(hide);
  const size = box.maxX - box.minX + (box.maxY - box.minY) + 1;
  const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const off = reach - along(centre, axis);
  const foot = { x: centre.x + off * axis.x, y: centre.y + off * axis.y };
  const corner = (forth: number, side: number): Point => ({
    x: foot.x + size * (forth * axis.x - side * axis.y),
    y: foot.y + size * (forth * axis.y + side * axis.x),
  });
  return { outer: [corner(0, -1), corner(2, -1), corner(2, 1), corner(0, 1)], openings: [] };
}

/** Where the line enters and leaves the outline for the first and last time. */
function cutEnds(
  outline: Ring,
  axis: Point,
  reach: number,
): { readonly from: Point; readonly to: Point } | undefined {
  let first: { readonly at: number; readonly point: Point } | undefined;
  let last: typeof first;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const [da, db] = [along(a, axis) - reach, along(b, axis) - reach];
    if (da > 0 === db > 0) return;
    const share = da / (da - db);
    const point = { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
    const at = point.y * axis.x - point.x * axis.y;
    if (first === undefined || at < first.at) first = { at, point };
    if (last === undefined || at > last.at) last = { at, point };
  });
  return first === undefined || last === undefined ? undefined : { from: first.point, to: last.point };
}
