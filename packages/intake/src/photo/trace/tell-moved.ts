import type { Region, Ring } from '@hidebound/geometry';
import { orientRing } from '@hidebound/geometry';
import { IntakeError } from '../../error.js';
import { newFindings, tell } from '../../findings.js';
import type { SolvedFloor } from '../camera/solved-floor.js';
import { movedBetween } from '../marks/register/moved-between.js';
import { findOutlines } from '../outline/find-outlines.js';
import type { Photo } from '../photo.js';
import { straighten } from '../straight/straighten.js';
import type { TraceTools } from './stages.js';

/** Fine enough to see that leather moved by some millimetres. */
const PX_PER_MM = 0.7;

/**
 * Tells where leather moved on the floor between photos that are taken for photos of leather that lay still. Photos
 * that show only a part of it tell nothing here.
 */
export function tellMoved(
  photos: readonly Photo[],
  { cameras, papers }: Pick<SolvedFloor, 'cameras'> & { readonly papers: readonly Ring[] },
  { vision, findings }: TraceTools,
): void {
  if (photos.length < 2) return;
  const [first, ...others] = photos.map((photo, i): Region | undefined => {
    const picture = straighten([photo], { cameras: [cameras[i]!] }, { pxPerMm: PX_PER_MM }, vision);
    return wholeLeather(() => findOutlines(picture, { papers, most: 1 }, vision, newFindings(photo.file)));
  });
  others.forEach((leather, i) => {
    if (first === undefined || leather === undefined) return;
    const { isMoved, movedMm } = movedBetween(first, leather);
    if (!isMoved) return;
    const params = { mm: Math.round(movedMm) };
    tell(findings, 'warning', 'photo-of-moved-hide', params, { file: photos[i + 1]!.file });
  });
}

/** Nothing where the hide goes on beyond the photo, or where none is found. */
function wholeLeather(find: () => ReturnType<typeof findOutlines>): Region | undefined {
  try {
    const piece = find().pieces[0]!;
    if (piece.leavesPicture.length > 0) return undefined;
    return {
      outer: orientRing(piece.outline, 'outer'),
      openings: piece.openings.map((ring) => orientRing(ring, 'opening')),
    };
  } catch (error) {
    if (error instanceof IntakeError && error.code === 'no-hide-in-photo') return undefined;
    throw error;
  }
}
