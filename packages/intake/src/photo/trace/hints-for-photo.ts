import type { EdgeHints, HintedPhoto, PhotoHints } from '@hidebound/leather';
import type { Point } from '@hidebound/geometry';
import { tell } from '../../findings.js';
import type { Findings } from '../../findings.js';
import type { Camera } from '../camera/camera.js';
import { toFloorPoint } from '../camera/places.js';
import type { Photo } from '../photo.js';

/** What is said of one photo; hints name photos relative to their own file, so the last part of the path decides. */
export function hintsForPhoto(hints: PhotoHints | undefined, photo: Photo): HintedPhoto | undefined {
  const name = lastPart(photo.file);
  return hints?.photos.find((hinted) => lastPart(hinted.photo) === name);
}

function lastPart(path: string): string {
  return path.replace(/^.*[\\/]/, '');
}

/** Tells of hints that speak of none of the photos, and of places that lie off their photo. */
export function tellStrayHints(
  hints: PhotoHints | undefined,
  photos: readonly Photo[],
  findings: Findings,
): void {
  for (const hinted of hints?.photos ?? []) {
    const photo = photos.find(({ file }) => lastPart(file) === lastPart(hinted.photo));
    if (photo === undefined) {
      tell(findings, 'warning', 'hints-for-no-photo', { photo: hinted.photo });
      continue;
    }
    const stray = placesOf(hinted).find(({ x, y }) => x > photo.width || y > photo.height);
    if (stray === undefined) continue;
    const params = { x: stray.x, y: stray.y, width: photo.width, height: photo.height };
    tell(findings, 'warning', 'hint-off-photo', params, { file: photo.file });
  }
}

function placesOf(hinted: HintedPhoto): readonly Point[] {
  return [...hinted.hideStrokes.flat(), ...hinted.floorStrokes.flat(), ...hinted.edgePoints];
}

export const NO_HINTS: EdgeHints = { hideStrokes: [], floorStrokes: [], edgePoints: [] };

/** Edge hints of one photo as places of the floor, mm; those that lie off the photo are left out. */
export function hintsOnFloor(hinted: HintedPhoto | undefined, camera: Camera): EdgeHints {
  if (hinted === undefined) return NO_HINTS;
  const isOn = ({ x, y }: Point) => x <= camera.width && y <= camera.height;
  const stroke = (line: readonly Point[]) => line.filter(isOn).map((px) => toFloorPoint(camera, px));
  const strokes = (lines: readonly (readonly Point[])[]) =>
    lines.map(stroke).filter(({ length }) => length > 1);
  return {
    hideStrokes: strokes(hinted.hideStrokes),
    floorStrokes: strokes(hinted.floorStrokes),
    edgePoints: stroke(hinted.edgePoints),
  };
}

/** Hints of several photos of one floor together. */
export function joinHints(all: readonly EdgeHints[]): EdgeHints {
  return {
    hideStrokes: all.flatMap(({ hideStrokes }) => hideStrokes),
    floorStrokes: all.flatMap(({ floorStrokes }) => floorStrokes),
    edgePoints: all.flatMap(({ edgePoints }) => edgePoints),
  };
}
