import { describe, expect, test } from 'vitest';
import { checkAnswer } from '../check/index.js';
import {
  copy,
  frame,
  makeItem,
  makeJob,
  makeQuality,
  makeSheet,
  place,
  polygon,
  rectangle,
} from '../check/test-jobs.js';
import { createRandom } from '../number/random.js';
import type { Random } from '../number/random.js';
import type { NestProblem, Placement } from '../types/problem.js';
import { openBench } from './bench.js';
import type { SheetPlace } from './bench.js';
import { judgeMove } from './judge-move.js';
import { snapTo } from './snap.js';
import type { Snap } from './snap.js';
import { laidSample, movedAnswer } from './test-benches.js';

const square = makeItem('square', rectangle(-50, -50, 50, 50));
const wedge = makeItem('wedge', polygon([0, -20], [60, 0], [0, 20]));
const tray = makeItem('tray', frame(rectangle(-100, -100, 100, 100), rectangle(-60, -60, 60, 60)));
const DISTANCES = { gap: 3, edge: 5, void: 2 };

function snapped(
  placements: readonly Placement[],
  to: Partial<SheetPlace>,
  more: Partial<NestProblem> & { item?: string; reach?: number; into?: 'contact' | 'seat' } = {},
): Snap | undefined {
  const { item = 'square', reach = 10, into = 'contact', ...problem } = more;
  const job = makeJob({
    items: [square, wedge, tray],
    placements: [...placements, place(item, 0, 0, 0, { copy: 9 })],
    problem: { distances: DISTANCES, ...problem },
  });
  const bench = openBench(job.problem, placements);
  return snapTo(bench, copy(item, 1, 9), { sheet: 'hide', x: 0, y: 0, rotationDeg: 0, ...to }, reach, {
    into,
  });
}

describe('a piece that is let go near others', () => {
  const standing = [place('square', 300, 300)];

  test('when it lies free, it goes over to the nearest at exactly the gap', () => {
    expect(snapped(standing, { x: 404.2, y: 320 })).toEqual({
      place: { sheet: 'hide', x: 403, y: 320, rotationDeg: 0 },
      travelMm: expect.closeTo(1.2, 9) as number,
      touches: [copy('square')],
    });
  });

  test('when it lies over another, it is pushed out the nearest way', () => {
    expect(snapped(standing, { x: 398, y: 310 })?.place.x).toBe(403);
    expect(snapped(standing, { x: 310, y: 398 })?.place).toMatchObject({ x: 310, y: 403 });
  });

  test('when it comes corner to corner, the corners keep the gap', () => {
    const snap = snapped(standing, { x: 404, y: 404 })!;
    const apart = Math.hypot(snap.place.x - 400, snap.place.y - 400);
    expect(Math.abs(apart - 3)).toBeLessThan(0.001);
    expect(snap.place.x).toBeCloseTo(snap.place.y, 2);
  });

  test('when it is near the edge, it goes to the edge distance', () => {
    expect(snapped([], { x: 52, y: 300 })).toMatchObject({ place: { x: 55, y: 300 }, touches: ['outline'] });
  });

  test('when a seat is asked for, it touches both the neighbour and the edge', () => {
    expect(snapped([place('square', 300, 450)], { x: 404, y: 540 }, { into: 'seat' })).toMatchObject({
      place: { x: 403, y: 545 },
      touches: [copy('square'), 'outline'],
    });
  });

  test('when there is no seat within reach, it makes do with a contact', () => {
    expect(snapped(standing, { x: 404, y: 320 }, { into: 'seat' })?.place).toMatchObject({ x: 403, y: 320 });
  });

  test('when it is let go in a cut-out, it stays within at the gap', () => {
    const snap = snapped([place('tray', 300, 300)], { x: 310.5, y: 300 }, { item: 'square' });
    expect(snap?.place).toMatchObject({ x: 307, y: 300 });
  });

  test('when it is turned, corner and side keep the gap', () => {
    const snap = snapped(standing, { x: 353, y: 300, rotationDeg: 180 }, { item: 'wedge', reach: 80 })!;
    expect(snap.touches).toEqual([copy('square')]);
    expect(snap.place.x).toBe(413);
  });

  test('when pieces may touch, a corner goes into a corner without any gap', () => {
    const distances = { gap: 0, edge: 0, void: 0 };
    expect(snapped([], { x: 48, y: 49 }, { distances, into: 'seat' })).toMatchObject({
      place: { x: 50, y: 50 },
      touches: ['outline'],
    });
    expect(snapped(standing, { x: 397, y: 310 }, { distances })?.place).toMatchObject({ x: 400, y: 310 });
  });

  test('when a flaw is in the way, it keeps off it by the void distance and what is uncertain', () => {
    const brand = makeQuality('brand', rectangle(400, 100, 450, 300), { isVoid: true, uncertaintyMm: 0.7 });
    const sheets = [makeSheet({ qualities: [brand] })];
    expect(snapped([], { x: 349, y: 200 }, { sheets })).toMatchObject({
      place: { x: 347.3, y: 200 },
      touches: ['brand'],
    });
  });

  test('when nothing is within reach, or it would fit nowhere there, there is no snap', () => {
    expect(snapped(standing, { x: 500, y: 450 })).toBeUndefined();
    expect(snapped(standing, { x: 310, y: 310 })).toBeUndefined();
  });

  test('when a number is not sane, that is an error of the caller', () => {
    expect(() => snapped(standing, { x: Number.NaN })).toThrow('sane');
    expect(() => snapped(standing, { x: 500 }, { reach: -1 })).toThrow('sane');
  });
});

