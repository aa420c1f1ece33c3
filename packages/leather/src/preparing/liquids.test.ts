import { describe, expect, test } from 'vitest';
import type { Preparation } from '../model/order.js';
import { DEFAULT_WORKSHOP } from '../workshop/default-workshop.js';
import { parseWorkshop } from '../files/workshop-file.js';
import { coverageFor, liquidNeeds, mixOf } from './liquids.js';

const PLAIN: Preparation = { name: 'brown', dye: 'brown', dyeBase: 'spirit', coats: 2, bothSides: false };
/** 100 dm². */
const SQUARE_METRE_MM2 = 1_000_000;

function workshopWith(lines: string) {
  return parseWorkshop(`format: hidebound/workshop@1\n${lines}`, { file: 'w' });
}

const NO_EXTRA = 'figures:\n  extra for edges and spill: 0\n';

function dyeOf(preparation: Partial<Preparation>, lines: string, areaMm2 = SQUARE_METRE_MM2) {
  const needs = liquidNeeds({ ...PLAIN, ...preparation }, areaMm2, workshopWith(lines));
  return needs.find(({ use }) => use === 'dye')!;
}

describe('quantities (worked by hand)', () => {
  const RANGE = `${NO_EXTRA}coverages:\n  spirit dye: { from: 110, to: 150 }\n`;

  test('when 100 dm² take 110 to 150 mL/m², a coat is 110 to 150 mL and two coats are 220 to 300', () => {
    expect(dyeOf({ coats: 1 }, RANGE).ml).toEqual({ min: 110, max: 150 });
    expect(dyeOf({ coats: 2 }, RANGE).ml).toEqual({ min: 220, max: 300 });
  });

  test('when both sides are dyed, it is twice as much', () => {
    expect(dyeOf({ bothSides: true }, RANGE).ml).toEqual({ min: 440, max: 600 });
  });

  test('when edges and spill take 10 to 15 %, the least grows by 10 and the most by 15 %', () => {
    const { ml } = dyeOf({ coats: 1 }, 'coverages:\n  spirit dye: { from: 100, to: 200 }\n');
    expect(ml!.min).toBeCloseTo(110, 9);
    expect(ml!.max).toBeCloseTo(230, 9);
  });

  test('when the mixture is 1 part dye and 4 parts thinner, 500 mL of it are 100 and 400 mL', () => {
    expect(mixOf(500, 4)).toEqual({ dyeMl: 100, thinnerMl: 400 });
  });

  test('when dye is thinned 1:4, one part in five of what goes on is dye', () => {
    const { ml, mix } = dyeOf({ coats: 1, thinnerParts: 4, thinner: 'the maker’s own' }, RANGE);
    expect(ml).toEqual({ min: 110, max: 150 });
    expect(mix).toMatchObject({ thinnerParts: 4, thinner: 'the maker’s own', dyeMl: { min: 22, max: 30 } });
    expect(mix!.thinnerMl).toEqual({ min: 88, max: 120 });
  });

  // 16 g of 0.8 g/mL over 20 dm² are 100 mL/m²: 24 dm² take 24 mL a coat.
  test('when a bottle was weighed, that product goes by it and no span is left', () => {
    const weighed = `${NO_EXTRA}coverages:\n  brown: { before: 412, after: 396, over: 20 dm2, gPerMl: 0.8 }\n`;
    const { ml, coverage } = dyeOf({ coats: 1 }, weighed, 240_000);
    expect(ml!.min).toBeCloseTo(24, 9);
    expect(ml!.max).toBeCloseTo(24, 9);
    expect(coverage?.source).toBe('measured');
  });
});

describe('which coverage', () => {
  test('when the product has a line of its own it counts before its kind, whatever its capitals', () => {
    const workshop = workshopWith('coverages:\n  Brown: { from: 90, to: 95 }\n');
    expect(coverageFor(workshop, 'brown', 'spirit dye')?.minMlPerM2).toBe(90);
    expect(coverageFor(workshop, 'black', 'spirit dye')?.product).toBe('spirit dye');
  });

  test('when nobody knows how far a product goes, no quantity is made up', () => {
    const { dyeBase: _, ...unknown } = PLAIN;
    const [need] = liquidNeeds({ ...unknown, dye: 'walnut husks' }, SQUARE_METRE_MM2, DEFAULT_WORKSHOP);
    expect(need).not.toHaveProperty('ml');
    expect(need).not.toHaveProperty('coverage');
  });

  test.each([
    ['beeswax and oil', 'wax or resin finish'],
    ['neatsfoot oil', 'oil'],
    ['matt acrylic', 'acrylic finish'],
  ])('when the finish is %s, it goes by %s', (finish, kind) => {
    const needs = liquidNeeds({ name: 'x', finish, bothSides: false }, SQUARE_METRE_MM2, DEFAULT_WORKSHOP);
    expect(needs[0]?.coverage?.product).toBe(kind);
  });
});

describe('feeding', () => {
  const FED = { ...PLAIN, condition: 'neatsfoot oil', finish: 'wax' };
  const usesOf = (preparation: Preparation, state = {}) =>
    liquidNeeds(preparation, SQUARE_METRE_MM2, DEFAULT_WORKSHOP, state).map(({ use }) => use);

  test('when the dye is of spirit or oil, leather is fed before it and lightly after', () => {
    expect(usesOf(FED)).toEqual(['condition', 'dye', 'condition again', 'finish']);
  });

  // Common practice, no source: water and pigment don't hold on fed leather.
  test.each(['water', 'pigment'])('when the dye is of %s, no oil goes on before it', (dyeBase) => {
    expect(usesOf({ ...FED, dyeBase })).toEqual(['dye', 'condition again', 'finish']);
  });

  test('when leather is full of oil from the tannery, it is not fed', () => {
    expect(usesOf(FED, { isFullOfOil: true })).toEqual(['dye', 'finish']);
  });

  test('when leather is only wiped damp, no liquid but water is asked for', () => {
    expect(usesOf({ ...PLAIN, condition: 'wiped damp' })).toEqual(['dye']);
  });
});
