import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../../test-support/judge.js';
import type { Judge } from '../../test-support/judge.js';
import { checkAnswer } from '../check/index.js';
import { placement, testItem, testKind, testProblem } from '../nest/test-problems.js';
import { createRandom } from '../number/random.js';
import { sampleHide } from '../sample/sample-hide.js';
import type { Sheet } from '../types/problem.js';
import type { Region, Ring } from '../types/shape.js';
import { compactTowards } from './compact.js';
import { outsideShapeOf, settleShapeOfRegions } from './settle-shape.js';
import type { SettleShape } from './settle-shape.js';
import { settle } from './settle.js';
import { disturbed, roughRing, rounded, shapesOf } from './test-layouts.js';

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
});

const GAP = 2;
const EDGE = 5;
const VOID = 3;
const PIECE_RADIUS = 60;

function squareAround(x: number, y: number, half: number): Ring {
  return [
    { x: x - half, y: y - half },
    { x: x + half, y: y - half },
    { x: x + half, y: y + half },
    { x: x - half, y: y + half },
  ];
}

/** Places on a grid at which a piece of the radius lies on the hide, clear of its edge and of its voids. */
function clearPlaces(sheet: Sheet, voids: readonly Region[]): { x: number; y: number }[] {
  const found: { x: number; y: number }[] = [];
  const region = judge.shapeOf(sheet.region);
  const blocked = voids.map((area) => judge.shapeOf(area));
  const xs = sheet.region.outer.map((p) => p.x);
  const ys = sheet.region.outer.map((p) => p.y);
  const pitch = 2 * PIECE_RADIUS + 8;
  for (let x = Math.min(...xs) + pitch / 2; x < Math.max(...xs); x += pitch) {
    for (let y = Math.min(...ys) + pitch / 2; y < Math.max(...ys); y += pitch) {
      const square = judge.shapeOf({ outer: squareAround(x, y, PIECE_RADIUS + EDGE), openings: [] });
      if (!judge.covers(region, square)) continue;
      if (blocked.some((area) => judge.distance(area, square) < VOID + 1)) continue;
      found.push({ x, y });
    }
  }
  return found;
}

/** The pieces, then the outside of the hide, then each void: the last ones fixed, with distances of their own. */
function hideTask(sheet: Sheet, pieces: readonly SettleShape[], x: Float64Array, y: Float64Array) {
  const voids = sheet.qualities.filter((quality) => quality.isVoid);
  const shapes = [
    ...pieces,
    outsideShapeOf(sheet.region, 50),
    ...voids.map((quality) => settleShapeOfRegions(quality.areas)),
  ];
  const count = pieces.length;
  const distances = [EDGE, ...voids.map((quality) => VOID + quality.uncertaintyMm)];
  const fixed = new Uint8Array(shapes.length).fill(1, count);
  const all = (places: Float64Array) => Float64Array.from(shapes, (_, i) => (i < count ? places[i]! : 0));
  const gap = (i: number, j: number) => (Math.max(i, j) < count ? GAP : distances[Math.max(i, j) - count]!);
  return { shapes, x: all(x), y: all(y), fixed, gap };
}

function faults(sheet: Sheet, rings: readonly Ring[], x: Float64Array, y: Float64Array) {
  const ids = rings.map((_, i) => `piece ${i}`);
  const problem = testProblem({
    items: rings.map((outer, i) =>
      testItem(
        ids[i]!,
        { outer, openings: [] },
        { sheets: [sheet.id], need: { maxGrade: 9, strong: false } },
      ),
    ),
    setKinds: [testKind(Object.fromEntries(ids.map((id) => [id, 1])))],
    sheets: [sheet],
    distances: { gap: GAP, edge: EDGE, void: VOID },
  });
  const placements = ids.map((id, i) =>
    placement(id, 1, rounded(x[i]!), rounded(y[i]!), { sheet: sheet.id }),
  );
  return checkAnswer(problem, { placements, lanes: [], roughCuts: [], unplaced: [], joins: 0 });
}

describe('pieces on a hide', () => {
  it('when pieces are pulled to an end and then disturbed, they keep off its edge, openings and voids', () => {
    for (const seed of [1, 2, 3]) {
      const sheet = sampleHide(seed, {
        cut: 'side',
        lengthMm: 1000,
        halfWidthMm: 600,
        corners: 120,
        flaws: 8,
      });
      const random = createRandom(seed);
      const voids = sheet.qualities.filter((quality) => quality.isVoid).flatMap((quality) => quality.areas);
      const places = clearPlaces(sheet, voids).slice(0, 16);
      expect(places.length).toBeGreaterThan(6);
      const rings = places.map(() => roughRing(random, 9, 30, PIECE_RADIUS));
      const pieces = shapesOf(rings);
      const x = Float64Array.from(places, (p) => p.x);
      const y = Float64Array.from(places, (p) => p.y);
      const pulled = compactTowards(hideTask(sheet, pieces, x, y), 1, 0);
      expect(pulled.worst).toBeLessThan(1e-6);
      const moved = pieces.reduce((sum, _, i) => sum + pulled.x[i]! - x[i]!, 0);
      expect(moved).toBeGreaterThan(20);
      expect(faults(sheet, rings, pulled.x, pulled.y)).toEqual([]);

      const shaken = hideTask(
        sheet,
        pieces,
        disturbed(random, pulled.x, 0.1),
        disturbed(random, pulled.y, 0.1),
      );
      const settled = settle(shaken);
      expect(settled.isExact).toBe(true);
      expect(faults(sheet, rings, settled.x, settled.y)).toEqual([]);
    }
  });

  it('when the outside of a region is made a shape, its parts make up the rim and the openings', () => {
    const region = {
      outer: squareAround(0, 0, 100),
      openings: [[...squareAround(20, 30, 10)].reverse()],
    };
    const outside = outsideShapeOf(region, 50);
    const area = outside.parts.reduce((sum, { px, py }) => {
      let twice = 0;
      for (let i = 0; i < px.length; i++) {
        const k = (i + 1) % px.length;
        twice += px[i]! * py[k]! - px[k]! * py[i]!;
      }
      return sum + twice / 2;
    }, 0);
    expect(area).toBeCloseTo(300 * 300 - 200 * 200 + 20 * 20, 6);
  });
});
