import { flattenCurve, pointToRing, polylineNearest } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { newFindings } from '../../../findings.js';
import { loadVision } from '../../vision/load-vision.js';
import { findCandidates } from '../candidates/find-candidates.js';
import {
  CHALKS,
  LEATHERS,
  crossStrokes,
  drawChalk,
  drawLeather,
  drawLineMark,
  drawSpot,
  finish,
  handRing,
} from '../test-leather.js';
import type { Lab } from '../test-leather.js';
import { findChalk } from './find-chalk.js';

// What was drawn, and where, is known: the pictures are made here.
async function chalkOn(scene: ReturnType<typeof drawLeather>) {
  const { vision } = await loadVision();
  finish(scene);
  const findings = newFindings('photo.jpg');
  const found = findChalk(scene.picture, scene.leather, {}, vision, findings);
  return { ...found, codes: findings.diagnostics.map(({ code }) => code) };
}

const smallLeather = (colour: Lab, seed: number) =>
  drawLeather({ seed, colour, widthMm: 480, heightMm: 320, pxPerMm: 1.4 });

const DARK_ENOUGH = ['natural', 'brown', 'black'] as const;

test('when a ring is chalked around a brand, all within it is never to be used, up to the chalk', async () => {
  for (const [i, name] of DARK_ENOUGH.entries()) {
    const scene = smallLeather(LEATHERS[name], 11 + i);
    const ring = handRing({ x: 160, y: 180 }, 85, i + 1, 372);
    drawChalk(scene, ring, CHALKS.white, { seed: i, widthMm: 5 });
    const { flaws, crosses } = await chalkOn(scene);
    expect(crosses).toEqual([]);
    expect(
      flaws.map(({ shape, effect }) => [shape.kind, effect?.isVoid]),
      name,
    ).toEqual([['area', true]]);
    const outline = areaRing(flaws[0]!.shape);
    const drawn = ring.slice(4, -4);
    expect(Math.max(...drawn.map((at) => pointToRing(at, outline)))).toBeLessThan(6);
  }
});

test('when a ring was left open by a seventh of a turn, it is still a ring', async () => {
  const scene = smallLeather(LEATHERS.brown, 21);
  drawChalk(scene, handRing({ x: 180, y: 180 }, 60, 5, 312), CHALKS.yellow, { seed: 3 });
  const { flaws } = await chalkOn(scene);
  expect(flaws.map(({ shape }) => shape.kind)).toEqual(['area']);
});

test('when half a ring is chalked, it is a line', async () => {
  const scene = smallLeather(LEATHERS.brown, 22);
  drawChalk(scene, handRing({ x: 180, y: 180 }, 70, 5, 185), CHALKS.white, { seed: 3 });
  const { flaws } = await chalkOn(scene);
  expect(flaws.map(({ shape }) => shape.kind)).toEqual(['line']);
});

test('when a line is chalked along a flaw, it has its place and width', async () => {
  const line = [
    { x: 90, y: 120 },
    { x: 220, y: 150 },
    { x: 400, y: 140 },
  ];
  for (const chalk of ['white', 'yellow', 'silver'] as const) {
    const scene = smallLeather(LEATHERS.brown, 31);
    drawChalk(scene, line, CHALKS[chalk], { widthMm: 5, seed: 8 });
    const { flaws } = await chalkOn(scene);
    expect(flaws, chalk).toHaveLength(1);
    const { shape } = flaws[0]!;
    if (shape.kind !== 'line') throw new Error('a line stays a line');
    for (const corner of line) expect(polylineNearest(shape.line, corner).distance, chalk).toBeLessThan(5);
    expect(shape.widthMm).toBeGreaterThan(4);
    expect(shape.widthMm).toBeLessThan(9);
  }
});

test('when pale leather takes yellow chalk thinly and evenly, it is chalk by its colour and no possible flaw', async () => {
  const { vision } = await loadVision();
  // It covers a third of the leather and is no brighter than a scar there, but no scar turns paler and greener at once.
  const line = [
    { x: 90, y: 120 },
    { x: 220, y: 150 },
    { x: 400, y: 140 },
  ];
  for (const seed of [31, 32, 34]) {
    const scene = smallLeather(LEATHERS.natural, seed);
    drawLineMark(scene, line, 4.5, [9, -8, 3]);
    const { flaws, covered, leather } = await chalkOn(scene);
    expect(
      flaws.map(({ shape }) => shape.kind),
      `leather ${seed}`,
    ).toEqual(['line']);
    expect(findCandidates(scene.picture, leather, { chalk: [] }, vision)).not.toEqual([]);
    expect(findCandidates(scene.picture, leather, { chalk: covered }, vision)).toEqual([]);
  }
});

