import { arcCentre, curveBox } from '@hidebound/geometry';
import type { PatternReading } from '@hidebound/leather';
import { describe, expect, test } from 'vitest';
import { newFindings } from '../findings.js';
import { readDxfDrawing } from './read-drawing.js';
import { block, circle, dxfBytes, dxfText, encode, insert, layer, line, rectangle } from './test-dxf.js';
import type { TestDxf, TestPair } from './test-dxf.js';

function read(dxf: TestDxf, reading?: Omit<PatternReading, 'file' | 'roles'>) {
  const findings = newFindings('a.dxf');
  const asked = reading && { file: 'a.dxf', roles: [], ...reading };
  return { ...readDxfDrawing(dxfBytes(dxf), asked, findings), findings };
}
const linesOf = (dxf: TestDxf) => read(dxf).drawing.lines;
const onlyLine = (dxf: TestDxf) => {
  const lines = linesOf(dxf);
  expect(lines).toHaveLength(1);
  return lines[0]!;
};
const reasons = (dxf: TestDxf) => read(dxf).findings.ignored.map(({ reason }) => reason);

// Group codes and their meaning: DXF reference (of release 2018), from memory; shapes are judged in the tests with ezdxf.

describe('units', () => {
  const wide = line(0, 0, 10, 0);
  // $INSUNITS: 1 inches, 2 feet, 4 mm, 5 cm, 6 m.
  test.each([
    [1, 254],
    [2, 3048],
    [4, 10],
    [5, 100],
    [6, 10000],
  ])('when the header says unit %i, 10 of them are %f mm', (units, mm) => {
    const { drawing, scale } = read({ units, entities: wide });
    expect(curveBox(drawing.lines[0]!.curve).maxX).toBe(mm);
    expect(scale).toEqual({ mmPerUnit: mm / 10, source: 'units' });
  });

  test('when the reading says a unit, that counts', () => {
    const { drawing, scale } = read({ units: 4, entities: wide }, { units: 'in' });
    expect(curveBox(drawing.lines[0]!.curve).maxX).toBe(254);
    expect(scale.source).toBe('asked units');
  });

  test('when nobody says a unit, a known length does', () => {
    const entities = line(0, 0, 0.123457, 0, [[5, 'A1']]);
    const { drawing, scale } = read(
      { units: null, entities },
      { knownLength: { element: 'LINE A1', mm: 50 } },
    );
    expect(curveBox(drawing.lines[0]!.curve).maxX).toBeCloseTo(50, 3);
    expect(scale.source).toBe('known length');
  });

  test('when the reading gives a scale, lengths are that many times as large', () => {
    const { drawing } = read({ entities: wide }, { scale: 2 });
    expect(curveBox(drawing.lines[0]!.curve).maxX).toBe(20);
  });

  test('when the reading gives px per inch, it is told that they have no effect', () => {
    const { findings } = read({ entities: wide }, { dpi: 72 });
    expect(findings.diagnostics.map(({ code }) => code)).toEqual(['dpi-without-effect']);
  });
});

