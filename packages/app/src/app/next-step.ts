import { filesOfKind, layoutAt, orderAt } from '../job/job.js';
import type { Job } from '../job/job.js';
import type { Place, PlaceName } from './place.js';

/**
 * Where the job goes on from a place, by what it still lacks; undefined while the place itself has something to be done
 * first, and where all later places have been begun: nobody who is at home here is to be pushed on.
 */
export function nextStep(job: Job, place: Place): PlaceName | undefined {
  const hasHide = filesOfKind(job, 'hide').length > 0;
  const hasPieces = (orderAt(job, place.order)?.articles.length ?? 0) > 0;
  const placements = layoutAt(job, place.layout)?.placements;
  switch (place.name) {
    case 'hide':
      if (!hasHide || placements !== undefined) return undefined;
      return hasPieces ? 'lay' : 'pieces';
    case 'pieces':
      if (!hasPieces || placements !== undefined) return undefined;
      return hasHide ? 'lay' : 'hide';
    case 'lay':
      return isUncut(placements) ? 'make' : undefined;
    case 'make':
      return isUncut(placements) ? 'bench' : undefined;
    case 'bench':
      return undefined;
  }
}

/** Something lies there, and cutting has not begun. */
function isUncut(placements: readonly { readonly state: string }[] | undefined): boolean {
  return (
    placements !== undefined && placements.length > 0 && placements.every(({ state }) => state === 'planned')
  );
}
