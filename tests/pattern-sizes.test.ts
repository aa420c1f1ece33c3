/** Graded sizes and allowances: invented patterns of which all measures are known. */
import { curveBox, flattenCurve, offsetCurve, orientRing } from '@hidebound/geometry';
import { readPatternSvg } from '@hidebound/intake';
import type { PatternReading } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { loadJudge } from '../packages/geometry/test-support/judge.js';
import { outsideProgram, testWith } from './tools/outside.js';

const page = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" width="400mm" height="400mm" viewBox="0 0 400 400" fill="none" stroke="#000">${body}</svg>`;
const read = (body: string, more: Partial<PatternReading> = {}) =>
  readPatternSvg(page(body), { file: 'a.svg', reading: { file: 'a.svg', roles: [], ...more } });
type Read = ReturnType<typeof read>;
const codes = ({ diagnostics }: Read) => diagnostics.map(({ code }) => code);
const widths = ({ pieces }: Read) =>
  pieces.map(({ piece, size }) => [
    piece.name,
    size,
    Math.round(curveBox(piece.cut).maxX - curveBox(piece.cut).minX),
  ]);
const layer = (name: string, body: string) =>
  `<g inkscape:groupmode="layer" inkscape:label="${name}">${body}</g>`;
/** A front and a pocket with a stitch line, all the larger the larger n is. */
const sized = (n: number) =>
  `<rect inkscape:label="front" x="10" y="10" width="${100 + 4 * n}" height="${80 + 3 * n}"/>` +
  `<path class="stitch" d="M15 20H${100 + 4 * n}"/>` +
  `<rect inkscape:label="pocket" x="200" y="10" width="${60 + 2 * n}" height="50"/>`;

describe('sizes drawn one in the other', () => {
  test('when layers spell their sizes out, each piece comes once a size, with its own lines', () => {
    const result = read(layer('Size S', sized(0)) + layer('Size M', sized(1)) + layer('Size L', sized(2)));
    expect(widths(result)).toEqual([
      ['front size S', 'S', 100],
      ['pocket size S', 'S', 60],
      ['front size M', 'M', 104],
      ['pocket size M', 'M', 62],
      ['front size L', 'L', 108],
      ['pocket size L', 'L', 64],
    ]);
    expect(result.pieces.map(({ piece }) => piece.stitchLines.length)).toEqual([1, 0, 1, 0, 1, 0]);
    expect(result.pieces.every(({ piece }) => piece.cutOuts.length === 0)).toBe(true);
    expect(result.diagnostics.find(({ code }) => code === 'sizes-found')?.params).toEqual({
      sizes: 'S, M, L',
      by: 'names',
    });
  });

  test('when layers are called by numbers alone and hold pieces that grow, they are sizes', () => {
    const result = read(layer('40', sized(2)) + layer('36', sized(0)) + layer('38', sized(1)));
    expect(widths(result).map(([name]) => name)).toEqual([
      'front size 36',
      'pocket size 36',
      'front size 38',
      'pocket size 38',
      'front size 40',
      'pocket size 40',
    ]);
  });

  test('when layers called by numbers hold unlike pieces, they are no sizes', () => {
    const result = read(
      layer('1', '<rect x="10" y="10" width="100" height="80"/>') +
        layer('2', '<rect x="200" y="10" width="40" height="150"/>'),
    );
    expect(result.pieces).toHaveLength(2);
    expect(codes(result)).not.toContain('sizes-found');
  });

  test('when names speak of the size of something else, or of a length, they are no sizes', () => {
    for (const names of [
      ['hole size 3', 'hole size 5'],
      ['size 100 mm', 'size 120 mm'],
      ['full size', 'actual size'],
    ]) {
      const result = read(names.map((name, i) => layer(name, sized(i))).join(''));
      expect(codes(result), names[0]).not.toContain('sizes-found');
    }
  });

  test('when a file says more sizes than any pattern has, it is read without, and that is told', () => {
    const many = Array.from({ length: 60 }, (_, i) => layer(`size ${i + 1}`, sized(i))).join('');
    expect(codes(read(many))).toContain('too-many-sizes');
    expect(codes(read(many))).not.toContain('sizes-found');
  });

  test('when a rule says what is in such a layer, it is no size', () => {
    const roles = [{ role: 'stitch' as const, layer: '36' }];
    expect(codes(read(layer('36', sized(0)) + layer('38', sized(1)), { roles }))).not.toContain(
      'sizes-found',
    );
  });

  test('when the order tells sizes by colour and dash, those lines are of that size', () => {
    const rect = (n: number, look: string) =>
      `<rect id="front-${n}" x="10" y="10" width="${100 + 4 * n}" height="80" ${look}/>`;
    const sizes = [
      { size: '38', colour: '#ff0000' },
      { size: '40', dashed: true },
    ];
    const result = read(rect(0, 'stroke="#f00"') + rect(1, 'stroke-dasharray="3 2"'), { sizes });
    expect(widths(result)).toEqual([
      ['front-0 size 38', '38', 100],
      ['front-1 size 40', '40', 104],
    ]);
  });

  test('when a piece has lines of no size alone, it comes once; lines of no size lie in every size', () => {
    const common =
      '<rect inkscape:label="strap" x="10" y="300" width="200" height="30"/><path class="fold" d="M60 20V80"/>' +
      '<rect x="30" y="30" width="40" height="40" stroke-dasharray="3 1"/>';
    const result = read(common + layer('Size S', sized(0)) + layer('Size M', sized(1)));
    expect(widths(result).map(([name]) => name)).toEqual([
      'strap',
      'front size S',
      'pocket size S',
      'front size M',
      'pocket size M',
    ]);
    expect(result.pieces.map(({ piece }) => piece.foldLines.length)).toEqual([0, 1, 0, 1, 0]);
    expect(codes(result)).not.toContain('lines-outside-pieces');
    expect(codes(result)).not.toContain('dashed-outline-as-cut');
    const note = result.diagnostics.find(({ code }) => code === 'direction-not-drawn');
    expect(note?.params).toMatchObject({ count: 5 });
  });

  test('when groups bear their size and a piece its own, the name has it once', () => {
    const block = (size: string, n: number) =>
      `<g data-size="${size}"><rect data-piece="Front ${size}" x="10" y="10" width="${100 + n}" height="80"/></g>`;
    expect(widths(read(block('M', 0) + block('L', 5)))).toEqual([
      ['Front M', 'M', 100],
      ['Front L', 'L', 105],
    ]);
  });

  test('when half pieces come in sizes, each is unfolded', () => {
    const half = (n: number) =>
      `<path inkscape:label="yoke" d="M10 10H${60 + n}V90H10Z"/><path class="mirror" d="M10 10V90"/>`;
    expect(widths(read(layer('size 1', half(0)) + layer('size 2', half(5))))).toEqual([
      ['yoke size 1', '1', 100],
      ['yoke size 2', '2', 110],
    ]);
  });

  test('when three outlines differ in dash or colour and have no names, the way to name them is told', () => {
    const rect = (n: number, look: string) =>
      `<rect x="${10 + n}" y="${10 + n}" width="${150 - 4 * n}" height="${100 - 3 * n}" ${look}/>`;
    const nest = rect(0, '') + rect(3, 'stroke="#f00"') + rect(6, 'stroke="#00f"');
    expect(codes(read(nest))).toContain('looks-graded');
    expect(codes(read(rect(0, '') + rect(3, '') + rect(6, '')))).not.toContain('looks-graded');
  });
});

