import { checkAnswer } from '@hidebound/geometry/check';
import type { NestAnswer, NestProblem, Point } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
// @ts-expect-error: plain JavaScript, run by hand
import * as bench from './tools/nest-bench.mjs';

/** What the bench's modules give to these tests. */
interface Bench {
  readonly readStrip: (name: string, json: unknown, options?: { turns?: string }) => Instance;
  readonly readBins: (name: string, json: unknown) => Instance;
  readonly readLeather: (name: string, json: unknown) => Instance;
  readonly layGreedily: (problem: NestProblem) => NestAnswer;
  readonly layBoxes: (problem: NestProblem) => NestAnswer;
  readonly growRing: (ring: readonly Point[], tolerance: number, most: number) => readonly Point[];
  readonly ringArea: (ring: readonly Point[]) => number;
  readonly clipToBox: (ring: readonly Point[], box: object) => readonly Point[];
  readonly doubleLatticeDensity: (ring: readonly Point[]) => number;
  readonly exponent: (points: readonly { size: number; first: number }[]) => number | undefined;
  readonly measure: (instance: Instance & { kind: string }, answer: NestAnswer) => { goodness: number };
}

interface Instance {
  readonly name: string;
  readonly problem: NestProblem;
  readonly notes: readonly string[];
}

const {
  readStrip,
  readBins,
  readLeather,
  layGreedily,
  layBoxes,
  growRing,
  ringArea,
  clipToBox,
  doubleLatticeDensity,
  exponent,
  measure,
} = bench as Bench;

const square = (x: number, y: number, side: number): number[][] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
];
const polygon = (pairs: number[][]) => ({ Type: 'SimplePolygon', Data: [...pairs, pairs[0]!] });

/** Two squares of half the width, and a third with a repeated corner and a corner on a straight side. */
const STRIP = {
  strip_width: 4,
  items: [
    { demand: 2, rotations: [0], polygon: square(0, 0, 2) },
    {
      demand: 1,
      rotations: [0, 90],
      polygon: [
        [0, 0],
        [1, 0],
        [2, 0],
        [2, 0],
        [2, 2],
        [0, 2],
        [0, 0],
      ],
    },
  ],
};

/** One hide of 100 x 100 mm: quality 1 left of x = 40, quality 2 from there to x = 60, unmarked beyond. */
const HIDE = {
  Objects: [
    {
      Shape: polygon(square(0, 0, 100)),
      Zones: [
        { Quality: 1, Shape: polygon([[0, 0], [40, 0], [40, 100], [0, 100]]) }, // prettier-ignore
        { Quality: 2, Shape: polygon([[40, 0], [60, 0], [60, 100], [40, 100]]) }, // prettier-ignore
      ],
    },
  ],
  Items: [
    { Demand: 1, Zones: [], Shape: polygon(square(0, 0, 40)) },
    { Demand: 1, BaseQuality: 2, Zones: [], Shape: polygon(square(0, 0, 15)) },
    { Demand: 1, BaseQuality: 1, Zones: [], Shape: polygon(square(0, 0, 10)) },
  ],
};

