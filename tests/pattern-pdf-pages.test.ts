import { curveArea, curveBox, curveLength } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { describe, expect, it } from 'vitest';
import { OP } from '../packages/intake/src/pdf/operators.js';
import { pdfJudge } from './tools/pdf-judge.js';
import { mm, onePage, pagesOf } from './tools/read-pdf.js';
import { writePdf } from './tools/write-pdf.js';

/** A triangle that looks different from every side, and each of its corners in points. */
const CORNERS = [
  [30, 40],
  [90, 40],
  [30, 140],
] as const;
const TRIANGLE = '30 40 m 90 40 l 30 140 l s';

/** What was drawn is at most this far from where it should be, mm: half the grid, again where a line is cut, and single precision. */
const NEAR = 0.0011;

function expectCorners(curve: Curve, corners: readonly (readonly [number, number])[]): void {
  const found = [curve.start, ...curve.segments.map(({ to }) => to)];
  corners.forEach(([x, y], i) => {
    expect(Math.abs(found[i]!.x - x)).toBeLessThan(NEAR);
    expect(Math.abs(found[i]!.y - y)).toBeLessThan(NEAR);
  });
}

describe('what pdf.js hands on', () => {
  it('when pdf.js is another version, its numbers of operators are still those that are read', async () => {
    const { OPS } = await pdfJudge();
    for (const [name, number] of Object.entries(OP)) {
      expect([name, (OPS as Record<string, number>)[name]]).toEqual([name, number]);
    }
  });
});

describe('pages of a PDF as one looks at them', () => {
  // ISO 32000-1, table 30: Rotate is clockwise; 14.11.2.1: the crop box is what is shown; 8.3.2.3: y grows upwards.
  it('when a page is turned and cropped, its corners lie where a viewer shows them', async () => {
    const crop = [10, 20, 160, 270];
    const seen = {
      0: ([x, y]: readonly [number, number]) => [mm(x - 10), mm(270 - y)] as const,
      90: ([x, y]: readonly [number, number]) => [mm(y - 20), mm(x - 10)] as const,
      180: ([x, y]: readonly [number, number]) => [mm(160 - x), mm(y - 20)] as const,
      270: ([x, y]: readonly [number, number]) => [mm(270 - y), mm(160 - x)] as const,
    };
    for (const [turn, place] of Object.entries(seen)) {
      const entries = `/Rotate ${turn} /CropBox [${crop.join(' ')}]`;
      const page = await onePage({ content: TRIANGLE, entries });
      const isOnSide = Number(turn) % 180 === 90;
      expect(page.widthMm).toBeCloseTo(mm(isOnSide ? 250 : 150), 3);
      expect(page.heightMm).toBeCloseTo(mm(isOnSide ? 150 : 250), 3);
      expect(page.lines).toHaveLength(1);
      expect(page.lines[0]!.curve.closed).toBe(true);
      expectCorners(page.lines[0]!.curve, CORNERS.map(place));
    }
  });

  it('when the media box does not start at 0 and the crop box reaches beyond it, the part of both is the page', async () => {
    const page = await onePage({
      content: '-50 -40 m 60 70 l S',
      mediaBox: [-100, -80, 100, 120],
      entries: '/CropBox [-300 -80 50 200]',
    });
    expect(page.widthMm).toBeCloseTo(mm(150), 3);
    expect(page.heightMm).toBeCloseTo(mm(200), 3);
    // The line leaves the page at x = 50, y = 60 by its slope of 1.
    expectCorners(page.lines[0]!.curve, [
      [mm(50), mm(160)],
      [mm(150), mm(60)],
    ]);
    expect(page.lines[0]!.curve.segments.at(-1)!.to.x).toBe(page.widthMm);
  });

  // ISO 32000-1, table 30: a user space unit is UserUnit 72ths of an inch.
  it('when the page has a user unit, all is so many times larger, line widths too', async () => {
    const page = await onePage({ content: `3 w ${TRIANGLE}`, entries: '/UserUnit 2.5' });
    expect(page.widthMm).toBeCloseTo(mm(500), 3);
    expect(Math.abs(curveArea(page.lines[0]!.curve))).toBeCloseTo((mm(150) * mm(250)) / 2, 1);
    expect(page.lines[0]!.widthMm).toBeCloseTo(mm(7.5), 3);
  });

  it('when boxes, rotation and resources are inherited from the page tree, they hold', async () => {
    const { pages } = await pagesOf(
      writePdf({
        pages: [{ content: '/G gs 30 40 m 90 40 l S', entries: '/NoResources true' }],
        pagesEntries:
          '/Rotate 90 /CropBox [0 0 100 200] /Resources << /ExtGState << /G << /LW 4 /D [[3 2] 0] >> >> >>',
      }),
    );
    expect(pages[0]!.widthMm).toBeCloseTo(mm(200), 3);
    expect(pages[0]!.lines[0]).toMatchObject({ widthMm: 1.4111, isDashed: true });
  });

  it('when pages are asked for by number, they alone are read, in that order', async () => {
    const bytes = writePdf({
      pages: [10, 20, 30].map((x) => ({ content: `${x} 10 m ${x} 90 l S` })),
    });
    const { pages } = await pagesOf(bytes, { file: 'a.pdf', roles: [], pages: { take: [3, 1] } });
    expect(pages.map(({ number }) => number)).toEqual([3, 1]);
    expect(pages[0]!.lines[0]!.source.name).toBe('path 1 on page 3');
    expect(pages[0]!.lines[0]!.curve.start.x).toBeCloseTo(mm(30), 3);
  });
});

