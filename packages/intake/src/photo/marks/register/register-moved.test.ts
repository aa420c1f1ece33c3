import {
  applyAffine,
  composeAffine,
  distanceBetween,
  rotationDeg,
  transformRegion,
  translation,
} from '@hidebound/geometry';
import type { Affine, Point, Region } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { createRandom } from '@hidebound/geometry';
import { movedBetween } from './moved-between.js';
import type { SeenLeather } from './moved-between.js';
import { registerMoved } from './register-moved.js';
import { roughened, testHide } from './test-outlines.js';

// Known motions make the crosses, so the true answer is known.
const CROSSES: readonly Point[] = Array.from({ length: 14 }, (_, i) => {
  const random = createRandom(40 + i);
  return { x: random.between(0, 3000), y: random.between(0, 1500) };
});

const moved = (dx: number, dy: number, deg: number): Affine =>
  composeAffine(translation(dx, dy), rotationDeg(deg));

/** The crosses that a photo shows of the hide after it was dragged: those within its window, each 0.5 mm off by chance. */
function photoOf(name: string, motion: Affine, seed: number) {
  const random = createRandom(seed);
  const crosses = CROSSES.map((cross) => applyAffine(motion, cross))
    .filter(({ x, y }) => x > 0 && x < 1700 && y > -300 && y < 1800)
    .map(({ x, y }) => ({ x: x + random.between(-0.5, 0.5), y: y + random.between(-0.5, 0.5) }));
  return { photo: name, crosses };
}

test('when a long hide was dragged along twice, each photo finds its way into the first one, in any order', () => {
  const truths = [moved(0, 0, 0), moved(-1300, 120, -6), moved(-700, 60, 4)];
  const found = registerMoved(truths.map((truth, i) => photoOf(`${i}.jpg`, truth, i + 1)));
  found.forEach(({ motion, shared, misfitMm }, i) => {
    const back = composeAffine(motion, truths[i]!);
    for (const cross of CROSSES) expect(distanceBetween(applyAffine(back, cross), cross)).toBeLessThan(4);
    expect(shared).toBeGreaterThanOrEqual(3);
    expect(misfitMm).toBeLessThan(2);
  });
});

test('when a photo also shows crosses that no other one does, they lead nowhere', () => {
  const random = createRandom(9);
  const stray = Array.from({ length: 5 }, () => ({ x: random.between(0, 1700), y: random.between(0, 1500) }));
  const truth = moved(-600, 30, 5);
  const second = photoOf('1.jpg', truth, 2);
  const found = registerMoved([
    photoOf('0.jpg', moved(0, 0, 0), 1),
    { ...second, crosses: [...stray, ...second.crosses] },
  ]);
  const back = composeAffine(found[1]!.motion, truth);
  expect(distanceBetween(applyAffine(back, { x: 900, y: 700 }), { x: 900, y: 700 })).toBeLessThan(1.5);
});

test('when two crosses are shared, the turn that is less is taken, and the misfit is the difference of their distances', () => {
  const a = [
    { x: 0, y: 0 },
    { x: 1000, y: 0 },
  ];
  const b = [
    { x: 500, y: 300 },
    { x: 1503, y: 300 },
  ];
  const found = registerMoved([
    { photo: '0', crosses: a },
    { photo: '1', crosses: b },
  ])[1]!;
  expect(found.misfitMm).toBeCloseTo(3, 6);
  expect(found.shared).toBe(2);
  expect(applyAffine(found.motion, b[0]!).x).toBeCloseTo(-1.5, 6);
});

test('when fewer than two crosses are shared, the refusal tells what to chalk', () => {
  const first = {
    photo: '0.jpg',
    crosses: [
      { x: 0, y: 0 },
      { x: 500, y: 10 },
    ],
  };
  const second = {
    photo: '1.jpg',
    crosses: [
      { x: 0, y: 0 },
      { x: 800, y: 10 },
    ],
  };
  expect(() => registerMoved([first, second])).toThrow(
    expect.objectContaining({
      code: 'moved-photos-do-not-join',
      message: expect.stringContaining('three crosses') as string,
    }),
  );
});

test('when the leather moved between two photos of one floor, it is told by how much', () => {
  const hide = testHide(1);
  const motion = composeAffine(
    translation(1000, 900),
    composeAffine(moved(18, -7, 0.6), translation(-1000, -900)),
  );
  const told = movedBetween(hide, roughened(transformRegion(motion, hide), 1, 5))!;
  const truth = Math.max(...hide.outer.map((point) => distanceBetween(point, applyAffine(motion, point))));
  expect(told.isMoved).toBe(true);
  expect(Math.abs(told.movedMm - truth)).toBeLessThan(1.5);
  expect(told.turnedDeg).toBeCloseTo(0.6, 1);
});

test('when the leather lay still, nothing is told to have moved', () => {
  const hide = testHide(1);
  const told = movedBetween(roughened(hide, 1.2, 1), roughened(hide, 1.2, 2))!;
  expect(told.isMoved).toBe(false);
  expect(told.movedMm).toBeLessThan(2);
});

/** As a photo shows it whose border runs upright at `borderX`, to the left or to the right of it. */
function seenPart(hide: Region, borderX: number, side: 'left' | 'right'): SeenLeather {
  const isShown = ({ x }: Point) => (side === 'left' ? x < borderX : x > borderX);
  const outer = hide.outer.map((p) => (isShown(p) ? p : { x: borderX, y: p.y }));
  const ys = outer.filter(({ x }) => x === borderX).map(({ y }) => y);
  const border = Array.from({ length: 100 }, (_, i) => ({
    x: borderX,
    y: Math.min(...ys) + ((Math.max(...ys) - Math.min(...ys)) * i) / 99,
  }));
  return { outer, openings: [], leavesPicture: [border], isShown };
}

test('when each photo shows only a part of the leather, a move is told by the edges that both show', () => {
  const hide = testHide(1);
  const left = seenPart(roughened(hide, 1, 1), 1350, 'left');
  for (const [dx, dy] of [
    [24, 18],
    [-18, 24],
  ] as const) {
    const slid = seenPart(roughened(transformRegion(moved(dx, dy, 0), hide), 1, 2), 750, 'right');
    const told = movedBetween(left, slid)!;
    expect(told.isMoved).toBe(true);
    // By what Pythagoras says of the move, more or less: edges that run one way hardly show a slide along them.
    expect(told.movedMm).toBeGreaterThan(20);
    expect(told.movedMm).toBeLessThan(40);
  }
  expect(movedBetween(left, seenPart(roughened(hide, 1, 2), 750, 'right'))!.isMoved).toBe(false);
});

test('when photos show hardly any edge in common, nothing is said of a move', () => {
  const hide = testHide(1);
  expect(movedBetween(seenPart(hide, 1000, 'left'), seenPart(hide, 950, 'right'))).toBeUndefined();
});
