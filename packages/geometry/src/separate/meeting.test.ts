import { beforeAll, describe, expect, it } from 'vitest';
import { loadJudge } from '../check/test-judge.js';
import type { Judge } from '../check/test-judge.js';
import { flatRings } from '../shape/flat-rings.js';
import { createRandom } from '../number/random.js';
import { sampleOutline } from '../sample/sample-outline.js';
import { rectangle } from '../nest/test-problems.js';
import { buildGround, groundSeverity } from './ground.js';
import { ringsMeet } from './hit.js';
import { overlapSeverity } from './overlap.js';
import { regionOfRings, testScene } from './test-scenes.js';
import type { TestScene } from './test-scenes.js';
import { turnFor } from './world.js';
import { createTurned } from './turned.js';
import type { Turned } from './turned.js';

/** What meets by less than this is neither here nor there, mm². */
const NO_AREA_MM2 = 1e-6;

let judge: Judge;
let test: TestScene;
let shapes: Turned[];

beforeAll(async () => {
  judge = await loadJudge();
  test = testScene(2);
  const random = createRandom(7);
  shapes = Array.from({ length: 40 }, (_, i) => {
    const { kinds } = test.scene;
    const turned = createTurned(kinds[i % kinds.length]!.shapes[0]!);
    turnFor(turned, random.next() * 360, test.scene.sheets[0]!.frame);
    return turned;
  });
});

describe('shapes of the search', () => {
  it('when two lie at random, they meet where jsts finds a common area, and only then is there a severity', () => {
    const random = createRandom(1);
    const counts = [0, 0];
    for (let k = 0; k < 400; k++) {
      const a = shapes[random.integer(shapes.length)]!;
      const b = shapes[random.integer(shapes.length)]!;
      const reach = 0.6 * (a.shape.diameter + b.shape.diameter);
      const dx = (2 * random.next() - 1) * reach;
      const dy = (2 * random.next() - 1) * reach;
      // The source of truth: jsts 2.12.1.
      const area = judge.intersectionArea(
        judge.shapeOf(regionOfRings(a.pair, dx, dy)),
        judge.shapeOf(regionOfRings(b.pair, 0, 0)),
      );
      if (area > 0 && area < NO_AREA_MM2) continue;
      const meet = ringsMeet(a.pair, b.pair, dx, dy);
      expect(meet).toBe(area > 0);
      expect(overlapSeverity(a, b, dx, dy, false, Infinity) > 0).toBe(meet);
      counts[meet ? 1 : 0]!++;
    }
    expect(Math.min(...counts)).toBeGreaterThan(50);
  });

  it('when circles stand for a shape, they lie within it and clear of each other', () => {
    for (const { outline, poleX, poleY, shape } of shapes) {
      const region = judge.shapeOf(regionOfRings(outline, 0, 0));
      poleX.forEach((x, k) => {
        const dot = judge.shapeOf(rectangle(x - 1e-6, poleY[k]! - 1e-6, x + 1e-6, poleY[k]! + 1e-6));
        // The source of truth: jsts 2.12.1. Outlines are inset by the ease, circles are not.
        expect(judge.differenceArea(dot, region)).toBe(0);
        expect(judge.distanceToBoundary(dot, region)).toBeGreaterThan(shape.poleR[k]! - 0.001);
        for (let j = 0; j < k; j++) {
          const apart = Math.hypot(x - poleX[j]!, poleY[k]! - poleY[j]!);
          expect(apart).toBeGreaterThan(shape.poleR[k]! + shape.poleR[j]! - 1e-6);
        }
      });
    }
  });
});

describe('the ground', () => {
  it('when a shape lies at random, it is bad exactly where jsts finds it outside', () => {
    const random = createRandom(3);
    const outline = sampleOutline(random, { cut: 'hide', lengthMm: 2200, halfWidthMm: 1000, corners: 160 });

    const middleX = outline.outer.reduce((sum, { x }) => sum + x, 0) / outline.outer.length;
    const middleY = outline.outer.reduce((sum, { y }) => sum + y, 0) / outline.outer.length;
    const hole = [...rectangle(middleX, middleY, middleX + 40, middleY + 60).outer].reverse();
    const region = { outer: outline.outer, openings: [hole] };
    const ground = buildGround(flatRings([region]))!;
    const hide = judge.shapeOf(region);
    const counts = [0, 0];
    for (let k = 0; k < 400; k++) {
      const turned = shapes[random.integer(shapes.length)]!;
      const body = turned.bodies[0]!;
      const x = ground.minU + random.next() * ground.columns * ground.pitch;
      const y = ground.minV + random.next() * ground.rows * ground.pitch;
      // The source of truth: jsts 2.12.1.
      const out = judge.differenceArea(judge.shapeOf(regionOfRings(body.rings, x, y)), hide);
      if (out > 0 && out < NO_AREA_MM2) continue;
      const severity = groundSeverity(ground, turned.shape.bodies[0]!, body, x, y, turned.shape);
      expect(severity > 0, `${out} mm² outside`).toBe(out > 0);
      counts[out > 0 ? 1 : 0]!++;
    }
    expect(Math.min(...counts)).toBeGreaterThan(50);
  });
});
