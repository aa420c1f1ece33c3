import {
  MIRROR_X,
  applyAffine,
  composeAffine,
  orientRing,
  roundPoint,
  transformRing,
  translation,
} from '@hidebound/geometry';
import type { Affine, Box, Point, Polyline, Ring } from '@hidebound/geometry';
import type { Diagnostic, Side } from '@hidebound/leather';

/**
 * From the floor as the photo shows it to the hide as it is stored: its box starts at (0, 0), and where the flesh side
 * lay upwards it is mirrored in x, since every stored shape is seen from the grain side.
 */
export function hideFrame(box: Box, sideUp: Side): Affine {
  if (sideUp === 'grain') return translation(-box.minX, -box.minY);
  return composeAffine(translation(box.maxX, -box.minY), MIRROR_X);
}

/** A line in the hide's frame, on the 1 µm grid of the files. */
export function lineInFrame(frame: Affine, line: Polyline): Polyline {
  return line.map((point) => pointInFrame(frame, point));
}

export function pointInFrame(frame: Affine, point: Point): Point {
  return roundPoint(applyAffine(frame, point));
}

/** A ring in the hide's frame, on the 1 µm grid, turning as its role asks also where the frame mirrors. */
export function ringInFrame(frame: Affine, ring: Ring, role: 'outer' | 'opening'): Ring {
  return orientRing(transformRing(frame, ring).map(roundPoint), role);
}

/** Findings whose places are the hide's own, as whoever reads them holds the hide and not the floor. */
export function findingsInFrame(frame: Affine, findings: readonly Diagnostic[]): Diagnostic[] {
  return findings.map((finding) => {
    const point = finding.place?.point;
    if (point === undefined) return finding;
    return { ...finding, place: { ...finding.place, point: pointInFrame(frame, point) } };
  });
}
