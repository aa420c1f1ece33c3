import type { Box, Ring } from '@hidebound/geometry';
import type { EdgeHints } from '@hidebound/leather';
import { floorErrorWithin } from '../camera/floor-error.js';
import { raisedFloor } from '../camera/raised-floor.js';
import { findReferences } from '../camera/find-references.js';
import { measureStated } from '../camera/measure-stated.js';
import { papersOf } from '../camera/papers-of.js';
import { solveFloor } from '../camera/solve-floor.js';
import type { PhotoReferences } from '../camera/solve-floor.js';
import type { FloorError, SolvedFloor } from '../camera/solved-floor.js';
import type { Photo } from '../photo.js';
import { straighten } from '../straight/straighten.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import type { Vision } from '../vision/vision.js';
import { hintsForPhoto, hintsOnFloor, joinHints } from './hints-for-photo.js';
import { joinMoved } from './join-moved.js';
import type { TraceTools } from './stages.js';
import { tellMoved } from './tell-moved.js';
import type { TraceOptions } from './trace-options.js';

/** The leather from straight above, all photos of it in one frame. */
export interface Looked {
  readonly picture: StraightPicture;
  /** The same places with light from low at one side; each as large as `picture`. */
  readonly raking: readonly StraightPicture[];
  /** What lies on the floor and is no leather. */
  readonly papers: readonly Ring[];
  readonly hints: EdgeHints;
  readonly floor: SolvedFloor;
  /** How far off places within a box can be. */
  readonly errorWithin: (box: Box) => FloorError;
  readonly movedMisfitMm?: number;
}

/** Finds the references of all photos, solves where they lie, and straightens what the photos show. */
export function lookAtLeather(photos: readonly Photo[], options: TraceOptions, tools: TraceTools): Looked {
  const { raking = [] } = options;
  const floor = raisedFloor(floorOf([...photos, ...raking], options, tools), thicknessMm(options));
  const [cameras, low] = [floor.cameras.slice(0, photos.length), floor.cameras.slice(photos.length)];
  const papers = papersOf(floor);
  const hints = photos.map((photo, i) => hintsOnFloor(hintsForPhoto(options.hints, photo), cameras[i]!));
  tools.stage('straighten');
  if (options.isMoved === true && photos.length > 1) {
    return { ...joinMoved(photos, { floor, cameras, papers, hints }, tools), raking: [], floor };
  }
  const movedMm = tellMoved(photos, { cameras, papers }, tools);
  const picture = straighten(photos, { cameras }, {}, tools.vision);
  return {
    picture,
    raking: rakingPictures(raking, low, picture, tools.vision),
    papers,
    hints: joinHints(hints),
    floor,
    errorWithin: (box) => offByMove(floorErrorWithin({ ...floor, cameras }, box), movedMm, box),
  };
}

/** Edges hardly show a slide along them: simulated moves of 30 mm were taken for 20 to 23. */
const SEEN_OF_MOVE = 2 / 3;

/** Photos that do not lie on each other rightly: every place and length may be off by that, too. */
function offByMove(error: FloorError, seenMoveMm: number, box: Box): FloorError {
  if (seenMoveMm === 0) return error;
  const movedMm = seenMoveMm / SEEN_OF_MOVE;
  const span = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const scaleShare = Math.hypot(error.scaleShare, movedMm / span);
  return {
    scaleShare,
    areaShare: 2 * scaleShare,
    at: error.at.map(({ at, mm }) => ({ at, mm: Math.hypot(mm, movedMm) })),
  };
}

/** Where nobody says how thick the leather is: between garment and sole leather. */
const USUAL_THICKNESS_MM = 2;

/** How high the side that is seen lies over the floor. */
export function thicknessMm({ leather }: TraceOptions): number {
  const thickness = leather?.thickness;
  return thickness === undefined ? USUAL_THICKNESS_MM : (thickness.minMm + thickness.maxMm) / 2;
}

/** Where the cameras stood and the references lie. */
export function floorOf(photos: readonly Photo[], options: TraceOptions, tools: TraceTools): SolvedFloor {
  const { vision, findings, stage } = tools;
  stage('references');
  const seen = photos.map((photo): PhotoReferences => {
    const stated = hintsForPhoto(options.hints, photo)?.reference;
    const references = findReferences(photo, vision);
    if (stated === undefined) return { references };
    const measured = measureStated(photo, stated);
    return { references, stated: measured.stated, statedDeviationPx: measured.deviationPx };
  });
  stage('floor');
  const { barsOf } = options;
  return solveFloor(seen, barsOf === undefined ? {} : { barsOf }, findings);
}

/** Less than a pixel, so that a box that was made of whole pixels is not rounded up to one more. */
const PART_OF_PIXEL = 0.25;

/** Each photo by itself: light comes from another side in each. */
function rakingPictures(
  photos: readonly Photo[],
  cameras: SolvedFloor['cameras'],
  { origin, width, height, pxPerMm }: StraightPicture,
  vision: Vision,
): readonly StraightPicture[] {
  const box = {
    minX: origin.x,
    minY: origin.y,
    maxX: origin.x + (width - PART_OF_PIXEL) / pxPerMm,
    maxY: origin.y + (height - PART_OF_PIXEL) / pxPerMm,
  };
  return photos.map((photo, i) => straighten([photo], { cameras: [cameras[i]!] }, { pxPerMm, box }, vision));
}
