import { describe, expect, it } from 'vitest';
import type { Item, Placement } from '../types/problem.js';
import type { Point, Region, Ring } from '../types/shape.js';
import { areaOfRegion } from './area.js';
import { checkAnswer } from './index.js';
import { overlapDeeperThan } from './overlap-depth.js';
import { frame, makeItem, makeJob, makeSheet, place, polygon, rectangle } from './test-jobs.js';
import { makeDice, randomRegion, roundMm } from './test-mutations.js';
import type { Dice } from './test-mutations.js';
import { cosSinOfDeg } from './turn.js';

const FORGIVEN = 0.002;

function depthOf(one: Region, other: Region, angleDeg: number, x = 0, y = 0): number | undefined {
  const [cos, sin] = cosSinOfDeg(angleDeg);
  const turned = areaOfRegion(one, { cos, sin, x: 0, y: 0 });
  const moved = areaOfRegion(other, { cos, sin, x: cos * x - sin * y, y: sin * x + cos * y });
  const there = overlapDeeperThan(turned, moved, FORGIVEN);
  const back = overlapDeeperThan(moved, turned, FORGIVEN);
  expect(there === undefined).toBe(back === undefined);
  return there?.depth;
}

const block = rectangle(0, 0, 100, 60);
/** Its lower side bulges by 10 µm in the middle of a metre. */
const bulging = polygon([0, -50], [1000, -50], [1000, 0], [500, 0.01], [0, 0]);
const bar = rectangle(-200, -4, 200, 4);
const upright = rectangle(-3, -150, 3, 150);
const hoop = frame(rectangle(0, 0, 200, 200), rectangle(50, 70, 150, 130));

describe.each([0, 90, 17.3, 233.000001])('when two shapes are compared, turned by %d°', (angleDeg) => {
  it('finds crossing bars of which neither has a corner in the other', () => {
    expect(depthOf(bar, upright, angleDeg)).toBeGreaterThan(2.9);
  });

  it('finds equal shapes laid on top of each other', () => {
    expect(depthOf(block, block, angleDeg)).toBeGreaterThan(FORGIVEN);
    expect(depthOf(hoop, hoop, angleDeg)).toBeGreaterThan(FORGIVEN);
    expect(depthOf(block, block, angleDeg, 0.001, 0.001)).toBeGreaterThan(FORGIVEN);
  });

  it('finds a shape that lies within another, with common sides or without', () => {
    expect(depthOf(block, rectangle(10, 10, 20, 20), angleDeg)).toBeGreaterThan(FORGIVEN);
    expect(depthOf(block, rectangle(0, 0, 20, 60), angleDeg)).toBeGreaterThan(FORGIVEN);
  });

  it('lets a shape fill the opening of another, but not more', () => {
    expect(depthOf(hoop, block, angleDeg, 50, 70)).toBeUndefined();
    expect(depthOf(hoop, block, angleDeg, 50.001, 70)).toBeUndefined();
    expect(depthOf(hoop, block, angleDeg, 50.01, 70)).toBeCloseTo(0.01, 6);
  });

  it('lets shapes share sides and corners', () => {
    expect(depthOf(block, block, angleDeg, 100, 0)).toBeUndefined();
    expect(depthOf(block, block, angleDeg, 100, 37)).toBeUndefined();
    expect(depthOf(block, block, angleDeg, 100, 60)).toBeUndefined();
    expect(depthOf(block, block, angleDeg, 99.999, 20)).toBeUndefined();
  });

  it('finds a bulge of 10 µm in the middle of a side of one metre', () => {
    expect(depthOf(bulging, rectangle(0, 0, 1000, 50), angleDeg)).toBeCloseTo(0.01, 6);
    expect(depthOf(bulging, rectangle(0, 0.009, 1000, 50), angleDeg)).toBeUndefined();
  });

  it('finds a needle that pokes in by 10 µm', () => {
    const needle = polygon([0, 0], [80, -1], [80, 1]);
    expect(depthOf(block, needle, angleDeg, 99.99, 30)).toBeCloseTo(0.01, 6);
    expect(depthOf(block, needle, angleDeg, 99.999, 30)).toBeUndefined();
  });

  it('finds nearly parallel sides that run into each other', () => {
    const tilted = polygon([0, 60], [100, 59.99], [100, 90], [0, 90]);
    expect(depthOf(block, tilted, angleDeg)).toBeCloseTo(0.01, 5);
    expect(depthOf(block, polygon([0, 60], [100, 59.999], [100, 90], [0, 90]), angleDeg)).toBeUndefined();
  });
});

