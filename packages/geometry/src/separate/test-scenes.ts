import { layFirst } from '../nest/first-layout.js';
import { innerProblem } from '../nest/inner-problem.js';
import type { Layout } from '../nest/layout.js';
import { createLayout } from '../nest/layout.js';
import { createRandom } from '../number/random.js';
import { sampleProblem } from '../sample/sample-problem.js';
import type { NestProblem } from '../types/problem.js';
import type { Region } from '../types/shape.js';
import { snapshotAt } from './places.js';
import type { TurnedRings } from './turned.js';
import type { World } from './world.js';
import { restoreSnapshot } from './world.js';
import type { Scene } from './world-of-layout.js';
import { buildScene, sheetsForCopies, worldOf } from './world-of-layout.js';

export interface TestScene {
  readonly problem: NestProblem;
  readonly layout: Layout;
  readonly scene: Scene;
  /** All copies where the first layout has them; the search's shapes, grown a little, may still meet by a hair. */
  readonly world: World;
}

function drain<T>(work: Generator<undefined, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

/** A small job of the samples, and its first layout. */
export function testScene(seed: number): TestScene {
  const problem = sampleProblem(seed, { pieces: 12, share: 0.4 });
  const layout = createLayout(innerProblem(problem).problem);
  drain(layFirst(layout));
  const scene = drain(buildScene(layout, problem.distances));
  const { copies } = layout.demand;
  const world = worldOf(scene, copies, new Set(), createRandom(seed));
  const places = copies.map(({ index }) => {
    const laid = layout.laid[index];
    if (laid === undefined) return undefined;
    return { sheet: laid.sheet, x: laid.x, y: laid.y, rotationDeg: laid.variant.rotationDeg };
  });
  restoreSnapshot(world, snapshotAt(world, places));
  world.mayLie.splice(0, world.count, ...sheetsForCopies(scene, copies, world.sheetOf));
  return { problem, layout, scene, world };
}

/** Turned rings, the first one the outer one, as a region. */
export function regionOfRings({ x, y, start }: TurnedRings, dx: number, dy: number): Region {
  const rings = Array.from({ length: start.length - 1 }, (_, r) =>
    Array.from({ length: start[r + 1]! - start[r]! }, (_, k) => {
      const i = start[r]! + k;
      return { x: x[i]! + dx, y: y[i]! + dy };
    }),
  );
  return { outer: rings[0]!, openings: rings.slice(1) };
}