function pointWithin(random: Random, radius: number): { x: number; y: number } {
  for (;;) {
    const [x, y] = [random.between(-radius, radius), random.between(-radius, radius)];
    if (x * x + y * y <= radius * radius) return { x, y };
  }
}

/** Random places nearer than the snap, less what its rounding may take. */
const PROBES = 25;
const ROUNDING_MM = 0.002;

describe('snaps in layouts of the search', () => {
  const jobs = [
    laidSample(21, { pieces: 14, rules: 'plain', share: 0.5 }),
    laidSample(22, { pieces: 14, rules: 'plain', share: 0.4, hide: { cut: 'shoulder', flaws: 30 } }),
  ];
  const [one] = jobs;
  const touching = { ...one!, problem: { ...one!.problem, distances: { gap: 0, edge: 0, void: 0 } } };

  test.each([...jobs, touching].map((job, i) => ({ job, i })))(
    'when a piece is let go anywhere (job $i), it lands well, in contact, and nowhere nearer would have done',
    ({ job: { problem, answer }, i }) => {
      const random = createRandom(31 + i);
      const bench = openBench(problem, answer.placements);
      let snaps = 0;
      for (let k = 0; k < 24; k++) {
        const from = answer.placements[random.integer(answer.placements.length)]!;
        const off = pointWithin(random, 25);
        const to = { sheet: from.sheet, x: from.x + off.x, y: from.y + off.y, rotationDeg: from.rotationDeg };
        const isFree = judgeMove(bench, from, to).length === 0;
        const snap = snapTo(bench, from, to, 20);
        expect(snapTo(bench, from, to, 20)).toEqual(snap);
        const nearest = snap?.travelMm ?? 20;
        for (let probe = 0; probe < PROBES; probe++) {
          const by = pointWithin(random, Math.max(0, nearest - ROUNDING_MM));
          const found = judgeMove(bench, from, { ...to, x: to.x + by.x, y: to.y + by.y });
          // What is free stays so up to the first contact; what is in trouble gets free at the first contact.
          expect(found.length === 0, JSON.stringify({ from, to, by, snap })).toBe(isFree);
        }
        if (snap === undefined) continue;
        snaps += 1;
        expect(snap.touches.length).toBeGreaterThan(0);
        expect(checkAnswer(problem, movedAnswer(answer, from, snap.place)).length).toBe(
          checkAnswer(problem, answer).length,
        );
      }
      expect(snaps).toBeGreaterThan(8);
    },
  );
});
