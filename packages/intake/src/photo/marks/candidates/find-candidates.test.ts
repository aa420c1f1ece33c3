import { createRandom, flattenCurve, pointInRing, polylineNearest, ringArea } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { FlawCandidate } from '@hidebound/leather';
import { expect, test } from 'vitest';
import { loadVision } from '../../vision/load-vision.js';
import { LEATHERS, drawLeather, drawLineMark, drawSpot, finish } from '../test-leather.js';
import type { Lab, TestLeather } from '../test-leather.js';
import { findCandidates } from './find-candidates.js';
import type { CandidateOptions } from './find-candidates.js';

// What was drawn, and where, is known: the pictures are made here.
async function candidatesOn(scene: TestLeather, options: CandidateOptions = {}) {
  const { vision } = await loadVision();
  return findCandidates(finish(scene).picture, scene.leather, options, vision);
}

const leatherOf = (colour: Lab, seed: number, growth = 0) =>
  drawLeather({ seed, colour, widthMm: 520, heightMm: 380, pxPerMm: 1.4, growth });

const sure = (found: readonly FlawCandidate[]) => found.filter(({ confidence }) => confidence >= 0.5);

test('when the leather has texture, drift of colour and growth lines but no marks, hardly anything is sure', async () => {
  let count = 0;
  for (const [i, colour] of Object.values(LEATHERS).entries()) {
    count += sure(await candidatesOn(leatherOf(colour, 5 + i))).length;
    count += sure(await candidatesOn(leatherOf(colour, 15 + i, 1))).length;
  }
  // Eight pictures, 1.6 square metres together.
  expect(count).toBeLessThanOrEqual(1);
});

test('when there are small dark spots of 4 mm and more, most are found within a mm, the surest first', async () => {
  const random = createRandom(3);
  let found = 0;
  for (const colour of [LEATHERS.natural, LEATHERS.brown]) {
    const scene = leatherOf(colour, 25);
    const places = Array.from({ length: 8 }, (_, k) => ({ x: 80 + 55 * k, y: random.between(80, 350) }));
    places.forEach((at, k) => drawSpot(scene, at, 2 + 0.25 * k, [-16, 0, -2]));
    const candidates = await candidatesOn(scene);
    const confidences = candidates.map(({ confidence }) => confidence);
    expect(confidences).toEqual([...confidences].sort((one, other) => other - one));
    expect(candidates.map(({ id }) => id)).toEqual(candidates.map((_, i) => `possible-${i + 1}`));
    for (const at of places) if (sure(candidates).some((one) => offOf(one, at) < 1)) found++;
    expect(sure(candidates).filter((one) => places.every((at) => offOf(one, at) > 6))).toEqual([]);
  }
  expect(found).toBeGreaterThanOrEqual(14);
});

function offOf({ shape }: FlawCandidate, at: Point): number {
  return shape.kind === 'point' ? Math.hypot(shape.at.x - at.x, shape.at.y - at.y) : Infinity;
}

test('when there is a scar 3 mm wide, it is one line with its place, and its width within a half', async () => {
  const scar = [
    { x: 90, y: 110 },
    { x: 240, y: 150 },
    { x: 420, y: 130 },
  ];
  for (const change of [
    [9, -1, -2],
    [-9, 0, 0],
  ] as const) {
    const scene = leatherOf(LEATHERS.brown, 35);
    drawLineMark(scene, scar, 3, change);
    const found = sure(await candidatesOn(scene));
    expect(found).toHaveLength(1);
    const { shape, kind } = found[0]!;
    if (shape.kind !== 'line') throw new Error('a scar is a line');
    expect(kind).toBe('scar');
    for (const corner of scar) expect(polylineNearest(shape.line, corner).distance).toBeLessThan(8);
    for (const corner of shape.line) expect(polylineNearest(scar, corner).distance).toBeLessThan(2);
    expect(shape.widthMm).toBeGreaterThan(1.5);
    expect(shape.widthMm).toBeLessThan(4.5);
  }
});

test('when there is a stain, it is a patch of about its area', async () => {
  const scene = leatherOf(LEATHERS.natural, 45);
  drawSpot(scene, { x: 280, y: 220 }, 28, [-11, 2, 3], 3);
  const found = sure(await candidatesOn(scene));
  expect(found.map(({ kind }) => kind)).toEqual(['stain']);
  const { shape } = found[0]!;
  if (shape.kind !== 'area') throw new Error('a stain is a patch');
  const ring = flattenCurve(shape.outline, 0.05);
  expect(pointInRing({ x: 280, y: 220 }, ring)).toBe('inside');
  const share = Math.abs(ringArea(ring)) / (Math.PI * 28 * 28);
  expect(share).toBeGreaterThan(0.75);
  expect(share).toBeLessThan(1.4);
});

test('when a mark is half as strong, it is less sure', async () => {
  const confidence = async (darker: number): Promise<number> => {
    const scene = leatherOf(LEATHERS.natural, 55);
    drawSpot(scene, { x: 200, y: 200 }, 2.5, [-darker, 0, 0]);
    const candidates = await candidatesOn(scene, { leastConfidence: 0 });
    return Math.max(
      0,
      ...candidates.filter((one) => offOf(one, { x: 200, y: 200 }) < 3).map((one) => one.confidence),
    );
  };
  const [strong, weak, none] = [await confidence(14), await confidence(7), await confidence(0)];
  expect(strong).toBeGreaterThan(0.7);
  expect(weak).toBeLessThan(strong);
  expect(none).toBe(0);
});

test('when relief shows in a raking light only, it is found there; what the even light shows is not told twice', async () => {
  const wrinkle = [
    { x: 100, y: 260 },
    { x: 260, y: 240 },
    { x: 430, y: 270 },
  ];
  const spot = { x: 160, y: 110 };
  const scene = leatherOf(LEATHERS.brown, 65);
  drawSpot(scene, spot, 3, [-16, 0, 0]);
  const lit = leatherOf(LEATHERS.brown, 65);
  drawSpot(lit, spot, 3, [-16, 0, 0]);
  // A ridge has a lit and a shaded side.
  drawLineMark(lit, wrinkle, 3, [8, 0, 0]);
  drawLineMark(
    lit,
    wrinkle.map(({ x, y }) => ({ x, y: y + 4 })),
    3,
    [-8, 0, 0],
  );
  finish(lit);
  const plain = sure(await candidatesOn(scene));
  expect(plain.map(({ shape }) => shape.kind)).toEqual(['point']);
  const both = sure(await candidatesOn(scene, { raking: [lit.picture] }));
  expect(both.map(({ shape }) => shape.kind).sort()).toEqual(['line', 'point']);
});

test('when a place is chalked, nothing is searched there; nor beside the edge', async () => {
  const scene = leatherOf(LEATHERS.natural, 75);
  drawSpot(scene, { x: 200, y: 200 }, 3, [-18, 0, 0]);
  drawSpot(scene, { x: 33, y: 150 }, 3, [-18, 0, 0]);
  const box = [
    { x: 180, y: 180 },
    { x: 220, y: 180 },
    { x: 220, y: 220 },
    { x: 180, y: 220 },
  ];
  expect(sure(await candidatesOn(scene, { chalk: [{ outer: box, openings: [] }] }))).toEqual([]);
});
