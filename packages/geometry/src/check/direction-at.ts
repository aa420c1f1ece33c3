import { DIRECTION_UNKNOWN_BELOW, FIELD_NEAREST_MM } from '../tolerance.js';
import type { DirectionField } from '../types/problem.js';
import type { Point, Polyline } from '../types/shape.js';
import { nearestOnSegment } from './boundary-distance.js';
import { angleDegOf } from './turn.js';

/** The local direction at a place. */
export interface LocalDirection {
  readonly angleDeg: number;
  /** It points from head to tail; otherwise the opposite direction is as good. */
  readonly isDirected: boolean;
}

/** Where a line comes nearest to a place, how far off, and its unit direction there. */
interface NearestOnLine {
  readonly distance: number;
  readonly x: number;
  readonly y: number;
}

/** Two stretches of a line that are equally near but for rounding: the earlier one counts. */
const TIE_MM = 1e-9;

/**
 * The direction in which the leather stretches least at a place: the mean of axis and strokes as axes (doubled
 * angles), each counted by its nearest point with weight 1/max(d, 5 mm)²; undefined where that mean is shorter
 * than 0.2 or nothing is drawn. With an axis it points the way in which the axis runs where that is nearest.
 */
export function directionAt(field: DirectionField | undefined, at: Point): LocalDirection | undefined {
  if (field === undefined) return undefined;
  const axis = field.axis === undefined ? undefined : nearestOnLine(field.axis, at);
  let weights = 0;
  let cos2 = 0;
  let sin2 = 0;
  for (const near of [axis, ...field.strokes.map((stroke) => nearestOnLine(stroke, at))]) {
    if (near === undefined) continue;
    const weight = 1 / Math.max(near.distance, FIELD_NEAREST_MM) ** 2;
    weights += weight;
    cos2 += weight * (near.x * near.x - near.y * near.y);
    sin2 += weight * 2 * near.x * near.y;
  }
  if (weights === 0 || Math.hypot(cos2, sin2) / weights < DIRECTION_UNKNOWN_BELOW) return undefined;
  const half = Math.atan2(sin2, cos2) / 2;
  const x = Math.cos(half);
  const y = Math.sin(half);
  if (axis === undefined) return { angleDeg: angleDegOf(x, y), isDirected: false };
  const isAgainst = x * axis.x + y * axis.y < 0;
  return { angleDeg: isAgainst ? angleDegOf(-x, -y) : angleDegOf(x, y), isDirected: true };
}

/** Distance (mm) of a place to the axis; undefined where the sheet has none. */
export function distanceToAxis(field: DirectionField | undefined, at: Point): number | undefined {
  return field?.axis === undefined ? undefined : nearestOnLine(field.axis, at)?.distance;
}

function nearestOnLine(line: Polyline, at: Point): NearestOnLine | undefined {
  let nearest: NearestOnLine | undefined;
  for (let i = 0; i + 1 < line.length; i++) {
    const from = line[i]!;
    const to = line[i + 1]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length === 0) continue;
    const near = nearestOnSegment(at.x, at.y, from.x, from.y, to.x, to.y);
    const distance = Math.hypot(near.x - at.x, near.y - at.y);
    if (nearest !== undefined && distance >= nearest.distance - TIE_MM) continue;
    nearest = { distance, x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  }
  return nearest;
}