describe('lines', () => {
  test('when y grows upwards in the file, it grows downwards in the drawing', () => {
    const { curve } = onlyLine({ entities: line(1, 2, 3, 4) });
    expect(curve).toEqual({
      start: { x: 1, y: -2 },
      segments: [{ kind: 'line', to: { x: 3, y: -4 } }],
      closed: false,
    });
  });

  test.each(['\n', '\r\n', '\r'])('when lines end with %j, all are read', (lineEnd) => {
    const bytes = encode(dxfText({ entities: circle(0, 0, 5), lineEnd }));
    expect(readDxfDrawing(bytes, undefined, newFindings('a.dxf')).drawing.lines).toHaveLength(1);
  });

  test('when a bulge is 1, the way is half a circle on the right of its chord', () => {
    const pairs: TestPair[] = [
      [0, 'LWPOLYLINE'],
      [70, 0],
      [10, 0],
      [20, 0],
      [42, 1],
      [10, 10],
      [20, 0],
    ];
    const { curve } = onlyLine({ entities: pairs });
    const [arc] = curve.segments;
    expect(arc).toMatchObject({ kind: 'arc', via: { x: 5, y: 5 }, to: { x: 10, y: 0 } });
  });

  test('when a polyline was fitted, its frame is left out', () => {
    const vertex = (x: number, y: number, flags: number): TestPair[] => [
      [0, 'VERTEX'],
      [10, x],
      [20, y],
      [70, flags],
    ];
    const pairs: TestPair[] = [
      [0, 'POLYLINE'],
      [66, 1],
      [70, 4],
      ...vertex(0, 0, 16),
      ...vertex(5, 99, 16),
      ...vertex(0, 0, 8),
      ...vertex(5, 3, 8),
      ...vertex(10, 0, 8),
      [0, 'SEQEND'],
      ...line(0, 0, 1, 0),
    ];
    const lines = linesOf({ entities: pairs });
    expect(lines).toHaveLength(2);
    expect(lines[0]!.curve.segments.map(({ to }) => to.x)).toEqual([5, 10]);
  });

  test('when a curve is given by points on it, it goes through them and is told of as fitted', () => {
    const points: TestPair[] = [
      [11, 0],
      [21, 0],
      [11, 10],
      [21, 5],
      [11, 20],
      [21, 0],
    ];
    const { drawing, findings } = read({ entities: [[0, 'SPLINE'], [70, 8], [71, 3], [74, 3], ...points] });
    expect(drawing.lines[0]!.curve.segments.map(({ to }) => to)).toEqual([
      { x: 10, y: -5 },
      { x: 20, y: 0 },
    ]);
    expect(findings.repairs).toMatchObject([{ kind: 'curve fitted', at: { x: 0, y: 0 } }]);
    expect(findings.diagnostics).toMatchObject([
      {
        code: 'dxf-curves-through-points',
        severity: 'note',
        params: { count: 1 },
        place: { point: { x: 0, y: 0 } },
      },
    ]);
  });

  test('when a closed curve is given by points on a circle, it is nearly that circle', () => {
    const points = Array.from({ length: 24 }, (_, i): TestPair[] => [
      [11, 50 * Math.cos((i * Math.PI) / 12)],
      [21, 50 * Math.sin((i * Math.PI) / 12)],
    ]).flat();
    const { curve } = onlyLine({ entities: [[0, 'SPLINE'], [70, 1], [71, 3], ...points] });
    const box = curveBox(curve);
    expect(curve.closed).toBe(true);
    // A periodic cubic spline errs by about h⁴/384 of the radius between points: 50 · 0.262⁴ / 384 = 0.0006 mm.
    for (const n of [box.maxX, box.maxY, -box.minX, -box.minY]) expect(Math.abs(n - 50)).toBeLessThan(0.002);
  });
});

