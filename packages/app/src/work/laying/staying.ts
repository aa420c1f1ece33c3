import type { Layout } from '@hidebound/leather';

/** Nothing is cut and no test piece is drawn: numbers and rough cuts may be made anew. */
export function isUntouched({ placements, swatches }: Layout): boolean {
  return swatches.length === 0 && placements.every(({ state }) => state === 'planned');
}

/** Something of it stays where it lies, whatever is laid around it. */
export function hasStaying({ placements }: Layout): boolean {
  return placements.some(
    ({ locked, state, accepted }) => locked || state !== 'planned' || accepted.length > 0,
  );
}
