import { curveArea, curveBox, enclosingCircle, regionArea, regionsArea, ringBox } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import { resolveOrder } from '../order/resolve-order.js';
import type { OrderPiece, ResolvedPiece } from '../model/order.js';
import {
  plainArticle,
  plainOrder,
  plainOrderPiece,
  plainPiece,
  polygonCurve,
  rectangleCurve,
} from '../testing/plain.js';
import { drawDisc } from './draw.js';
import { layablePiece } from './layable-piece.js';

function resolved(more: Partial<OrderPiece> = {}): ResolvedPiece {
  const order = resolveOrder(plainOrder([plainArticle('bag', [plainOrderPiece('panel', more)])]));
  return order.articles[0]!.pieces[0]!;
}

/** A right triangle: its smallest circle is centred at the middle of the long side. */
const TRIANGLE = polygonCurve([
  [100, 100],
  [180, 100],
  [100, 160],
]);

const layable = (source: ReturnType<typeof plainPiece>, more: Partial<OrderPiece> = {}) =>
  layablePiece({ article: 'bag', orderPiece: resolved(more), source });

describe('a piece made ready to be laid', () => {
  test('when it is drawn anywhere, its own frame is centred on its smallest circle', () => {
    const { region } = layable(plainPiece('p', TRIANGLE));
    const { center, radius } = enclosingCircle(region.outer);
    expect([center.x, center.y, radius]).toEqual([0, 0, 50]);
    expect(region.outer).toContainEqual({ x: -40, y: -30 });
  });

  test('when nothing of it is round, its region is its outline exactly', () => {
    const { region, face } = layable(plainPiece('p', TRIANGLE));
    expect(regionArea(region)).toBe(2400);
    expect(face).toEqual([region]);
  });

  test('when it is round, its region contains it within 0.05 mm', () => {
    const { region } = layable(drawDisc('d', { diameterMm: 80 }));
    expect(regionArea(region)).toBeGreaterThan(Math.PI * 1600);
    expect(Math.max(...region.outer.map(({ x, y }) => Math.hypot(x, y)))).toBeLessThanOrEqual(40.05);
  });

  test('when it has a cut-out, the region has an opening that lies inside it', () => {
    const cutOut = drawDisc('hole', { diameterMm: 20 }).cut;
    const { region } = layable(plainPiece('p', rectangleCurve(-50, -50, 50, 50), { cutOuts: [cutOut] }));
    expect(region.openings).toHaveLength(1);
    expect(regionArea(region)).toBeGreaterThan(10_000 - Math.PI * 100);
    expect(regionArea(region)).toBeLessThan(10_000 - Math.PI * 100 + 0.05 * Math.PI * 20);
  });

  test('when it gets an allowance, it grows all round and the old line bounds the face', () => {
    const { region, face, shape } = layable(plainPiece('p', rectangleCurve(0, 0, 100, 60)), {
      allowanceMm: 5,
    });
    expect(ringBox(region.outer)).toEqual({ minX: -55, minY: -35, maxX: 55, maxY: 35 });
    expect(regionsArea(face)).toBeCloseTo(6000, 9);
    expect(curveArea(shape.cut)).toBeCloseTo(7700, 9);
  });

  test('when it gets an allowance at a sharp tip, the mitre is cut off at twice the allowance', () => {
    const needle = polygonCurve([
      [0, 0],
      [200, -5],
      [200, 5],
    ]);
    const { region } = layable(plainPiece('p', needle), { allowanceMm: 4 });
    const box = ringBox(region.outer);
    // 4 mm at the blunt end; at the tip no more than 2 x 4 mm beyond it.
    expect(box.maxX - box.minX).toBeLessThanOrEqual(200 + 4 + 8 + 0.01);
  });

  test('when a face is drawn beyond the outline, it is clipped to it', () => {
    const { face } = layable(
      plainPiece('p', rectangleCurve(0, 0, 100, 60), { face: [rectangleCurve(-10, -10, 50, 70)] }),
    );
    expect(regionsArea(face)).toBeCloseTo(3000, 6);
  });

  test('when the order takes all of it for the face, what is drawn does not count', () => {
    const source = plainPiece('p', rectangleCurve(0, 0, 100, 60), { face: [rectangleCurve(0, 0, 50, 60)] });
    expect(regionsArea(layable(source, { face: 'all' }).face)).toBeCloseTo(6000, 6);
  });

  test('when the order names the line that bounds the face, that line does', () => {
    const stitchLines = [{ name: 'seam', curve: rectangleCurve(10, 10, 90, 50) }];
    const source = plainPiece('p', rectangleCurve(0, 0, 100, 60), { stitchLines });
    expect(regionsArea(layable(source, { face: 'seam' }).face)).toBeCloseTo(3200, 6);
    expect(() => layable(source, { face: 'seem' })).toThrow(/did you mean "seam"\?/);
  });

  test('when its seen side is the flesh, it is stored as the grain side shows it', () => {
    const grain = layable(plainPiece('p', TRIANGLE), { arrowDeg: 30 });
    const flesh = layable(plainPiece('p', TRIANGLE), { arrowDeg: 30, side: 'flesh' });
    const mirrored = grain.region.outer.map(({ x, y }) => `${-x + 0} ${y}`).sort();
    expect(flesh.region.outer.map(({ x, y }) => `${x} ${y}`).sort()).toEqual(mirrored);
    expect(curveBox(flesh.shape.cut)).toEqual(curveBox(grain.shape.cut));
    expect([grain.arrowDeg, flesh.arrowDeg]).toEqual([30, 150]);
  });

  test('when it is renamed, its hash stays; when it is a thousandth wider, it does not', () => {
    const one = layable(plainPiece('p', rectangleCurve(0, 0, 100, 60)));
    const other = layable(plainPiece('q', rectangleCurve(0, 0, 100, 60)));
    const wider = layable(plainPiece('p', rectangleCurve(0, 0, 100.001, 60)));
    expect(other.hash).toBe(one.hash);
    expect(wider.hash).not.toBe(one.hash);
  });
});

