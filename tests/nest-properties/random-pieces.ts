import { convexHull, intersectRegions, normalizeDeg, roundPoint, sinCosDeg } from '@hidebound/geometry';
import type { Point, Random, Region, Ring } from '@hidebound/geometry';

/** A random piece about (0, 0), not more than about `size` mm from it; corners on the grid, its ring simple. */
export function randomPiece(random: Random, size: number): Region {
  switch (random.integer(8)) {
    case 0:
      return solid(convex(random, size));
    case 1:
      return solid(star(random, size, 0.85));
    case 2:
      return solid(star(random, size, 0.3));
    case 3:
      return withOpening(star(random, size, 0.75), 0.55);
    case 4:
      return withOpening(box(size, size * random.between(0.5, 1)), 0.6);
    case 5:
      return solid(box(size, size * random.between(0.06, 0.25)));
    case 6:
      return solid(hook(size, random.between(0.25, 0.45)));
    default:
      return solid(nearlyStraight(random, size));
  }
}

/** A strap along x about (0, 0), with the ends of an honest strap: square, or a point at one end. */
export function randomStrap(random: Random, length: number, width: number): Region {
  const [x, y] = [length / 2, width / 2];
  const tip = random.next() < 0.5 ? [{ x: x + width / 2, y: 0 }] : [];
  const corners = [{ x: -x, y: -y }, { x, y: -y }, ...tip, { x, y }, { x: -x, y }];
  return solid(corners.map(roundPoint));
}

/** What of a piece lies within the same outline made smaller about (0, 0): a face, clipped to the leather as faces are. */
export function facePart(region: Region, share: number): Region[] {
  const outer = region.outer.map(({ x, y }) => roundPoint({ x: x * share, y: y * share }));
  return intersectRegions([region], [solid(outer)]);
}

/** The mirror image, x to -x, its rings running as they should. */
export function mirrorImage({ outer, openings }: Region): Region {
  const flip = (ring: Ring): Ring => [...ring].reverse().map(({ x, y }) => ({ x: -x + 0, y }));
  return { outer: flip(outer), openings: openings.map(flip) };
}

function solid(outer: Ring): Region {
  return { outer, openings: [] };
}

function withOpening(outer: Ring, share: number): Region {
  const inner = outer.map(({ x, y }) => roundPoint({ x: x * share, y: y * share }));
  return { outer, openings: [inner.reverse()] };
}

function convex(random: Random, size: number): Ring {
  const points = Array.from({ length: 12 }, () => onCircle(random.between(0, 360), size * random.next()));
  return convexHull(points);
}

/** Corners at growing angles, the nearest of them at a share of the size. */
function star(random: Random, size: number, least: number): Ring {
  const count = 5 + random.integer(12);
  return Array.from({ length: count }, (_, i) =>
    onCircle((360 * (i + 0.7 * random.next())) / count, size * random.between(least, 1)),
  );
}

function box(halfLength: number, halfWidth: number): Ring {
  const corners = [
    { x: -halfLength, y: -halfWidth },
    { x: halfLength, y: -halfWidth },
    { x: halfLength, y: halfWidth },
    { x: -halfLength, y: halfWidth },
  ];
  return corners.map(roundPoint);
}

/** An L. */
function hook(size: number, share: number): Ring {
  const inner = -size + 2 * size * share;
  const corners = [
    { x: -size, y: -size },
    { x: size, y: -size },
    { x: size, y: inner },
    { x: inner, y: inner },
    { x: inner, y: size },
    { x: -size, y: size },
  ];
  return corners.map(roundPoint);
}

/** A rectangle whose sides have corners that hardly turn, some of them only micrometres apart. */
function nearlyStraight(random: Random, size: number): Ring {
  const ring: Point[] = [];
  const corners = box(size, size * random.between(0.3, 0.8));
  corners.forEach((from, i) => {
    const to = corners[(i + 1) % corners.length]!;
    ring.push(from);
    for (const t of [0.3, 0.3 + 0.2 * 1e-5 ** random.next(), 0.8]) {
      const outwards = random.integer(3) / 1000;
      const x = from.x + t * (to.x - from.x);
      const y = from.y + t * (to.y - from.y);
      ring.push(roundPoint({ x: x + outwards * Math.sign(x), y: y + outwards * Math.sign(y) }));
    }
  });
  return ring.filter((point, i) => {
    const before = ring[(i + ring.length - 1) % ring.length]!;
    return point.x !== before.x || point.y !== before.y;
  });
}

function onCircle(angleDeg: number, radius: number): Point {
  const { sin, cos } = sinCosDeg(normalizeDeg(angleDeg));
  return roundPoint({ x: radius * cos, y: radius * sin });
}
