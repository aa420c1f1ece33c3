import { readFileSync, readdirSync } from 'node:fs';
import { curveArea } from '@hidebound/geometry';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';
import { readPatternSvg } from './pattern-svg.js';

// The judge is resvg 2.6.2 (@resvg/resvg-js): each drawing is filled black and rasterised; the black share of the
// picture is the area that it sees. Anti-aliased edges count by their coverage.
const WIDTH_PX = 1200;
const AREA_SHARE = 0.001;

function rasterArea(svg: string, pageMm: number): number {
  const picture = new Resvg(svg, {
    fitTo: { mode: 'width', value: WIDTH_PX },
    background: '#ffffff',
  }).render();
  const { pixels } = picture;
  let dark = 0;
  for (let i = 0; i < pixels.length; i += 4) dark += 255 - pixels[i]!;
  const mmPerPx = pageMm / picture.width;
  return (dark / 255) * mmPerPx * mmPerPx;
}

const wrap = (body: string, attributes = 'viewBox="0 0 200 200"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="200mm" height="200mm" ${attributes}>${body}</svg>`;

const SHAPES: Record<string, string> = {
  'a rounded rectangle': wrap('<rect x="20" y="30" width="120" height="80" rx="20"/>'),
  'a rectangle with uneven corners': wrap('<rect x="20" y="30" width="120" height="80" rx="30" ry="12"/>'),
  'a circle': wrap('<circle cx="100" cy="100" r="70"/>'),
  'an ellipse turned and sheared': wrap(
    '<ellipse cx="80" cy="40" rx="50" ry="22" transform="rotate(30 80 40) skewX(20) translate(20 30)"/>',
  ),
  'a circle scaled unevenly': wrap('<circle r="30" transform="matrix(2 .3 -.5 1.2 100 100)"/>'),
  'arcs of every kind': wrap(
    '<path d="M40 60a60 35 20 0 1 110 10 25 25 0 0 0 10 40A70 50 -10 1 1 40 110 30 20 0 0 0 40 60z"/>',
  ),
  'cubics and quadratics': wrap('<path d="M20 20c60-30 90 60 150 10s-20 90 0 130q-60 30-90-10t-60 0z"/>'),
  'a path with a hole (evenodd)': wrap(
    '<path fill-rule="evenodd" d="M20 20h160v160h-160zM70 70h50v60h-50z"/>',
  ),
  'a path with a hole (nonzero)': wrap('<path d="M20 20h160v160h-160zM70 70v60h50v-60z"/>'),
  'a polygon with a class and a view box': wrap(
    '<style>.a{fill:#000}</style><polygon class="a" points="10,10 90,20 60,95"/>',
    'viewBox="-10 -10 120 120"',
  ),
  'a symbol used at another size': wrap(
    '<symbol id="s" viewBox="0 0 10 20" preserveAspectRatio="xMinYMax"><rect width="10" height="20" rx="3"/></symbol><use xlink:href="#s" x="20" y="10" width="120" height="150"/>',
  ),
  'a nested svg': wrap(
    '<svg x="30" y="40" width="100" height="60" viewBox="0 0 50 50"><path d="M0 0h50v50h-25z"/></svg>',
  ),
  'a clone of a turned group': wrap(
    '<defs><g id="g" transform="rotate(15)"><path d="M10 10h60v40a20 20 0 0 1-20 20h-40z"/></g></defs><use href="#g" transform="translate(60 40) scale(-1 1) translate(-60 0)"/>',
  ),
};

describe('imported area against the rasterised drawing', () => {
  test.each(Object.entries(SHAPES))('when the drawing is %s, the areas agree within 0.1 %', (_name, svg) => {
    const { pieces } = readPatternSvg(svg, { file: 'judge.svg' });
    const holes = pieces.flatMap(({ piece }) => piece.cutOuts);
    const imported =
      pieces.reduce((sum, { piece }) => sum + Math.abs(curveArea(piece.cut)), 0) -
      holes.reduce((sum, hole) => sum + Math.abs(curveArea(hole)), 0);
    const seen = rasterArea(svg, 200);
    expect(pieces).toHaveLength(1);
    expect(Math.abs(imported - seen)).toBeLessThanOrEqual(AREA_SHARE * seen);
  });
});

// Files as drawing programs save them: each cut line is filled and everything else hidden by a style rule.
const FOLDER = new URL('../../../fixtures/patterns/', import.meta.url);
const FILES = readdirSync(FOLDER).filter((name) => /^(inkscape|libreoffice)-.*\.svg$/.test(name));

describe('files saved by drawing programs', () => {
  test.each(FILES)(
    'when %s is read, the areas of its cut lines agree with the picture within 0.1 %',
    (name) => {
      const svg = readFileSync(new URL(name, FOLDER), 'utf8');
      const { pieces } = readPatternSvg(svg, { file: name });
      const filled = svg
        .replace(/<text[\s\S]*?<\/text>/g, '')
        .replace(/<rect class="BoundingBox"[^>]*>/g, '')
        .replace(/stroke="rgb\(0,0,0\)"/g, 'stroke="none"')
        .replace(/fill="none"/g, 'fill="#000000"')
        .replace(/fill:none;stroke:#000000/g, 'fill:#000000;stroke:none');
      const imported = pieces.reduce((sum, { piece }) => sum + Math.abs(curveArea(piece.cut)), 0);
      const seen = rasterArea(filled, 220);
      expect(Math.abs(imported - seen)).toBeLessThanOrEqual(AREA_SHARE * seen);
    },
  );
});
