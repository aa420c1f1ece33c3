import { usedUpArea } from '@hidebound/geometry';
import type { Point, Region, Ring } from '@hidebound/geometry';
import { netRegions } from '../hide/hide-region.js';

/** The straight cut across the hide that frees what lies beyond the last piece. */
export interface FreeingCut {
  readonly from: Point;
  readonly to: Point;
  /** Unit vector into the rest. */
  readonly towards: Point;
}

export interface Leftover {
  /** None where nothing is laid, or where the pieces reach the hide's far end. */
  readonly freeingCut?: FreeingCut;
  /** What is beyond the cut and worth keeping, each part on its own. */
  readonly kept: readonly Region[];
}

/**
 * What is left of a hide: everything beyond one straight cut at a right angle to `useFrom`, laid along the piece that
 * reaches furthest; of that, the parts that hold a rectangle of `keepMm`. An untouched hide is left whole. It is what
 * nesting counts as left over (`usedUpArea` of geometry).
 */
export function leftoverOf(input: {
  readonly hide: Region;
  /** Everything that was cut from it: pieces, rough cuts, swatches, spoiled copies. */
  readonly taken: readonly Region[];
  readonly useFrom: Point;
  readonly keepMm: readonly [number, number];
}): Leftover {
  const { hide, taken, useFrom, keepMm } = input;
  if (taken.length === 0) return { kept: netRegions(hide) };
  const sheet = { id: '', region: hide, qualities: [], lot: '', useFrom };
  const { cutAtMm, leftovers } = usedUpArea(
    sheet,
    taken.map(({ outer }) => outer),
    keepMm,
  );
  const ends = cutAtMm === undefined ? undefined : cutEnds(hide.outer, useFrom, cutAtMm);
  return {
    kept: leftovers,
    ...(ends === undefined ? {} : { freeingCut: { ...ends, towards: useFrom } }),
  };
}

/** Where the cut enters and leaves the outline for the first and last time; none if it misses the hide. */
function cutEnds(
  outline: Ring,
  axis: Point,
  cutAtMm: number,
): { readonly from: Point; readonly to: Point } | undefined {
  let first: { readonly at: number; readonly point: Point } | undefined;
  let last: typeof first;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    const [da, db] = [a, b].map((p) => p.x * axis.x + p.y * axis.y - cutAtMm) as [number, number];
    if (da > 0 === db > 0) return;
    const share = da / (da - db);
    const point = { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
    const at = point.y * axis.x - point.x * axis.y;
    if (first === undefined || at < first.at) first = { at, point };
    if (last === undefined || at > last.at) last = { at, point };
  });
  return first === undefined || last === undefined ? undefined : { from: first.point, to: last.point };
}
