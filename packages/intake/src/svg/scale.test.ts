import { curveBox } from '@hidebound/geometry';
import type { PatternReading } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { readPatternSvg } from '../pattern-svg.js';

const NS = 'xmlns="http://www.w3.org/2000/svg"';

function read(svg: string, reading?: Omit<PatternReading, 'file' | 'roles'>) {
  const result = readPatternSvg(svg, {
    file: 'scale.svg',
    ...(reading === undefined ? {} : { reading: { file: 'scale.svg', roles: [], ...reading } }),
  });
  const box = curveBox(result.pieces[0]!.piece.cut);
  return { ...result, width: box.maxX - box.minX, height: box.maxY - box.minY, box };
}

describe('units', () => {
  // CSS Values 4, section 6.2: 1in = 96px = 2.54cm; 1pt = 1/72in; 1pc = 1/6in; 1Q = 1/40cm.
  test.each([
    ['100', 26.458],
    ['100px', 26.458],
    ['100mm', 100],
    ['10cm', 100],
    ['4in', 101.6],
    ['72pt', 25.4],
    ['6pc', 25.4],
    ['400q', 100],
    ['10em', 42.333],
  ])('when a side is %s, it measures %f mm', (side, mm) => {
    const { width } = read(
      `<svg ${NS} width="1000mm" height="1000mm"><rect width="${side}" height="50mm"/></svg>`,
    );
    expect(width).toBeCloseTo(mm, 3);
  });

  test('when a side is a share of the viewport, it is taken of the viewport in its own units', () => {
    const { width, height } = read(
      `<svg ${NS} width="400mm" height="200mm" viewBox="0 0 40 20"><rect width="25%" height="50%"/></svg>`,
    );
    expect([width, height]).toEqual([100, 100]);
  });
});

describe('viewBox and preserveAspectRatio (SVG 2, section 8.2)', () => {
  const at = (fit: string) => {
    const { box } = read(
      `<svg ${NS} width="200mm" height="100mm" viewBox="0 0 10 10" preserveAspectRatio="${fit}"><rect width="10" height="10"/></svg>`,
    );
    return [box.minX, box.minY, box.maxX, box.maxY].map((n) => Math.round(n * 1000) / 1000);
  };
  test.each([
    ['xMidYMid', [50, 0, 150, 100]],
    ['xMinYMin meet', [0, 0, 100, 100]],
    ['xMaxYMid meet', [100, 0, 200, 100]],
    ['xMidYMin slice', [0, 0, 200, 200]],
    ['xMidYMid slice', [0, -50, 200, 150]],
    ['xMidYMax slice', [0, -100, 200, 100]],
    ['none', [0, 0, 200, 100]],
  ])('when it is %s, a square of the view box lies at %j', (fit, expected) => {
    expect(at(fit)).toEqual(expected);
  });

  test('when only the width is given, the height follows from the view box', () => {
    const { height, scale } = read(
      `<svg ${NS} width="100mm" viewBox="0 0 50 25"><rect width="50" height="25"/></svg>`,
    );
    expect(height).toBe(50);
    expect(scale).toEqual({ mmPerUnit: 2, source: 'units' });
  });

  test('when no size is given, a unit of the view box is a px', () => {
    const { width, scale } = read(`<svg ${NS} viewBox="0 0 96 96"><rect width="96" height="48"/></svg>`);
    expect(width).toBeCloseTo(25.4, 3);
    expect(scale.source).toBe('viewBox');
  });
});

describe('what the caller says of the scale', () => {
  const inPx = `<svg ${NS} width="720" height="720"><rect id="panel" width="720" height="36"/></svg>`;

  test('when dpi is 72, 720 px are ten inches', () => {
    const { width, scale } = read(inPx, { dpi: 72 });
    expect(width).toBeCloseTo(254, 3);
    expect(scale.source).toBe('dpi');
  });

  test('when dpi is given for a file in mm, lengths stay and a warning says so', () => {
    const svg = `<svg ${NS} width="100mm" height="100mm" viewBox="0 0 10 10"><rect width="10" height="10"/></svg>`;
    const { width, diagnostics } = read(svg, { dpi: 72 });
    expect(width).toBe(100);
    expect(diagnostics.map(({ code }) => code)).toContain('dpi-without-effect');
  });

  test('when a scale is given, everything grows by it', () => {
    expect(read(inPx, { scale: 2 }).width).toBeCloseTo(381, 3);
  });

  test('when a known length is given, that element has it to 1 µm, however small it was drawn', () => {
    const tiny = `<svg ${NS} width="1" height="1" viewBox="0 0 1 1"><rect id="panel" width="0.31" height="0.1"/></svg>`;
    const { width, scale } = read(tiny, { knownLength: { element: 'panel', mm: 237 } });
    expect(width).toBeCloseTo(237, 2);
    expect(scale.source).toBe('known length');
  });

  test('when the element of the known length is missing, that is refused', () => {
    expect(() => read(inPx, { knownLength: { element: 'nowhere', mm: 10 } })).toThrow(/nowhere/);
  });
});

describe('files at other resolutions', () => {
  test('when sizes are round at 72 px per inch and not at 96, a warning says so', () => {
    const px = (mm: number) => (mm * 72) / 25.4;
    const svg = `<svg ${NS} width="800" height="800"><rect width="${px(121)}" height="${px(85)}"/><rect x="500" width="${px(66)}" height="${px(33)}"/></svg>`;
    const { diagnostics } = read(svg);
    expect(diagnostics.find(({ code }) => code === 'other-resolution')?.params['dpi']).toBe(72);
  });

  test('when sizes are round at 96 px per inch, there is no warning', () => {
    const px = (mm: number) => (mm * 96) / 25.4;
    const svg = `<svg ${NS} width="800" height="800"><rect width="${px(121)}" height="${px(85)}"/><rect x="500" width="${px(66)}" height="${px(33)}"/></svg>`;
    expect(read(svg).diagnostics.map(({ code }) => code)).not.toContain('other-resolution');
  });
});