describe('when random shapes lie where only rounding can tell them apart', () => {
  const shapes = Array.from({ length: 200 }, (_, seed) => {
    const dice = makeDice(seed + 1);
    const shape = randomRegion(dice);
    const jitter = (most: number): number => most * (2 * dice() - 1);
    return { shape, turn: 360 * dice(), jitter };
  });

  it('finds every one laid on top of itself, off by a rounding', () => {
    for (const { shape, turn, jitter } of shapes) {
      expect(depthOf(shape, shape, turn, jitter(0.003), jitter(0.003))).toBeGreaterThan(FORGIVEN);
    }
  });

  it('lets every one fill a hole of its own shape, off by a rounding, and no more', () => {
    for (const { shape, turn, jitter } of shapes) {
      const around = { outer: rectangle(-200, -200, 200, 200).outer, openings: [shape.outer] };
      const filler = { outer: shape.outer, openings: [] };
      expect(depthOf(around, filler, turn, jitter(0.001), jitter(0.001))).toBeUndefined();
      expect(depthOf(around, filler, turn, 0.02 + jitter(0.001), jitter(0.001))).toBeGreaterThan(FORGIVEN);
    }
  });
});

/** The part of a convex ring on one side of the line through a point, across the given direction. */
function clip(ring: Ring, at: Point, across: Point): Ring {
  const side = (p: Point): number => (p.x - at.x) * across.x + (p.y - at.y) * across.y;
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    const [here, there] = [side(p), side(q)];
    const kept = here >= 0 ? [p] : [];
    if (here >= 0 === there >= 0) return kept;
    const t = here / (here - there);
    return [...kept, { x: roundMm(p.x + t * (q.x - p.x)), y: roundMm(p.y + t * (q.y - p.y)) }];
  });
}

function dissect(dice: Dice, ring: Ring, cuts: number): readonly Ring[] {
  if (cuts === 0) return [ring];
  const weights = ring.map(() => 0.2 + dice());
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const at = {
    x: ring.reduce((total, p, i) => total + p.x * weights[i]!, 0) / sum,
    y: ring.reduce((total, p, i) => total + p.y * weights[i]!, 0) / sum,
  };
  const angle = 2 * Math.PI * dice();
  const across = { x: Math.cos(angle), y: Math.sin(angle) };
  const back = { x: -across.x, y: -across.y };
  return [clip(ring, at, across), clip(ring, at, back)].flatMap((part) => dissect(dice, part, cuts - 1));
}

/** The piece as an item of its own frame, turned somehow, and the rounded placement that puts it back. */
function itemOf(dice: Dice, ring: Ring, index: number): readonly [Item, Placement] {
  const rotationDeg = Math.round(360e6 * dice()) / 1e6;
  const [cos, sin] = cosSinOfDeg(rotationDeg);
  const [x0, y0] = [ring[0]!.x + 10 * dice(), ring[0]!.y + 10 * dice()];
  const outer = ring.map(({ x, y }) => ({
    x: cos * (x - x0) + sin * (y - y0),
    y: -sin * (x - x0) + cos * (y - y0),
  }));
  const id = `part ${index}`;
  return [makeItem(id, { outer, openings: [] }), place(id, roundMm(x0), roundMm(y0), rotationDeg)];
}

const SEEDS = Array.from({ length: 60 }, (_, i) => i + 1);

describe('when a sheet is dissected into 16 pieces that fill it', () => {
  const dissection = (seed: number): { rings: readonly Ring[]; items: Item[]; placements: Placement[] } => {
    const dice = makeDice(seed);
    const rings = dissect(dice, SHEET.outer, 4);
    const laid = rings.map((ring, i) => itemOf(dice, ring, i));
    return { rings, items: laid.map(([item]) => item), placements: laid.map(([, placement]) => placement) };
  };
  const SHEET = polygon([0, 0], [700, 20], [760, 300], [400, 520], [30, 400]);
  const sheets = [makeSheet({ region: SHEET })];

  it.each(SEEDS)('passes without any gap, though each placement is rounded (seed %d)', (seed) => {
    const { items, placements } = dissection(seed);
    const { problem, answer } = makeJob({ items, placements, sheets });
    expect(checkAnswer(problem, answer)).toEqual([]);
  });

  it.each(SEEDS)('fails by name when one piece is pushed by 12 µm (seed %d)', (seed) => {
    const { rings, items, placements } = dissection(seed);
    const chosen = seed % rings.length;
    const push = outwardOfLongestSide(rings[chosen]!);
    const before = placements[chosen]!;
    placements[chosen] = { ...before, x: before.x + 0.012 * push.x, y: before.y + 0.012 * push.y };
    const { problem, answer } = makeJob({ items, placements, sheets });
    const told = checkAnswer(problem, answer);
    expect(told.length).toBeGreaterThan(0);
    for (const { at, other } of told) {
      const names = [at?.item, typeof other === 'object' ? other.item : other];
      expect(names).toContain(`part ${chosen}`);
    }
  });
});

function outwardOfLongestSide(ring: Ring): Point {
  let longest = 0;
  let outward: Point = { x: 0, y: 0 };
  for (const [i, p] of ring.entries()) {
    const q = ring[(i + 1) % ring.length]!;
    const length = Math.hypot(q.x - p.x, q.y - p.y);
    if (length <= longest) continue;
    longest = length;
    outward = { x: (q.y - p.y) / length, y: -(q.x - p.x) / length };
  }
  return outward;
}
