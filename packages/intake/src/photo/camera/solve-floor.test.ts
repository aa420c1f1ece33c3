import { createRandom } from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { StatedReference } from '@hidebound/leather';
import { expect, test } from 'vitest';
import { newFindings } from '../../findings.js';
import { floorErrorWithin, lumpShiftMm } from './floor-error.js';
import { toFloorPoint } from './places.js';
import { raisedFloor } from './raised-floor.js';
import type { SeenReferences } from './seen-references.js';
import { solveFloor } from './solve-floor.js';
import type { SolvedFloor } from './solved-floor.js';
import { seenBy, shownAt, testCamera } from './test-scene.js';
import type { TestCamera, TestSheet } from './test-scene.js';

/** A lens with more terms than are solved for, after OpenCV's documentation (see test-scene.ts). */
const LENS = {
  k1: -0.06,
  k2: 0.02,
  k3: -0.004,
  p1: 0.0008,
  p2: -0.0006,
  axisShift: { x: 20, y: -15 },
};
const ABOVE = testCamera({ x: 250, y: -150, heightMm: 2500, rollDeg: 4, ...LENS });
const FOUR: readonly TestSheet[] = [
  { sheet: 1, x: -950, y: -700, turnDeg: 4 },
  { sheet: 2, x: 940, y: -690, turnDeg: 95 },
  { sheet: 3, x: -960, y: 710, turnDeg: -20 },
  { sheet: 4, x: 930, y: 720, turnDeg: 181 },
];
const TRUE_BARS = { barsOf: () => ({ acrossMm: 160, downMm: 220 }) };

/** Places all over a hide of 2 m by 1.5 m. */
const PLACES: readonly Point[] = [-1, -0.5, 0, 0.5, 1].flatMap((x) =>
  [-1, -0.5, 0, 0.5, 1].map((y) => ({ x: 1000 * x, y: 750 * y })),
);

interface Misfit {
  /** How much too large everything is, as a share. */
  readonly scaleShare: number;
  /** How far a place lies off once all are laid over each other, mm. */
  readonly worstMm: number;
}

/** True places against those read off the photo, after the turn and shift that bring them nearest. */
function misfit(floor: SolvedFloor, camera: TestCamera, photo = 0, z = 0): Misfit {
  const read = PLACES.map(({ x, y }) => toFloorPoint(floor.cameras[photo]!, shownAt(camera, x, y, z)));
  const [a, b] = [middle(PLACES), middle(read)];
  let [dot, cross, square] = [0, 0, 0];
  PLACES.forEach((place, i) => {
    const [px, py] = [place.x - a.x, place.y - a.y];
    const [qx, qy] = [read[i]!.x - b.x, read[i]!.y - b.y];
    dot += px * qx + py * qy;
    cross += px * qy - py * qx;
    square += px * px + py * py;
  });
  const length = Math.hypot(dot, cross);
  const off = PLACES.map((place, i) => {
    const [px, py] = [place.x - a.x, place.y - a.y];
    const x = (dot * px - cross * py) / length + b.x - read[i]!.x;
    const y = (cross * px + dot * py) / length + b.y - read[i]!.y;
    return Math.hypot(x, y);
  });
  return { scaleShare: length / square - 1, worstMm: Math.max(...off) };
}

function middle(points: readonly Point[]): Point {
  return {
    x: points.reduce((sum, { x }) => sum + x / points.length, 0),
    y: points.reduce((sum, { y }) => sum + y / points.length, 0),
  };
}

function solve(seen: readonly SeenReferences[], options = TRUE_BARS) {
  const findings = newFindings('invented.jpg');
  const floor = solveFloor(
    seen.map((references) => ({ references })),
    options,
    findings,
  );
  return { floor, codes: findings.diagnostics.map(({ code }) => code), findings };
}

test('when four sheets lie around a hide, lengths are right within 0.1 % and places within 1 mm', () => {
  const { floor, codes } = solve([seenBy(ABOVE, FOUR, { noisePx: 0.08 })]);
  const { scaleShare, worstMm } = misfit(floor, ABOVE);
  expect(Math.abs(scaleShare)).toBeLessThan(0.001);
  expect(worstMm).toBeLessThan(1);
  expect(codes).toEqual([]);
  expect(floor.scaledBy).toBe('4 reference sheets');
  expect(Math.max(...floor.references.map(({ residualMm }) => residualMm))).toBeLessThan(0.3);
});

