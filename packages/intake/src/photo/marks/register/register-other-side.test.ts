import {
  MIRROR_X,
  applyAffine,
  composeAffine,
  distanceBetween,
  invertAffine,
  rotationDeg,
  scaling,
  transformRegion,
  translation,
} from '@hidebound/geometry';
import type { Affine, Point } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { newFindings } from '../../../findings.js';
import { registerOtherSide } from './register-other-side.js';
import { roughened, testHide } from './test-outlines.js';

// What is true here is made, not measured: the other photo is the first outline mirrored, turned and moved by known numbers.
const turnedOver = (deg: number, scale = 1): Affine =>
  composeAffine(
    translation(2300, -400),
    composeAffine(rotationDeg(deg), composeAffine(scaling(scale), MIRROR_X)),
  );

const PLACES: readonly Point[] = [
  { x: 400, y: 500 },
  { x: 1500, y: 700 },
  { x: 900, y: 1300 },
];

function worstPlace(transform: Affine, truth: Affine): number {
  const round = composeAffine(transform, truth);
  return Math.max(...PLACES.map((place) => distanceBetween(applyAffine(round, place), place)));
}

test('when a hide was turned over and laid anew at any angle, places of the flesh side come to lie where they are on the grain side', () => {
  const hide = testHide(1);
  for (const deg of [0, 97, 255]) {
    const truth = turnedOver(deg);
    const other = roughened(transformRegion(truth, hide), 1, deg + 1);
    const findings = newFindings('a');
    const found = registerOtherSide(hide, other, { photo: 'flesh.jpg' }, findings);
    expect(worstPlace(found.transform, truth), `turned ${deg}`).toBeLessThan(1);
    expect(found.misfitMm).toBeLessThan(4);
    expect(found.transform.a * found.transform.d - found.transform.b * found.transform.c).toBeLessThan(0);
    expect(findings.diagnostics).toEqual([]);
  }
});

test('when a leg lies otherwise on the other side, the rest still decides', () => {
  const hide = testHide(1);
  const truth = turnedOver(30);
  const bent = {
    ...hide,
    outer: hide.outer.map((p) => (p.x > 1700 && p.y > 1150 ? { x: p.x + 40, y: p.y + 40 } : p)),
  };
  const found = registerOtherSide(hide, transformRegion(truth, bent), { photo: 'b' }, newFindings('a'));
  expect(worstPlace(found.transform, truth)).toBeLessThan(2.5);
});

test('when the halves of a hide are alike, it fits in one way only', () => {
  // The mirror image of a shape with one axis is that shape turned, so what is found is one turn, and marks go to their own half.
  const hide = testHide(0);
  const truth = turnedOver(10);
  const findings = newFindings('grain.jpg');
  const other = roughened(transformRegion(truth, hide), 1, 3);
  const found = registerOtherSide(hide, other, { photo: 'flesh.jpg' }, findings);
  expect(worstPlace(found.transform, truth)).toBeLessThan(1);
  expect(findings.diagnostics).toEqual([]);
});

/** The same again after half a turn, so its outline fits in two ways. */
function ellipse(openings: readonly Point[]) {
  const outer = Array.from({ length: 360 }, (_, i) => ({
    x: 1000 + 900 * Math.cos((i * Math.PI) / 180),
    y: 900 + 600 * Math.sin((i * Math.PI) / 180),
  }));
  return { ...testHide(0, openings), outer };
}

test('when the outline fits in two ways, both are told', () => {
  const findings = newFindings('a');
  const other = transformRegion(turnedOver(20), ellipse([]));
  const found = registerOtherSide(ellipse([]), other, { photo: 'b' }, findings);
  expect(found.alsoFits?.misfitMm).toBeLessThan(3);
  expect(findings.diagnostics.map(({ code }) => code)).toEqual(['other-side-ambiguous']);
});

test('when the outline fits in two ways, an opening that both sides show decides', () => {
  const hide = ellipse([{ x: 500, y: 800 }]);
  for (const deg of [20, 200]) {
    const truth = turnedOver(deg);
    const findings = newFindings('a');
    const found = registerOtherSide(hide, transformRegion(truth, hide), { photo: 'b' }, findings);
    expect(worstPlace(found.transform, truth)).toBeLessThan(3);
    expect(findings.diagnostics).toEqual([]);
  }
});

test('when the outline fits in two ways, marks that both sides share decide', () => {
  const marks = [
    { x: 500, y: 800 },
    { x: 1300, y: 1100 },
    { x: 1200, y: 600 },
  ];
  for (const deg of [20, 200]) {
    const truth = turnedOver(deg);
    const findings = newFindings('a');
    const sharedMarks = { a: marks, b: marks.map((mark) => applyAffine(truth, mark)).reverse() };
    const other = transformRegion(truth, ellipse([]));
    const found = registerOtherSide(ellipse([]), other, { photo: 'b', sharedMarks }, findings);
    expect(found.by).toBe('marks');
    expect(worstPlace(found.transform, truth)).toBeLessThan(0.01);
    expect(findings.diagnostics).toEqual([]);
  }
});

test('when two marks are shared, the outline tells which is which', () => {
  const hide = testHide(1);
  const truth = turnedOver(160);
  const marks = [
    { x: 500, y: 800 },
    { x: 1300, y: 1100 },
  ];
  const found = registerOtherSide(
    hide,
    transformRegion(truth, hide),
    { photo: 'b', sharedMarks: { a: marks, b: marks.map((mark) => applyAffine(truth, mark)) } },
    newFindings('a'),
  );
  expect(worstPlace(found.transform, truth)).toBeLessThan(0.01);
});

test('when the shared marks lie near each other and a few mm off, the outline tells the turn', () => {
  const hide = testHide(1);
  const truth = turnedOver(160);
  const a = [
    { x: 500, y: 800 },
    { x: 590, y: 810 },
    { x: 540, y: 870 },
  ];
  const off = [1.5, -1.5, 1];
  const b = a.map((mark, i) => applyAffine(truth, { x: mark.x + off[i]!, y: mark.y - off[2 - i]! }));
  const options = { photo: 'b', sharedMarks: { a, b } };
  const found = registerOtherSide(hide, transformRegion(truth, hide), options, newFindings('a'));
  expect(found.by).toBe('marks');
  expect(worstPlace(found.transform, truth)).toBeLessThan(0.5);
});

test('when the other photo is 1 % too small, places are scaled with it; when 4 %, the sides do not match', () => {
  const hide = testHide(1);
  const smaller = turnedOver(75, 0.99);
  const found = registerOtherSide(hide, transformRegion(smaller, hide), { photo: 'b' }, newFindings('a'));
  expect(found.scale).toBeCloseTo(1 / 0.99, 3);
  expect(worstPlace(found.transform, smaller)).toBeLessThan(1);
  const muchSmaller = transformRegion(turnedOver(75, 0.96), hide);
  expect(() => registerOtherSide(hide, muchSmaller, { photo: 'b.jpg' }, newFindings('a'))).toThrow(/b\.jpg/);
});

test('when the other photo shows another hide, it is refused', () => {
  const other = transformRegion(composeAffine(scaling(1, 1.12), invertAffine(turnedOver(20))), testHide(-1));
  expect(() => registerOtherSide(testHide(1), other, { photo: 'b.jpg' }, newFindings('a'))).toThrow(
    expect.objectContaining({ code: 'sides-do-not-match' }),
  );
});
