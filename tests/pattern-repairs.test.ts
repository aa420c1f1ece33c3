/** Repairs of drawings: what is changed lies within stated distances of what was drawn, and every change is told of. */
import {
  arcsToCubics,
  circleCurve,
  createRandom,
  curveArea,
  curveLength,
  findSelfCrossing,
  flattenCurve,
  polylineNearest,
  rotationDeg,
  startedAt,
  transformCurveToGrid,
} from '@hidebound/geometry';
import type { Curve, CurveSegment } from '@hidebound/geometry';
import { readPatternSvg } from '@hidebound/intake';
import { describe, expect, test } from 'vitest';
import { fitArcs } from '../packages/intake/src/lines/fit-arcs.js';
import { cutTinyLoops } from '../packages/intake/src/lines/tiny-loops.js';

const page = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="400mm" viewBox="0 0 400 400" fill="none" stroke="#000">${body}</svg>`;
const read = (body: string) => readPatternSvg(page(body), { file: 'a.svg' });
const curveOf = (d: string): Curve =>
  readPatternSvg(page(`<path class="cut" data-finished="" d="${d}"/>`), { file: 'a.svg' }).pieces[0]!.piece
    .cut;
const kinds = ({ segments }: Curve) => segments.map(({ kind }) => kind);

/** Corners of a regular polygon, as path data. */
function polygon(sides: number, radius: number, cx = 200, cy = 200): string {
  const corners = Array.from({ length: sides }, (_, k) => {
    const turn = (2 * Math.PI * k) / sides;
    return `${(cx + radius * Math.cos(turn)).toFixed(3)},${(cy + radius * Math.sin(turn)).toFixed(3)}`;
  });
  return `M${corners.join('L')}Z`;
}

/** How far the two lines lie from each other at the most. */
function farthest(a: Curve, b: Curve): number {
  const [p, q] = [flattenCurve(a, 0.001), flattenCurve(b, 0.001)];
  const off = (from: typeof p, to: typeof p) => Math.max(...from.map((x) => polylineNearest(to, x).distance));
  return Math.max(off(p, q), off(q, p));
}

describe('gaps and doubles', () => {
  test('when ends lie 0.08 mm apart, the gap is in the report with its place and width', () => {
    const { repairs } = read('<path id="top" d="M10 10H110"/><path id="rest" d="M110 10.08V90H10V10"/>');
    expect(repairs).toEqual([{ kind: 'gap joined', element: '#top', at: { x: 110, y: 10 }, sizeMm: 0.08 }]);
  });

  test('when ends meet exactly, there is nothing to report; when they lie farther apart, they stay open', () => {
    expect(read('<path d="M10 10H110"/><path d="M110 10V90H10V10"/>').repairs).toEqual([]);
    const open = read('<path class="cut" d="M10 10H110"/><path class="cut" d="M110 10.12V90H10V10.12"/>');
    expect(open.repairs).toEqual([]);
    expect(open.pieces).toEqual([]);
  });

  test('when a line is drawn twice 0.006 mm apart, the report says how far', () => {
    const rect = (id: string, x: number) => `<rect id="${id}" x="${x}" y="10" width="100" height="80"/>`;
    const { repairs } = read(rect('flap', 10) + rect('again', 10.006));
    expect(repairs).toEqual([
      { kind: 'double dropped', element: '#again', at: { x: 10.006, y: 10 }, sizeMm: 0.006 },
    ]);
  });
});

describe('tiny loops', () => {
  // A rectangle of 100 x 80 mm whose top edge runs 0.3 mm too far and turns back through itself.
  const looped = 'M10 10H60.3V10.2H60V9.8L110 10V90H10Z';

  test('when an outline has a loop below 0.5 mm, it is cut off at the crossing, and it is told', () => {
    const result = read(`<path id="flap" d="${looped}"/>`);
    const loops = result.repairs.filter(({ kind }) => kind === 'loop removed');
    expect(loops).toHaveLength(1);
    expect(loops[0]).toMatchObject({ element: '#flap', at: { x: 60, y: 10 } });
    expect(loops[0]!.sizeMm).toBeLessThan(0.5);
    expect(result.diagnostics.map(({ code }) => code)).not.toContain('outline-crosses-itself');
    expect(result.diagnostics.map(({ code }) => code)).toContain('loops-removed');
    expect(farthest(result.pieces[0]!.piece.cut, curveOf(looped))).toBeLessThan(0.5);
  });

  test('when the loop is 2 mm wide, it stays, and the error names the place', () => {
    const result = read('<path d="M10 10H62V11H60V9L110 10V90H10Z"/>');
    expect(result.repairs).toEqual([]);
    expect(result.diagnostics.map(({ code }) => code)).toContain('outline-crosses-itself');
  });

  test('when a spike folds back, it is cut off', () => {
    const { curve, removed } = cutTinyLoops(curveOf('M10 10H60V9.7V10H110V90H10Z'));
    expect(removed).toEqual([{ at: { x: 60, y: 10 }, extentMm: expect.closeTo(0.3, 9) as number }]);
    expect(Math.abs(curveArea(curve))).toBeCloseTo(8000, 9);
  });

  test('when curves cross in a loop at the start of the outline, each is cut where they cross', () => {
    // Two arcs of radius 50 that pass each other by a little at the top: a lens with crossed tips.
    const crossed = 'M100 49.9A50 50 0 0 1 100.2 150L99.8 150A50 50 0 0 1 100.1 49.9Z';
    const drawn = curveOf(crossed);
    const { curve, removed } = cutTinyLoops(drawn);
    for (const { extentMm } of removed) expect(extentMm).toBeLessThan(0.5);
    expect(cutTinyLoops(curve).removed).toEqual([]);
    expect(farthest(curve, drawn)).toBeLessThan(0.5);
  });
});

describe('tiny loops at random', () => {
  test('when outlines have loops, also one in which they start, all are cut off and little else', () => {
    const random = createRandom(31_337);
    for (let n = 0; n < 60; n++) {
      const { curve: drawn, plain, loops } = loopedOutline(random);
      const turn = rotationDeg(random.between(0, 360));
      const looped = transformCurveToGrid(turn, n % 2 === 0 ? drawn : startedAt(drawn, 10.15));
      expect(findSelfCrossing(flattenCurve(looped, 0.01).slice(0, -1))).toBeDefined();
      const { curve, removed } = cutTinyLoops(looped);
      expect(removed).toHaveLength(loops);
      expect(findSelfCrossing(flattenCurve(curve, 0.01).slice(0, -1))).toBeUndefined();
      // What is left lies on the outline without loops, up to rounding and the width of what the loops cut off.
      expect(farthest(curve, transformCurveToGrid(turn, plain))).toBeLessThan(0.1);
    }
  });
});

/** A ring of bent edges about the origin with small loops put in at corners, and the same without them. */
function loopedOutline(random: ReturnType<typeof createRandom>) {
  const count = 5 + random.integer(6);
  const corner = (k: number) => {
    const turn = (2 * Math.PI * k) / count;
    return { x: 60 * Math.cos(turn), y: 60 * Math.sin(turn) };
  };
  const edge = (k: number): CurveSegment[] => {
    const [a, b] = [corner(k), corner(k + 1)];
    const bulge = k % 2 === 0 ? 0 : 0.1;
    const via = { x: (a.x + b.x) / 2 + bulge * (b.y - a.y), y: (a.y + b.y) / 2 - bulge * (b.x - a.x) };
    return bulge === 0 ? [{ kind: 'line', to: b }] : [{ kind: 'arc', via, to: b }];
  };
  const hasLoop = Array.from({ length: count }, (_, k) => k === 0 || random.integer(2) === 0);
  const start = corner(0);
  const along = (k: number, mm: number, inwards: number) => {
    const [a, b] = [corner(k), corner(k + 1)];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
    return { x: a.x + ux * mm - uy * inwards, y: a.y + uy * mm + ux * inwards };
  };
  // Straight edges run on for 10.3 mm, turn aside, back, and through themselves at 10 mm.
  const straightLoop = (k: number): CurveSegment[] => [
    { kind: 'line', to: along(k, 10.3, 0) },
    { kind: 'line', to: along(k, 10.3, 0.2) },
    { kind: 'line', to: along(k, 10, 0.2) },
    { kind: 'line', to: along(k, 10, -0.02) },
  ];
  const indices = Array.from({ length: count }, (_, k) => k);
  const isStraight = (k: number) => k % 2 === 0;
  const segments = indices.flatMap((k) =>
    isStraight(k) && hasLoop[k] ? [...straightLoop(k), ...edge(k)] : edge(k),
  );
  const closing = (all: CurveSegment[]): Curve => {
    const last = all.at(-1)!;
    return { start, segments: [...all.slice(0, -1), { ...last, to: start }], closed: true };
  };
  return {
    curve: closing(segments),
    plain: closing(indices.flatMap(edge)),
    loops: indices.filter((k) => isStraight(k) && hasLoop[k]).length,
  };
}

describe('chords on a circle', () => {
  test('when a circle of 64 chords is read, it becomes arcs through its corners', () => {
    const { curve, fitted } = fitArcs(curveOf(polygon(64, 20)));
    expect(kinds(curve)).toEqual(['arc', 'arc']);
    // The sagitta of a chord: r (1 - cos(pi / n)).
    expect(fitted[0]!.offMm).toBeCloseTo(20 * (1 - Math.cos(Math.PI / 64)), 2);
    // Corners lie on the 1 µm grid, so the disc is that of the circle but for its edge's rounding.
    expect(Math.abs(Math.abs(curveArea(curve)) - Math.PI * 400)).toBeLessThan(0.002 * curveLength(curve));
  });

  test('when a polygon has corners that one can see, it stays', () => {
    for (const [sides, radius] of [
      [8, 1],
      [8, 30],
      [12, 0.8],
      [16, 12],
      [40, 60],
    ] as const) {
      expect(fitArcs(curveOf(polygon(sides, radius))).fitted, `${sides} sides`).toEqual([]);
    }
  });

  test('when chords bend unevenly, on an ellipse or a zigzag, they stay', () => {
    const ellipse = Array.from(
      { length: 120 },
      (_, k) => `${200 + 60 * Math.cos((k * Math.PI) / 60)},${200 + 20 * Math.sin((k * Math.PI) / 60)}`,
    );
    const { fitted } = fitArcs(curveOf(`M${ellipse.join('L')}Z`));
    // Near its tips an ellipse is a circle for a few chords at the most; most of it stays.
    expect(fitted.length).toBeLessThanOrEqual(4);
    const zigzag = Array.from({ length: 30 }, (_, k) => `${10 + 2 * k},${10 + 0.03 * (k % 2)}`).join('L');
    expect(fitArcs(curveOf(`M${zigzag}L70 80L10 80Z`)).fitted).toEqual([]);
  });

  test('when corners are rounded in short chords, lines and arcs come out at any angle', () => {
    const random = createRandom(77);
    for (let n = 0; n < 40; n++) {
      const radius = random.between(4, 30);
      const rounded: Curve = roundedSquare(radius);
      const turned = transformCurveToGrid(rotationDeg(random.between(0, 360)), rounded);
      // Flattened as drawing programs do, to 0.01 mm.
      const chords = flattenCurve(turned, 0.01);
      const drawn = transformCurveToGrid(rotationDeg(0), {
        start: chords[0]!,
        segments: chords.slice(1).map((to) => ({ kind: 'line' as const, to })),
        closed: true,
      });
      const { curve, fitted } = fitArcs(drawn);
      expect(kinds(curve)).toEqual(['line', 'arc', 'line', 'arc', 'line', 'arc', 'line', 'arc']);
      for (const { offMm } of fitted) expect(offMm).toBeLessThan(0.03);
      expect(farthest(curve, turned)).toBeLessThan(0.01);
    }
  });
});

function roundedSquare(r: number): Curve {
  const s = 100;
  const q = r * (1 - Math.SQRT1_2);
  return {
    start: { x: r, y: 0 },
    segments: [
      { kind: 'line', to: { x: s - r, y: 0 } },
      { kind: 'arc', via: { x: s - q, y: q }, to: { x: s, y: r } },
      { kind: 'line', to: { x: s, y: s - r } },
      { kind: 'arc', via: { x: s - q, y: s - q }, to: { x: s - r, y: s } },
      { kind: 'line', to: { x: r, y: s } },
      { kind: 'arc', via: { x: q, y: s - q }, to: { x: 0, y: s - r } },
      { kind: 'line', to: { x: 0, y: r } },
      { kind: 'arc', via: { x: q, y: q }, to: { x: r, y: 0 } },
    ],
    closed: true,
  };
}

describe('cubics on a circle', () => {
  // Four cubics with handles of 0.5522847 r, as formats without arcs hold a circle: off by 0.0273 % of r at the most
  // (Goldapp 1991, from memory).
  const fourCubics = (r: number) => {
    const k = 0.5522847498 * r;
    const c = 200;
    return (
      `M${c + r} ${c}C${c + r} ${c + k} ${c + k} ${c + r} ${c} ${c + r}S${c - r} ${c + k} ${c - r} ${c}` +
      `S${c - k} ${c - r} ${c} ${c - r}S${c + r} ${c - k} ${c + r} ${c}Z`
    );
  };

  test('when a circle is written as four cubics, it is a circle again, within 0.0273 % of its radius', () => {
    for (const r of [0.75, 3, 20, 120]) {
      const { curve, fitted } = fitArcs(curveOf(fourCubics(r)));
      expect(kinds(curve)).toEqual(['arc', 'arc']);
      expect(fitted[0]!.offMm).toBeLessThan(0.000273 * r + 0.002);
      expect(Math.abs(Math.abs(curveArea(curve)) - Math.PI * r * r)).toBeLessThan(0.003 * curveLength(curve));
    }
  });

  test('when arcs are written as cubics within 0.5 µm, they are arcs again', () => {
    const circle = circleCurve({ x: 50, y: 50 }, 30);
    const cubics = transformCurveToGrid(rotationDeg(0), arcsToCubics(circle));
    expect(farthest(fitArcs(cubics).curve, circle)).toBeLessThan(0.003);
  });

  test('when cubics are no circle, they stay', () => {
    expect(fitArcs(curveOf('M10 10C60 -20 90 40 120 10V90H10Z')).fitted).toEqual([]);
    expect(
      fitArcs(curveOf('M100 50C120 50 150 80 150 100S120 150 100 150S50 120 50 100S80 50 100 50Z')).fitted,
    ).toEqual([]);
  });

  test('when a drawing has them, the note says how far anything was moved', () => {
    const result = read(`<path id="disc" d="${fourCubics(60)}"/>`);
    expect(result.repairs.map(({ kind }) => kind)).toEqual(['curve fitted']);
    const note = result.diagnostics.find(({ code }) => code === 'curves-fitted');
    expect(Number(note?.params['most'])).toBeLessThan(0.02);
  });
});

describe('whatever is repaired', () => {
  test('when random outlines of chords and cubics are read, nothing moves by more than the report says', () => {
    const random = createRandom(4_411);
    for (let n = 0; n < 80; n++) {
      const drawn = randomOutline(random);
      const { curve, fitted } = fitArcs(drawn);
      const most = Math.max(0, ...fitted.map(({ offMm }) => offMm));
      expect(most).toBeLessThan(0.1);
      expect(farthest(curve, drawn)).toBeLessThan(most + 0.004);
    }
  });
});

function randomOutline(random: ReturnType<typeof createRandom>): Curve {
  const count = 20 + random.integer(120);
  const wave = random.between(0, 0.3);
  const waves = 2 + random.integer(4);
  const size = random.between(5, 120);
  const points = Array.from({ length: count }, (_, k) => {
    const turn = (2 * Math.PI * k) / count;
    const r = size * (1 + wave * Math.sin(waves * turn) ** 3);
    const round = (x: number) => Math.round(1000 * x) / 1000;
    return { x: round(r * Math.cos(turn)), y: round(r * Math.sin(turn)) };
  });
  const [start, ...rest] = points;
  return {
    start: start!,
    segments: [...rest, start!].map((to) => ({ kind: 'line' as const, to })),
    closed: true,
  };
}
