import { circleCurve, createRandom, curveFromPolyline, roundCurve, arcsToCubics } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { newFindings } from '../findings.js';
import { goesOnOverStrip, tipReach } from './lost-strip.js';
import { putPagesTogether } from './put-together.js';
import { drawnLine, farthestMiss, tilesOf } from './test-tiles.js';

const PAGE = { width: 210, height: 297 };

/** Two pages side by side that meet, of each of which the program lost 0.1 mm on the right and 0.3 mm below. */
function readWithStrip(curves: readonly Curve[]) {
  const lost = { width: PAGE.width - 0.1, height: PAGE.height - 0.3, overlap: -0.1, margin: 0 };
  const lines = curves.map((curve) => drawnLine(roundCurve(curve)));
  const tiles = tilesOf(lines, [], { columns: 2, rows: 1, ...lost }).map((page) => ({
    ...page,
    widthMm: PAGE.width,
    heightMm: PAGE.height,
  }));
  const findings = newFindings('strip.pdf');
  const { drawing } = putPagesTogether(tiles, undefined, findings);
  const gaps = findings.repairs.filter(({ kind }) => kind === 'gap joined').map(({ sizeMm }) => sizeMm ?? 0);
  return { miss: farthestMiss(lines, drawing.lines, { x: 0, y: 0 }), gaps, findings };
}

const polygon = (...points: readonly (readonly [number, number])[]): Curve =>
  curveFromPolyline(
    points.map(([x, y]): Point => ({ x, y })),
    true,
  );

describe('a strip between two pages that is on neither', () => {
  // The drawing is the judge, and so is the length of a line across a strip: its width over the angle's sine.
  it('when a line crosses it at 3°, it is joined over a gap of nearly 2 mm', () => {
    const turn = (3 * Math.PI) / 180;
    const x = (y: number) => 210 + (y - 150) * Math.tan(turn);
    const piece = polygon([60, 40], [x(40), 40], [x(260), 260], [60, 260]);
    const { miss, gaps } = readWithStrip([piece, polygon([100, 100], [300, 110], [300, 150], [100, 140])]);
    expect(miss).toBeLessThan(0.01);
    expect(Math.abs(Math.max(...gaps) - 0.1 / Math.sin(turn))).toBeLessThan(0.05);
  });

  it('when the tip of a round end lies in it, the tip is drawn anew', () => {
    const across = polygon([100, 20], [300, 30], [300, 60], [100, 50]);
    for (const radius of [5, 20, 60]) {
      const round = arcsToCubics(circleCurve({ x: 210 - radius, y: 160 }, radius));
      const { miss, gaps, findings } = readWithStrip([across, round]);
      expect(miss, `radius ${radius}`).toBeLessThan(0.01);
      // A chord at 0.1 mm from the top of a circle.
      const chord = 2 * Math.sqrt(radius * radius - (radius - 0.1) ** 2);
      expect(gaps.some((gap) => Math.abs(gap - chord) < 0.05)).toBe(true);
      expect(findings.diagnostics.filter(({ code }) => code === 'page-ends-loose')).toEqual([]);
    }
  });

  it('when a line bends within it, its ends meet whatever the circle', () => {
    // Two points of one circle with its tangents, as mathematics has them.
    const random = createRandom(31);
    for (let round = 0; round < 200; round++) {
      const radius = random.between(20, 400);
      const from = random.between(-0.5, 0.5);
      const turn = random.between(0.001, 0.1);
      const at = (angle: number) => ({ x: radius * Math.cos(angle), y: radius * Math.sin(angle) });
      const way = (angle: number) => ({ x: -Math.sin(angle), y: Math.cos(angle) });
      const [p, q] = [at(from), at(from + turn)];
      const back = way(from + turn);
      const ends = [
        { at: p, out: way(from) },
        { at: q, out: { x: -back.x, y: -back.y } },
      ] as const;
      const isNear = Math.abs(p.x - q.x) <= 1 || Math.abs(p.y - q.y) <= 1;
      const isShort = Math.hypot(p.x - q.x, p.y - q.y) <= 8;
      expect(goesOnOverStrip(...ends)).toBe(isNear && isShort);
    }
  });

  it('when two lines run beside each other by 0.3 mm, neither goes on in the other', () => {
    const out = { x: Math.sin(0.05), y: Math.cos(0.05) };
    const back = { x: -out.x, y: -out.y };
    const a = { at: { x: 0, y: 0 }, out };
    const on = { at: { x: 2 * out.x, y: 2 * out.y }, out: back };
    const beside = { at: { x: on.at.x + 0.3 * out.y, y: on.at.y - 0.3 * out.x }, out: back };
    expect(goesOnOverStrip(a, on)).toBe(true);
    expect(goesOnOverStrip(a, beside)).toBe(false);
  });

  it('when two ends on one edge would meet far beyond it, or lean the same way, they make no tip', () => {
    const end = (y: number, x: number, dy: number) => {
      const length = Math.hypot(x, dy);
      return { at: { x: 210, y }, out: { x: x / length, y: dy / length } };
    };
    // A circle of 20 mm that reaches 0.1 mm over the edge: half its chord is 2 mm, its slope there 2 / 19.9.
    expect(tipReach(end(-2, 2, 19.9), end(2, 2, -19.9))).toBeCloseTo(0.1, 2);
    expect(tipReach(end(-10, 10, 17), end(10, 10, -17))).toBeUndefined();
    expect(tipReach(end(-2, 2, 19.9), end(2, 2, 19.9))).toBeUndefined();
    expect(tipReach(end(-2, 2, 19.9), end(2, -2, -19.9))).toBeUndefined();
  });
});
