import { circleCurve, createRandom, curveBox, curveFromPolyline, curveLength } from '@hidebound/geometry';
import type { Curve, CurveSegment } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { clipToBox } from './clip-to-box.js';

const BOX = { minX: 0, minY: 0, maxX: 100, maxY: 60 };

describe('curves within a box', () => {
  it('when a square lies over a corner of the box, two sides of it stay as one line that ends on the edges', () => {
    const square = curveFromPolyline(
      [
        { x: -10, y: -20 },
        { x: 30, y: -20 },
        { x: 30, y: 20 },
        { x: -10, y: 20 },
      ],
      true,
    );
    const corner = curveFromPolyline(
      [
        { x: 30, y: 0 },
        { x: 30, y: 20 },
        { x: 0, y: 20 },
      ],
      false,
    );
    expect(clipToBox(square, BOX)).toEqual([corner]);
  });

  it('when a closed curve starts within and leaves twice, the parts at its start are one line', () => {
    const square = curveFromPolyline(
      [
        { x: 50, y: 30 },
        { x: 120, y: 30 },
        { x: 120, y: 40 },
        { x: 50, y: 40 },
      ],
      true,
    );
    const inside = clipToBox(square, BOX);
    expect(inside).toHaveLength(1);
    expect(inside[0]!.start).toEqual({ x: 100, y: 40 });
    expect(inside[0]!.segments.at(-1)!.to).toEqual({ x: 100, y: 30 });
  });

  it('when a circle lies with its centre on an edge, half of it stays, as arcs', () => {
    const [half, ...more] = clipToBox(circleCurve({ x: 100, y: 30 }, 10), BOX);
    expect(more).toEqual([]);
    expect(half!.closed).toBe(false);
    expect(half!.segments.every(({ kind }) => kind === 'arc')).toBe(true);
    expect(half!.start.x).toBe(100);
    // half the circumference, 2 pi r / 2
    expect(curveLength(half!)).toBeCloseTo(Math.PI * 10, 6);
  });

  it('when a circle only touches an edge from within, it stays as it is', () => {
    const circle = circleCurve({ x: 90, y: 30 }, 10);
    expect(clipToBox(circle, BOX)).toEqual([circle]);
  });

  // A length is a sum over parts: what lies within two boxes side by side lies within both together.
  it('when random curves are cut by boxes side by side, the lengths of the parts add up', () => {
    const random = createRandom(11);
    const point = () => ({ x: random.between(-20, 120), y: random.between(-20, 80) });
    for (let round = 0; round < 200; round++) {
      const segments: CurveSegment[] = Array.from({ length: 4 }, (_, i) =>
        i % 3 === 0
          ? { kind: 'cubic', handle1: point(), handle2: point(), to: point() }
          : i % 3 === 1
            ? { kind: 'arc', via: point(), to: point() }
            : { kind: 'line', to: point() },
      );
      const curve: Curve = { start: point(), segments, closed: false };
      const at = random.between(10, 90);
      const sum = (parts: readonly Curve[]) => parts.reduce((total, part) => total + curveLength(part), 0);
      const left = clipToBox(curve, { ...BOX, maxX: at });
      const right = clipToBox(curve, { ...BOX, minX: at });
      expect(sum(left) + sum(right)).toBeCloseTo(sum(clipToBox(curve, BOX)), 4);
      for (const part of left) expect(curveBox(part).maxX).toBeLessThanOrEqual(at + 1e-6);
    }
  });
});
