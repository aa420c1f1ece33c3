import { applyAffine, orientRing, regionBox, transformRing } from '@hidebound/geometry';
import type { Affine, Box, Ring } from '@hidebound/geometry';
import type { EdgeHints } from '@hidebound/leather';
import { floorErrorWithin } from '../camera/floor-error.js';
import type { FloorError, SolvedFloor } from '../camera/solved-floor.js';
import { newFindings } from '../../findings.js';
import { findChalk } from '../marks/chalk/find-chalk.js';
import { joinPictures } from '../marks/register/join-pictures.js';
import { registerMoved } from '../marks/register/register-moved.js';
import { findOutlines } from '../outline/find-outlines.js';
import type { Photo } from '../photo.js';
import { straighten } from '../straight/straighten.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import { joinHints } from './hints-for-photo.js';
import type { TraceTools } from './stages.js';

/** What is known of the floor on which leather was dragged along. */
interface MovedFloor {
  readonly floor: SolvedFloor;
  readonly cameras: SolvedFloor['cameras'];
  readonly papers: readonly Ring[];
  /** Of each photo, where its leather lay. */
  readonly hints: readonly EdgeHints[];
}

/** The leather of all photos in the frame of the first one. */
export interface JoinedLeather {
  readonly picture: StraightPicture;
  readonly papers: readonly Ring[];
  readonly hints: EdgeHints;
  readonly errorWithin: (box: Box) => FloorError;
  readonly movedMisfitMm: number;
}

/** Brings photos of leather that was dragged along under the camera together, by crosses chalked on it. */
export function joinMoved(photos: readonly Photo[], moved: MovedFloor, tools: TraceTools): JoinedLeather {
  const { floor, cameras, papers } = moved;
  const { vision } = tools;
  const first = straighten([photos[0]!], { cameras: [cameras[0]!] }, {}, vision);
  const { pxPerMm } = first;
  const pictures = photos.map((photo, i) =>
    i === 0 ? first : straighten([photo], { cameras: [cameras[i]!] }, { pxPerMm }, vision),
  );
  const seen = pictures.map((picture, i) => crossesOn(picture, photos[i]!, moved, i, tools));
  const places = registerMoved(seen);
  const motions = places.map(({ motion }) => motion);
  const joinable = pictures.map((picture) => ({ picture, covered: papers }));
  const misfits = places.map(({ misfitMm }) => misfitMm);
  const errors = seen.map(({ box }) => floorErrorWithin({ ...floor, cameras }, box));
  return {
    picture: joinPictures(joinable, motions, vision),
    papers: [],
    hints: joinHints(moved.hints.map((hints, i) => moveHints(hints, motions[i]!))),
    errorWithin: (box) => joinedError(errors, motions, misfits, box),
    movedMisfitMm: Math.max(...misfits),
  };
}

/** Crosses on the leather of one photo. What is told of its edge is told again of the joined picture, so not here. */
function crossesOn(picture: StraightPicture, photo: Photo, moved: MovedFloor, i: number, tools: TraceTools) {
  const findings = newFindings(photo.file);
  const options = { papers: moved.papers, hints: moved.hints[i]!, most: 1 };
  const piece = findOutlines(picture, options, tools.vision, findings).pieces[0]!;
  const leather = {
    outer: orientRing(piece.outline, 'outer'),
    openings: piece.openings.map((ring) => orientRing(ring, 'opening')),
  };
  const { crosses } = findChalk(picture, leather, {}, tools.vision, findings);
  return { photo: photo.file, crosses, box: regionBox(leather) };
}

function moveHints(hints: EdgeHints, motion: Affine): EdgeHints {
  return {
    hideStrokes: hints.hideStrokes.map((line) => transformRing(motion, line)),
    floorStrokes: hints.floorStrokes.map((line) => transformRing(motion, line)),
    edgePoints: hints.edgePoints.map((point) => applyAffine(motion, point)),
  };
}

/** Errors of each photo's own part, and how badly the parts fit together. */
function joinedError(
  errors: readonly FloorError[],
  motions: readonly Affine[],
  misfits: readonly number[],
  box: Box,
): FloorError {
  const misfitMm = Math.max(...misfits);
  const span = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const scaleShare = Math.hypot(Math.max(...errors.map((error) => error.scaleShare)), misfitMm / span);
  return {
    scaleShare,
    areaShare: 2 * scaleShare,
    at: errors.flatMap(({ at }, i) =>
      at.map((place) => ({
        at: applyAffine(motions[i]!, place.at),
        mm: Math.hypot(place.mm, misfits[i]!),
      })),
    ),
  };
}
