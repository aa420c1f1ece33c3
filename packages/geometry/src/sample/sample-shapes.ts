import { sinCosDeg } from '../number/trigonometry.js';
import type { Random } from '../number/random.js';
import { roundPoint } from '../point.js';
import type { Point, Region } from '../types/shape.js';

/** A polygon that stands for a disc. */
export function disc(centre: Point, radius: number, corners = 24): Point[] {
  return Array.from({ length: corners }, (_, i) => {
    const { sin, cos } = sinCosDeg((360 * i) / corners);
    return roundPoint({ x: centre.x + radius * cos, y: centre.y + radius * sin });
  });
}

/** A strip of a width around a straight line, its ends round. */
export function strip(from: Point, angleDeg: number, length: number, width: number): Point[] {
  const points: Point[] = [];
  const { sin, cos } = sinCosDeg(angleDeg);
  for (const [end, start] of [
    [length / 2, -90],
    [-length / 2, 90],
  ] as const) {
    for (let i = 0; i <= 6; i++) {
      const arc = sinCosDeg(start + 30 * i);
      const x = end + (width / 2) * arc.cos;
      const y = (width / 2) * arc.sin;
      points.push(roundPoint({ x: from.x + x * cos - y * sin, y: from.y + x * sin + y * cos }));
    }
  }
  return points;
}

/** A patch without sharp corners. */
export function blob(random: Random, centre: Point, radius: number): Point[] {
  return Array.from({ length: 14 }, (_, i) => {
    const { sin, cos } = sinCosDeg((360 * i) / 14);
    const r = radius * random.between(0.6, 1.2);
    return roundPoint({ x: centre.x + r * cos, y: centre.y + r * sin });
  });
}

/** A rectangle about (0, 0) with corners rounded by `radius`. */
export function roundedRectangle(length: number, width: number, radius: number): Point[] {
  const points: Point[] = [];
  const r = Math.min(radius, length / 2, width / 2);
  const middles: readonly (readonly [number, number, number])[] = [
    [length / 2 - r, -width / 2 + r, -90],
    [length / 2 - r, width / 2 - r, 0],
    [-length / 2 + r, width / 2 - r, 90],
    [-length / 2 + r, -width / 2 + r, 180],
  ];
  for (const [cx, cy, start] of middles) {
    const steps = r > 0 ? 5 : 0;
    for (let i = 0; i <= steps; i++) {
      const { sin, cos } = sinCosDeg(start + (steps > 0 ? (90 * i) / steps : 0));
      points.push(roundPoint({ x: cx + r * cos, y: cy + r * sin }));
    }
  }
  return dropRepeated(points);
}

function dropRepeated(points: readonly Point[]): Point[] {
  return points.filter((p, i) => {
    const before = points[(i + points.length - 1) % points.length]!;
    return p.x !== before.x || p.y !== before.y;
  });
}

/** The mirror image, x to -x, oriented as before. */
export function mirrored(region: Region): Region {
  const flip = (ring: readonly Point[]): Point[] => [...ring].reverse().map(({ x, y }) => ({ x: -x + 0, y }));
  return { outer: flip(region.outer), openings: region.openings.map(flip) };
}