test('when crosses are chalked, each is a mark to register by and no flaw, within 1.5 mm', async () => {
  for (const [i, name] of DARK_ENOUGH.entries()) {
    const scene = smallLeather(LEATHERS[name], 41 + i);
    const places: Point[] = [
      { x: 100, y: 100 },
      { x: 250, y: 140 },
      { x: 420, y: 250 },
    ];
    const sizes = [26, 40, 58];
    const chalks = [CHALKS.white, CHALKS.yellow, CHALKS.blue];
    places.forEach((at, k) => {
      for (const stroke of crossStrokes(at, sizes[k]!, 17 + 31 * k)) {
        drawChalk(scene, stroke, chalks[k]!, { widthMm: 4, seed: 60 + k });
      }
    });
    const { flaws, crosses } = await chalkOn(scene);
    expect(flaws, name).toEqual([]);
    expect(crosses, name).toHaveLength(3);
    for (const at of places) {
      expect(Math.min(...crosses.map((cross) => Math.hypot(cross.x - at.x, cross.y - at.y)))).toBeLessThan(
        1.5,
      );
    }
  }
});

test('when there are pale scars and glare but no chalk, none of them is taken for it', async () => {
  for (const [i, name] of DARK_ENOUGH.entries()) {
    const scene = smallLeather(LEATHERS[name], 51 + i);
    // Scars keep the leather's colour, are smooth, and reach a third of the way to white at most.
    drawLineMark(
      scene,
      [
        { x: 70, y: 90 },
        { x: 200, y: 130 },
        { x: 300, y: 100 },
      ],
      3,
      [10, -1, -2],
    );
    drawLineMark(
      scene,
      [
        { x: 80, y: 250 },
        { x: 250, y: 290 },
      ],
      5,
      [15, -1, -3],
    );
    drawSpot(scene, { x: 380, y: 240 }, 18, [25, -4, -6], 9);
    const { flaws, crosses } = await chalkOn(scene);
    expect(flaws, name).toEqual([]);
    expect(crosses, name).toEqual([]);
  }
});

test('when nothing is chalked, nothing is found', async () => {
  for (const name of [...DARK_ENOUGH, 'pale'] as const) {
    const { flaws, crosses, covered } = await chalkOn(smallLeather(LEATHERS[name], 61));
    expect({ flaws, crosses, covered }, name).toEqual({ flaws: [], crosses: [], covered: [] });
  }
});

test('when the leather is nearly white, it is said that chalk hardly shows', async () => {
  const { codes } = await chalkOn(smallLeather(LEATHERS.pale, 71));
  expect(codes).toEqual(['chalk-hardly-shows']);
  const dark = await chalkOn(smallLeather(LEATHERS.brown, 71));
  expect(dark.codes).toEqual([]);
});

test('when an outline took a chalked cross for an opening, the leather has no opening there', async () => {
  const scene = smallLeather(LEATHERS.brown, 81);
  const at = { x: 200, y: 180 };
  for (const stroke of crossStrokes(at, 44, 10))
    drawChalk(scene, stroke, CHALKS.white, { widthMm: 5, seed: 4 });
  const square = (x: number, y: number, half: number): Point[] => [
    { x: x - half, y: y - half },
    { x: x - half, y: y + half },
    { x: x + half, y: y + half },
    { x: x + half, y: y - half },
  ];
  const real = square(380, 120, 8);
  drawSpot(scene, { x: 380, y: 120 }, 9, [13, -14, -22], 0.5);
  const leather = { ...scene.leather, openings: [square(at.x, at.y, 3), real] };
  const found = await chalkOn({ ...scene, leather });
  expect(found.crosses).toHaveLength(1);
  expect(found.leather.openings).toEqual([real]);
});

function areaRing(shape: Awaited<ReturnType<typeof chalkOn>>['flaws'][number]['shape']): readonly Point[] {
  if (shape.kind !== 'area') throw new Error('a ring is an area');
  return flattenCurve(shape.outline, 0.01);
}