describe('looks', () => {
  const tables: TestPair[] = [
    [0, 'TABLE'],
    [2, 'LTYPE'],
    [0, 'LTYPE'],
    [2, 'GAPS'],
    [49, 5],
    [49, -2],
    [0, 'LTYPE'],
    [2, 'DASHLESS'],
    [49, 5],
    [0, 'ENDTAB'],
    [0, 'TABLE'],
    [2, 'LAYER'],
    ...layer('Seam', [
      [62, 1],
      [6, 'GAPS'],
      [370, 50],
    ]),
    ...layer('Off', [[62, -3]]),
    ...layer('Frozen', [[70, 1]]),
    [0, 'ENDTAB'],
  ];

  test('when the entity says nothing, its layer gives colour, dashes and width', () => {
    const found = onlyLine({ tables, entities: line(0, 0, 9, 0, [[8, 'Seam']]) });
    expect(found).toMatchObject({ stroke: '#ff0000', isDashed: true, widthMm: 0.5 });
    expect(found.source.groups.map(({ labels }) => labels.given)).toEqual([['Seam']]);
  });

  test('when the entity says something, that counts', () => {
    const more: TestPair[] = [
      [8, 'Seam'],
      [62, 5],
      [6, 'DASHLESS'],
      [370, 13],
      [420, 0x123456],
    ];
    expect(onlyLine({ tables, entities: line(0, 0, 9, 0, more) })).toMatchObject({
      stroke: '#123456',
      isDashed: false,
      widthMm: 0.13,
    });
  });

  test('when looks are by block, or the layer is 0, those of the insert count', () => {
    const blocks = block(
      'b',
      line(0, 0, 9, 0, [
        [8, '0'],
        [62, 0],
        [6, 'BYBLOCK'],
        [370, -2],
      ]),
    );
    const entities = insert('b', 0, 0, [
      [8, 'Seam'],
      [62, 3],
    ]);
    const found = onlyLine({ tables, blocks, entities });
    expect(found).toMatchObject({ stroke: '#00ff00', isDashed: true, widthMm: 0.5 });
    expect(found.source.groups.map(({ labels }) => labels.given)).toEqual([['Seam'], ['b']]);
  });

  test('when something is off, frozen, hidden or on a page, it is left out and told of', () => {
    const entities = [
      ...line(0, 0, 9, 0, [[8, 'Off']]),
      ...line(0, 0, 9, 0, [[8, 'Frozen']]),
      ...line(0, 0, 9, 0, [[8, 'Defpoints']]),
      ...line(0, 0, 9, 0, [[60, 1]]),
      ...line(0, 0, 9, 0, [[67, 1]]),
      ...line(0, 0, 9, 0),
    ];
    expect(linesOf({ tables, entities })).toHaveLength(1);
    expect(reasons({ tables, entities })).toEqual([
      'layer off',
      'layer off',
      'layer off',
      'hidden',
      'paper space',
    ]);
  });

  test('when a block lies on a layer that is off, only a frozen one hides what lies on other layers', () => {
    const blocks = block('b', line(0, 0, 9, 0, [[8, 'Seam']]));
    expect(linesOf({ tables, blocks, entities: insert('b', 0, 0, [[8, 'Off']]) })).toHaveLength(1);
    expect(linesOf({ tables, blocks, entities: insert('b', 0, 0, [[8, 'Frozen']]) })).toHaveLength(0);
  });

  test('when an entity is no line of a pattern, the reason is told', () => {
    const kinds = [
      'HATCH',
      'DIMENSION',
      'IMAGE',
      'XLINE',
      '3DFACE',
      'POINT',
      'constructor',
      'ACAD_PROXY_ENTITY',
    ];
    const entities = kinds.flatMap((kind): TestPair[] => [
      [0, kind],
      [10, 1],
      [20, 1],
    ]);
    expect(reasons({ entities })).toEqual([
      'filled area',
      'measure or pointer',
      'image',
      'endless line',
      'not flat',
      'point',
      'kind not read',
      'kind not read',
    ]);
  });
});

describe('blocks', () => {
  test('when a block is put in place, its base point comes to lie there, scaled and turned', () => {
    const blocks = block('b', line(10, 10, 20, 10), [
      [10, 10],
      [20, 10],
    ]);
    const entities = insert('b', 100, 50, [
      [41, 2],
      [42, 3],
      [50, 90],
    ]);
    const { curve } = onlyLine({ blocks, entities });
    expect(curve.start).toEqual({ x: 100, y: -50 });
    expect(curve.segments[0]!.to).toEqual({ x: 100, y: -70 });
  });

  test('when it has rows and columns, they run along its turned axes, unscaled', () => {
    const blocks = block('b', circle(0, 0, 1));
    const entities = insert('b', 0, 0, [
      [41, 2],
      [42, 2],
      [50, 90],
      [70, 2],
      [71, 2],
      [44, 10],
      [45, 100],
    ]);
    const places = linesOf({ blocks, entities }).map(({ curve }) => {
      const { minX, maxX, minY, maxY } = curveBox(curve);
      return [(minX + maxX) / 2, (minY + maxY) / 2, maxX - minX];
    });
    expect(places).toEqual([
      [0, 0, 4],
      [0, -10, 4],
      [-100, 0, 4],
      [-100, -10, 4],
    ]);
  });

  test('when circles are scaled unevenly, they are ellipses; evenly, they stay circles', () => {
    const blocks = block('b', circle(0, 0, 1));
    const kinds = (x: number, y: number) =>
      onlyLine({
        blocks,
        entities: insert('b', 0, 0, [
          [41, x],
          [42, y],
        ]),
      }).curve.segments.map(({ kind }) => kind);
    expect(new Set(kinds(40, 20))).toEqual(new Set(['cubic']));
    expect(new Set(kinds(-40, 40))).toEqual(new Set(['arc']));
  });

  test('when it has attributes, they are texts, and those that pieces are asked by are data', () => {
    const attribute = (tag: string, text: string): TestPair[] => [
      [0, 'ATTRIB'],
      [10, 5],
      [20, 5],
      [40, 3],
      [1, text],
      [2, tag],
    ];
    const entities = [
      ...insert('b', 0, 0, [[66, 1]]),
      ...attribute('COUNT', '2'),
      ...attribute('Maker', 'us'),
      [0, 'SEQEND'] as const,
    ];
    const { drawing } = read({ blocks: block('b', rectangle(0, 0, 50, 50)), entities });
    expect(drawing.texts.map(({ text }) => text)).toEqual(['2', 'us']);
    expect(drawing.lines[0]!.source.groups[1]!.labels.data).toEqual({ count: '2' });
  });

  test('when its block is missing or in another file, that is told', () => {
    const blocks = block('x', [], [[70, 4]]);
    expect(reasons({ blocks, entities: [...insert('no', 0, 0), ...insert('x', 0, 0)] })).toEqual([
      'missing block',
      'external reference',
    ]);
  });
});

