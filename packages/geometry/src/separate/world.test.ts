import { describe, expect, it } from 'vitest';
import { checkAnswer, isProven } from '../check/index.js';
import { createRandom } from '../number/random.js';
import { pursue, startHunt } from './hunt.js';
import { squaresScene, testScene } from './test-scenes.js';
import type { SquareAt } from './test-scenes.js';
import { unitsOf } from './units.js';
import {
  moveTo,
  refresh,
  refreshAll,
  restoreSnapshot,
  setEase,
  snapshotOf,
  takeOff,
  totalSeverity,
} from './world.js';
import { snapshotAnswer } from './world-answer.js';

describe('a world', () => {
  it('when pieces move one by one, looks at each alone come to what a look at all does', () => {
    const { world } = testScene(4);
    refreshAll(world);
    const random = createRandom(5);
    for (let k = 0; k < 60; k++) {
      const i = random.integer(world.count);
      if (world.sheetOf[i]! < 0) continue;
      moveTo(world, i, world.x[i]! + 80 * random.next() - 40, world.y[i]! + 80 * random.next() - 40);
      refresh(world, i);
      const bySingles = totalSeverity(world);
      // The source of truth: the same sum over all pairs, looked at anew.
      const byAll = refreshAll(world);
      expect(byAll).toBeGreaterThan(0);
      expect(bySingles).toBeCloseTo(byAll, 6);
    }
  });

  it('when the ease changes, or a snapshot is restored, everything lies where it did', () => {
    const { world } = testScene(4);
    const before = snapshotOf(world);
    setEase(world, 1);
    expect(snapshotOf(world)).toEqual(before);
    for (let i = 0; i < world.count; i++) moveTo(world, i, world.x[i]! + 10, world.y[i]!);
    restoreSnapshot(world, before);
    expect(snapshotOf(world)).toEqual(before);
  });

  it('when squares lap by a hundredth of a mm, they meet at the tight ease and not at the loose one', () => {
    const { scene, world } = squaresScene([at(20), at(59.99)], [400, 40]);
    const before = snapshotOf(world);
    // A 3000th of the square root of their area, and the tight one.
    expect(scene.eases[0]).toBeCloseTo(40 / 3000, 9);
    expect(scene.eases).toHaveLength(2);
    const widthOf = (i: number): number => world.turned[i]!.outline.maxX - world.turned[i]!.outline.minX;
    for (let times = 0; times < 2; times++) {
      expect(setEase(world, 0)).toBe(0);
      expect(widthOf(1)).toBeCloseTo(40 - 2 * scene.eases[0]!, 9);
      const severity = setEase(world, 1);
      expect(severity).toBeGreaterThan(0);
      expect(severity).toBe(totalSeverity(world));
      expect(widthOf(1)).toBeCloseTo(40 - 2 * scene.eases[1]!, 9);
      expect(snapshotOf(world)).toEqual(before);
    }
  });

  it('when a piece lies nowhere, another ease leaves it there', () => {
    const { world } = squaresScene([at(20), at(59.99)], [400, 40]);
    takeOff(world, 0);
    expect(setEase(world, 1)).toBe(0);
    expect([...world.sheetOf]).toEqual([-1, 0]);
  });
});

function at(x: number): SquareAt {
  return { x, y: 20 };
}

describe('a hunt', () => {
  it('when it goes on from the first layout, it never gets worse, and the result is proven', () => {
    const { problem, layout, scene, world } = testScene(4);
    const { copies } = layout.demand;
    const hunt = startHunt(scene, world, undefined, unitsOf(layout, copies));
    const first = hunt.best;
    const work = pursue(hunt);
    let last = first;
    while (world.work < 600_000) {
      work.next();
      if (hunt.best === last) continue;
      const isLess =
        hunt.best.missing < last.missing ||
        (hunt.best.missing === last.missing && hunt.best.areaMm2 < last.areaMm2);
      expect(isLess).toBe(true);
      last = hunt.best;
    }
    expect(hunt.found).toBeGreaterThan(0);
    const parts = { problem, reasons: new Map(), lanes: [], joins: 1 };
    const answer = snapshotAnswer(layout, world, copies, hunt.best.snapshot, parts);
    // The source of truth: the exact check, which takes no part in the search.
    expect(isProven(checkAnswer(problem, answer!))).toBe(true);
  });
});
