import {
  circleCurve,
  createRandom,
  curveArea,
  curveFromPolyline,
  curveLength,
  findSelfCrossing,
  flattenCurve,
} from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { beforeAll, describe, expect, it } from 'vitest';
import { movedCorner, startedAtCorner, withCorner, withoutCorner } from './corners.js';
import { cornersOf, nearestOnCurve, toldApart } from './edges.js';
import { endPush, isUntouched, pushEdge, startPush } from './push.js';
import { redrawnStretch } from './redraw-stretch.js';

const SQUARE = curveFromPolyline(
  [
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 100, y: 100 },
    { x: 0, y: 100 },
  ],
  true,
);

const ROUNDED: Curve = {
  start: { x: 0, y: 0 },
  segments: [
    { kind: 'cubic', handle1: { x: 30, y: -20 }, handle2: { x: 70, y: -20 }, to: { x: 100, y: 0 } },
    { kind: 'cubic', handle1: { x: 120, y: 30 }, handle2: { x: 120, y: 70 }, to: { x: 100, y: 100 } },
    { kind: 'arc', via: { x: 50, y: 120 }, to: { x: 0, y: 100 } },
    { kind: 'line', to: { x: 0, y: 0 } },
  ],
  closed: true,
};

/** Judge: IsValidOp of jsts 2.12.1 (the JTS Topology Suite in JavaScript). */
let isValid: (curve: Curve) => boolean;

beforeAll(async () => {
  const at = 'jsts/org/locationtech/jts';
  const load = async (
    path: string,
  ): Promise<new (...inputs: unknown[]) => Record<string, (...inputs: unknown[]) => unknown>> =>
    ((await import(/* @vite-ignore */ `${at}/${path}.js`)) as { default: never }).default;
  const [Coordinate, GeometryFactory, IsValidOp] = await Promise.all([
    load('geom/Coordinate'),
    load('geom/GeometryFactory'),
    load('operation/valid/IsValidOp'),
  ]);
  const factory = new GeometryFactory();
  isValid = (curve) => {
    const line = flattenCurve(curve).map(({ x, y }) => new Coordinate(x, y));
    const polygon = factory['createPolygon']!(factory['createLinearRing']!(line), []);
    return new IsValidOp(polygon)['isValid']!() === true;
  };
});

describe('corners of an edge', () => {
  it('when a corner moves, the others stay, the edge stays closed and its parts stay what they are', () => {
    for (const curve of [SQUARE, ROUNDED])
      for (let corner = 0; corner < 4; corner++) {
        const moved = movedCorner(curve, corner, { x: 37, y: 41 });
        const before = cornersOf(curve);
        expect(cornersOf(moved)).toEqual(before.map((at, i) => (i === corner ? { x: 37, y: 41 } : at)));
        expect(moved.segments.map(({ kind }) => kind)).toEqual(curve.segments.map(({ kind }) => kind));
        expect(moved.segments.at(-1)!.to).toEqual(moved.start);
      }
  });

  it('when a corner of a square moves, the area changes by two triangles', () => {
    // Shoelace formula: 0,0 100,0 130,120 0,100 holds 11 300 mm².
    expect(Math.abs(curveArea(movedCorner(SQUARE, 2, { x: 130, y: 120 })))).toBeCloseTo(12_500, 6);
  });

  it('when a corner is set on the edge, the edge runs as before', () => {
    for (const [segment, along] of [
      [0, 30],
      [1, 20],
      [2, 55],
      [3, 64],
    ] as const) {
      const { curve, corner } = withCorner(ROUNDED, segment, along);
      expect(cornersOf(curve)).toHaveLength(5);
      expect(curveLength(curve)).toBeCloseTo(curveLength(ROUNDED), 1);
      expect(curveArea(curve)).toBeCloseTo(curveArea(ROUNDED), 0);
      expect(nearestOnCurve(ROUNDED, cornersOf(curve)[corner]!).offMm).toBeLessThan(0.06);
    }
  });

  it('when a corner is taken away, its neighbours are joined; a triangle keeps its three', () => {
    const without = withoutCorner(SQUARE, 0)!;
    expect(cornersOf(without)).toHaveLength(3);
    expect(Math.abs(curveArea(without))).toBeCloseTo(5000, 6);
    expect(withoutCorner(without, 1)).toBeUndefined();
    expect(
      withoutCorner(ROUNDED, 1)!
        .segments.map(({ kind }) => kind)
        .sort(),
    ).toEqual(['arc', 'cubic', 'line']);
  });

  it('when a curve is started elsewhere, it is the same edge', () => {
    for (let corner = 0; corner < 4; corner++) {
      const turned = startedAtCorner(ROUNDED, corner);
      expect(turned.start).toEqual(cornersOf(ROUNDED)[corner]);
      expect(curveArea(turned)).toBeCloseTo(curveArea(ROUNDED), 9);
    }
  });
});

