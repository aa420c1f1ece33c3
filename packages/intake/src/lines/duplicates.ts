import { curveBox, flattenCurve, polylineNearest } from '@hidebound/geometry';
import type { Polyline } from '@hidebound/geometry';
import { DUPLICATE_MM, FLATTEN_MM } from '../limits.js';
import type { RoleLine } from './role-line.js';
import { earlierTwins } from './twins.js';

/** Corners compared of a line with very many; enough to tell two drawn lines apart. */
const COMPARED_CORNERS = 200;

/** Chords may lie this far from their curves on either side, so two flattened twins may differ by twice that. */
const CHORD_SLACK_MM = 0.001;

/** A line that was drawn twice, and how far it lies from its twin at the most, mm. */
export interface DroppedTwin {
  readonly line: RoleLine;
  readonly apartMm: number;
}

/**
 * The lines without those that are drawn twice: no place of either is more than 0.01 mm from the other, whichever
 * way and from whatever corner they run, and neither has another role. The one with a role stays, else the first.
 */
export function dropDuplicates(lines: readonly RoleLine[]): {
  readonly lines: RoleLine[];
  readonly dropped: DroppedTwin[];
} {
  const boxes = lines.map((line) => curveBox(line.curve));
  const twins = earlierTwins(boxes);
  const flat: (Polyline | undefined)[] = [];
  const apart: (number | undefined)[] = lines.map(() => undefined);
  lines.forEach((line, i) => {
    for (const j of twins.get(i) ?? []) {
      if (apart[i] !== undefined || apart[j] !== undefined) continue;
      const other = lines[j]!;
      if (line.role !== undefined && other.role !== undefined && line.role !== other.role) continue;
      if (line.curve.closed !== other.curve.closed) continue;
      const a = (flat[i] ??= flattenCurve(line.curve, CHORD_SLACK_MM));
      const b = (flat[j] ??= flattenCurve(other.curve, CHORD_SLACK_MM));
      const mm = Math.max(farthestOff(a, b), farthestOff(b, a));
      if (mm === Infinity) continue;
      apart[line.role !== undefined && other.role === undefined ? j : i] = mm;
    }
  });
  return {
    lines: lines.filter((_, i) => apart[i] === undefined),
    dropped: lines.flatMap((line, i) => (apart[i] === undefined ? [] : [{ line, apartMm: apart[i] }])),
  };
}

/** How far the line lies from the other one at the most, mm; infinite if that is too far for a twin. */
function farthestOff(line: Polyline, other: Polyline): number {
  let farthest = 0;
  const step = Math.max(1, Math.floor(line.length / COMPARED_CORNERS));
  for (let i = 0; i < line.length; i += step) {
    const nearest = polylineNearest(other, line[i]!);
    if (nearest.distance > DUPLICATE_MM + 2 * CHORD_SLACK_MM) return Infinity;
    farthest = Math.max(farthest, nearest.distance);
  }
  return farthest;
}

/** Chords for containment, crossing and distance. */
export function flatRing(curve: RoleLine['curve']): Polyline {
  return flattenCurve(curve, FLATTEN_MM).slice(0, -1);
}
