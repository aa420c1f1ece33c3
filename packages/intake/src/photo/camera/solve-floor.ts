import { applyAffine } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import { IntakeError } from '../../error.js';
import type { Findings } from '../../findings.js';
import type { Body, Sighting } from './bodies.js';
import type { Camera } from './camera.js';
import { floorErrorOf } from './floor-error.js';
import { CAMERA_NUMBERS, cameraOf, innerFrame, toFloorMm } from './inner-frame.js';
import { covarianceOf, freeUnknowns } from './least-squares.js';
import { toFloorPoint } from './places.js';
import { sceneOf } from './scene-of.js';
import type { PhotoReferences, SolveOptions } from './scene-of.js';
import { settleDoubts } from './settle-doubts.js';
import type { Settled } from './settle-doubts.js';
import { refitCorners } from './refit-corners.js';
import { focalOf, solveScene } from './solve-scene.js';
import type { FloorScene, SolvedScene } from './solve-scene.js';
import type { CameraNumbers, SolvedFloor, SolvedReference, Unsureness } from './solved-floor.js';
import { tellOfFloor } from './tell-floor.js';
import { FLOOR_UNIT_MM } from './unknowns.js';
import { standpointOf } from './view.js';

export type { PhotoReferences, SolveOptions } from './scene-of.js';

/** How each photo sees the floor, and where the references lie on it. */
export function solveFloor(
  seen: readonly PhotoReferences[],
  options: SolveOptions,
  findings: Findings,
): SolvedFloor {
  const scene = sceneOf(seen, options);
  refuseWithoutReference(scene);
  const settled = settleDoubts(straightenedSides(scene, seen, options), findings);
  const floor = floorOf(settled.scene, settled.solved);
  tellOfFloor(settled, floor, findings);
  return floor;
}

/** A lens with less distortion does not bow the sides of markers by 0.05 px. */
const BOWS_FROM_K1 = 0.02;

/** The scene solved; where the lens bows the sides of markers, with their corners told anew. */
function straightenedSides(
  scene: FloorScene,
  seen: readonly PhotoReferences[],
  options: SolveOptions,
): Settled {
  const solved = solveScene(scene);
  const { cameras } = floorOf(scene, solved);
  if (cameras.every(({ k1 }) => Math.abs(k1) < BOWS_FROM_K1)) return { scene, solved };
  const refitted = seen.map((each, i) => {
    const markers = each.references.markers.map((marker) => refitCorners(marker, cameras[i]!));
    return { ...each, references: { ...each.references, markers } };
  });
  const anew = sceneOf(refitted, options);
  return { scene: anew, solved: solveScene(anew) };
}

function refuseWithoutReference({ seen, sightings }: FloorScene): void {
  if (sightings.length === 0) throw new IntakeError('no-reference', {}, { file: seen[0]?.file ?? '' });
  seen.forEach(({ file }, photo) => {
    if (sightings.some((sighting) => sighting.photo === photo)) return;
    throw new IntakeError('no-reference', {}, { file });
  });
}

/** What others need of a solved scene. */
export function floorOf(scene: FloorScene, solved: SolvedScene): SolvedFloor {
  const numbers = solved.layout.photo.map((_, photo) => numbersOf(solved, photo));
  const inner = innerFrame(numbers[0]!);
  const cameras = scene.seen.map((size, photo) => cameraOf(numbers[photo]!, size, inner));
  const unsureness: Unsureness = {
    inner,
    cameras: numbers.map((values, photo) =>
      cameraNumbers(values, focalOf(solved.solution.values, solved.layout, photo), inner),
    ),
    covariance: [...cameraCovariance(solved)],
  };
  return {
    cameras,
    references: scene.bodies.map((body, i) => solvedReference(scene, solved, body, i, inner, cameras)),
    scaledBy: scaledBy(scene.bodies),
    error: floorErrorOf(cameras, unsureness),
    unsureness,
  };
}

