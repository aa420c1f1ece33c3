import { ringArea } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { StatedReference } from '@hidebound/leather';
import { IntakeError } from '../../error.js';

/** Places of a rule need to tell its direction. */
const FEWEST_READINGS = 2;
/** Corners that enclose less than this are on a line, px². */
const LEAST_AREA_PX = 100;

/** Refuses a stated reference that can't be. */
export function refuseBadReference(stated: StatedReference, file: string): void {
  if (!isPossible(stated)) throw new IntakeError('bad-reference', { name: stated.kind }, { file });
}

function isPossible(stated: StatedReference): boolean {
  if (stated.kind === 'rules') return [stated.along, stated.across].every(isRule);
  const isLong = stated.kind === 'card' || (stated.widthMm > 0 && stated.heightMm > 0);
  // Clockwise as seen is a positive area; every corner must turn the same way.
  return isLong && ringArea(stated.corners) > LEAST_AREA_PX && isConvex(stated.corners);
}

function isRule(readings: readonly { readonly at: Point; readonly mm: number }[]): boolean {
  const places = new Set(readings.map(({ at }) => `${at.x} ${at.y}`));
  const values = new Set(readings.map(({ mm }) => mm));
  return (
    readings.length >= FEWEST_READINGS && places.size === readings.length && values.size === readings.length
  );
}

function isConvex(corners: readonly Point[]): boolean {
  return corners.every((corner, i) => {
    const next = corners[(i + 1) % 4]!;
    const after = corners[(i + 2) % 4]!;
    return (next.x - corner.x) * (after.y - next.y) - (next.y - corner.y) * (after.x - next.x) > 0;
  });
}
