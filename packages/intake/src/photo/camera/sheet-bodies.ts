import type { Point } from '@hidebound/geometry';
import {
  BAR_MM,
  MARKER_BLOCK_MM,
  PAPER_RING,
  markerCorners,
  markerPlace,
  printStretch,
} from '@hidebound/leather';
import type { MeasuredBars } from '@hidebound/leather';
import type { Body, Sighting } from './bodies.js';
import type { SeenMarker, SeenReferences } from './seen-references.js';
import { USUAL_DEVIATION } from './usual.js';

/** A corner from two measured sides is this exact where the edge is sharp, px. */
const SHARP_CORNER_PX = 0.06;
/** What each px of blur adds. */
const CORNER_PX_PER_BLUR = 0.06;
/** Toner and ink, at the place: mm of deviation that differ from marker to marker. */
const PRINT_MM = 0.04;

/** A reference sheet, its size told by its bars where they were measured. */
export function sheetBody(sheet: number, bars: MeasuredBars | undefined): Body {
  const { printedShare, barReadingMm, curlMm } = USUAL_DEVIATION;
  return {
    name: `sheet ${sheet}`,
    kind: 'sheet',
    sheet,
    ring: PAPER_RING,
    half: { x: MARKER_BLOCK_MM.width / 2, y: MARKER_BLOCK_MM.height / 2 },
    stretch: printStretch(bars),
    sizeShare:
      bars === undefined
        ? { x: printedShare, y: printedShare }
        : { x: barReadingMm / BAR_MM.across, y: barReadingMm / BAR_MM.down },
    // Equal readings are one reading used for all sheets, or at least no four witnesses.
    sizeGroup: bars === undefined ? 'printed' : `bars ${bars.acrossMm} ${bars.downMm}`,
    curlMm,
    slides: false,
  };
}

/** The four corners of each marker, on its sheet. Markers of sheets that are no bodies are left out. */
export function sheetSightings(
  seen: readonly SeenReferences[],
  bodyOfSheet: ReadonlyMap<number, number>,
): Sighting[] {
  return seen.flatMap(({ markers }, photo) =>
    markers.flatMap((marker) => {
      const { sheet, place } = markerPlace(marker.id)!;
      const body = bodyOfSheet.get(sheet);
      return body === undefined ? [] : markerSightings(marker, photo, body, place);
    }),
  );
}

const OUTWARDS: readonly Point[] = [
  { x: -1, y: -1 },
  { x: 1, y: -1 },
  { x: 1, y: 1 },
  { x: -1, y: 1 },
];

function markerSightings(marker: SeenMarker, photo: number, body: number, place: number): Sighting[] {
  const drawn = markerCorners(place);
  const drawnMm = Math.hypot(drawn[2].x - drawn[0].x, drawn[2].y - drawn[0].y);
  const seenPx = Math.hypot(
    marker.corners[2].x - marker.corners[0].x,
    marker.corners[2].y - marker.corners[0].y,
  );
  const deviationPx = Math.hypot(
    SHARP_CORNER_PX + CORNER_PX_PER_BLUR * marker.blurPx,
    (PRINT_MM * seenPx) / drawnMm,
  );
  return drawn.map((on, i) => ({
    photo,
    body,
    group: `${photo} ${marker.id}`,
    on,
    spread: OUTWARDS[i]!,
    px: marker.corners[i]!,
    deviationPx,
    slide: { x: 0, y: 0 },
  }));
}
