import type { Ring } from '@hidebound/geometry';
import type { SolvedFloor } from './solved-floor.js';

/** What hides a part of the floor or of the leather. */
export function papersOf({ references }: Pick<SolvedFloor, 'references'>): readonly Ring[] {
  return references.filter(({ isOpaque }) => isOpaque).map(({ ring }) => ring);
}
