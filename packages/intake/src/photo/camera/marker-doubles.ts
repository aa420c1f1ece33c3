import type { Point } from '@hidebound/geometry';
import { markerCorners, markerPlace } from '@hidebound/leather';
import { applyHomography, fitHomography } from './homography.js';
import type { SeenMarker } from './seen-references.js';

/** A marker is where the others of its sheet say within this share of its own side: they lie a sheet apart at most. */
const FARTHEST_OFF_SHARE = 0.5;

/** One marker of each number: the one that lies where the others of its sheet say, else the largest. */
export function keepOneOfEach(markers: readonly SeenMarker[]): SeenMarker[] {
  const byId = new Map<number, SeenMarker[]>();
  for (const marker of markers) byId.set(marker.id, [...(byId.get(marker.id) ?? []), marker]);
  const alone = [...byId.values()].filter((same) => same.length === 1).map(([one]) => one!);
  const kept = [...byId.values()].map((same) => {
    if (same.length === 1) return same[0]!;
    const sorted = [...same].sort((a, b) => sideOf(b) - sideOf(a));
    return sorted.find((marker) => agrees(marker, alone)) ?? sorted[0]!;
  });
  return kept.sort((a, b) => a.id - b.id);
}

/** True where the marker lies where all other markers of its sheet together put it. */
function agrees(marker: SeenMarker, others: readonly SeenMarker[]): boolean {
  const { sheet, place } = markerPlace(marker.id)!;
  const mates = others.filter(({ id }) => id !== marker.id && markerPlace(id)!.sheet === sheet);
  const from: Point[] = mates.flatMap(({ id }) => [...markerCorners(markerPlace(id)!.place)]);
  const to: Point[] = mates.flatMap(({ corners }) => [...corners]);
  const homography = fitHomography(from, to);
  if (homography === undefined) return false;
  const limit = FARTHEST_OFF_SHARE * sideOf(marker);
  return markerCorners(place).every((corner, i) => {
    const expected = applyHomography(homography, corner);
    const seen = marker.corners[i]!;
    return Math.hypot(expected.x - seen.x, expected.y - seen.y) < limit;
  });
}

function sideOf({ corners }: SeenMarker): number {
  return Math.hypot(corners[2].x - corners[0].x, corners[2].y - corners[0].y);
}
