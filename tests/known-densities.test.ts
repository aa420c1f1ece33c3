/**
 * Packings that mathematics knows, put before the exact check: it must pass them, and fail them once they are squeezed.
 * Volumes and pages of the sources are from memory.
 */
import { intersectRegions, regionArea, regionsArea, ringBox, transformRing } from '@hidebound/geometry';
import type { NestAnswer, NestProblem, Placement, Point, Region, Ring } from '@hidebound/geometry';
import { checkAnswer } from '@hidebound/geometry/check';
import { describe, expect, test } from 'vitest';
import {
  placement,
  rectangle,
  testItem,
  testKind,
  testProblem,
  testSheet,
} from '../packages/geometry/src/nest/test-problems.js';

const toGrid = (mm: number): number => Math.round(mm * 1000) / 1000;

function answerOf(placements: readonly Placement[]): NestAnswer {
  return { placements, lanes: [], roughCuts: [], unplaced: [], joins: 0 };
}

function rulesBroken(problem: NestProblem, placements: readonly Placement[]): string[] {
  return [...new Set(checkAnswer(problem, answerOf(placements)).map(({ rule }) => rule))].sort();
}

describe('the tangram', () => {
  // Seven pieces of sixteen equal right-angled triangles, which make up a square: F. T. Wang and C.-C. Hsiung, "A theorem
  // on the tangram", American Mathematical Monthly 49 (1942) 596-599. Sides on the grid, so each is off by 0.5 µm at most.
  const UNIT = 100;
  const legged = (leg: number): Region => ({
    outer: [
      { x: 0, y: 0 },
      { x: toGrid(leg * UNIT), y: 0 },
      { x: 0, y: toGrid(leg * UNIT) },
    ],
    openings: [],
  });
  const side = toGrid(Math.SQRT2 * UNIT);
  const items = [
    testItem('large', legged(2 * Math.SQRT2)),
    testItem('medium', legged(2)),
    testItem('small', legged(Math.SQRT2)),
    testItem('square', rectangle(0, 0, side, side)),
    testItem('slant', {
      outer: [
        { x: 0, y: 0 },
        { x: UNIT, y: -UNIT },
        { x: 3 * UNIT, y: -UNIT },
        { x: 2 * UNIT, y: 0 },
      ],
      openings: [],
    }),
  ];
  const placements = [
    placement('large', 1, 2 * UNIT, 2 * UNIT, { rotationDeg: 225 }),
    placement('large', 2, 2 * UNIT, 2 * UNIT, { rotationDeg: 135 }),
    placement('medium', 1, 4 * UNIT, 4 * UNIT, { rotationDeg: 180 }),
    placement('small', 1, 3 * UNIT, UNIT, { rotationDeg: 315 }),
    placement('small', 2, 2 * UNIT, 2 * UNIT, { rotationDeg: 45 }),
    placement('square', 1, 2 * UNIT, 2 * UNIT, { rotationDeg: 315 }),
    placement('slant', 1, 0, 4 * UNIT),
  ];
  const problem = testProblem({
    items,
    setKinds: [testKind({ large: 2, medium: 1, small: 2, square: 1, slant: 1 })],
    sheets: [testSheet('sheet', rectangle(0, 0, 4 * UNIT, 4 * UNIT))],
  });

  test('when its pieces make up the square, they fill it to the last and pass', () => {
    const areaOf = new Map(items.map(({ id, region }) => [id, regionArea(region)]));
    const area = placements.reduce((sum, { item }) => sum + areaOf.get(item)!, 0);
    expect(area / (16 * UNIT * UNIT)).toBeCloseTo(1, 5);
    expect(rulesBroken(problem, placements)).toEqual([]);
  });

  test('when they are to keep a hundredth of a mm, or lie in a square that much smaller, they fail', () => {
    expect(rulesBroken({ ...problem, distances: { gap: 0.01, edge: 0, void: 0 } }, placements)).toEqual([
      'gap',
    ]);
    const smaller = testSheet('sheet', rectangle(0, 0, 4 * UNIT, 4 * UNIT - 0.01));
    expect(rulesBroken({ ...problem, sheets: [smaller] }, placements)).toEqual(['edge']);
  });
});

