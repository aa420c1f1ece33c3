import { curveFromPolyline, distanceSq, roundPoint, simpleLine } from '@hidebound/geometry';
import type { Curve, Point, Polyline } from '@hidebound/geometry';

/** How far a kept stroke may lie from the drawn one, CSS pixels: less than the hand trembles, and than the eye sees. */
const SIMPLE_PX = 0.5;
/** A stroke that stays within this, CSS pixels, was no stroke. */
const LEAST_PX = 6;

/** A stroke of the hand with the corners that it needs at this scale (px per mm), on the file's grid; undefined for a dab. */
export function strokeLine(drawn: readonly Point[], scale: number): Polyline | undefined {
  const line = withoutRepeats(simpleLine(drawn, SIMPLE_PX / scale).map(roundPoint));
  return line.length < 2 || !reaches(line, LEAST_PX / scale) ? undefined : line;
}

/** What a stroke was drawn around; undefined for a dab or a mere line. */
export function strokeAround(drawn: readonly Point[], scale: number): Curve | undefined {
  const [start] = drawn;
  if (start === undefined) return undefined;
  const line = strokeLine([...drawn, start], scale);
  return line === undefined || line.length < 4 ? undefined : curveFromPolyline(line, true);
}

function withoutRepeats(line: Polyline): Polyline {
  return line.filter((point, i) => i === 0 || distanceSq(point, line[i - 1]!) > 0);
}

function reaches(line: Polyline, mm: number): boolean {
  return line.some((point) => distanceSq(point, line[0]!) >= mm * mm);
}