describe('corners on the screen', () => {
  it('when corners lie close together, those that can be told apart are shown; from near, all', () => {
    const line = Array.from({ length: 50 }, (_, i) => ({ x: i, y: 0 }));
    expect(toldApart(line, 10).map(({ x }) => x)).toEqual([0, 10, 20, 30, 40]);
    expect(toldApart(line, 1)).toEqual(line);
    expect(toldApart([], 1)).toEqual([]);
  });
});

describe('the round that pushes an edge', () => {
  it('when it starts at the edge, the edge under its middle goes with it and what is beyond its rim stays', () => {
    const pushed = endPush(pushEdge(startPush(SQUARE), { x: 50, y: 0 }, { x: 50, y: -2 }, 20), 0.01);
    expect(nearestOnCurve(pushed, { x: 50, y: -2 }).offMm).toBeLessThan(0.2);
    for (const corner of cornersOf(SQUARE)) expect(cornersOf(pushed)).toContainEqual(corner);
    expect(nearestOnCurve(pushed, { x: 25, y: 0 }).offMm).toBeLessThan(1e-9);
  });

  it('when it does not reach the edge, nothing changes', () => {
    const push = pushEdge(startPush(ROUNDED), { x: 50, y: 50 }, { x: 55, y: 50 }, 20);
    expect(isUntouched(push, ROUNDED)).toBe(true);
    expect(endPush(push, 0.1)).toEqual(ROUNDED);
  });

  // Mathematical fact: p + δ·w(p) folds nothing while |δ|·|∇w| < 1. The judge of crossings is jsts.
  it('when it is pushed to and fro by chance, the edge never crosses itself', () => {
    const random = createRandom(11);
    for (const start of [SQUARE, ROUNDED, circleCurve({ x: 50, y: 50 }, 60)]) {
      let edge = startPush(start);
      for (let i = 0; i < 12; i++) {
        const from = { x: random.between(-20, 120), y: random.between(-20, 120) };
        const to = { x: from.x + random.between(-40, 40), y: from.y + random.between(-40, 40) };
        edge = pushEdge(edge, from, to, random.between(20, 45));
      }
      expect(isUntouched(edge, start)).toBe(false);
      expect(isValid(endPush(edge, 0))).toBe(true);
    }
  });
});

describe('a stretch of edge drawn anew', () => {
  it('when a stroke bulges from edge to edge, the nearer stretch gives way to it', () => {
    const stroke = [
      { x: 20, y: 1 },
      { x: 50, y: -30 },
      { x: 80, y: -1 },
    ];
    const redrawn = redrawnStretch(SQUARE, stroke, 5)!;
    // A triangle of base 60 and height 30 more: 900 mm².
    expect(Math.abs(curveArea(redrawn))).toBeCloseTo(10_900, 6);
    expect(isValid(redrawn)).toBe(true);
    const back = redrawnStretch(SQUARE, [...stroke].reverse(), 5)!;
    expect(Math.abs(curveArea(back))).toBeCloseTo(10_900, 6);
  });

  it('when the stretch holds the start of the edge, it is drawn anew there, too', () => {
    const redrawn = redrawnStretch(
      SQUARE,
      [
        { x: 30, y: 0 },
        { x: 0, y: 30 },
      ],
      5,
    )!;
    // A corner of 30 by 30 is cut off: 450 mm² less.
    expect(Math.abs(curveArea(redrawn))).toBeCloseTo(9550, 6);
  });

  it('when the kept part is curved, it stays a curve', () => {
    const redrawn = redrawnStretch(
      ROUNDED,
      [
        { x: 0, y: 20 },
        { x: -20, y: 50 },
        { x: 0, y: 80 },
      ],
      5,
    )!;
    expect(redrawn.segments.filter(({ kind }) => kind === 'cubic')).toHaveLength(2);
    expect(redrawn.segments.filter(({ kind }) => kind === 'arc')).toHaveLength(1);
  });

  it('when an end does not come to the edge, or both come to one place, there is no stretch', () => {
    expect(
      redrawnStretch(
        SQUARE,
        [
          { x: 20, y: 0 },
          { x: 50, y: 50 },
        ],
        5,
      ),
    ).toBeUndefined();
    expect(
      redrawnStretch(
        SQUARE,
        [
          { x: 20, y: 0 },
          { x: 30, y: -20 },
          { x: 20, y: 0 },
        ],
        5,
      ),
    ).toBeUndefined();
  });

  // Judge: jsts. What crosses itself is refused on reading the hide; here it is only told apart the same way.
  it('when a stroke winds across the rest of the edge, geometry and jsts find the crossing alike', () => {
    const stroke = [
      { x: 20, y: 0 },
      { x: 50, y: 120 },
      { x: 80, y: 0 },
    ];
    const redrawn = redrawnStretch(SQUARE, stroke, 5)!;
    expect(isValid(redrawn)).toBe(false);
    expect(findSelfCrossing(flattenCurve(redrawn).slice(0, -1))).toBeDefined();
  });
});
