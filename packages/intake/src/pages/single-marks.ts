import type { Point } from '@hidebound/geometry';
import { matchOf } from './agreement.js';
import type { Figure } from './figures.js';
import { SAME_PLACE_MM } from './limits.js';
import type { Axis } from './overlaps.js';
import type { PageFacts } from './page-facts.js';
import { isWhole } from './pitches.js';
import { minus } from './vectors.js';

/** How many marks of two pages lie on each other that neither page has again at one of the distances along the axis. */
export function singleMarks(
  a: PageFacts,
  b: PageFacts,
  shift: Point,
  axis: Axis,
  pitches: readonly number[],
): number {
  return a.figures.filter((figure) => {
    if (!figure.isSign || !isWhole(figure.box, a.window)) return false;
    const match = matchOf(figure, b, minus(figure.at, shift));
    if (match === undefined) return false;
    return !hasAgain(figure, a, axis, pitches) && !hasAgain(match, b, axis, pitches);
  }).length;
}

function hasAgain(
  { at, shape }: Figure,
  { byShape }: PageFacts,
  axis: Axis,
  pitches: readonly number[],
): boolean {
  const across = axis === 'x' ? 'y' : 'x';
  return byShape.get(shape)!.some((other) => {
    const distance = Math.abs(other.at[axis] - at[axis]);
    return (
      Math.abs(other.at[across] - at[across]) <= SAME_PLACE_MM &&
      pitches.some((pitch) => Math.abs(distance - pitch) <= SAME_PLACE_MM)
    );
  });
}
