import { applyAffine } from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import type { MeasuredBars, StatedReference } from '@hidebound/leather';
import { markerPlace } from '@hidebound/leather';
import { IntakeError } from '../../error.js';
import type { Findings } from '../../findings.js';
import { assemble, layOut } from './assemble.js';
import type { Layout } from './assemble.js';
import type { Body, Sighting } from './bodies.js';
import type { Camera } from './camera.js';
import { floorErrorOf } from './floor-error.js';
import { CAMERA_NUMBERS, cameraOf, innerFrame, toFloorMm } from './inner-frame.js';
import { covarianceOf, freeUnknowns, solveRobustly } from './least-squares.js';
import type { Problem, Solution } from './least-squares.js';
import { toFloorPoint } from './places.js';
import type { SeenReferences } from './seen-references.js';
import { sheetBody, sheetSightings } from './sheet-bodies.js';
import type { CameraNumbers, SolvedFloor, SolvedReference, Unsureness } from './solved-floor.js';
import { firstGuess, largestBody } from './start.js';
import { statedBody } from './stated-bodies.js';
import { USUAL_FOCAL } from './square-pixels.js';
import { FLOOR_UNIT_MM } from './unknowns.js';
import type { View } from './unknowns.js';
import { standpointOf } from './view.js';

/** One photo's references: what was found on it, and what a person stated. */
export interface PhotoReferences {
  readonly references: SeenReferences;
  readonly stated?: StatedReference;
}

export interface SolveOptions {
  /** The bars of a sheet as measured after printing; undefined where nobody did. */
  readonly barsOf?: (sheet: number) => MeasuredBars | undefined;
}

/** What is solved: photos, what lies on the floor, and where it is seen. */
export interface FloorScene {
  readonly seen: readonly SeenReferences[];
  readonly bodies: readonly Body[];
  readonly sightings: readonly Sighting[];
}

/** Distortions that the solver starts from; the one that explains most is taken. */
const FIRST_K1 = [0, -0.15, 0.15];

/** How each photo sees the floor, and where the references lie on it. */
export function solveFloor(
  seen: readonly PhotoReferences[],
  options: SolveOptions,
  findings: Findings,
): SolvedFloor {
  const scene = sceneOf(seen, options);
  refuseWithoutReference(scene);
  void findings;
  return floorOf(scene, solveScene(scene));
}

function sceneOf(seen: readonly PhotoReferences[], options: SolveOptions): FloorScene {
  const photos = seen.map(({ references }) => references);
  const sheets = new Set(photos.flatMap(({ markers }) => markers.map(({ id }) => markerPlace(id)!.sheet)));
  const bodies: Body[] = [];
  const bodyOfSheet = new Map<number, number>();
  for (const sheet of [...sheets].sort((a, b) => a - b)) {
    bodyOfSheet.set(sheet, bodies.length);
    bodies.push(sheetBody(sheet, options.barsOf?.(sheet)));
  }
  const sightings = sheetSightings(photos, bodyOfSheet);
  seen.forEach(({ stated }, photo) => {
    if (stated === undefined) return;
    const made = statedBody(stated, photo, bodies.length, []);
    bodies.push(made.body);
    sightings.push(...made.sightings);
  });
  return { seen: photos, bodies, sightings };
}

function refuseWithoutReference({ seen, sightings }: FloorScene): void {
  if (sightings.length === 0) throw new IntakeError('no-reference', {}, { file: seen[0]?.file ?? '' });
  seen.forEach(({ file }, photo) => {
    if (sightings.some((sighting) => sighting.photo === photo)) return;
    throw new IntakeError('no-reference', {}, { file });
  });
}

/** The scene solved, in the unknowns' own frame. */
export interface SolvedScene {
  readonly layout: Layout;
  readonly problem: Problem;
  readonly solution: Solution;
}

/** Enough to tell which start is the best. */
const FIRST_STEPS = 6;
/** Of the lens' numbers the one that stands for the focal length. */
const FOCAL_PLACE = 6;
/** With where the cameras stand told anew, since what rises from the floor moves away from below them. */
const VIEW_ROUNDS = 2;

export function solveScene({ seen, bodies, sightings }: FloorScene): SolvedScene {
  const layout = layOut(seen, bodies);
  const fixed = largestBody(sightings, bodies.length);
  let best: SolvedScene | undefined;
  for (const k1 of FIRST_K1) {
    const start = firstGuess(seen, bodies, sightings, layout, fixed, k1);
    const loose = start.loose[0];
    if (loose !== undefined) {
      throw new IntakeError('photo-not-tied', {}, { file: seen[loose]!.file });
    }
    const problem = assemble(seen, bodies, sightings, viewsOf(start.values, layout), layout, fixed);
    const solution = solveRobustly(problem, start.values, { rounds: 1, mostSteps: FIRST_STEPS });
    if (best === undefined || solution.cost < best.solution.cost) best = { layout, problem, solution };
  }
  for (let round = 0; round < VIEW_ROUNDS; round++) {
    const views = viewsOf(best!.solution.values, layout);
    const problem = { ...best!.problem, views };
    best = { layout, problem, solution: solveRobustly(problem, best!.solution.values) };
  }
  return best!;
}

function viewsOf(values: Float64Array, layout: Layout): View[] {
  return layout.photo.map((first, photo) =>
    standpointOf(values.subarray(first, first + 8), focalOf(values, layout, photo)),
  );
}

function focalOf(values: Float64Array, layout: Layout, photo: number): number {
  return USUAL_FOCAL * Math.exp(values[layout.lens[photo]! + FOCAL_PLACE]!);
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
    residualMm: Math.sqrt(sumSq / Math.max(1, count)),
  };
}

function scaledBy(bodies: readonly Body[]): string {
  const sheets = bodies.filter(({ kind }) => kind === 'sheet').length;
  const stated = bodies.filter(({ kind }) => kind !== 'sheet').map(({ name }) => name);
  const parts = sheets === 0 ? [] : [`${sheets} reference sheet${sheets === 1 ? '' : 's'}`];
  return [...parts, ...new Set(stated)].join(' and ');
}
