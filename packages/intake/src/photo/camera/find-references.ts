import { markerPlace } from '@hidebound/leather';
import type { Photo } from '../photo.js';
import { greyMat } from '../vision/picture-mats.js';
import { withMats } from '../vision/mats.js';
import type { Mat, Vision } from '../vision/vision.js';
import { measureMarker } from './measure-marker.js';
import { keepOneOfEach } from './marker-doubles.js';
import type { SeenMarker, SeenReferences } from './seen-references.js';

/** Markers are looked for on a picture of this size: at 1 px per mm of the photo a field has 2 px of it. */
const SEARCH_LONG_SIDE_PX = 2048;
/** A marker's outline is this share of the longer side at least: 16 px a side of the picture that is searched. */
const LEAST_OUTLINE_SHARE = 0.03;
/** Of the bits that the code could mend, so many are: it has 240 of 587 words in use, so false ones are rare. */
const MENDED_SHARE = 0.6;

/** Finds the markers of reference sheets on a photo and measures their sides. What is no such marker is left out. */
export function findReferences(photo: Photo, vision: Vision): SeenReferences {
  const { file, width, height } = photo;
  const shrink = Math.max(1, Math.max(width, height) / SEARCH_LONG_SIDE_PX);
  const measured: SeenMarker[] = [];
  for (const { id, corners } of detect(photo, shrink, vision)) {
    if (markerPlace(id) === undefined) continue;
    const marker = measureMarker(photo, id, corners);
    if (marker !== undefined) measured.push(marker);
  }
  return { file, width, height, markers: keepOneOfEach(measured) };
}

type Detected = Pick<SeenMarker, 'id' | 'corners'>;

function detect(photo: Photo, shrink: number, vision: Vision): Detected[] {
  return withMats((keep) => {
    const picture = keep(shrunkGrey(photo, shrink, vision));
    const parameters = keep(new vision.aruco_DetectorParameters());
    parameters.minMarkerPerimeterRate = LEAST_OUTLINE_SHARE;
    parameters.errorCorrectionRate = MENDED_SHARE;
    const dictionary = vision.getPredefinedDictionary(vision.DICT_APRILTAG_36h11);
    const refine = keep(new vision.aruco_RefineParameters(10, 3, true));
    const detector = keep(new vision.aruco_ArucoDetector(dictionary, parameters, refine));
    const corners = keep(new vision.MatVector());
    const ids = keep(new vision.Mat());
    const rejected = keep(new vision.MatVector());
    detector.detectMarkers(picture, corners, ids, rejected);
    const found: Detected[] = [];
    for (let i = 0; i < corners.size(); i++) {
      const mat = keep(corners.get(i));
      found.push({ id: ids.data32S[i]!, corners: cornersOf(mat, shrink) });
    }
    return found;
  });
}

function shrunkGrey(photo: Photo, shrink: number, vision: Vision): Mat {
  return withMats((keep) => {
    const grey = keep(greyMat(photo, vision));
    const small = new vision.Mat();
    const size = new vision.Size(Math.round(photo.width / shrink), Math.round(photo.height / shrink));
    vision.resize(grey, small, size, 0, 0, vision.INTER_AREA);
    return small;
  });
}

/** Middles of pixels are whole numbers in both pictures. */
function cornersOf(mat: Mat, shrink: number): SeenMarker['corners'] {
  const at = (i: number): number => (mat.data32F[i]! + 0.5) * shrink - 0.5;
  return [
    { x: at(0), y: at(1) },
    { x: at(2), y: at(3) },
    { x: at(4), y: at(5) },
    { x: at(6), y: at(7) },
  ];
}
