import { orientRing } from '@hidebound/geometry';
import type { Point, Ring } from '@hidebound/geometry';
import { IntakeError } from '../../error.js';
import { newFindings, tell } from '../../findings.js';
import type { SolvedFloor } from '../camera/solved-floor.js';
import { movedBetween } from '../marks/register/moved-between.js';
import type { SeenLeather } from '../marks/register/moved-between.js';
import { findOutlines } from '../outline/find-outlines.js';
import type { Photo } from '../photo.js';
import { straighten } from '../straight/straighten.js';
import { toPicture } from '../straight/straight-picture.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import type { TraceTools } from './stages.js';

/** Fine enough to see that leather moved by some millimetres. */
const PX_PER_MM = 0.7;

/**
 * Tells where leather moved on the floor between photos that are taken for photos of leather that lay still, or where a
 * sheet that ties two photos together did. The farthest move in mm, 0 for none; photos with hardly any edge in common
 * tell nothing here.
 */
export function tellMoved(
  photos: readonly Photo[],
  { cameras, papers }: Pick<SolvedFloor, 'cameras'> & { readonly papers: readonly Ring[] },
  { vision, findings }: TraceTools,
): number {
  if (photos.length < 2) return 0;
  const seen = photos.map((photo, i): SeenLeather | undefined => {
    const picture = straighten([photo], { cameras: [cameras[i]!] }, { pxPerMm: PX_PER_MM }, vision);
    return seenLeather(picture, () =>
      findOutlines(picture, { papers, most: 1 }, vision, newFindings(photo.file)),
    );
  });
  const moves = seen.map((leather, i) => farthestMove(seen.slice(0, i), leather));
  moves.forEach((mm, i) => {
    if (mm === 0) return;
    tell(findings, 'warning', 'photo-of-moved-hide', { mm: Math.round(mm) }, { file: photos[i]!.file });
  });
  return Math.max(...moves);
}

/** Against every photo before it, since not each two of them need show the same edge. */
function farthestMove(
  before: readonly (SeenLeather | undefined)[],
  leather: SeenLeather | undefined,
): number {
  if (leather === undefined) return 0;
  const moves = before.map((other) => (other === undefined ? undefined : movedBetween(other, leather)));
  return Math.max(0, ...moves.map((move) => (move?.isMoved === true ? move.movedMm : 0)));
}

/** Nothing where none is found. */
function seenLeather(
  picture: StraightPicture,
  find: () => ReturnType<typeof findOutlines>,
): SeenLeather | undefined {
  try {
    const piece = find().pieces[0]!;
    return {
      outer: orientRing(piece.outline, 'outer'),
      openings: piece.openings.map((ring) => orientRing(ring, 'opening')),
      leavesPicture: piece.leavesPicture,
      isShown: (place) => isSeenIn(picture, place),
    };
  } catch (error) {
    if (error instanceof IntakeError && error.code === 'no-hide-in-photo') return undefined;
    throw error;
  }
}

function isSeenIn(picture: StraightPicture, place: Point): boolean {
  const { x, y } = toPicture(picture, place);
  const [i, j] = [Math.round(x), Math.round(y)];
  const isWithin = i >= 0 && j >= 0 && i < picture.width && j < picture.height;
  return isWithin && picture.seen[j * picture.width + i] !== 0;
}
