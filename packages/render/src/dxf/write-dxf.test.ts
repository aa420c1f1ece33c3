import { circleCurve, curveFromPolyline } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { CutDrawing } from '../cutfile/cut-drawing.js';
import { writeCutSvg } from '../cutfile/write-cut-svg.js';
import { entityOf } from './entities.js';
import { asciiText, decimal } from './pairs.js';
import { writeDxf } from './write-dxf.js';

const drawingOf = (...curves: Curve[]): CutDrawing => ({
  title: 'Ремень & <strap>',
  widthMm: 200,
  heightMm: 100,
  paths: [{ kind: 'cut', name: '"strap" of bag', curves }],
});

const quarter: Curve = {
  start: { x: 10, y: 0 },
  segments: [{ kind: 'arc', via: { x: 10 * Math.SQRT1_2, y: 10 * Math.SQRT1_2 }, to: { x: 0, y: 10 } }],
  closed: false,
};
const wave: Curve = {
  start: { x: 0, y: 0 },
  segments: [{ kind: 'cubic', handle1: { x: 10, y: 20 }, handle2: { x: 20, y: -20 }, to: { x: 30, y: 0 } }],
  closed: false,
};

describe('what a curve is in DXF', () => {
  test('when a curve is one straight line, it is a LINE with y up', () => {
    const line = curveFromPolyline(
      [
        { x: 1, y: 2 },
        { x: 3, y: 4 },
      ],
      false,
    );
    expect(entityOf(line, 100)).toEqual({ kind: 'line', from: { x: 1, y: 98 }, to: { x: 3, y: 96 } });
  });

  test('when a curve is a whole circle, it is a CIRCLE', () => {
    expect(entityOf(circleCurve({ x: 20, y: 30 }, 2), 100)).toEqual({
      kind: 'circle',
      center: { x: 20, y: 70 },
      radius: 2,
    });
  });

  test('when a curve is one arc, it is an ARC that runs anticlockwise', () => {
    const arc = entityOf(quarter, 100);
    expect(arc).toMatchObject({ kind: 'arc' });
    if (arc.kind !== 'arc') return;
    // On the page from (10, 100) down to (0, 90): as seen from the centre from -90 to 0 degrees.
    expect(arc.startDeg).toBeCloseTo(270, 9);
    expect(arc.endDeg).toBeCloseTo(0, 9);
  });

  // The DXF reference defines the bulge as the tangent of a quarter of the angle, negative clockwise.
  test('when a closed line has arcs, it is a polyline whose half circles bulge by one', () => {
    const slot: Curve = {
      start: { x: 0, y: 0 },
      segments: [
        { kind: 'line', to: { x: 10, y: 0 } },
        { kind: 'arc', via: { x: 12, y: 2 }, to: { x: 10, y: 4 } },
        { kind: 'line', to: { x: 0, y: 4 } },
        { kind: 'arc', via: { x: -2, y: 2 }, to: { x: 0, y: 0 } },
      ],
      closed: true,
    };
    const entity = entityOf(slot, 0);
    if (entity.kind !== 'polyline') throw new Error(entity.kind);
    expect(entity.closed).toBe(true);
    expect(entity.vertices.map(({ bulge }) => Math.round(bulge * 1e9) / 1e9)).toEqual([0, -1, 0, -1]);
  });

  test('when a curve has cubics, they become arcs', () => {
    const entity = entityOf(wave, 0);
    if (entity.kind !== 'polyline') throw new Error(entity.kind);
    expect(entity.vertices.slice(0, -1).every(({ bulge }) => bulge !== 0)).toBe(true);
  });
});

describe('a DXF file', () => {
  test.each(['R12', 'R2000'] as const)(
    'when it is %s, it is plain ASCII pairs without exponents',
    (version) => {
      const text = writeDxf(drawingOf(wave, quarter, circleCurve({ x: 50, y: 50 }, 1e-3)), version);
      expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
      const lines = text.split('\r\n');
      expect(lines.pop()).toBe('');
      expect(lines.length % 2).toBe(0);
      lines.forEach((line, i) => {
        if (i % 2 === 0) expect(line).toMatch(/^ *\d{1,3}$/);
        else expect(line).not.toMatch(/\d[eE][-+]?\d|NaN|Infinity|^-0\.?0*$/);
      });
      expect(lines.slice(-1)).toEqual(['EOF']);
    },
  );

  test('when a number is written, it has a point, no trailing zeros and no negative zero', () => {
    expect([0, -0, 1, -2.5, 1e-9, -1e-9, 1 / 3, 123456.7891234].map((n) => decimal(n))).toEqual([
      ...['0.0', '0.0', '1.0', '-2.5', '0.0', '0.0', '0.333333', '123456.789123'],
    ]);
  });

  test('when a title has other letters, they are escaped', () => {
    expect(asciiText('Ω & a\nb')).toBe('\\U+03A9 & a b');
  });
});

describe('a cut file as SVG', () => {
  test('when it is written, size, layer, hairline and arcs stand in it', () => {
    expect(writeCutSvg(drawingOf(quarter, wave))).toMatchInlineSnapshot(`
      "<?xml version="1.0" encoding="UTF-8"?>
      <svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="200mm" height="100mm" viewBox="0 0 200 100">
      <title>Ремень &amp; &lt;strap&gt;</title>
      <g id="cut" fill="none" stroke="#000000" stroke-width="0.025">
      <path data-name="&quot;strap&quot; of bag" d="M10 0A10 10 0 0 1 0 10M0 0C10 20 20 -20 30 0"/>
      </g>
      </svg>
      "
    `);
  });

  test('when an arc is a half circle, it is written in parts that rounding can not open', () => {
    const svg = writeCutSvg(drawingOf(circleCurve({ x: 50, y: 50 }, 2.00049)));
    expect(svg.match(/A/g)).toHaveLength(4);
  });
});
