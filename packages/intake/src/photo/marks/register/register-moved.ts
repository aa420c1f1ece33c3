import { IDENTITY, applyAffine, distanceBetween } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import { IntakeError } from '../../../error.js';
import { meanOf } from './fit-motion.js';
import { matchPoints } from './match-points.js';
import type { PointMatch } from './match-points.js';

/** What one photo of a hide shows that is dragged along under the camera, in the floor mm that all photos share. */
export interface MovedPicture {
  /** The photo, for sentences. */
  readonly photo: string;
  /** Crosses chalked on the leather. */
  readonly crosses: readonly Point[];
}

/** Where one photo's leather lies in the first photo's frame. */
export interface MovedInto {
  /** From this photo's floor mm to the first one's. */
  readonly motion: Affine;
  /** How many crosses it shares with the photos before it. */
  readonly shared: number;
  /** The farthest of the shared crosses; with only two, by how much their distances differ. */
  readonly misfitMm: number;
}

/** Crosses that agree no better than this are not the same ones, or the leather was stretched. */
const MOST_MISFIT_MM = 10;

/** One cross seen in several photos; the nearer ones are one. */
const SAME_CROSS_MM = 12;

/**
 * Brings each photo into the first one's frame by crosses on the leather: always the photo that shares the most with
 * those already brought there. Throws `moved-photos-do-not-join` where one shares fewer than two, `crosses-disagree`
 * where they fit badly.
 */
export function registerMoved(pictures: readonly MovedPicture[]): MovedInto[] {
  const first = pictures[0];
  if (first === undefined) return [];
  const placed: (MovedInto | undefined)[] = pictures.map(() => undefined);
  placed[0] = { motion: IDENTITY, shared: first.crosses.length, misfitMm: 0 };
  let known: KnownCross[] = first.crosses.map((at) => ({ seen: [at] }));
  for (let left = pictures.length - 1; left > 0; left--) {
    const next = mostShared(pictures, placed, known);
    const match = next.match ?? refuse(pictures[next.index]!);
    if (match.misfitMm > MOST_MISFIT_MM) throw disagreeing(pictures[next.index]!, match);
    placed[next.index] = { motion: match.motion, shared: match.pairs.length, misfitMm: match.misfitMm };
    known = withCrosses(known, pictures[next.index]!.crosses, match.motion);
  }
  return placed.map((one) => one!);
}

/** Where one cross was seen, in the first photo's frame. */
interface KnownCross {
  readonly seen: readonly Point[];
}

function mostShared(
  pictures: readonly MovedPicture[],
  placed: readonly (MovedInto | undefined)[],
  known: readonly KnownCross[],
): { readonly index: number; readonly match: PointMatch | undefined } {
  const to = known.map(({ seen }) => meanOf(seen));
  let best: { index: number; match: PointMatch | undefined } | undefined;
  pictures.forEach((picture, index) => {
    if (placed[index] !== undefined) return;
    const match = matchPoints(picture.crosses, to);
    const isMore = best === undefined || (match?.pairs.length ?? 0) > (best.match?.pairs.length ?? 0);
    if (isMore) best = { index, match };
  });
  return best!;
}

/** The crosses of a photo that was brought into the frame become known; what is known already is seen once more. */
function withCrosses(known: readonly KnownCross[], crosses: readonly Point[], motion: Affine): KnownCross[] {
  const result = [...known];
  for (const cross of crosses) {
    const at = applyAffine(motion, cross);
    const index = known.findIndex(({ seen }) => distanceBetween(meanOf(seen), at) < SAME_CROSS_MM);
    if (index < 0) result.push({ seen: [at] });
    else result[index] = { seen: [...result[index]!.seen, at] };
  }
  return result;
}

function refuse(picture: MovedPicture): never {
  throw new IntakeError(
    'moved-photos-do-not-join',
    { photo: picture.photo, crosses: picture.crosses.length },
    { file: picture.photo },
  );
}

function disagreeing(picture: MovedPicture, match: PointMatch): IntakeError {
  const params = { crosses: match.pairs.length, misfit: Math.round(match.misfitMm) };
  return new IntakeError('crosses-disagree', params, { file: picture.photo });
}