test('when nothing was measured, the floor is turned so that right in the first photo is x', () => {
  const { floor } = solve([seenBy(ABOVE, FOUR)]);
  const [left, right] = [1990, 2010].map((x) => toFloorPoint(floor.cameras[0]!, { x, y: 1499.5 }));
  expect(right!.y - left!.y).toBeCloseTo(0, 3);
  expect(right!.x - left!.x).toBeGreaterThan(0);
});

test('when the corners of the paper stand up by 2 mm, lengths are still right within 0.2 %', () => {
  const curled = FOUR.map((sheet, i) => ({ ...sheet, liftsMm: [2, i % 2, 1, 2] as const }));
  const { floor } = solve([seenBy(ABOVE, curled, { noisePx: 0.08 })]);
  expect(Math.abs(misfit(floor, ABOVE).scaleShare)).toBeLessThan(0.002);
});

test('when the prints are 1 % too small and their bars were measured, lengths are right', () => {
  const small = FOUR.map((sheet) => ({ ...sheet, stretch: { x: 0.99, y: 0.99 } }));
  const bars = { barsOf: () => ({ acrossMm: 158.4, downMm: 217.8 }) };
  const measured = solve([seenBy(ABOVE, small, { noisePx: 0.05 })], bars);
  expect(Math.abs(misfit(measured.floor, ABOVE).scaleShare)).toBeLessThan(0.001);
  // Without the bars nothing in the photo tells it: everything comes out 1 % too large.
  const blind = solve([seenBy(ABOVE, small, { noisePx: 0.05 })], { barsOf: () => undefined as never });
  expect(misfit(blind.floor, ABOVE).scaleShare).toBeCloseTo(0.01, 3);
  expect(blind.codes).toContain('bars-not-measured');
});

test('when one sheet alone is seen, it still tells the floor, with a larger error that is said', () => {
  const one = solve([seenBy(ABOVE, [{ ...FOUR[0]!, x: 100, y: 100 }], { noisePx: 0.05 })]);
  const four = solve([seenBy(ABOVE, FOUR, { noisePx: 0.05 })]);
  const { scaleShare } = misfit(one.floor, ABOVE);
  expect(Math.abs(scaleShare)).toBeLessThan(one.floor.error.scaleShare);
  expect(one.floor.error.scaleShare).toBeGreaterThan(3 * four.floor.error.scaleShare);
  expect(one.codes).toContain('one-reference-only');
});

test('when a single marker is seen, it is enough for a first idea of the scale', () => {
  const seen = seenBy(ABOVE, [{ ...FOUR[0]!, x: 0, y: 0 }], { noisePx: 0.03 });
  const { floor } = solve([{ ...seen, markers: seen.markers.slice(0, 1) }]);
  const at = [-100, 100].map((x) => toFloorPoint(floor.cameras[0]!, shownAt(ABOVE, x, 0)));
  expect(Math.hypot(at[1]!.x - at[0]!.x, at[1]!.y - at[0]!.y) / 200).toBeCloseTo(1, 1);
});

test('when one marker is found 15 px off, the others are not bent and it is told', () => {
  const seen = seenBy(ABOVE, FOUR, { noisePx: 0.05 });
  const bad = seen.markers[5]!;
  const corners = bad.corners.map(({ x, y }, i) => ({
    x: x + (i < 2 ? 15 : 3),
    y,
  })) as unknown as typeof bad.corners;
  const markers = seen.markers.map((marker) => (marker === bad ? { ...bad, corners } : marker));
  const { floor, codes } = solve([{ ...seen, markers }]);
  expect(Math.abs(misfit(floor, ABOVE).scaleShare)).toBeLessThan(0.001);
  expect(codes).toContain('marker-left-out');
});