describe('texts', () => {
  const text = (value: string, more: readonly TestPair[] = []): TestPair[] => [
    [0, 'TEXT'],
    [10, 5],
    [20, 6],
    [40, 3],
    [1, value],
    ...more,
  ];
  const textsOf = (dxf: TestDxf) => read(dxf).drawing.texts;

  test('when a text is turned and mirrored by its insert, place, angle and size follow', () => {
    const blocks = block('b', text('flap', [[50, 30]]));
    const [found] = textsOf({
      blocks,
      entities: insert('b', 0, 0, [
        [41, -2],
        [42, 2],
      ]),
    });
    expect(found).toMatchObject({ text: 'flap', at: { x: -10, y: -12 }, sizeMm: 6 });
    // 30° anticlockwise, mirrored: 150° anticlockwise, which is -150° clockwise.
    expect(found!.angleDeg).toBeCloseTo(-150, 9);
  });

  test('when text holds codes, they are read or dropped', () => {
    const [plain, long] = textsOf({
      entities: [
        ...text('%%uflap%%u 90%%d \\U+00e9 %%065'),
        [0, 'MTEXT'],
        [10, 0],
        [20, 0],
        [40, 3],
        [3, '{\\fArial|b0;\\C1;front\\P'],
        [1, 'left \\S1/2; \\{x\\}}'],
      ],
    });
    expect(plain!.text).toBe('flap 90° é A');
    expect(long!.text).toBe('front left 1/2 {x}');
  });

  test.each([
    ['ANSI_1252', [0xe4], 'ä'],
    ['ANSI_1251', [0xe4], 'д'],
    ['ANSI_1250', [0xe8], 'č'],
  ])('when the header names code page %s, bytes are its characters', (page, bytes, character) => {
    // The Unicode consortium's tables of the code pages, from memory.
    const header: TestPair[] = [
      [9, '$ACADVER'],
      [1, 'AC1015'],
      [9, '$DWGCODEPAGE'],
      [3, page],
    ];
    const [found] = textsOf({ header, entities: text(String.fromCharCode(...bytes)) });
    expect(found!.text).toBe(character);
  });

  test('when the release is 2007 or later, text is UTF-8 whatever the code page', () => {
    const header: TestPair[] = [
      [9, '$ACADVER'],
      [1, 'AC1021'],
      [9, '$DWGCODEPAGE'],
      [3, 'ANSI_1252'],
    ];
    const [found] = textsOf({ header, entities: text('\u00c3\u00a4') });
    expect(found!.text).toBe('ä');
  });
});

test('when a circle is drawn as seen from below, its centre lies on the other side', () => {
  // The arbitrary axis algorithm gives (0, 0, -1) an x axis that runs to the left.
  const { curve } = onlyLine({ entities: circle(30, 10, 5, [[230, -1]]) });
  const [arc] = curve.segments;
  const found = arc!.kind === 'arc' ? arcCentre(curve.start, arc!.via, arc!.to) : 'straight';
  expect(found).toMatchObject({ center: { x: -30, y: -10 }, radius: 5 });
});