describe('lines of a page', () => {
  // ISO 32000-1, 8.5.2 (steps of a path), 8.4.4 (cm), 8.4.2 (q and Q).
  it('when paths have all kinds of steps, each becomes a line or a cubic', async () => {
    const page = await onePage({
      content: [
        '10 10 50 30 re S',
        '10 60 m 20 80 40 80 50 60 c S',
        '10 100 m 30 120 50 100 v S',
        '10 140 m 20 160 50 140 y S',
        '10 200 m 50 200 l 50 240 l h 60 200 m 90 200 l S',
      ].join('\n'),
    });
    const kinds = page.lines.map(({ curve }) => curve.segments.map(({ kind }) => kind).join(' '));
    expect(kinds).toEqual(['line line line line', 'cubic', 'cubic', 'cubic', 'line line line', 'line']);
    expect(page.lines.map(({ curve }) => curve.closed)).toEqual([true, false, false, false, true, false]);
    // v: the first handle is the start; y: the second handle is the end.
    expect(page.lines[2]!.curve.segments[0]).toMatchObject({ handle1: page.lines[2]!.curve.start });
    const y = page.lines[3]!.curve.segments[0]!;
    expect(y.kind === 'cubic' && y.handle2).toEqual(y.to);
    expect(page.lines.map(({ source }) => source.name).at(-1)).toBe('path 5 on page 1');
    expect(Math.abs(curveArea(page.lines[0]!.curve))).toBeCloseTo(mm(50) * mm(30), 1);
  });

  it('when transforms are stacked and saved, each line has those that stand', async () => {
    const page = await onePage({
      content: 'q 2 0 0 2 10 20 cm q 0 1 -1 0 5 0 cm 3 w 0 0 m 10 0 l S Q 0 0 m 10 0 l S Q 0 0 m 10 0 l S',
    });
    const ends = page.lines.map(({ curve }) => [curve.start, curve.segments[0]!.to]);
    const at = (x: number, y: number) => ({
      x: Math.round(mm(x) * 1000) / 1000,
      y: Math.round(mm(300 - y) * 1000) / 1000,
    });
    expect(ends).toEqual([
      [at(20, 20), at(20, 40)],
      [at(10, 20), at(30, 20)],
      [at(0, 0), at(10, 0)],
    ]);
    expect(page.lines.map(({ widthMm }) => widthMm)).toEqual([2.1167, 0.7056, 0.3528]);
  });

  // Grey, RGB and the pure CMYK colours have one meaning on a screen; 8.6.4.
  it('when colours are given in any space, they become #rrggbb, and patterns "other"', async () => {
    const at = (n: number) => `${10 + 10 * n} 10 m ${10 + 10 * n} 90 l S`;
    const page = await onePage(
      {
        content: [
          `0.5 G ${at(0)}`,
          `1 0 0 RG ${at(1)}`,
          `0 0 0 1 K ${at(2)}`,
          `/DeviceRGB CS 0 0 1 SC ${at(3)}`,
          `/Sep CS 1 SCN ${at(4)}`,
          `/Pattern CS /P SCN ${at(5)}`,
        ].join('\n'),
        resources:
          '/ColorSpace << /Sep [/Separation /Cut /DeviceRGB << /FunctionType 2 /Domain [0 1] /C0 [1 1 1] /C1 [0 1 0] /N 1 >>] >> /Pattern << /P 1000 0 R >>',
      },
      {
        objects: [
          {
            dictionary:
              '/PatternType 1 /PaintType 1 /TilingType 1 /BBox [0 0 5 5] /XStep 5 /YStep 5 /Resources << >>',
            stream: '0 0 m 5 5 l S',
          },
        ],
      },
    );
    const strokes = page.lines.map(({ stroke }) => stroke);
    expect(strokes[2]).toMatch(/^#[0-3][0-9a-f][0-3][0-9a-f][0-3][0-9a-f]$/);
    expect(strokes.filter((_, i) => i !== 2)).toEqual(['#808080', '#ff0000', '#0000ff', '#00ff00', 'other']);
  });

  it('when a dash pattern has no gaps, the line is solid', async () => {
    const at = (n: number) => `${10 + 10 * n} 10 m ${10 + 10 * n} 90 l S`;
    const page = await onePage({
      content: `[3] 0 d ${at(0)} [] 0 d ${at(1)} [4 0] 0 d ${at(2)} [4 2] 1 d ${at(3)} [0 3] 0 d ${at(4)}`,
    });
    expect(page.lines.map(({ isDashed }) => isDashed)).toEqual([true, false, false, true, true]);
  });

  it('when an area is filled and not stroked, its outline is closed; a ring is an outline and a hole', async () => {
    const page = await onePage({
      content:
        '0 0 1 rg 10 10 m 60 10 l 60 60 l f 10 100 80 80 re 30 120 40 40 re f* 0 1 0 RG 100 10 30 30 re B',
    });
    expect(page.lines.map(({ isHole }) => isHole)).toEqual([false, false, true, false]);
    expect(page.lines.every(({ curve }) => curve.closed)).toBe(true);
    expect(page.lines[0]).toMatchObject({ fill: '#0000ff', widthMm: 0 });
    expect(page.lines[0]!.stroke).toBeUndefined();
    expect(page.lines[3]).toMatchObject({ fill: '#0000ff', stroke: '#00ff00' });
  });

  it('when lines and areas are white or can not be seen, they are left out and told of', async () => {
    const { lines, findings } = await onePage({
      content:
        '1 G 1 g 10 10 50 50 re S 5 5 100 100 re f 0 G 20 20 30 30 re B q /T gs 5 5 m 9 9 l S Q 0 0 200 300 re n',
      resources: '/ExtGState << /T << /CA 0 /ca 0 >> >>',
    });
    expect(lines.map(({ source }) => source.name)).toEqual(['path 3 on page 1']);
    expect(lines[0]).toMatchObject({ stroke: '#000000', fill: '#ffffff' });
    const [white] = findings.diagnostics;
    expect(white).toMatchObject({ code: 'pdf-white-lines', params: { count: 2 } });
    expect(findings.ignored).toEqual([{ element: 'path 4 on page 1', reason: 'not painted' }]);
  });

  it('when a line is drawn by its filled outline, that is told', async () => {
    const { lines, findings } = await onePage({
      content: '10 10 100 1 re f 10 50 m 60 90 l 61 89 l 11 49 l f 10 150 40 40 re f',
    });
    expect(lines).toHaveLength(3);
    expect(findings.diagnostics).toMatchObject([
      { code: 'pdf-thin-areas', params: { count: 2, elements: 'path 1 on page 1, path 2 on page 1' } },
    ]);
  });
});

describe('forms and layers', () => {
  // ISO 32000-1, 8.10.1: the matrix maps the form into user space, its box clips it, then the state is as before.
  it('when forms are drawn within forms, matrices and boxes of both hold', async () => {
    const page = await onePage(
      {
        content: 'q 1 0 0 1 20 30 cm 1 0 0 RG /A Do Q 0 0 m 10 0 l S',
        resources: '/XObject << /A 1000 0 R >>',
      },
      {
        objects: [
          {
            dictionary:
              '/Type /XObject /Subtype /Form /BBox [0 0 20 20] /Matrix [2 0 0 2 0 0] /Resources << /XObject << /B 1001 0 R >> >>',
            stream: '5 w /B Do 0 5 m 50 5 l S',
          },
          {
            dictionary:
              '/Type /XObject /Subtype /Form /BBox [0 0 10 10] /Matrix [0 1 -1 0 10 0] /Group << /S /Transparency >>',
            stream: 'q q 2 w -5 5 m 30 5 l S 0 G',
          },
        ],
      },
    );
    // The inner form: x along y, clipped to 10 units = 20 points; the outer line: clipped to 20 units = 40 points.
    const lengths = page.lines.map(({ curve }) => curveLength(curve) / mm(1));
    expect(lengths[0]).toBeCloseTo(20, 2);
    expect(lengths[1]).toBeCloseTo(40, 2);
    expectCorners(page.lines[0]!.curve, [
      [mm(20 + 2 * 5), mm(300 - 30)],
      [mm(20 + 2 * 5), mm(300 - 30 - 20)],
    ]);
    expect(page.lines.map(({ stroke, widthMm }) => [stroke, widthMm])).toEqual([
      ['#ff0000', 1.4111],
      ['#ff0000', 3.5278],
      ['#000000', 0.3528],
    ]);
  });

  // ISO 32000-1, 8.11: optional content; the default configuration switches layers off.
  it('when the page has layers, lines know their layer, and what is switched off is left out and told', async () => {
    const { lines, findings, texts } = await onePage(
      {
        content:
          '/OC /L1 BDC 10 10 m 10 90 l S EMC /OC /L2 BDC 20 10 m 20 90 l S BT /F1 9 Tf 20 20 Td (off) Tj ET EMC /Span BMC /OC /L1 BDC 30 10 m 30 90 l S EMC EMC 40 10 m 40 90 l S /X Do',
        resources: '/Properties << /L1 1000 0 R /L2 1001 0 R >> /XObject << /X 1002 0 R >>',
      },
      {
        objects: [
          { dictionary: '/Type /OCG /Name (Stitch lines)' },
          { dictionary: '/Type /OCG /Name (Notes)' },
          {
            dictionary: '/Type /XObject /Subtype /Form /BBox [0 0 99 99] /OC 1001 0 R',
            stream: '50 10 m 50 90 l S',
          },
        ],
        catalog: '/OCProperties << /OCGs [1000 0 R 1001 0 R] /D << /OFF [1001 0 R] >> >>',
      },
    );
    const layers = lines.map(({ source }) => source.groups.flatMap(({ labels }) => labels.given));
    expect(layers).toEqual([['Stitch lines'], ['Stitch lines'], []]);
    expect(lines[0]!.source.groups[0]!.key).toBe(lines[1]!.source.groups[0]!.key);
    expect(findings.ignored).toEqual([{ element: 'layer "Notes" on page 1', reason: 'hidden' }]);
    expect(texts).toEqual([]);
  });

  it('when a soft mask has shapes of its own, they are no lines', async () => {
    const { lines, findings } = await onePage(
      {
        content: '/M gs 10 10 m 10 90 l S',
        resources: '/ExtGState << /M << /SMask << /S /Luminosity /G 1000 0 R >> >> >>',
      },
      {
        objects: [
          {
            dictionary:
              '/Type /XObject /Subtype /Form /BBox [0 0 99 99] /Group << /S /Transparency /CS /DeviceGray >>',
            stream: '1 g 0 0 50 50 re f 0 G 50 10 m 50 90 l S',
          },
        ],
      },
    );
    expect(lines).toHaveLength(1);
    expect(findings.ignored).toContainEqual({ element: 'soft mask on page 1', reason: 'mask' });
  });
});

describe('texts of a page', () => {
  // ISO 32000-1, 9.4.4, and the widths of Helvetica's letters as its metrics give them.
  it('when a line of text is shown word by word or letter by letter, it is one text', async () => {
    const { texts } = await onePage({
      content: [
        '0 0 m 9 9 l S BT /F1 12 Tf 20 200 Td (front) Tj 28 0 Td (cut) Tj 20 0 Td (4) Tj ET',
        'BT /F1 10 Tf 20 100 Td [(st) -20 (rap) -400 (left)] TJ ET',
        'BT /F1 10 Tf 20 50 Td (a) Tj 5.56 0 Td (b) Tj 60 0 Td (far) Tj 0 -14 Td (below) Tj ET',
      ].join('\n'),
    });
    expect(texts.map(({ text }) => text)).toEqual(['front cut 4', 'strap left', 'ab', 'far', 'below']);
    expect(texts[0]!.at.x).toBeCloseTo(mm(20), 3);
    expect(texts[0]!.at.y).toBeCloseTo(mm(100), 3);
    expect(texts[0]).toMatchObject({ angleDeg: 0, sizeMm: 4.233 });
  });

  it('when text is turned with the page, enlarged, or invisible, that is read', async () => {
    const { texts } = await onePage({
      content:
        '0 0 m 9 9 l S BT /F1 1 Tf 0 12 -12 0 50 60 Tm (up) Tj ET BT 3 Tr /F1 9 Tf 20 20 Td (scanned) Tj ET BT 0 Tr /F1 9 Tf 500 20 Td (outside) Tj ET',
      entries: '/Rotate 90',
    });
    expect(texts).toHaveLength(1);
    // Upwards on the paper, and then turned clockwise with it: as one reads.
    expect(texts[0]).toMatchObject({ text: 'up', angleDeg: 0, sizeMm: 4.233 });
    expectCorners({ start: texts[0]!.at, segments: [], closed: false }, [[mm(60), mm(50)]]);
  });
});

describe('clipping', () => {
  // ISO 32000-1, 8.5.4: the clip limits what is painted, letters too.
  it('when a clip cuts a text or it begins on the edge of the clip, it is read; what is all outside is not', async () => {
    const { texts } = await onePage({
      content:
        '0 0 m 9 9 l S q 50 0 100 200 re W n BT /F1 12 Tf 30 150 Td (keeper) Tj 20 -40 Td (front) Tj 60 -40 Td (seam) Tj -110 0 Td (left) Tj ET Q',
    });
    expect(texts.map(({ text }) => text)).toEqual(['keeper', 'front', 'seam']);
  });

  it('when a circle is drawn over the edge of the page, its parts stay cubics and end on the edge', async () => {
    const k = 0.5522847498 * 50;
    const circle = `50 0 m 50 ${k} ${k} 50 0 50 c ${-k} 50 -50 ${k} -50 0 c -50 ${-k} ${-k} -50 0 -50 c ${k} -50 50 ${-k} 50 0 c h S`;
    const page = await onePage({ content: `1 0 0 1 0 150 cm ${circle}` });
    expect(page.lines).toHaveLength(1);
    const { curve } = page.lines[0]!;
    expect(curve.closed).toBe(false);
    expect(curve.segments.every(({ kind }) => kind === 'cubic')).toBe(true);
    expect(curve.start.x).toBe(0);
    expect(curve.segments.at(-1)!.to.x).toBe(0);
    // Half of the circumference of a circle of 50 points: 2 pi r / 2; the four cubics are within 0.03 % of it.
    expect(Math.abs(curveLength(curve) - Math.PI * mm(50))).toBeLessThan(0.02);
  });

  it('when rectangles and other paths clip one after the other, what is within all of them stays', async () => {
    const page = await onePage({
      content:
        'q 20 20 100 100 re W n 70 0 m 140 70 l 70 140 l 0 70 l h W n 0 70 m 200 70 l S 70 10 m 70 250 l S 20 0 m 20 300 l S 0 25 m 200 25 l S Q 0 5 m 200 5 l S',
    });
    const boxes = page.lines.map(({ curve }) => curveBox(curve));
    const points = boxes.map(({ minX, minY, maxX, maxY }) =>
      [minX, mm(300) - maxY, maxX, mm(300) - minY].map((value) => Math.round((value / mm(1)) * 100) / 100),
    );
    expect(points).toEqual([
      [20, 70, 120, 70],
      [70, 20, 70, 120],
      // Along an edge of the rectangle, where the rhombus lets it be seen: |x - 70| + |y - 70| is 70 at most.
      [20, 50, 20, 90],
      [45, 25, 95, 25],
      [0, 5, 200, 5],
    ]);
  });

  it('when a round clip cuts straight lines, they end on the circle', async () => {
    const k = 0.5522847498 * 40;
    const clip = `40 0 m 40 ${k} ${k} 40 0 40 c ${-k} 40 -40 ${k} -40 0 c -40 ${-k} ${-k} -40 0 -40 c ${k} -40 40 ${-k} 40 0 c h W n`;
    const page = await onePage({
      content: `1 0 0 1 100 150 cm ${clip} -90 24 m 90 24 l S -30 -90 m -30 90 -20 90 -20 -90 c S -60 -60 120 120 re S`,
    });
    // Pythagoras: a chord 24 from the centre of a circle of 40 is 64 long.
    expect(curveLength(page.lines[0]!.curve)).toBeCloseTo(mm(64), 1);
    expect(page.lines).toHaveLength(3);
    expect(page.lines[1]!.curve.segments[0]!.kind).toBe('cubic');
  });

  it('when even-odd clips have a hole, nothing within the hole stays', async () => {
    const page = await onePage({ content: '10 10 100 100 re 40 40 40 40 re W* n 0 60 m 200 60 l S' });
    const spans = page.lines.map(({ curve }) =>
      [curve.start.x, curve.segments[0]!.to.x].map((x) => Math.round((x / mm(1)) * 100) / 100),
    );
    expect(spans).toEqual([
      [10, 40],
      [80, 110],
    ]);
  });

  it('when a filled area reaches over the edge of the page or ends on it, the edge is none of its lines', async () => {
    const page = await onePage({ content: '150 100 100 60 re f 0 0 200 40 re f' });
    expect(page.lines.map(({ curve }) => curve.closed)).toEqual([false, false]);
    expect(page.lines.map(({ curve }) => curve.segments.length)).toEqual([3, 1]);
    expect(curveLength(page.lines[1]!.curve)).toBeCloseTo(mm(200), 2);
  });

  it('when nothing is left by the clip, nothing is drawn', async () => {
    const page = await onePage({
      content: 'q 10 10 20 20 re W n 50 50 40 40 re S 60 60 20 20 re W n 0 15 m 90 15 l S Q 5 5 m 9 9 l S',
    });
    expect(page.lines.map(({ source }) => source.name)).toEqual(['path 3 on page 1']);
  });
});
