import { circleCurve, curveFromPolyline } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import { group, path, rectangle } from '../drawing/build.js';
import type { Drawing, DrawingElement } from '../drawing/model.js';
import { loadFontBook } from '../node.js';
import { textLine } from '../text/measure-text.js';
import { writeSvg } from './write-svg.js';

const fonts = loadFontBook();

function drawing(elements: readonly DrawingElement[]): Drawing {
  return { widthMm: 215.9, heightMm: 279.4, title: 'A <b> & "c"', layers: [{ name: 'cut lines', elements }] };
}

test('when a drawing is written, it is at true scale: width and height in mm, one unit a mm', () => {
  expect(writeSvg(drawing([]))).toContain('width="215.9mm" height="279.4mm" viewBox="0 0 215.9 279.4"');
});

test('when the title holds markup, it is escaped', () => {
  expect(writeSvg(drawing([]))).toContain('<title>A &lt;b&gt; &amp; &quot;c&quot;</title>');
});

test('when a text holds a control character, it is dropped: XML has no way to write it', () => {
  const text = textLine(fonts, 'a\u0001b', { at: { x: 0, y: 0 }, sizeMm: 3, colour: '#000000' });
  expect(writeSvg(drawing([text]))).toContain('>ab</text>');
});

test('when two layers have the same name, their ids differ', () => {
  const svg = writeSvg({
    ...drawing([]),
    layers: [
      { name: 'labels', elements: [] },
      { name: 'labels', elements: [] },
    ],
  });
  expect(svg).toContain('id="layer-labels"');
  expect(svg).toContain('id="layer-labels-2"');
});

test('when a path is styled, stroke, dashes and even-odd fill are written in mm', () => {
  const style = { fill: '#ffeecc', stroke: { colour: '#112233', widthMm: 0.35, dashMm: [2, 1] } };
  expect(writeSvg(drawing([rectangle({ minX: 0, minY: 0, maxX: 10, maxY: 5 }, style)]))).toContain(
    '<path d="M0 0L10 0L10 5L0 5L0 0Z" fill="#ffeecc" fill-rule="evenodd" stroke="#112233" stroke-width="0.35"' +
      ' stroke-dasharray="2 1" stroke-linejoin="round"/>',
  );
});

test('when a curve has arcs, they are written as cubics', () => {
  const svg = writeSvg(drawing([path([circleCurve({ x: 5, y: 5 }, 5)], { fill: '#000000' })]));
  expect(svg).toMatch(/d="M10 5C/);
  expect(svg).not.toMatch(/d="[^"]*A/);
});

test('when a text is turned and anchored, it keeps its measured length', () => {
  const text = textLine(fonts, 'strap', {
    at: { x: 10, y: 20 },
    sizeMm: 4,
    colour: '#000000',
    anchor: 'middle',
    angleDeg: -90,
    face: 'narrow bold',
  });
  const svg = writeSvg(drawing([text]));
  expect(svg).toContain('transform="rotate(-90 10 20)"');
  expect(svg).toContain('text-anchor="middle"');
  expect(svg).toMatch(/textLength="1\d\.?\d*" lengthAdjust="spacingAndGlyphs"/);
});

test('when a group is clipped and transformed, both are written', () => {
  const clip = [
    curveFromPolyline(
      [
        { x: 0, y: 0 },
        { x: 4, y: 0 },
        { x: 4, y: 4 },
      ],
      true,
    ),
  ];
  const svg = writeSvg(
    drawing([group('part', [], { clip, transform: { a: 0, b: 1, c: -1, d: 0, e: 5, f: 6.5 } })]),
  );
  expect(svg).toContain('<g data-name="part" transform="matrix(0 1 -1 0 5 6.5)" clip-path="url(#clip-');
});