describe('the arrow of a piece', () => {
  const direction = { from: { x: 0, y: 0 }, to: { x: 0, y: 10 } };

  test('when it is drawn, it is taken', () => {
    const { arrowDeg, arrowIsGuessed } = layable(
      plainPiece('p', rectangleCurve(0, 0, 100, 60), { direction }),
    );
    expect([arrowDeg, arrowIsGuessed]).toEqual([90, false]);
  });

  test('when the order says otherwise, the order wins', () => {
    const source = plainPiece('p', rectangleCurve(0, 0, 100, 60), { direction });
    expect(layable(source, { arrowDeg: -20 }).arrowDeg).toBe(340);
  });

  const guesses: readonly (readonly [string, ReturnType<typeof plainPiece>, number])[] = [
    ['level', plainPiece('p', rectangleCurve(0, 0, 100, 60)), 0],
    ['upright', plainPiece('p', rectangleCurve(0, 0, 60, 100)), 90],
    [
      'falling to the right',
      plainPiece(
        'p',
        polygonCurve([
          [0, 0],
          [90, 90],
          [80, 100],
          [-10, 10],
        ]),
      ),
      45,
    ],
    [
      'rising to the right',
      plainPiece(
        'p',
        polygonCurve([
          [0, 90],
          [90, 0],
          [100, 10],
          [10, 100],
        ]),
      ),
      315,
    ],
  ];
  for (const [what, source, deg] of guesses) {
    test(`when it is not drawn and the long axis is ${what}, it points to greater x, and is told as a guess`, () => {
      const { arrowDeg, arrowIsGuessed } = layable(source);
      expect(arrowDeg).toBeCloseTo(deg, 4);
      expect(arrowIsGuessed).toBe(true);
    });
  }
});
