import { createSpatialIndex, curveArea, pointInRing, ringBox } from '@hidebound/geometry';
import type { Box, Polyline, Ring } from '@hidebound/geometry';
import { circleOfCurve } from '../lines/circles.js';
import type { Circle } from '../lines/circles.js';
import { flatRing } from '../lines/duplicates.js';
import type { RoleLine } from '../lines/role-line.js';

/** A closed line with what placing it among the others needs. */
export interface Outline {
  readonly line: RoleLine;
  readonly ring: Ring;
  readonly box: Box;
  /** mm², above 0. */
  readonly area: number;
  readonly circle?: Circle;
}

export function outlineOf(line: RoleLine): Outline {
  const ring = flatRing(line.curve);
  const circle = circleOfCurve(line.curve);
  return {
    line,
    ring,
    box: ringBox(ring),
    area: Math.abs(curveArea(line.curve)),
    ...(circle === undefined ? {} : { circle }),
  };
}

/** Places of a line that are looked at to tell where it lies. */
const SAMPLES = 9;

/** Of an outline whose box lies within another's, fewer tell as much. */
const RING_SAMPLES = 3;

/** How much of a chain lies within a ring: a share from 0 to 1, by places spread along it; edges count half. */
export function shareInside(
  points: Polyline,
  outline: Pick<Outline, 'ring' | 'box'>,
  samples = SAMPLES,
): number {
  const { box } = outline;
  const step = Math.max(1, Math.ceil(points.length / samples));
  let sum = 0;
  let count = 0;
  for (let i = 0; i < points.length; i += step) {
    count++;
    const p = points[i]!;
    if (p.x < box.minX || p.x > box.maxX || p.y < box.minY || p.y > box.maxY) continue;
    const place = pointInRing(p, outline.ring);
    sum += place === 'inside' ? 1 : place === 'edge' ? 0.5 : 0;
  }
  return count === 0 ? 0 : sum / count;
}

/** True if the box lies within the other one, up to a hair. */
export function boxWithin(inner: Box, outer: Box): boolean {
  const hair = 0.01;
  return (
    inner.minX >= outer.minX - hair &&
    inner.minY >= outer.minY - hair &&
    inner.maxX <= outer.maxX + hair &&
    inner.maxY <= outer.maxY + hair
  );
}

/** For each outline the number of the smallest other one around it; the outlines come with the largest first. */
export function containersOf(outlines: readonly Outline[]): (number | undefined)[] {
  const index = createSpatialIndex(outlines.map(({ box }) => box));
  return outlines.map((inner, i) => {
    const candidates: number[] = [];
    const { x, y } = inner.ring[0]!;
    index.query({ minX: x, minY: y, maxX: x, maxY: y }, (j) => {
      if (j < i && boxWithin(inner.box, outlines[j]!.box)) candidates.push(j);
    });
    candidates.sort((a, b) => b - a);
    return candidates.find((j) => shareInside(inner.ring, outlines[j]!, RING_SAMPLES) > 0.5);
  });
}