describe('readers of benchmark instances', () => {
  test('when a strip is read, it is 1,000 mm wide, clean, and each piece may turn as listed', () => {
    const { problem } = readStrip('three squares', STRIP);
    expect(problem.objective.mode).toBe('strip');
    expect(Math.max(...problem.sheets[0]!.region.outer.map(({ y }) => y))).toBe(1000);
    expect(problem.items.map(({ region }) => region.outer.length)).toEqual([4, 4]);
    expect(problem.items.map(({ region }) => ringArea(region.outer))).toEqual([250_000, 250_000]);
    expect(problem.items.map(({ angleRule }) => angleRule.targetsDeg)).toEqual([[0], [0, 90]]);
  });

  test('when a ring crosses itself, the reader says so', () => {
    const bow = [[0, 0], [2, 2], [2, 0], [0, 3]]; // prettier-ignore
    const { notes } = readStrip('bow', {
      strip_width: 4,
      items: [{ demand: 1, rotations: [0], polygon: bow }],
    });
    expect(notes).toEqual(['piece 0 touches or crosses itself at 1 place']);
  });

  test('when bins are read, pieces begin at the origin and there are as many sheets as bins', () => {
    const json = { bin: [10, 10], bins: [[square(0, 0, 5), square(5, 5, 5)], [square(2, 3, 4)]] };
    const { problem } = readBins('bins', json);
    expect(problem.sheets).toHaveLength(2);
    expect(problem.items.map(({ region }) => region.outer[0])).toEqual(Array(3).fill({ x: 0, y: 0 }));
  });

  test('when a hide is read, each piece bears zones of at least the quality that it needs', () => {
    const { problem } = readLeather('hide', HIDE);
    const zones = problem.sheets[0]!.qualities.map(({ grade }) => grade);
    const bears = problem.items.map(({ need }) => zones.map((grade) => grade <= need.maxGrade));
    // No need: avoids both. Need 2: avoids quality 1. Need 1: bears both.
    expect(bears).toEqual([
      [false, false],
      [false, true],
      [true, true],
    ]);
  });

  test('when a zone of a piece needs less than the piece, the rest of the piece becomes its part', () => {
    const zone = { Quality: 0, Shape: polygon(square(0, 0, 20)) };
    const piece = { Demand: 1, Zones: [zone], Shape: polygon(square(0, 0, 40)) };
    const { problem } = readLeather('hide', { ...HIDE, Items: [piece] });
    const [{ need, parts }] = problem.items as [NestProblem['items'][number]];
    const worst = Math.max(...problem.sheets[0]!.qualities.map(({ grade }) => grade));
    expect(need.maxGrade).toBeGreaterThanOrEqual(worst);
    expect(parts.map((part) => part.need.maxGrade)).toEqual([0]);
    expect(ringArea(parts[0]!.areas[0]!.outer)).toBeCloseTo(40 * 40 - 20 * 20, 6);
  });
});

describe('baselines', () => {
  test('when three squares lie on a strip, greedy and boxes fill two columns', () => {
    const instance = { ...readStrip('three squares', STRIP), kind: 'strip' };
    for (const lay of [layGreedily, layBoxes]) {
      const answer = lay(instance.problem);
      expect(checkAnswer(instance.problem, answer)).toEqual([]);
      expect(measure(instance, answer).goodness).toBeCloseTo(75, 6);
    }
  });

  test('when hollows fit each other, greedy moves pieces into them and boxes do not', () => {
    const chevron = [[0, 0], [1, 0], [3, 2], [1, 4], [0, 4], [2, 2]]; // prettier-ignore
    const json = { strip_width: 4, items: [{ demand: 2, rotations: [0], polygon: chevron }] };
    const instance = { ...readStrip('chevrons', json), kind: 'strip' };
    const [greedy, boxes] = [layGreedily, layBoxes].map((lay) => {
      const answer = lay(instance.problem);
      expect(checkAnswer(instance.problem, answer)).toEqual([]);
      return measure(instance, answer).goodness;
    });
    // Each has area 4 in a strip 4 wide: one behind the other they are 6 long, one in the other 4.
    expect(boxes).toBeCloseTo(100 / 3, 6);
    expect(greedy).toBeCloseTo(50, 3);
  });

  test('when a hide has zones, both lay each piece only where it bears them', () => {
    const { problem } = readLeather('hide', HIDE);
    for (const lay of [layGreedily, layBoxes]) {
      const answer = lay(problem);
      expect(answer.placements).toHaveLength(3);
      expect(checkAnswer(problem, answer)).toEqual([]);
      const least = answer.placements.map(({ item }) => leastX(problem, answer, item));
      expect(least).toEqual([60, 40, 0]);
    }
  });

  test('when there is no room, both say so plainly', () => {
    const json = { bin: [10, 10], bins: [[square(0, 0, 8), square(0, 0, 5)]] };
    const { problem } = readBins('bins', json);
    for (const lay of [layGreedily, layBoxes]) {
      const { unplaced } = lay(problem);
      expect(unplaced).toEqual([{ item: 'piece 1-2', set: 1, copy: 1, reason: 'no-room' }]);
    }
  });

  test('when corners are saved, the simpler ring contains the given one and hardly more', () => {
    const ring = Array.from({ length: 120 }, (_, i) => {
      const radius = 100 + (i % 2 === 0 ? 0.4 : 0);
      const angle = (i * Math.PI) / 60;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
    });
    const grown = growRing(ring, 2, 24);
    expect(grown.length).toBeLessThan(60);
    // Every corner of the given ring lies on the inner side of every edge near it: the grown one is convex here.
    for (const p of ring) expect(isInside(p, grown)).toBe(true);
    expect(ringArea(grown)).toBeLessThan(1.03 * ringArea(ring));
  });
});

