import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  applyAffine,
  composeAffine,
  flattenCurve,
  invertAffine,
  ringArea,
  ringCentroid,
  rotationDeg,
  scaling,
  translation,
} from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import { parseHide } from '@hidebound/leather';
import type { Flaw, Hide } from '@hidebound/leather';
import { decodePhoto } from '@hidebound/intake/node';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  chalkCross,
  chalkRing,
  judgeTrace,
  movedHide,
  ridgeAlong,
  setStage,
  takeShot,
} from './camera/index.js';
import type { HideTruth, LaidSheet, MarkTruth, Scene, Shot } from './camera/index.js';
import { hideboundHere, testFolder } from './cli-support.js';
import type { Run } from './cli-support.js';
import { sceneNamed, writePhoto } from './photo-trace-support.js';

// Judge of all of these: the simulator in tests/camera, which shares no code with what it judges. One hide is
// photographed several times; where its edge and its marks are is known exactly.

const folder = testFolder();
const at = (name: string) => join(folder, name);

function hideIn(name: string): Hide {
  return parseHide(readFileSync(at(name), 'utf8'), { file: name });
}

async function shoot(file: string, shot: Shot): Promise<void> {
  await writePhoto(takeShot(shot), at(file));
}

async function trace(id: string, args: readonly string[], scene: Scene): Promise<Run> {
  const { acrossMm, downMm } = scene.sheets.readings!;
  const bars = ['--bars', `${acrossMm} x ${downMm}`];
  return hideboundHere([
    'trace',
    ...args,
    ...bars,
    '--id',
    id,
    '--out',
    at(`${id}.hide.json`),
    '--picture',
    at(`${id}.svg`),
  ]);
}

/** Sheets from 1 on, each turned a little otherwise. */
function sheetsAt(places: readonly (readonly [number, number])[]): readonly LaidSheet[] {
  return places.map(([x, y], i) => ({ sheet: i + 1, x, y, turnDeg: ((37 * i) % 50) - 20 }));
}

function paperReach(sheets: readonly LaidSheet[]): readonly Point[] {
  return sheets.flatMap(({ x, y }) => [
    { x: x - 190, y: y - 190 },
    { x: x + 190, y: y + 190 },
  ]);
}

const turnedBy = (deg: number, x: number, y: number): Affine =>
  composeAffine(translation(x, y), rotationDeg(deg));

/** Every other look stays; only the marks that a case needs are on the hide. */
function bare(scene: Scene, marks: readonly MarkTruth[]): HideTruth {
  return { ...setStage(scene).hides[0]!, marks };
}

/** What small pictures allow: under one px to the mm. */
function expectNear(traced: Hide, truth: HideTruth): void {
  const { medianMm, worstMm, areaError, covered } = judgeTrace(traced, truth);
  expect(medianMm).toBeLessThan(1);
  expect(worstMm).toBeLessThan(5);
  expect(Math.abs(areaError)).toBeLessThan(0.006);
  expect(covered.area).toBe(true);
}

/** On the floor that the truth is told of. */
function middleOf({ shape }: Flaw, motion: Affine): Point {
  if (shape.kind !== 'area') throw new Error('A chalked ring becomes an area.');
  return applyAffine(motion, ringCentroid(flattenCurve(shape.outline).slice(0, -1)));
}

const isNear =
  (to: Point, mm: number) =>
  ({ x, y }: Point): boolean =>
    Math.hypot(x - to.x, y - to.y) < mm;

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

const box = (minX: number, minY: number, maxX: number, maxY: number): readonly Point[] => [
  { x: minX, y: minY },
  { x: maxX, y: maxY },
];