describe('a drawing with layers of sizes, passed through Inkscape', () => {
  testWith(
    outsideProgram('inkscape', ['--version']),
    'when it is saved as plain SVG, the sizes are found',
    () => {
      const inkscape = outsideProgram('inkscape', ['--version']);
      const drawing = page(layer('Size S', sized(0)) + layer('Size M', sized(1)));
      const saved = inkscape.run(
        ['--pipe', '--export-type=svg', '--export-filename=-'],
        new TextEncoder().encode(drawing),
      );
      const result = readPatternSvg(saved, { file: 'a.svg' });
      expect(widths(result).map(([name, , width]) => [name, width])).toEqual([
        ['front size S', 100],
        ['pocket size S', 60],
        ['front size M', 104],
        ['pocket size M', 62],
      ]);
    },
  );
});

describe('an allowance between two outlines', () => {
  const d = 'M60 60C100 20 160 40 200 60L220 180C160 200 120 170 70 190Z';
  const drawn = readPatternSvg(page(`<path d="${d}"/>`), { file: 'a.svg' }).pieces[0]!.piece.cut;
  const points = (mm: number) =>
    offsetCurve(drawn, -mm)
      .curves[0]!.segments.map(({ to }) => `${to.x},${to.y}`)
      .join(' ');
  const width = (result: Read) =>
    result.diagnostics.find(({ code }) => code === 'allowance')?.params['width'];

  test('when jsts draws the inner outline, the width is found', async () => {
    const judge = await loadJudge();
    const corners = curveCornersOf(drawn);
    for (const mm of [4, 10, 15]) {
      const inner = judge.buffer(judge.shapeOf({ outer: corners, openings: [] }), -mm) as unknown as {
        getExteriorRing(): { getCoordinates(): { x: number; y: number }[] };
      };
      const ring = inner
        .getExteriorRing()
        .getCoordinates()
        .map(({ x, y }) => `${x},${y}`)
        .join(' ');
      expect(width(read(`<path d="${d}"/><polygon points="${ring}"/>`))).toBe(mm);
    }
  });

  test('when the cut line is dashed and the inner one solid, the outer one is still the cut line', () => {
    const result = read(`<path stroke-dasharray="4 2" d="${d}"/><polygon points="${points(8)}"/>`);
    expect(width(result)).toBe(8);
    expect(result.pieces[0]!.piece.stitchLines).toHaveLength(1);
  });

  test('when a name says what the inner line is, it is that', () => {
    const named = (name: string) =>
      read(`<path d="${d}"/><g id="${name}"><polygon points="${points(8)}"/></g>`).pieces[0]!.piece;
    expect(named('sewing line').stitchLines).toHaveLength(1);
    expect(named('turning line').foldLines).toHaveLength(1);
    expect(named('finished edge').foldLines).toHaveLength(1);
  });

  test('when the distance differs, it is no allowance', () => {
    const moved = `<polygon transform="translate(2 0)" points="${points(8)}"/>`;
    const result = read(`<path d="${d}"/>${moved}`);
    expect(width(result)).toBeUndefined();
    expect(codes(result)).toContain('inner-outline-as-stitch');
  });
});

function curveCornersOf(curve: Read['pieces'][number]['piece']['cut']) {
  return orientRing(flattenCurve(curve, 0.002).slice(0, -1), 'outer');
}