describe('squares in a square', () => {
  // Least sides for unit squares: 5 in 2 + 1/√2, F. Göbel, "Geometrical packing and covering problems", in A. Schrijver
  // (ed.), Packing and Covering in Combinatorics, Mathematical Centre Tracts 106 (1979) 179-199; 10 in 3 + 1/√2,
  // W. Stromquist, "Packing 10 or 11 unit squares in a square", Electronic Journal of Combinatorics 10 (2003) R8.
  const SIDE = 100;
  const square = testItem('square', rectangle(0, 0, SIDE, SIDE));

  /** One in each corner and one half-turned into the middle; more of them along two sides, `rows` deep. */
  function packed(outer: number, rows: 0 | 1): { problem: NestProblem; placements: Placement[] } {
    const inner = outer - rows * SIDE;
    const far = toGrid(inner - SIDE);
    const middle = inner / 2;
    const reach = SIDE / Math.SQRT2;
    const corners = [
      [0, 0],
      [far, 0],
      [0, far],
      [far, far],
    ] as const;
    const beside = Array.from({ length: rows * 5 }, (_, i): readonly [number, number] =>
      i < 3 ? [i * SIDE, toGrid(inner)] : [toGrid(inner), (i - 3) * SIDE],
    );
    const spots: Placement[] = [...corners, ...beside].map(([x, y], i) => placement('square', i + 1, x, y));
    const turned = placement('square', spots.length + 1, toGrid(middle), toGrid(middle - reach), {
      rotationDeg: 45,
    });
    const problem = testProblem({
      items: [square],
      setKinds: [testKind({ square: spots.length + 1 })],
      sheets: [testSheet('sheet', rectangle(0, 0, toGrid(outer), toGrid(outer)))],
    });
    return { problem, placements: [...spots, turned] };
  }

  test.each([
    [5, 2 + Math.SQRT1_2, 0],
    [10, 3 + Math.SQRT1_2, 1],
  ] as const)(
    'when %i lie in the least square that holds them, they pass; 10 µm less, and they fail',
    (n, units, rows) => {
      const least = packed(units * SIDE, rows);
      expect(least.placements).toHaveLength(n);
      expect(rulesBroken(least.problem, least.placements)).toEqual([]);
      const less = packed(units * SIDE - 0.01, rows);
      expect(rulesBroken(less.problem, less.placements)).toEqual(['gap']);
    },
  );
});

/**
 * A double lattice: a convex shape and the same turned by half a turn, repeated. For a direction, two chords that are
 * half as long as the longest one are sides of a parallelogram; half turns about its corners carry the shape to its
 * neighbours, and one shape takes up twice its area: G. Kuperberg and W. Kuperberg, "Double-lattice packings of convex
 * bodies in the plane", Discrete & Computational Geometry 5 (1990) 389-397.
 */
interface DoubleLattice {
  readonly areaMm2: number;
  /** A corner of the parallelogram, and its two sides from there. */
  readonly corner: Point;
  readonly along: Point;
  readonly across: Point;
}

function regularPolygon(corners: number, radius: number): Ring {
  return Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
}

/** Ends of the chord at a height of a convex ring that doesn't run along it. */
function chordAt(ring: Ring, y: number): readonly [number, number] {
  const ends: number[] = [];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    if (a.y === b.y || Math.min(a.y, b.y) > y || Math.max(a.y, b.y) < y) return;
    ends.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
  });
  return [Math.min(...ends), Math.max(...ends)];
}

function chordLength(ring: Ring, y: number): number {
  const [from, to] = chordAt(ring, y);
  return to - from;
}

/** Between the longest chord and the end of the ring chords get shorter: where one is as long as asked. */
function heightOfChord(ring: Ring, length: number, longest: number, end: number): number {
  let [inner, outer] = [longest, end];
  for (let i = 0; i < 60; i++) {
    const middle = (inner + outer) / 2;
    if (chordLength(ring, middle) > length) inner = middle;
    else outer = middle;
  }
  return inner;
}

function doubleLattice(ring: Ring, angleRad: number): DoubleLattice {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  const flat = transformRing({ a: cos, b: -sin, c: sin, d: cos, e: 0, f: 0 }, ring);
  const back = ({ x, y }: Point): Point => ({ x: x * cos - y * sin, y: x * sin + y * cos });
  const { minY, maxY } = ringBox(flat);
  // Chord lengths are a concave function of the height with its bends at corners: the longest is at one of them.
  const heights = flat.map(({ y }) => y).filter((y) => y > minY + 1e-9 && y < maxY - 1e-9);
  const longest = heights.reduce((a, b) => (chordLength(flat, b) > chordLength(flat, a) ? b : a));
  const half = chordLength(flat, longest) / 2;
  const low = heightOfChord(flat, half, longest, minY);
  const high = heightOfChord(flat, half, longest, maxY);
  const corner = { x: chordAt(flat, low)[0], y: low };
  const across = { x: chordAt(flat, high)[0] - corner.x, y: high - low };
  return {
    areaMm2: half * across.y,
    corner: back(corner),
    along: back({ x: half, y: 0 }),
    across: back(across),
  };
}

/** The least over directions, a quarter of a degree apart; by symmetry the best ones are among them. */
function densestDoubleLattice(ring: Ring): DoubleLattice {
  const all = Array.from({ length: 720 }, (_, i) => doubleLattice(ring, (i * Math.PI) / 720));
  return all.reduce((best, one) => (one.areaMm2 < best.areaMm2 ? one : best));
}

