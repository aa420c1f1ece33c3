import { pointToRing, ringArea } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { IntakeError } from '../../error.js';
import { errors, find } from './test-find.js';
import { hideRing, rectangle, roundOpening } from './test-scenes.js';
import type { TestScene } from './test-scenes.js';

// Every scene is drawn from a known ring, which is what the results are held against: the drawing is the source.

const HIDE = hideRing(1150, { x: 1000, y: 760 });
const PAPERS = [
  rectangle(170, 190, 210, 297, 8),
  rectangle(1830, 200, 297, 210, -5),
  rectangle(180, 1340, 297, 210, 3),
  rectangle(1820, 1330, 210, 297, 14),
];
const PLAIN: TestScene = {
  seed: 3,
  floor: 'plain',
  floorColour: [52, 54, 58],
  hideColour: [205, 160, 115],
  pxPerMm: 0.5,
  widthMm: 2000,
  heightMm: 1520,
  papers: PAPERS,
  rings: [HIDE],
  marks: true,
  vignette: 0.35,
  edgeShadowMm: 5,
};

const SCENES: readonly (readonly [string, Partial<TestScene>])[] = [
  ['pale leather on a dark floor in a soft shadow', { softShadow: true }],
  ['dark leather on a pale floor', { floorColour: [190, 188, 182], hideColour: [70, 45, 32] }],
  [
    'dark leather that shines in one place',
    { floorColour: [190, 188, 182], hideColour: [70, 45, 32], marks: false, glare: true },
  ],
  ['black leather on grey', { floorColour: [150, 150, 148], hideColour: [38, 36, 36] }],
  ['tan leather on planks', { floor: 'planks', floorColour: [140, 95, 60] }],
  [
    'brown leather on tiles',
    { floor: 'tiles', floorColour: [200, 195, 185], hideColour: [190, 140, 95], softShadow: true },
  ],
  ['brown leather on cloth', { floor: 'cloth', floorColour: [120, 130, 150], hideColour: [95, 55, 35] }],
];

test.each(SCENES)('when the photo shows %s, the outline is found', async (_, change) => {
  const { pieces } = await find({ ...PLAIN, ...change });
  expect(pieces).toHaveLength(1);
  const { median, worst, area } = errors(pieces[0]!, HIDE);
  expect(median).toBeLessThan(1.5);
  expect(worst).toBeLessThan(6);
  expect(area).toBeLessThan(0.006);
  expect(pieces[0]!.openings).toEqual([]);
  // Pixels are 2 mm wide, so one pixel of doubt in the hide's own shadow makes an edge unsure; black leather has most of it.
  const unsure = pieces[0]!.unsure.reduce((sum, { line }) => sum + line.length, 0);
  expect(unsure / pieces[0]!.outline.length).toBeLessThan(0.65);
});

test('when there are holes in the leather, they are found with their areas, down to 20 mm across', async () => {
  const holes = [roundOpening({ x: 520, y: 430 }, 30), roundOpening({ x: 700, y: 500 }, 10)];
  const { pieces } = await find({
    ...PLAIN,
    pxPerMm: 0.8,
    widthMm: 1200,
    heightMm: 920,
    papers: [rectangle(110, 120, 148, 210, 8), rectangle(1090, 120, 210, 148, -5)],
    rings: [hideRing(700, { x: 600, y: 460 }), ...holes],
  });
  const areas = pieces[0]!.openings.map((ring) => -ringArea(ring)).sort((a, b) => b - a);
  expect(areas).toHaveLength(2);
  expect(areas[0]! / (Math.PI * 900)).toBeCloseTo(1, 1);
  expect(Math.abs(areas[1]! - Math.PI * 100)).toBeLessThan(60);
});

test('when the hide leaves the picture, that is told, with the stretch', async () => {
  const low = hideRing(1150, { x: 1000, y: 1200 });
  const { pieces, codes } = await find({ ...PLAIN, papers: PAPERS.slice(0, 2), rings: [low] });
  expect(codes).toContain('hide-leaves-picture');
  expect(pieces[0]!.leavesPicture.length).toBeGreaterThan(0);
  for (const line of pieces[0]!.leavesPicture)
    for (const { y } of line) expect(Math.abs(y - PLAIN.heightMm)).toBeLessThan(6);
  expect(pieces[0]!.unsure.some(({ offByMm }) => offByMm >= 50)).toBe(true);
});

test('when a sheet lies over the edge, the stretch under it is unsure and goes on by a smooth line', async () => {
  const top = Math.min(...HIDE.filter(({ x }) => Math.abs(x - 1000) < 60).map(({ y }) => y));
  const over = rectangle(1000, top - 10, 210, 120, 4);
  const { pieces } = await find({ ...PLAIN, papers: [...PAPERS, over] });
  const { worst, area } = errors(pieces[0]!, HIDE);
  expect(area).toBeLessThan(0.01);
  const covering = pieces[0]!.unsure.filter(({ line }) => line.some((p) => pointToRing(p, over) < 60));
  expect(covering.length).toBeGreaterThan(0);
  expect(Math.max(...covering.map(({ offByMm }) => offByMm))).toBeGreaterThan(0.5 * worst);
});

test('when a sheet lies on the leather, well within its edge, the leather goes on below it', async () => {
  const on = rectangle(1000, 760, 148, 210, 12);
  const { pieces } = await find({ ...PLAIN, papers: [...PAPERS, on] });
  const { median, area } = errors(pieces[0]!, HIDE);
  expect(median).toBeLessThan(1);
  expect(area).toBeLessThan(0.006);
  expect(pieces[0]!.openings).toEqual([]);
});

test('when a point is said to lie on the edge, the outline goes through it, and stays as it was further away', async () => {
  const top = HIDE.reduce(
    (best, p) => (Math.abs(p.x - 1000) < Math.abs(best.x - 1000) && p.y < 760 ? p : best),
    { x: 0, y: 0 },
  );
  const said: Point = { x: top.x, y: top.y - 12 };
  // The second one, in the middle of the leather, was not meant for its edge: it pulls nothing, and that is told.
  const hints = { hideStrokes: [], floorStrokes: [], edgePoints: [said, { x: 1000, y: 760 }] };
  const { pieces, codes } = await find(PLAIN, { hints });
  expect(codes).toContain('edge-points-astray');
  expect(pointToRing(said, pieces[0]!.outline)).toBeLessThan(0.5);
  const far = pieces[0]!.outline.filter((p) => Math.hypot(p.x - said.x, p.y - said.y) > 40);
  expect(Math.max(...far.map((p) => pointToRing(p, HIDE)))).toBeLessThan(6);
});

test('when several scraps lie on the floor, each is a piece, the largest first', async () => {
  const scraps = [
    rectangle(500, 700, 380, 260, 10),
    rectangle(1150, 600, 250, 200, -20),
    rectangle(1400, 1000, 160, 120, 5),
  ];
  const { pieces } = await find({ ...PLAIN, rings: scraps, marks: false }, { most: 10 });
  expect(pieces).toHaveLength(3);
  pieces.forEach((piece, i) => {
    expect(errors(piece, scraps[i]!).median).toBeLessThan(1.5);
    expect(errors(piece, scraps[i]!).area).toBeLessThan(0.02);
  });
});

test('when there is nothing but floor, the photo is refused', async () => {
  await expect(find({ ...PLAIN, rings: [], marks: false })).rejects.toThrow(IntakeError);
});

test('when the same picture is read twice, the same outline comes out', async () => {
  expect((await find(PLAIN)).pieces).toEqual((await find(PLAIN)).pieces);
});