test('when one of four sheets was printed 3 % larger, it is found and does not bend the rest', () => {
  const mixed = FOUR.map((sheet, i) => (i === 2 ? { ...sheet, stretch: { x: 1.03, y: 1.03 } } : sheet));
  const { floor, findings } = solve([seenBy(ABOVE, mixed, { noisePx: 0.08 })]);
  const told = findings.diagnostics.find(({ code }) => code === 'sheet-size-differs');
  expect(told?.params).toMatchObject({ name: 'sheet 3', direction: 'larger', percent: 3 });
  expect(Math.abs(misfit(floor, ABOVE).scaleShare)).toBeLessThan(0.0015);
});

test('when sheets nobody measured are of two sizes, the odd one is found', () => {
  const mixed = FOUR.map((sheet, i) => (i === 1 ? { ...sheet, stretch: { x: 0.97, y: 0.97 } } : sheet));
  const { findings } = solve([seenBy(ABOVE, mixed, { noisePx: 0.08 })], { barsOf: () => undefined as never });
  const told = findings.diagnostics.find(({ code }) => code === 'sheet-size-differs');
  expect(told?.params).toMatchObject({ name: 'sheet 2', direction: 'smaller', percent: 3 });
});

test('when the bars of one sheet are stated 2 % too long, it is that sheet that is told', () => {
  const bars = (sheet?: number) => (sheet === 4 ? { acrossMm: 163.2, downMm: 224.4 } : TRUE_BARS.barsOf());
  const { findings } = solve([seenBy(ABOVE, FOUR, { noisePx: 0.08 })], { barsOf: bars });
  const told = findings.diagnostics.find(({ code }) => code === 'sheet-size-differs');
  expect(told?.params).toMatchObject({ name: 'sheet 4', direction: 'smaller', percent: 2 });
});

test('when prints are 1.2 % wider than long and nobody measured them, it is told', () => {
  const wide = FOUR.map((sheet) => ({ ...sheet, stretch: { x: 1.006, y: 0.994 } }));
  const { codes } = solve([seenBy(ABOVE, wide, { noisePx: 0.05 })], { barsOf: () => undefined as never });
  expect(codes).toContain('sheet-stretched');
});

test('when a sheet is moved between two photos, it is found and does not tie them', () => {
  const low = testCamera({ x: -500, y: 400, heightMm: 2300, rollDeg: -20, ...LENS });
  const moved = FOUR.map((sheet, i) => (i === 1 ? { ...sheet, x: sheet.x - 30, y: sheet.y + 12 } : sheet));
  const { floor, findings } = solve([
    seenBy(ABOVE, FOUR, { noisePx: 0.05 }),
    seenBy(low, moved, { noisePx: 0.05, seed: 2, file: 'second.jpg' }),
  ]);
  const told = findings.diagnostics.find(({ code }) => code === 'sheet-moved');
  expect(told?.params['name']).toBe('sheet 2');
  expect(Number(told?.params['mm'])).toBeCloseTo(Math.hypot(30, 12), 0);
  expect(told?.place?.file).toBe('second.jpg');
  expect(misfit(floor, ABOVE, 0).worstMm).toBeLessThan(1);
  expect(misfit(floor, low, 1).worstMm).toBeLessThan(1);
});

test('when two photos share sheets, both show one floor', () => {
  const left = testCamera({ x: -500, y: 0, heightMm: 1900, rollDeg: 10, ...LENS });
  const right = testCamera({ x: 500, y: 50, heightMm: 2000, rollDeg: -170, ...LENS });
  const middle_ = { sheet: 5, x: 0, y: -800, turnDeg: 30 };
  const { floor } = solve([
    seenBy(left, [FOUR[0]!, FOUR[2]!, middle_, FOUR[3]!], { noisePx: 0.05, seed: 3 }),
    seenBy(right, [FOUR[1]!, FOUR[3]!, middle_, FOUR[2]!], { noisePx: 0.05, seed: 4 }),
  ]);
  for (const { x, y } of [
    { x: 0, y: 0 },
    { x: 300, y: -200 },
    { x: -300, y: 400 },
  ]) {
    const a = toFloorPoint(floor.cameras[0]!, shownAt(left, x, y));
    const b = toFloorPoint(floor.cameras[1]!, shownAt(right, x, y));
    expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1);
  }
});

