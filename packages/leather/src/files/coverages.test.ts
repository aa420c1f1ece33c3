import { expect, test } from 'vitest';
import { parseWorkshop, writeWorkshop } from './workshop-file.js';

function workshopWith(coverage: string) {
  return parseWorkshop(`format: hidebound/workshop@1\ncoverages:\n  ${coverage}\n`, {
    file: 'workshop.yaml',
  });
}

function coverageOf(product: string, coverage: string) {
  return workshopWith(coverage).coverages.find((line) => line.product === product);
}

// Arithmetic: 16 g of 0.8 g/mL are 20 mL; over 20 dm² = 0.2 m² that is 100 mL/m².
test('when a bottle was weighed before and after a coat, its coverage is what went, as mL over the area', () => {
  const line = coverageOf('chestnut', 'chestnut: { before: 412, after: 396, over: 20 dm2, gPerMl: 0.8 }');
  expect(line?.minMlPerM2).toBeCloseTo(100, 9);
  expect(line?.maxMlPerM2).toBe(line?.minMlPerM2);
  expect(line?.source).toBe('measured');
});

// 36 g at 1 g/mL over 0.2 m²: 180 mL/m².
test('when no weight of a mL is written, it is 1 g', () => {
  const line = coverageOf('water dye', 'water dye: { before: 530, after: 494, over: 20 dm2 }');
  expect(line?.minMlPerM2).toBeCloseTo(180, 9);
});

// 1 ft² is 929.0304 cm² (0.3048 m squared, exact by the international foot of 1959).
test('when the area is in square feet, it is the international foot', () => {
  const line = coverageOf('oil', 'oil: { before: 100, after: 90.709696, over: 1 ft2 }');
  expect(line?.minMlPerM2).toBeCloseTo(100, 6);
});

test('when it is written out and read again, it is the same', () => {
  const workshop = workshopWith('chestnut: { before: 412, after: 396, over: 21.5 dm2, gPerMl: 0.81 }');
  expect(parseWorkshop(writeWorkshop(workshop), { file: 'w' })).toEqual(workshop);
});

test.each([
  [
    'a bottle got heavier',
    'oil: { before: 396, after: 412, over: 20 dm2 }',
    /after a coat it must weigh less/,
  ],
  [
    'a bottle lost nothing',
    'oil: { before: 396, after: 396, over: 20 dm2 }',
    /after a coat it must weigh less/,
  ],
  ['the most comes first', 'oil: { from: 120, to: 50 }', /the smaller figure comes first/],
  ['the area is 0', 'oil: { before: 412, after: 396, over: 0 dm2 }', /area that one coat went over/],
  ['the area has no unit', 'oil: { before: 412, after: 396, over: "20" }', /unit/],
  ['a mL weighs nothing', 'oil: { before: 412, after: 396, over: 20 dm2, gPerMl: 0 }', /above 0/],
  ['both ways are mixed', 'oil: { from: 50, before: 412, after: 396, over: 20 dm2 }', /from|before/],
])('when %s, it is refused with its line', (_, written, words) => {
  expect(() => workshopWith(written)).toThrow(words);
  expect(() => workshopWith(written)).toThrow(/line 3/);
});