/** `size` by `size` cells around (0, 0), two shapes each; `squeeze` (mm) is taken off the way from row to row. */
function patch({ corner, along, across }: DoubleLattice, size: number, squeeze: number): Placement[] {
  const length = Math.hypot(across.x, across.y);
  const shorter = 1 - squeeze / length / 2;
  const placements: Placement[] = [];
  for (let j = 0; j < size; j++) {
    for (let i = 0; i < size; i++) {
      const x = 2 * ((i - size / 2) * along.x + (j - size / 2) * across.x * shorter);
      const y = 2 * ((i - size / 2) * along.y + (j - size / 2) * across.y * shorter);
      const copy = placements.length + 1;
      placements.push(placement('shape', copy, x, y));
      placements.push(placement('shape', copy + 1, x + 2 * corner.x, y + 2 * corner.y, { rotationDeg: 180 }));
    }
  }
  return placements;
}

function patchProblem(ring: Ring, count: number): NestProblem {
  return testProblem({
    items: [testItem('shape', { outer: ring, openings: [] })],
    setKinds: [testKind({ shape: count })],
    sheets: [testSheet('sheet', rectangle(-2000, -2000, 2000, 2000))],
  });
}

/** Area of the shapes within a window over that of the window. */
function densityWithin(window: Ring, ring: Ring, placements: readonly Placement[]): number {
  const shapes = placements.map(({ x, y, rotationDeg }): Region => {
    const sign = rotationDeg === 180 ? -1 : 1;
    return { outer: transformRing({ a: sign, b: 0, c: 0, d: sign, e: x, f: y }, ring), openings: [] };
  });
  const windowed = shapes.map((shape) => intersectRegions([shape], [{ outer: window, openings: [] }]));
  return (
    windowed.reduce((sum, parts) => sum + regionsArea(parts), 0) / regionArea({ outer: window, openings: [] })
  );
}

const SQRT_5 = Math.sqrt(5);
const COS_7 = Math.cos(Math.PI / 7);

describe('double lattices', () => {
  const CASES = [
    // Proved the densest of all packings: T. Hales and W. Kusner, "Packings of regular pentagons in the plane" (2016), arXiv 1602.07220.
    { corners: 5, density: (5 - SQRT_5) / 3 },
    // Y. Kallus, "Pessimal packing shapes" (2013), arXiv 1305.0289; whether anything is denser is open.
    { corners: 7, density: (2 / 97) * (-111 + 492 * COS_7 - 356 * COS_7 ** 2) },
    // Symmetric about a point, so that no packing is denser than the densest lattice: L. Fejes Tóth, "Some packing and
    // covering theorems", Acta Scientiarum Mathematicarum (Szeged) 12A (1950) 62-67. The values follow from the least
    // symmetric hexagon around the shape.
    { corners: 8, density: (4 + 4 * Math.SQRT2) / (5 + 4 * Math.SQRT2) },
    { corners: 12, density: 4 * Math.sqrt(3) - 6 },
  ];

  test.each(CASES)('when regular $corners-gons lie in their densest, it has the known density', (known) => {
    const ring = regularPolygon(known.corners, 40);
    const { areaMm2 } = densestDoubleLattice(ring);
    expect(regionArea({ outer: ring, openings: [] }) / (2 * areaMm2)).toBeCloseTo(known.density, 9);
  });

  test.each(CASES)(
    'when a patch of $corners-gons is laid so, it passes; squeezed by 20 µm, it fails',
    (known) => {
      const ring = regularPolygon(known.corners, 40);
      const lattice = densestDoubleLattice(ring);
      const placements = patch(lattice, 6, 0);
      const problem = patchProblem(ring, placements.length);
      expect(rulesBroken(problem, placements)).toEqual([]);
      expect(rulesBroken(problem, patch(lattice, 6, 0.02))).toEqual(['gap']);
    },
  );

  test('when more pentagons are laid, the share of a window that they fill comes to the known density', () => {
    const ring = regularPolygon(5, 40);
    const lattice = densestDoubleLattice(ring);
    const known = CASES[0]!.density;
    const placements = patch(lattice, 14, 0);
    // Whole cells of the pattern, wherever they begin, hold just their share.
    const { along, across } = lattice;
    const cells = [
      [-3.3, -3.1],
      [2.7, -3.1],
      [2.7, 2.9],
      [-3.3, 2.9],
    ].map(([i, j]) => ({ x: 2 * (i! * along.x + j! * across.x), y: 2 * (i! * along.y + j! * across.y) }));
    const window = regionArea({ outer: cells, openings: [] }) > 0 ? cells : [...cells].reverse();
    expect(densityWithin(window, ring, placements)).toBeCloseTo(known, 5);
    const misses = [50, 100, 200, 300].map((half) => {
      const box = rectangle(-half, -half, half, half).outer;
      return Math.abs(densityWithin(box, ring, placements) - known);
    });
    expect(misses.at(-1)!).toBeLessThan(0.01);
    expect(misses.at(-1)!).toBeLessThan(misses[0]!);
  });
});