test('when a photo shares no sheet with the others, it is refused by name', () => {
  const far = seenBy(ABOVE, [{ ...FOUR[1]!, sheet: 9 }], { file: 'far.jpg' });
  expect(() => solve([seenBy(ABOVE, [FOUR[0]!]), far])).toThrow(/^far\.jpg: No reference in this photo/);
});

test('when a photo shows no reference at all, it is refused with advice', () => {
  expect(() => solve([seenBy(ABOVE, [])])).toThrow(/No reference sheet was found/);
});

test('when the camera looks at a steep slant, it is told', () => {
  const steep = testCamera({ x: 1500, y: 0, heightMm: 2100, ...LENS });
  const { codes, floor } = solve([seenBy(steep, FOUR, { noisePx: 0.05 })]);
  expect(codes).toContain('steep-view');
  const trueTilt = (Math.atan2(1500, 2100) * 180) / Math.PI;
  expect(Math.abs(floor.unsureness.cameras[0]!.tiltDeg - trueTilt)).toBeLessThan(2);
});

test('when bounds are asked for, they cover the truth about nine times of ten', () => {
  // The bars are misread as people do (0.25 mm), corners stand up by up to 2 mm; nine of ten within four deviations of luck.
  let covered = 0;
  const scenes = 40;
  for (let seed = 0; seed < scenes; seed++) {
    const random = createRandom(7000 + seed);
    const camera = testCamera({
      x: random.between(-600, 600),
      y: random.between(-600, 600),
      heightMm: 2500,
      k1: random.between(-0.05, 0.05),
      k2: random.between(-0.02, 0.02),
      p1: random.between(-0.001, 0.001),
      p2: random.between(-0.001, 0.001),
      axisShift: { x: random.between(-25, 25), y: random.between(-25, 25) },
    });
    const lift = () => 2 * random.next();
    const sheets = FOUR.map((sheet) => ({ ...sheet, liftsMm: [lift(), lift(), lift(), lift()] as const }));
    const read = FOUR.map(() => ({
      acrossMm: 160 + 0.25 * random.normal(),
      downMm: 220 + 0.25 * random.normal(),
    }));
    const { floor } = solve([seenBy(camera, sheets, { noisePx: 0.06, seed })], {
      barsOf: (sheet?: number) => read[sheet! - 1]!,
    });
    const places = PLACES.map(({ x, y }) => toFloorPoint(floor.cameras[0]!, shownAt(camera, x, y)));
    const box = {
      minX: Math.min(...places.map(({ x }) => x)),
      minY: Math.min(...places.map(({ y }) => y)),
      maxX: Math.max(...places.map(({ x }) => x)),
      maxY: Math.max(...places.map(({ y }) => y)),
    };
    if (Math.abs(misfit(floor, camera).scaleShare) <= floorErrorWithin(floor, box).scaleShare) covered += 1;
  }
  expect(covered).toBeGreaterThanOrEqual(32);
});

test('when a lump of 10 mm lies 1 m from below a camera at 2 m, it seems to be 5 mm off', () => {
  // Worked example: h · r / (H − h) = 10 · 1000 / 1990 = 5.03 mm.
  expect(lumpShiftMm(10, 2000, 1000)).toBeCloseTo(5.025, 3);
});

test('when leather is 3 mm thick, the raised floor takes away that it seems larger', () => {
  const { floor } = solve([seenBy(ABOVE, FOUR, { noisePx: 0.02 })]);
  const flat = misfit(floor, ABOVE, 0, 3).scaleShare;
  const raised = misfit(raisedFloor(floor, 3), ABOVE, 0, 3).scaleShare;
  expect(Math.abs(flat - raised - 3 / 2500)).toBeLessThan(0.0001);
  expect(Math.abs(raised)).toBeLessThan(0.0004);
});

function solveStated(stated: StatedReference, markers: SeenReferences['markers'] = []) {
  const findings = newFindings('invented.jpg');
  const references = { ...seenBy(ABOVE, []), markers };
  return solveFloor([{ references, stated }], TRUE_BARS, findings);
}

/** Clicked within half a pixel or so. */
function clicked(places: readonly Point[], seed = 5): Point[] {
  const random = createRandom(seed);
  return places.map(({ x, y }) => {
    const at = shownAt(ABOVE, x, y);
    return { x: at.x + 0.5 * random.normal(), y: at.y + 0.5 * random.normal() };
  });
}

