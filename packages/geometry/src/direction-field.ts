import { atan2Deg, normalizeDeg } from './number/trigonometry.js';
import { pointInRegion } from './shape/point-in-ring.js';
import { regionBox, regionCentroid } from './shape/ring.js';
import { DIRECTION_UNKNOWN_BELOW, FIELD_GRID_MM, FIELD_NEAREST_MM, FIELD_TIE_MM } from './tolerance.js';
import type { DirectionField, ThicknessField } from './types/problem.js';
import type { Point, Polyline, Region } from './types/shape.js';

/** The local direction, in which the leather stretches least. */
export interface LocalDirection {
  /** Degrees clockwise from the x axis as seen: in [0, 360) if directed, else in [0, 180). */
  readonly angleDeg: number;
  /** It runs from head to tail; otherwise the opposite direction is as good. */
  readonly directed: boolean;
  /** Length of the mean, 0.2 to 1: how far the strokes agree. */
  readonly strength: number;
}

/**
 * The local direction at a place: the mean of axis and strokes as axes (doubled angles), each counted by its nearest
 * point with weight 1/max(d, 5 mm)². `unknown` where the mean is shorter than 0.2 or nothing is drawn. With an axis
 * it points the way in which the axis runs where that is nearest.
 */
export function directionAt(field: DirectionField, at: Point): LocalDirection | 'unknown' {
  const axis = field.axis === undefined ? undefined : nearestStretch(field.axis, at);
  let weights = 0;
  let cosTwice = 0;
  let sinTwice = 0;
  const count = (near: NearestStretch | undefined) => {
    if (near === undefined) return;
    const weight = weightAt(near.distance);
    weights += weight;
    cosTwice += weight * (near.x * near.x - near.y * near.y);
    sinTwice += weight * (2 * near.x * near.y);
  };
  count(axis);
  for (const stroke of field.strokes) count(nearestStretch(stroke, at));
  if (weights === 0) return 'unknown';
  const strength = Math.sqrt(cosTwice * cosTwice + sinTwice * sinTwice) / weights;
  if (strength < DIRECTION_UNKNOWN_BELOW) return 'unknown';
  const [x, y] = halfAngle(cosTwice / (strength * weights), sinTwice / (strength * weights));
  const against = axis !== undefined && x * axis.x + y * axis.y < 0;
  const deg = normalizeDeg(against ? atan2Deg(-y, -x) : atan2Deg(y, x));
  if (axis !== undefined) return { angleDeg: deg, directed: true, strength };
  return { angleDeg: deg >= 180 ? deg - 180 : deg, directed: false, strength };
}

/** Thinnest and thickest, in mm, that the leather may be at a place: the weighted mean of readings, else the range. */
export function thicknessAt(field: ThicknessField, at: Point): readonly [number, number] {
  if (field.readings.length === 0) return field.rangeMm;
  let weights = 0;
  let sum = 0;
  for (const reading of field.readings) {
    const dx = reading.at.x - at.x;
    const dy = reading.at.y - at.y;
    const weight = weightAt(Math.sqrt(dx * dx + dy * dy));
    weights += weight;
    sum += weight * reading.mm;
  }
  return [sum / weights, sum / weights];
}

/**
 * The points of an item's own frame at which rules about direction and thickness must hold: its centroid, then the
 * crossings (50 i, 50 j) that lie strictly inside, row by row.
 */
export function gridPointsIn(region: Region): Point[] {
  const points: Point[] = [regionCentroid(region)];
  const { minX, minY, maxX, maxY } = regionBox(region);
  for (let j = Math.ceil(minY / FIELD_GRID_MM); j * FIELD_GRID_MM <= maxY; j++) {
    for (let i = Math.ceil(minX / FIELD_GRID_MM); i * FIELD_GRID_MM <= maxX; i++) {
      const p = { x: i * FIELD_GRID_MM + 0, y: j * FIELD_GRID_MM + 0 };
      if (pointInRegion(p, region) === 'inside') points.push(p);
    }
  }
  return points;
}

function weightAt(distance: number): number {
  const d = Math.max(distance, FIELD_NEAREST_MM);
  return 1 / (d * d);
}

/** Unit vector at half the angle of a unit vector, in the half plane of x >= 0; square roots only. */
function halfAngle(cos: number, sin: number): readonly [number, number] {
  if (cos >= 0) {
    const x = Math.sqrt((1 + cos) / 2);
    return [x, sin / (2 * x)];
  }
  const y = Math.sqrt((1 - cos) / 2);
  return sin >= 0 ? [sin / (2 * y), y] : [-sin / (2 * y), -y];
}

interface NearestStretch {
  readonly distance: number;
  /** Unit direction of the chain there. */
  readonly x: number;
  readonly y: number;
}

function nearestStretch(line: Polyline, at: Point): NearestStretch | undefined {
  let nearest: NearestStretch | undefined;
  for (let i = 0; i + 1 < line.length; i++) {
    const a = line[i]!;
    const dx = line[i + 1]!.x - a.x;
    const dy = line[i + 1]!.y - a.y;
    const lengthSq = dx * dx + dy * dy;
    if (lengthSq === 0) continue;
    const share = ((at.x - a.x) * dx + (at.y - a.y) * dy) / lengthSq;
    const within = share < 0 ? 0 : share > 1 ? 1 : share;
    const ox = at.x - a.x - within * dx;
    const oy = at.y - a.y - within * dy;
    const distance = Math.sqrt(ox * ox + oy * oy);
    // A place whose nearest point is a corner is as near to both stretches: the earlier one counts.
    if (nearest !== undefined && distance >= nearest.distance - FIELD_TIE_MM) continue;
    const length = Math.sqrt(lengthSq);
    nearest = { distance, x: dx / length, y: dy / length };
  }
  return nearest;
}
