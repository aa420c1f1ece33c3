import { curveFromPolyline } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { newFindings } from '../findings.js';
import { putPagesTogether } from './put-together.js';
import { drawnLine, farthestMiss, tilesOf } from './test-tiles.js';

const TILING = { columns: 2, rows: 2, width: 200, height: 200, overlap: 0, margin: 5 };

const polygon = (isClosed: boolean, ...points: readonly (readonly [number, number])[]): Curve =>
  curveFromPolyline(
    points.map(([x, y]) => ({ x, y })),
    isClosed,
  );

/** A piece that links all four pages. */
const LINK = polygon(true, [60, 170], [330, 150], [340, 330], [70, 340]);

describe('a line that lies on the seam of two pages', () => {
  // The drawing is the judge: each line comes back once.
  const cases: Readonly<Record<string, Curve>> = {
    'the left edge of a slot of the right page': polygon(true, [200, 40], [250, 40], [250, 48], [200, 48]),
    'the right edge of a piece of the left page': polygon(true, [150, 40], [200, 40], [200, 90], [150, 90]),
    'the upper edge of a piece of the lower page': polygon(
      true,
      [90, 200],
      [150, 200],
      [150, 260],
      [90, 260],
    ),
    'a step of an outline that goes from page to page': polygon(
      true,
      [120, 20],
      [200, 30],
      [200, 60],
      [260, 70],
      [260, 110],
      [120, 120],
    ),
    'a slit': polygon(false, [200, 40], [200, 90]),
  };
  for (const [what, curve] of Object.entries(cases)) {
    it(`when it is ${what}, it is read once`, () => {
      const drawn = [drawnLine(LINK), drawnLine(curve)];
      const findings = newFindings('p.pdf');
      const { drawing } = putPagesTogether(tilesOf(drawn, [], TILING), undefined, findings);
      expect(farthestMiss(drawn, drawing.lines, { x: 5, y: 5 })).toBeLessThan(0.01);
      expect(findings.diagnostics.filter(({ code }) => code === 'page-ends-loose')).toEqual([]);
    });
  }
});
