import { layFirst } from '../nest/first-layout.js';
import { innerProblem } from '../nest/inner-problem.js';
import type { Layout } from '../nest/layout.js';
import { createLayout } from '../nest/layout.js';
import { rectangle, testItem, testKind, testProblem, testSheet } from '../nest/test-problems.js';
import { createRandom } from '../number/random.js';
import { sampleProblem } from '../sample/sample-problem.js';
import type { Distances, NestProblem } from '../types/problem.js';
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

/** Half the side of the squares, mm. */
export const HALF_MM = 20;

/** A square of a test: where its middle lies, and the group of its own if it has one. */
export interface SquareAt {
  readonly x: number;
  readonly y: number;
  readonly group?: string;
  readonly isFixed?: boolean;
}

/** Squares of 40 mm on a strip that is used up from x = 0 on, where they are told to lie. */
export function squaresScene(
  squares: readonly SquareAt[],
  [length, height]: readonly [number, number],
  distances: Partial<Distances> = {},
): TestScene {
  const groups = [...new Set(squares.map(({ group }) => group))];
  const region = rectangle(-HALF_MM, -HALF_MM, HALF_MM, HALF_MM);
  const countOf = (group: string | undefined): number => squares.filter((at) => at.group === group).length;
  const problem = testProblem({
    items: groups.map((group) =>
      testItem(`square ${group ?? ''}`, region, group === undefined ? {} : { group }),
    ),
    setKinds: [
      testKind(Object.fromEntries(groups.map((group) => [`square ${group ?? ''}`, countOf(group)]))),
    ],
    sheets: [testSheet('sheet', rectangle(0, 0, length, height))],
    distances: { gap: 0, edge: 0, void: 0, ...distances },
  });
  const layout = createLayout(innerProblem(problem).problem);
  const scene = drain(buildScene(layout, problem.distances));
  const { copies } = layout.demand;
  const still = new Set(copies.filter((_, i) => squares[i]!.isFixed === true).map(({ index }) => index));
  const world = worldOf(scene, copies, still, createRandom(1));
  const places = squares.map(({ x, y }) => ({ sheet: 0, x, y, rotationDeg: 0 }));
  restoreSnapshot(world, snapshotAt(world, places));
  return { problem, layout, scene, world };
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