describe('the other side of a hide', () => {
  const grainScene = sceneNamed('side-300', 1600);
  const [look] = grainScene.hides;
  const fleshScene: Scene = {
    ...grainScene,
    seed: grainScene.seed + 7,
    hides: [{ ...look!, colour: 'natural', turnDeg: 190 }],
    view: { ...grainScene.view, tiltDeg: 7, towardsDeg: 120, rollDeg: 4 },
  };
  const grainHide = bare(grainScene, [chalkRing({ x: -300, y: -60 }, 90)]);
  // Where it lies on the flesh side, as it would be seen through the leather from the grain side.
  const fleshRing = chalkRing({ x: 420, y: -60 }, 80);
  const fleshHide = movedHide(grainHide, composeAffine(turnedBy(24, 60, -40), scaling(-1, 1)), [fleshRing]);

  beforeAll(async () => {
    const sheets = setStage(grainScene).sheets.map(({ laid }) => laid);
    const elsewhere = sheetsAt([
      [-1000, -620],
      [150, -830],
      [1200, 560],
      [-500, 860],
    ]);
    const sees = (hide: HideTruth, laid: readonly LaidSheet[]) => [...hide.outline, ...paperReach(laid)];
    await shoot('grain.jpg', { scene: grainScene, hide: grainHide, sheets, sees: sees(grainHide, sheets) });
    await shoot('flesh.jpg', {
      scene: fleshScene,
      hide: fleshHide,
      sheets: elsewhere,
      sees: sees(fleshHide, elsewhere),
    });
  });

  test('when its photo is given, its chalk ring lies where it is as seen from the grain side', async () => {
    const run = await trace(
      'both',
      [at('grain.jpg'), '--up', 'grain', '--other-side', at('flesh.jpg')],
      grainScene,
    );
    expect(run.status, run.stderr).toBe(0);
    const hide = hideIn('both.hide.json');
    const judged = judgeTrace(hide, { ...grainHide, marks: [...grainHide.marks, fleshRing] });
    expect(judged.chalk.found).toBe(2);
    expect(Math.max(...judged.chalk.offMm)).toBeLessThan(3);
    expect(hide.flaws.map(({ side }) => side)).toEqual(['grain', 'flesh']);
    expect(middleOf(hide.flaws[1]!, judged.motion)).toSatisfy(isNear(fleshRing.middle, 4));
    expect(run.stdout).toMatch(/1 mark from the photo of the other side is laid onto the hide/);
    expect(run.stdout).toMatch(/The other side fits within [0-3]\.\d mm/);
  });

  test('when the flesh side lies upwards, hide and picture are both mirrored', async () => {
    const run = await trace('over', [at('flesh.jpg'), '--up', 'flesh'], fleshScene);
    expect(run.status, run.stderr).toBe(0);
    const hide = hideIn('over.hide.json');
    const judged = judgeTrace(hide, { ...grainHide, marks: [fleshRing] });
    // Only turned and moved, never mirrored, it lies on the hide as the grain side shows it.
    expect(judged.medianMm).toBeLessThan(1.5);
    expect(Math.abs(judged.areaError)).toBeLessThan(0.01);
    expect(hide.flaws.map(({ side }) => side)).toEqual(['flesh']);
    expect(middleOf(hide.flaws[0]!, judged.motion)).toSatisfy(isNear(fleshRing.middle, 4));
    const picture = await decodePhoto(readFileSync(at('over.straight.jpg')), 'over.straight.jpg');
    const { pxPerMm, origin } = hide.photo!;
    const greenAt = (place: Point) => {
      const { x, y } = applyAffine(invertAffine(judged.motion), place);
      const [i, j] = [Math.round((x - origin.x) * pxPerMm), Math.round((y - origin.y) * pxPerMm)];
      return picture.rgb[3 * (j * picture.width + i) + 1]!;
    };
    // Chalk is brighter than the leather within its ring, and leather than the floor in every opening.
    const chalk = mean(fleshRing.lines[0]!.map(greenAt));
    const [opening] = [...grainHide.openings].sort((a, b) => ringArea(a) - ringArea(b));
    const leather = greenAt(fleshRing.middle);
    expect(chalk).toBeGreaterThan(leather + 20);
    expect(greenAt(ringCentroid(opening!))).toBeLessThan(leather - 30);
  });
});

/** A long side on a small floor, photographed upright: about 0.8 px to the mm, sheets above and below. */
const upright = (() => {
  const scene = sceneNamed('side-300');
  const [look] = scene.hides;
  return { ...scene, picture: { width: 1200, height: 1600 }, hides: [{ ...look!, turnDeg: 0 }] } as const;
})();

function seenFromElsewhere(scene: Scene): Scene {
  return { ...scene, seed: scene.seed + 9, view: { ...scene.view, tiltDeg: 6, towardsDeg: 40, rollDeg: -3 } };
}

describe('a hide that is dragged along between two photos', () => {
  const crosses = [
    [-170, -300],
    [160, -250],
    [20, 120],
    [-120, 60],
  ].map(([x, y]) => chalkCross({ x: x!, y: y! }));
  const hide = bare(upright, crosses);
  const sheets = sheetsAt([
    [-480, -760],
    [480, -760],
    [480, 760],
    [-480, 760],
  ]);
  const sees = box(-720, -960, 720, 960);
  const right = turnedBy(0, 450, 0);
  const left = turnedBy(5, -450, 30);

  beforeAll(async () => {
    const dragged = seenFromElsewhere(upright);
    await shoot('head.jpg', { scene: upright, hide: movedHide(hide, right), sheets, sees });
    await shoot('tail.jpg', { scene: dragged, hide: movedHide(hide, left), sheets, sees });
    await shoot('tail-one.jpg', {
      scene: dragged,
      hide: movedHide(hide, left, crosses.slice(0, 1)),
      sheets,
      sees,
    });
  });

  test('when the shared part has chalk crosses, the whole outline comes together', async () => {
    const run = await trace('dragged', [at('head.jpg'), at('tail.jpg'), '--moved', '--up', 'grain'], upright);
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).toMatch(/4 crosses/);
    expectNear(hideIn('dragged.hide.json'), hide);
  });

  test('when only one cross is shared, it is refused', async () => {
    const run = await trace('one', [at('head.jpg'), at('tail-one.jpg'), '--moved', '--up', 'grain'], upright);
    expect(run.status).toBe(3);
    expect(run.stderr).toMatch(/tail-one\.jpg .*1 cross was found.* chalk at least three crosses/);
  });
});