function numberPlaces({ layout }: SolvedScene, photo: number): number[] {
  const [h, lens] = [layout.photo[photo]!, layout.lens[photo]!];
  return Array.from({ length: CAMERA_NUMBERS }, (_, i) => (i < 8 ? h + i : lens + i - 8));
}

function numbersOf(solved: SolvedScene, photo: number): Float64Array {
  return Float64Array.from(numberPlaces(solved, photo), (place) => solved.solution.values[place]!);
}

function cameraNumbers(values: Float64Array, focal: number, inner: Affine): CameraNumbers {
  const { footX, footY, height, tiltDeg } = standpointOf(values, focal);
  return {
    values: [...values],
    foot: toFloorMm(inner, { x: footX, y: footY }),
    heightMm: height * FLOOR_UNIT_MM,
    tiltDeg,
  };
}

function cameraCovariance(solved: SolvedScene): Float64Array {
  const all = covarianceOf(solved.problem, solved.solution);
  const free = freeUnknowns(solved.problem);
  const placeOf = new Map([...free].map((unknown, i) => [unknown, i]));
  const places = solved.layout.photo.flatMap((_, photo) => numberPlaces(solved, photo));
  const n = places.length;
  const covariance = new Float64Array(n * n);
  if (all === undefined) return covariance.fill(Infinity);
  for (let row = 0; row < n; row++) {
    for (let column = 0; column < n; column++) {
      covariance[row * n + column] =
        all[placeOf.get(places[row]!)! * free.length + placeOf.get(places[column]!)!]!;
    }
  }
  return covariance;
}

function solvedReference(
  scene: FloorScene,
  { layout, solution }: SolvedScene,
  body: Body,
  index: number,
  inner: Affine,
  cameras: readonly Camera[],
): SolvedReference {
  const first = layout.body[index]!;
  const [x, y, turn] = [0, 1, 2].map((i) => solution.values[first + i]!) as [number, number, number];
  const { x: sx, y: sy } = body.stretch;
  const [cos, sin] = [Math.cos(turn) / FLOOR_UNIT_MM, Math.sin(turn) / FLOOR_UNIT_MM];
  const pose: Affine = { a: cos * sx, b: sin * sx, c: -sin * sy, d: cos * sy, e: x, f: y };
  const place = (on: Point): Point => toFloorMm(inner, applyAffine(pose, on));
  const slid = (sighting: Sighting): Point => {
    const slide = layout.slide[index]!;
    if (slide === 0) return sighting.on;
    return {
      x: sighting.on.x + sighting.slide.x * solution.values[slide]! * FLOOR_UNIT_MM,
      y: sighting.on.y + sighting.slide.y * solution.values[slide + 1]! * FLOOR_UNIT_MM,
    };
  };
  let sumSq = 0;
  let count = 0;
  for (const sighting of scene.sightings) {
    if (sighting.body !== index) continue;
    const seenAt = toFloorPoint(cameras[sighting.photo]!, sighting.px);
    const saidAt = place(slid(sighting));
    sumSq += (seenAt.x - saidAt.x) ** 2 + (seenAt.y - saidAt.y) ** 2;
    count += 1;
  }
  return {
    name: body.name,
    ring: body.ring.map(place),
    isOpaque: body.kind === 'sheet' || body.kind === 'card',
    residualMm: Math.sqrt(sumSq / Math.max(1, count)),
  };
}

function scaledBy(bodies: readonly Body[]): string {
  const sheets = new Set(bodies.filter(({ kind }) => kind === 'sheet').map(({ name }) => name)).size;
  const stated = bodies.filter(({ kind }) => kind !== 'sheet').map(({ name }) => name);
  const parts = sheets === 0 ? [] : [`${sheets} reference sheet${sheets === 1 ? '' : 's'}`];
  return [...parts, ...new Set(stated)].join(' and ');
}