/** Even-odd, with 1e-9 mm forgiven at the edge by moving the point towards the centre (0, 0). */
function isInside({ x, y }: Point, ring: readonly Point[]): boolean {
  const [px, py] = [x * (1 - 1e-11), y * (1 - 1e-11)];
  return (
    ring.filter((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      return a.y > py !== b.y > py && px < a.x + ((py - a.y) / (b.y - a.y)) * (b.x - a.x);
    }).length %
      2 ===
    1
  );
}

/** Left end of a square piece, whatever quarter turn or slant it has. */
function leastX(problem: NestProblem, answer: NestAnswer, id: string): number {
  const { region } = problem.items.find((item) => item.id === id)!;
  const { x, rotationDeg } = answer.placements.find(({ item }) => item === id)!;
  const turn = (rotationDeg * Math.PI) / 180;
  const xs = region.outer.map((p) => p.x * Math.cos(turn) - p.y * Math.sin(turn) + x);
  return Number(Math.min(...xs).toFixed(3)) + 0;
}

describe('measures', () => {
  // Hales & Kusner 2016, arXiv 1602.07220 (pentagon); Kallus 2013, arXiv 1305.0289 (heptagon); the octagon and the
  // hexagon are centrally symmetric, so their best lattice is known; triangles and squares tile.
  test.each([
    [3, 1],
    [4, 1],
    [5, (5 - Math.sqrt(5)) / 3],
    [6, 1],
    [7, (2 / 97) * (-111 + 492 * Math.cos(Math.PI / 7) - 356 * Math.cos(Math.PI / 7) ** 2)],
    [8, (4 + 4 * Math.SQRT2) / (5 + 4 * Math.SQRT2)],
  ])(
    'when a regular polygon has %i corners, its double lattice has the known density',
    (corners, density) => {
      const ring = Array.from({ length: corners }, (_, i) => {
        const angle = 0.3 + (2 * Math.PI * i) / corners;
        return { x: Math.cos(angle), y: Math.sin(angle) };
      });
      expect(doubleLatticeDensity(ring)).toBeCloseTo(density, 9);
    },
  );

  test('when a ring is clipped to a box, what is left has the area within', () => {
    const diamond = [{ x: 0, y: -2 }, { x: 2, y: 0 }, { x: 0, y: 2 }, { x: -2, y: 0 }]; // prettier-ignore
    const quarter = clipToBox(diamond, { minX: 0, minY: 0, maxX: 5, maxY: 5 });
    expect(ringArea(quarter)).toBeCloseTo(2, 12);
    expect(ringArea(clipToBox(diamond, { minX: 3, minY: 3, maxX: 5, maxY: 5 }))).toBeCloseTo(0, 12);
  });

  test('when times grow as a power of the size, the exponent is that power', () => {
    const points = [50, 100, 200, 400].map((size) => ({ size, first: 3 * size ** 1.15 }));
    expect(exponent(points)).toBeCloseTo(1.15, 9);
  });

  test('when a strip layout misses a piece, it is worth nothing', () => {
    const instance = { ...readStrip('three squares', STRIP), kind: 'strip' };
    const answer = layGreedily(instance.problem);
    const [first, ...placements] = answer.placements;
    const unplaced = [{ item: first!.item, set: 1, copy: first!.copy, reason: 'no-room' as const }];
    expect(measure(instance, { ...answer, placements, unplaced }).goodness).toBe(0);
  });
});