describe('a hide that lies still, seen in parts', () => {
  const hide = bare(upright, []);
  const places = [
    [-800, -760],
    [-800, 760],
    [0, -760],
    [0, 760],
    [800, -760],
    [800, 760],
  ] as const;
  const sheets = sheetsAt(places);
  const rightScene = seenFromElsewhere(upright);
  const sees = box(-300, -960, 1200, 960);

  beforeAll(async () => {
    await shoot('left.jpg', { scene: upright, hide, sheets, sees: box(-1200, -960, 300, 960) });
    await shoot('right.jpg', { scene: rightScene, hide, sheets, sees });
    await shoot('slid.jpg', { scene: rightScene, hide: movedHide(hide, turnedBy(0, 24, 18)), sheets, sees });
    for (const moved of [3, 4]) {
      const other = sheets.map((laid) =>
        laid.sheet === moved ? { ...laid, x: laid.x + 18, y: laid.y + 24 } : laid,
      );
      await shoot(`sheet-${moved}.jpg`, { scene: rightScene, hide, sheets: other, sees });
    }
  });

  const together = (name: string) =>
    trace(name, [at('left.jpg'), at(`${name}.jpg`), '--up', 'grain'], upright);

  test('when both photos show a part, they become one outline without any word of a move', async () => {
    const run = await together('right');
    expect(run.status, run.stderr).toBe(0);
    expect(run.stdout).not.toMatch(/moved|mm off/);
    expectNear(hideIn('right.hide.json'), hide);
  });

  test('when the hide slid by 30 mm in between, it is told, and the errors that are told cover it', async () => {
    const run = await together('slid');
    const [, mm] = /slid\.jpg: The hide lies (\d+) mm off/.exec(run.stdout) ?? [];
    // Less than the whole move shows in edges that mostly run along it.
    expect(Number(mm)).toBeGreaterThan(15);
    expect(Number(mm)).toBeLessThan(40);
    const traced = hideIn('slid.hide.json');
    const judged = judgeTrace(traced, hide);
    expect(judged.covered.area).toBe(true);
    expect(traced.photo!.errorMm).toBeGreaterThan(20);
  });

  test.each([3, 4])('when sheet %i was moved by 30 mm in between, a moved sheet is told', async (moved) => {
    // The photos share two sheets, and two that contradict each other do not tell which of them was moved.
    const run = await together(`sheet-${moved}`);
    const [, which, mm] = /sheet (\d) was moved by ([\d.]+) mm/.exec(run.stdout) ?? [];
    expect(Number(mm)).toBeCloseTo(30, 0);
    const judged = judgeTrace(hideIn(`sheet-${moved}.hide.json`), hide);
    // Where the wrong one is taken for the moved one, the leather lies otherwise in the two photos, and that is told.
    if (Number(which) !== moved) expect(run.stdout).toMatch(/The hide lies \d+ mm off/);
    expect(judged.covered.area).toBe(true);
  });
});

describe('a ridge without colour', () => {
  const scene = sceneNamed('skin-301', 1600);
  const ridge = ridgeAlong(
    Array.from({ length: 30 }, (_, i) => ({ x: -90 + 6 * i, y: 20 + 8 * Math.sin(i / 5) })),
    4,
  );
  const hide = bare(scene, [ridge]);
  const sheets = setStage(scene).sheets.map(({ laid }) => laid);
  const sees = [...hide.outline, ...paperReach(sheets)];

  beforeAll(async () => {
    const low: Scene = {
      ...seenFromElsewhere(scene),
      seed: scene.seed,
      light: { ...scene.light, fall: 0.6, fallTowardsDeg: 70, shadowTowardsDeg: 70, raking: 1 },
    };
    await shoot('even.jpg', { scene, hide, sheets, sees });
    await shoot('low.jpg', { scene: low, hide, sheets, sees });
  });

  const along = (id: string) =>
    hideIn(`${id}.hide.json`).candidates.filter(({ shape }) => shape.kind === 'line').length;

  test('when the light is even, nothing is told of it', async () => {
    const run = await trace('even', [at('even.jpg'), '--up', 'grain'], scene);
    expect(run.status, run.stderr).toBe(0);
    expect(judgeTrace(hideIn('even.hide.json'), hide).marks.found).toBe(0);
    expect(along('even')).toBe(0);
  });

  test('when light falls from low at one side as well, it is a possible flaw at its place', async () => {
    const run = await trace('raked', [at('even.jpg'), '--raking', at('low.jpg'), '--up', 'grain'], scene);
    expect(run.status, run.stderr).toBe(0);
    const { marks, falseMarks } = judgeTrace(hideIn('raked.hide.json'), hide);
    expect(marks.found).toBe(1);
    expect(marks.offMm[0]).toBeLessThan(5);
    expect(falseMarks).toBe(0);
  });
});
