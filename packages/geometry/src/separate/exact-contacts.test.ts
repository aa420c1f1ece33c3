import { describe, expect, it } from 'vitest';
import { checkAnswer, isProven } from '../check/index.js';
import { contactShapes, settleSheets } from './exact-contacts.js';
import { originOf } from './places.js';
import { HALF_MM, squaresScene } from './test-scenes.js';
import type { SquareAt, TestScene } from './test-scenes.js';
import { snapshotOf, totalSeverity } from './world.js';
import { snapshotAnswer } from './world-answer.js';

const SIDE = 2 * HALF_MM;
const LONG = 400;
const COLUMNS = [0, 1, 2];
/** What a file holds. */
const EXACT_MM = 0.001;
/** Squares lap, or stand apart, by a twentieth of a mm. */
const OFF_MM = 0.05;

/** Two rows of three squares that stand `gap` apart, those of the middle column off by `off` to the left. */
function rows(gap: number, off: number): SquareAt[] {
  return [0, 1].flatMap((row) =>
    COLUMNS.map((column) => ({
      x: HALF_MM + column * (SIDE + gap) - (column === 1 ? off : 0),
      y: HALF_MM + row * (SIDE + gap),
    })),
  );
}

function settle({ scene, world }: TestScene, farthest = LONG): boolean {
  return settleSheets(scene, world, contactShapes(scene), () => farthest);
}

/** Middles of the squares. */
function middles({ world }: TestScene): { readonly x: number; readonly y: number }[] {
  return world.turned.map((turned, i) => {
    const { u, v } = originOf(turned, world.x[i]!, world.y[i]!);
    return { x: u, y: v };
  });
}

/** How far squares are from where they would be a gap apart, at most. */
function offBy(laid: TestScene, gap: number): number {
  const wanted = rows(gap, 0);
  const found = middles(laid);
  return Math.max(
    ...wanted.map(({ x, y }, i) => Math.max(Math.abs(x - found[i]!.x), Math.abs(y - found[i]!.y))),
  );
}

/** What the exact check, which takes no part in the search, says of the places as a file holds them. */
function isProvenNow({ problem, layout, world }: TestScene): boolean {
  const parts = { problem, reasons: new Map(), lanes: [], joins: 1 };
  const answer = snapshotAnswer(layout, world, layout.demand.copies, snapshotOf(world), parts);
  return isProven(checkAnswer(problem, answer!));
}

describe('settling the sheets of a search', () => {
  it('when squares lap by a twentieth of a mm, they come out touching, to the micrometre', () => {
    for (const off of [OFF_MM, -OFF_MM]) {
      const laid = squaresScene(rows(0, off), [LONG, 2 * SIDE]);
      expect(isProvenNow(laid)).toBe(false);
      expect(settle(laid)).toBe(true);
      expect(offBy(laid, 0)).toBeLessThan(EXACT_MM);
      expect(isProvenNow(laid)).toBe(true);
      expect(laid.world.ease).toBe(laid.scene.eases.length - 1);
      expect(totalSeverity(laid.world)).toBe(0);
    }
  });

  it('when squares stand apart by a twentieth of a mm, they are drawn together', () => {
    const apart = rows(0, 0).map(({ x, y }, i) => ({ x: x + OFF_MM * (1 + (i % 3)), y }));
    const laid = squaresScene(apart, [LONG, 2 * SIDE]);
    expect(settle(laid)).toBe(true);
    expect(offBy(laid, 0)).toBeLessThan(EXACT_MM);
  });

  // The search's own shapes stand a little farther off than a gap asks, so that its verdict on these may be no.
  it('when a gap of 2 mm is asked for, they come out 2 mm apart, to the micrometre', () => {
    for (const off of [OFF_MM, -OFF_MM]) {
      const laid = squaresScene(rows(2, off), [LONG, 2 * SIDE + 2], { gap: 2 });
      expect(isProvenNow(laid)).toBe(false);
      settle(laid);
      expect(offBy(laid, 2)).toBeLessThan(EXACT_MM);
      expect(isProvenNow(laid)).toBe(true);
    }
  });

  it('when groups keep a distance of their own, only squares of two groups keep it', () => {
    const squares = ['waxed', 'waxed', 'dyed'].map((group, i) => ({ x: 20 + 45 * i, y: 20, group }));
    const laid = squaresScene(squares, [LONG, SIDE], { gap: 1, betweenGroups: 6 });
    settle(laid);
    const [first, second, third] = middles(laid);
    expect(second!.x - first!.x).toBeCloseTo(SIDE + 1, 6);
    expect(third!.x - second!.x).toBeCloseTo(SIDE + 6, 6);
    expect(isProvenNow(laid)).toBe(true);
  });

  it('when a square is fixed, it stays to the bit, and the others give way', () => {
    const squares = [
      { x: 20, y: 20 },
      { x: 60.03, y: 20, isFixed: true },
      { x: 100, y: 20 },
    ];
    const laid = squaresScene(squares, [LONG, SIDE]);
    const before = laid.world.x[1];
    expect(settle(laid)).toBe(true);
    expect(laid.world.x[1]).toBe(before);
    expect(middles(laid)[2]!.x).toBeCloseTo(100.03, 6);
    expect(isProvenNow(laid)).toBe(true);
  });

  it('when there is no room by a tenth of a mm, it says no and leaves all where it was, at the tightest ease', () => {
    // No room in the first row; in the second one squares lap by more, which could be helped.
    const first = [20, 60, 100 - 2 * OFF_MM].map((x) => ({ x, y: 20 }));
    const second = [20, 60 - 4 * OFF_MM].map((x) => ({ x, y: 60 }));
    const laid = squaresScene([...first, ...second], [LONG, 2 * SIDE]);
    const before = snapshotOf(laid.world);
    expect(settle(laid, 3 * SIDE - 2 * OFF_MM)).toBe(false);
    expect(snapshotOf(laid.world)).toEqual(before);
    expect(laid.world.ease).toBe(laid.scene.eases.length - 1);
    expect(totalSeverity(laid.world)).toBeGreaterThan(0);
  });
});
