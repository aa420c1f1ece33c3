import type { Point, Polyline } from '@hidebound/geometry';
import { hideToPhoto } from '@hidebound/intake/photo';
import type { PhotoView } from '@hidebound/intake/photo';
import type { EdgeHints, HintedPhoto, PhotoHints } from '@hidebound/leather';

/** What is drawn on a traced hide (mm), said of the photos that show it; one place may be seen by several. */
export function hintsFromMarks(hints: PhotoHints, marks: EdgeHints, views: readonly PhotoView[]): PhotoHints {
  return views.reduce((all, view) => withMarks(all, view, marks), hints);
}

const NOTHING = { hideStrokes: [], floorStrokes: [], edgePoints: [] } as const;

function withMarks(hints: PhotoHints, view: PhotoView, marks: EdgeHints): PhotoHints {
  const known = hints.photos.find(({ photo }) => photo === view.file);
  const said = known ?? { photo: view.file, ...NOTHING };
  const more: HintedPhoto = {
    ...said,
    hideStrokes: [...said.hideStrokes, ...marks.hideStrokes.flatMap((line) => seenParts(view, line))],
    floorStrokes: [...said.floorStrokes, ...marks.floorStrokes.flatMap((line) => seenParts(view, line))],
    edgePoints: [...said.edgePoints, ...marks.edgePoints.flatMap((at) => seenPlace(view, at) ?? [])],
  };
  if (known !== undefined) return { photos: hints.photos.map((photo) => (photo === known ? more : photo)) };
  const saysNothing = [more.hideStrokes, more.floorStrokes, more.edgePoints].every(
    (list) => list.length === 0,
  );
  return saysNothing ? hints : { photos: [...hints.photos, more] };
}

/** The parts of a stroke that the photo shows. */
function seenParts(view: PhotoView, line: Polyline): Polyline[] {
  const parts: Point[][] = [[]];
  for (const place of line) {
    const seen = seenPlace(view, place);
    if (seen === undefined) parts.push([]);
    else parts[parts.length - 1]!.push(seen);
  }
  return parts.filter(({ length }) => length > 1);
}

/** Hints count from the photo's corner, and hold hundredths. */
function seenPlace(view: PhotoView, place: Point): Point | undefined {
  const px = hideToPhoto(view, place);
  if (px === undefined) return undefined;
  return { x: hundredths(Math.max(0, px.x)), y: hundredths(Math.max(0, px.y)) };
}

function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