test('when a rectangle of 2 m by 1.5 m is stated, lengths are right within 0.6 %', () => {
  const corners = clicked([
    { x: -1000, y: -750 },
    { x: 1000, y: -750 },
    { x: 1000, y: 750 },
    { x: -1000, y: 750 },
  ]) as [Point, Point, Point, Point];
  const floor = solveStated({ kind: 'rectangle', corners, widthMm: 2000, heightMm: 1500 });
  expect(Math.abs(misfit(floor, ABOVE).scaleShare)).toBeLessThan(0.006);
  expect(floor.scaledBy).toBe('rectangle');
});

test.each([1, -1])('when rules lie along two sides, the across one to side %i, lengths are right', (side) => {
  const along = [0, 300, 600, 900].map((mm) => ({ mm, x: -450 + mm, y: 350 * side }));
  const across = [0, 250, 500, 700].map((mm) => ({ mm, x: -450, y: (350 - mm) * side }));
  const read = (places: readonly { mm: number; x: number; y: number }[], seed: number) =>
    clicked(places, seed).map((at, i) => ({ at, mm: places[i]!.mm }));
  const floor = solveStated({ kind: 'rules', along: read(along, 6), across: read(across, 7) });
  const [a, b] = [
    toFloorPoint(floor.cameras[0]!, shownAt(ABOVE, -300, -300)),
    toFloorPoint(floor.cameras[0]!, shownAt(ABOVE, 300, 250)),
  ];
  expect(Math.hypot(a.x - b.x, a.y - b.y) / Math.hypot(600, 550)).toBeCloseTo(1, 2);
  // Right stays right and down stays down: nothing is mirrored.
  expect(b.x).toBeGreaterThan(a.x);
  expect(b.y).toBeGreaterThan(a.y);
});

test('when a card is stated, its size is that of ISO/IEC 7810 ID-1', () => {
  // 85.60 mm by 53.98 mm.
  const corners = clicked(
    [
      { x: 0, y: 0 },
      { x: 85.6, y: 0 },
      { x: 85.6, y: 53.98 },
      { x: 0, y: 53.98 },
    ],
    8,
  ) as [Point, Point, Point, Point];
  const floor = solveStated({ kind: 'card', corners });
  const at = [0, 100].map((x) => toFloorPoint(floor.cameras[0]!, shownAt(ABOVE, x, 30)));
  const length = Math.hypot(at[1]!.x - at[0]!.x, at[1]!.y - at[0]!.y);
  expect(Math.abs(length - 100)).toBeLessThan(2);
  expect(Math.abs(misfit(floor, ABOVE).scaleShare)).toBeLessThan(floor.error.scaleShare);
});

test('when a rectangle is stated beside sheets, both count', () => {
  const { markers } = seenBy(ABOVE, FOUR, { noisePx: 0.05 });
  const corners = clicked([
    { x: -200, y: -200 },
    { x: 200, y: -200 },
    { x: 200, y: 200 },
    { x: -200, y: 200 },
  ]) as [Point, Point, Point, Point];
  const floor = solveStated({ kind: 'rectangle', corners, widthMm: 400, heightMm: 400 }, markers);
  expect(floor.scaledBy).toBe('4 reference sheets and rectangle');
  expect(Math.abs(misfit(floor, ABOVE).scaleShare)).toBeLessThan(0.001);
});

test('when a rectangle is stated the wrong way round or without a length, it is refused', () => {
  const [a, b, c, d] = clicked([
    { x: -200, y: -200 },
    { x: 200, y: -200 },
    { x: 200, y: 200 },
    { x: -200, y: 200 },
  ]) as [Point, Point, Point, Point];
  const state = (corners: [Point, Point, Point, Point], widthMm: number) => () =>
    solveStated({ kind: 'rectangle', corners, widthMm, heightMm: 400 });
  expect(state([a, d, c, b], 400)).toThrow(/clockwise/);
  expect(state([a, b, c, d], 0)).toThrow(/above 0/);
  expect(state([a, b, c, d], 400)).not.toThrow();
});
