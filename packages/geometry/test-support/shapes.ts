/** Generators of shapes for the tests: rough ones, and ones made of near-ties. */
import fc from 'fast-check';
import type { Point, Region, Ring } from '../src/types/shape.js';

export function points(...pairs: readonly (readonly [number, number])[]): Point[] {
  return pairs.map(([x, y]) => ({ x, y }));
}

export function rectangle(x: number, y: number, width: number, height: number): Ring {
  return points([x, y], [x + width, y], [x + width, y + height], [x, y + height]);
}

export function solid(outer: Ring, ...openings: readonly Ring[]): Region {
  return { outer, openings };
}

/** The other way round, for an opening. */
export function hole(ring: Ring): Ring {
  return [...ring].reverse();
}

export interface StarOptions {
  readonly center?: Point;
  readonly from?: number;
  readonly to?: number;
  readonly corners?: number;
}

/** A ring that is seen whole from its centre: 5 to `corners` corners between the radii, on the 0.001 mm grid. */
export function starRing(options: StarOptions = {}): fc.Arbitrary<Ring> {
  const { center = { x: 0, y: 0 }, from = 10, to = 60, corners = 24 } = options;
  return fc
    .array(fc.double({ min: from, max: to, noNaN: true }), { minLength: 5, maxLength: corners })
    .map((radii) =>
      radii.map((r, i) => {
        const angle = (2 * Math.PI * i) / radii.length;
        return {
          x: Math.round((center.x + r * Math.cos(angle)) * 1000) / 1000,
          y: Math.round((center.y + r * Math.sin(angle)) * 1000) / 1000,
        };
      }),
    );
}

/** A star with one opening around its centre, well inside. */
export function starRegion(options: StarOptions = {}): fc.Arbitrary<Region> {
  const inner = {
    ...(options.center === undefined ? {} : { center: options.center }),
    from: 3,
    to: 6,
    corners: 8,
  };
  return fc
    .tuple(starRing({ ...options, from: 15 }), starRing(inner), fc.boolean())
    .map(([outer, opening, open]) => ({
      outer,
      openings: open ? [hole(opening)] : [],
    }));
}

/** Near-ties: an upright staircase on whole numbers, so that pairs share corners, edges and lines. */
export function staircase(): fc.Arbitrary<Ring> {
  return fc
    .tuple(
      fc.integer({ min: 0, max: 4 }),
      fc.integer({ min: 0, max: 4 }),
      fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 5 }),
    )
    .map(([x, y, heights]) => {
      const top: Point[] = heights.flatMap((h, i) => [
        { x: x + i, y: y - h },
        { x: x + i + 1, y: y - h },
      ]);
      const ring = [{ x, y }, ...top, { x: x + heights.length, y }];
      return ring.filter(
        (p, i) => p.x !== ring[(i + 1) % ring.length]!.x || p.y !== ring[(i + 1) % ring.length]!.y,
      );
    });
}
