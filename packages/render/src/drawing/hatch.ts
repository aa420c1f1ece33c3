import { sinCosDeg } from '@hidebound/geometry';
import type { Curve, Point, Region, Ring } from '@hidebound/geometry';

export interface HatchOptions {
  readonly spacingMm: number;
  /** The lines run this way, clockwise from the x axis. */
  readonly angleDeg: number;
  /** Lengths of dash and gap along each line; absent: whole lines. */
  readonly dashMm?: readonly [number, number];
}

/**
 * Parallel lines across regions (which don't overlap), as real lines cut off at the edges, so that every writer draws
 * the same. The lines lie on one grid of the whole picture: neighbouring regions are hatched in step.
 */
export function hatchLines(regions: readonly Region[], options: HatchOptions): Curve[] {
  const { sin, cos } = sinCosDeg(options.angleDeg);
  const rings = regions.flatMap((region) => [region.outer, ...region.openings]);
  const turned = rings.map((ring) =>
    ring.map((p) => ({ x: p.x * cos + p.y * sin, y: -p.x * sin + p.y * cos })),
  );
  const back = (x: number, y: number): Point => ({ x: x * cos - y * sin, y: x * sin + y * cos });
  const curves: Curve[] = [];
  for (const [row, crossings] of rowsOf(turned, options.spacingMm)) {
    const y = (row + 0.5) * options.spacingMm;
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      for (const [from, to] of dashes(crossings[i]!, crossings[i + 1]!, row, options.dashMm)) {
        curves.push({
          start: back(from, y),
          segments: [{ kind: 'line', to: back(to, y) }],
          closed: false,
        });
      }
    }
  }
  return curves;
}

/** Where each hatch line (by its whole number) crosses the rings. */
function rowsOf(rings: readonly Ring[], spacing: number): [number, number[]][] {
  const rows = new Map<number, number[]>();
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i++) {
      const p = ring[i]!;
      const q = ring[(i + 1) % ring.length]!;
      if (p.y === q.y) continue;
      const [top, bottom] = p.y < q.y ? [p, q] : [q, p];
      // A line crosses an edge from its upper end on to before its lower end: a corner is counted once.
      const first = Math.ceil(top.y / spacing - 0.5);
      for (let row = first; (row + 0.5) * spacing < bottom.y; row++) {
        const share = ((row + 0.5) * spacing - top.y) / (bottom.y - top.y);
        const crossings = rows.get(row) ?? [];
        crossings.push(top.x + share * (bottom.x - top.x));
        rows.set(row, crossings);
      }
    }
  }
  return [...rows].sort((a, b) => a[0] - b[0]);
}

/** The dashes of one stretch; every second line starts half a step later, like bricks. */
function dashes(
  from: number,
  to: number,
  row: number,
  dashMm: readonly [number, number] | undefined,
): (readonly [number, number])[] {
  if (dashMm === undefined) return [[from, to]];
  const [dash, gap] = dashMm;
  const step = dash + gap;
  const offset = row % 2 === 0 ? 0 : step / 2;
  const result: (readonly [number, number])[] = [];
  for (let k = Math.floor((from - offset) / step); k * step + offset < to; k++) {
    const start = Math.max(from, k * step + offset);
    const end = Math.min(to, k * step + offset + dash);
    if (end > start) result.push([start, end]);
  }
  return result;
}
