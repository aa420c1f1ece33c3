import { IntakeError } from '../../error.js';
import { assemble, layOut } from './assemble.js';
import type { Layout } from './assemble.js';
import type { Body, Sighting } from './bodies.js';
import { solveRobustly } from './least-squares.js';
import type { Problem, Solution } from './least-squares.js';
import type { SeenReferences } from './seen-references.js';
import { USUAL_FOCAL } from './square-pixels.js';
import { firstGuess, largestBody } from './start.js';
import type { View } from './unknowns.js';
import { standpointOf } from './view.js';

/** What is solved: photos, what lies on the floor, and where it is seen. */
export interface FloorScene {
  readonly seen: readonly SeenReferences[];
  readonly bodies: readonly Body[];
  readonly sightings: readonly Sighting[];
}

/** Distortions that the solver starts from; the one that explains most is taken. */
const FIRST_K1 = [0, -0.15, 0.15];

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

/** In half diagonals. */
export function focalOf(values: Float64Array, layout: Layout, photo: number): number {
  return USUAL_FOCAL * Math.exp(values[layout.lens[photo]! + FOCAL_PLACE]!);
}
