import type { Point } from '@hidebound/geometry';
import type { Layout, PhotoSize } from './assemble.js';
import { halfDiagonal } from './assemble.js';
import type { Body, Sighting } from './bodies.js';
import { applyHomography, fitHomography, invertHomography } from './homography.js';
import { withoutLens } from './lens.js';
import { inFloorUnits } from './usual.js';

/** Where a body lies, in floor units and radians. */
interface Pose {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

export interface Start {
  readonly values: Float64Array;
  /** Photos that share no body with the others, directly or by way of other photos. */
  readonly loose: readonly number[];
}

/** The body on which the floor's coordinates hang: the one that the first photo shows largest. */
export function largestBody(sightings: readonly Sighting[], bodyCount: number): number {
  const first = Math.min(...sightings.map(({ photo }) => photo));
  let largest = 0;
  let most = -1;
  for (let body = 0; body < bodyCount; body++) {
    const seen = sightings.filter((sighting) => sighting.body === body && sighting.photo === first);
    const span = spanOf(seen.map(({ px }) => px)) * Math.sqrt(seen.length);
    if (seen.length >= 4 && span > most) {
      most = span;
      largest = body;
    }
  }
  return largest;
}

/**
 * A first guess: the fixed body tells how its photo sees the floor, that tells where the next bodies lie, they tell more of the
 * photo and of the next photos, and so on, nearest first.
 * @param k1 distortion that is guessed at
 */
export function firstGuess(
  photos: readonly PhotoSize[],
  bodies: readonly Body[],
  sightings: readonly Sighting[],
  layout: Layout,
  fixed: number,
  k1: number,
): Start {
  const straight = sightings.map((sighting) => straightened(sighting, photos[sighting.photo]!, k1));
  const poses = new Map<number, Pose>([[fixed, { x: 0, y: 0, turn: 0 }]]);
  const homographies = new Map<number, number[]>();
  for (let grew = true; grew;) {
    grew = false;
    for (let photo = 0; photo < photos.length; photo++) {
      const known = sightings.flatMap((sighting, i) =>
        sighting.photo === photo && poses.has(sighting.body) ? [i] : [],
      );
      const homography = fitHomography(
        known.map((i) => onFloor(sightings[i]!, bodies, poses.get(sightings[i]!.body)!)),
        known.map((i) => straight[i]!),
      );
      if (homography === undefined) continue;
      homographies.set(photo, homography);
      const next = nearestUnknown(photo, sightings, straight, poses, known);
      if (next === undefined) continue;
      const mine = sightings.flatMap((sighting, i) =>
        sighting.photo === photo && sighting.body === next ? [i] : [],
      );
      const back = invertHomography(homography);
      poses.set(
        next,
        fitPose(
          mine.map((i) => onBody(sightings[i]!, bodies)),
          mine.map((i) => applyHomography(back, straight[i]!)),
        ),
      );
      grew = true;
    }
  }
  return {
    values: valuesOf(layout, homographies, poses, k1),
    loose: photos.flatMap((_, i) => (homographies.has(i) ? [] : [i])),
  };
}

function straightened({ px }: Sighting, photo: PhotoSize, k1: number): Point {
  const radius = halfDiagonal(photo);
  const inUnits = {
    x: (px.x - (photo.width - 1) / 2) / radius,
    y: (px.y - (photo.height - 1) / 2) / radius,
  };
  return withoutLens({ axis: { x: 0, y: 0 }, radiusPx: 1, k1, k2: 0, p1: 0, p2: 0 }, inUnits);
}

function onBody({ on, body }: Sighting, bodies: readonly Body[]): Point {
  const { stretch } = bodies[body]!;
  return { x: inFloorUnits(on.x * stretch.x), y: inFloorUnits(on.y * stretch.y) };
}

function onFloor(sighting: Sighting, bodies: readonly Body[], pose: Pose): Point {
  const { x, y } = onBody(sighting, bodies);
  const cos = Math.cos(pose.turn);
  const sin = Math.sin(pose.turn);
  return { x: pose.x + cos * x - sin * y, y: pose.y + sin * x + cos * y };
}

/** Of the bodies that the photo shows and whose place is not known, the one nearest to known ones. */
function nearestUnknown(
  photo: number,
  sightings: readonly Sighting[],
  straight: readonly Point[],
  poses: ReadonlyMap<number, Pose>,
  known: readonly number[],
): number | undefined {
  let nearest: number | undefined;
  let least = Infinity;
  sightings.forEach((sighting, i) => {
    if (sighting.photo !== photo || poses.has(sighting.body)) return;
    for (const k of known) {
      const distance = Math.hypot(straight[i]!.x - straight[k]!.x, straight[i]!.y - straight[k]!.y);
      if (distance < least) {
        least = distance;
        nearest = sighting.body;
      }
    }
  });
  return nearest;
}

/** The turn and shift that bring `from` nearest to `to`. */
function fitPose(from: readonly Point[], to: readonly Point[]): Pose {
  const a = middleOf(from);
  const b = middleOf(to);
  let dot = 0;
  let cross = 0;
  from.forEach((point, i) => {
    const [px, py] = [point.x - a.x, point.y - a.y];
    const [qx, qy] = [to[i]!.x - b.x, to[i]!.y - b.y];
    dot += px * qx + py * qy;
    cross += px * qy - py * qx;
  });
  const turn = Math.atan2(cross, dot);
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  return { x: b.x - cos * a.x + sin * a.y, y: b.y - sin * a.x - cos * a.y, turn };
}

function middleOf(points: readonly Point[]): Point {
  return {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
}

function spanOf(points: readonly Point[]): number {
  if (points.length === 0) return 0;
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

function valuesOf(
  layout: Layout,
  homographies: ReadonlyMap<number, readonly number[]>,
  poses: ReadonlyMap<number, Pose>,
  k1: number,
): Float64Array {
  const values = new Float64Array(layout.count);
  for (const [photo, homography] of homographies) {
    values.set(homography.slice(0, 8), layout.photo[photo]);
    values[layout.lens[photo]!] = k1;
  }
  for (const [body, { x, y, turn }] of poses) values.set([x, y, turn], layout.body[body]);
  return values;
}
