import { rectangle, testItem, testKind, testProblem, testSheet } from '../nest/test-problems.js';
import { createRandom } from '../number/random.js';
import type { Budget, NestAnswer, NestProblem } from '../types/problem.js';
import type { Stream, StreamOutcome } from '../types/stream.js';

/**
 * A search small enough for tests, which behaves as a stream has to: squares are drawn towards a corner without
 * overlap, by random moves of which only the good ones are kept.
 */
export function createToyStream(problem: NestProblem, stream: number): Stream {
  const sizes = problem.items.map(({ region }) => region.outer[1]!.x - region.outer[0]!.x);
  const random = createRandom(problem.budget.seed).fork(stream);
  let spots = sizes.map((_, i) => ({ x: 20 * i, y: 0 }));
  let unitsLeft = 0;
  let laid = 0;
  let isFirst = true;
  const move = (): void => {
    const i = random.integer(sizes.length);
    const reach = 1 + random.integer(40);
    const to = {
      x: Math.max(0, spots[i]!.x + random.integer(2 * reach + 1) - reach) + 0.125 * random.integer(8),
      y: Math.max(0, spots[i]!.y + random.integer(2 * reach + 1) - reach),
    };
    const isFree = sizes.every((size, j) => j === i || isApart(to, sizes[i]!, spots[j]!, size));
    if (isFree && to.x * 1.5 + to.y < spots[i]!.x * 1.5 + spots[i]!.y) spots[i] = to;
  };
  return {
    begin: (join, best) => {
      isFirst = join === 0;
      // Uneven work. Odd streams go on from their own layout now and then: what a stream remembers counts.
      unitsLeft = isFirst ? sizes.length : 2 + random.integer(8);
      const goesOn = join > 1 && stream % 2 === 1 && random.integer(2) === 0;
      if (best !== undefined && !goesOn) spots = best.placements.map(({ x, y }) => ({ x, y }));
    },
    advance: () => {
      unitsLeft--;
      if (isFirst) laid++;
      else for (let k = 0; k < 5; k++) move();
      return unitsLeft <= 0;
    },
    outcome: () => toyOutcome(problem, spots, sizes),
    progress: () => ({
      phase: isFirst ? 'first-layout' : 'improving',
      placedCount: isFirst ? laid : sizes.length,
    }),
  };
}

type Spot = { readonly x: number; readonly y: number };

function isApart(a: Spot, sizeA: number, b: Spot, sizeB: number): boolean {
  return a.x + sizeA <= b.x || b.x + sizeB <= a.x || a.y + sizeA <= b.y || b.y + sizeB <= a.y;
}

function toyOutcome(problem: NestProblem, spots: readonly Spot[], sizes: readonly number[]): StreamOutcome {
  const answer: NestAnswer = {
    placements: problem.items.map(({ id }, i) => ({
      item: id,
      set: 1,
      copy: 1,
      sheet: problem.sheets[0]!.id,
      ...spots[i]!,
      rotationDeg: 0,
    })),
    lanes: [],
    roughCuts: [],
    unplaced: [],
    joins: 0,
  };
  const right = Math.max(...spots.map(({ x }, i) => x + sizes[i]!));
  // Coarse, so that streams tie often.
  return {
    answer,
    score: [0, Math.ceil(right / 5), Math.ceil(spots.reduce((sum, { x }) => sum + x, 0) / 20)],
  };
}

/** Twelve squares of 5 to 16 mm, which start in a row of 240 mm. */
export function toyProblem(budget: Partial<Budget> = {}): NestProblem {
  const ids = Array.from({ length: 12 }, (_, i) => `square ${i}`);
  return testProblem({
    items: ids.map((id, i) => testItem(id, rectangle(0, 0, 5 + i, 5 + i))),
    setKinds: [testKind(Object.fromEntries(ids.map((id) => [id, 1])))],
    sheets: [testSheet('sheet', rectangle(0, 0, 300, 100))],
    budget: { seed: 3, streams: 5, ...budget },
  });
}
