import { circleCurve, curveBox, curveLength, flattenCurve, pointInRing } from '@hidebound/geometry';
import type { Curve } from '@hidebound/geometry';
import { describe, expect, test } from 'vitest';
import type { StrapLane } from '../model/layout.js';
import { drawStrap } from '../pieces/draw.js';
import { cutFileOf } from './cut-file.js';
import { PANEL, PLAIN, box, corners, disc, layoutOf, square } from './test-layouts.js';
import { plainPiece } from '../testing/plain.js';
import type { Laid } from './test-layouts.js';
import type { CutFile, CutFileOptions, CutPath } from './types.js';

function cut(
  laid: readonly Laid[],
  options: Partial<CutFileOptions> = {},
  more: Parameters<typeof layoutOf>[1] = {},
) {
  return cutFileOf(layoutOf(laid, more), PANEL, { ...PLAIN, ...options });
}

const kinds = (file: CutFile): string[] => file.paths.map(({ kind }) => kind);
const owners = (file: CutFile): string[] =>
  file.paths.map(({ of }) => (of.kind === 'piece' ? `${of.copy.piece}${of.copy.copy}` : of.id));
const widthOf = (curve: Curve): number => curveBox(curve).maxX - curveBox(curve).minX;
const strokeOf = (path: CutPath | undefined): Curve => path!.strokes[0]!;

const plate = square('plate', 40, {
  cutOuts: [box(-10, -5, 10, 5)],
  punches: [{ at: { x: 15, y: 15 }, diameterMm: 4 }],
  stitchLines: [{ curve: box(-18, -18, 18, 18) }],
});

describe('the order of cutting', () => {
  test('when pieces have marks, holes and openings, all of these come before any outline', () => {
    const { file } = cut([
      { shape: plate, x: 100, y: 100 },
      { shape: plate, x: 300, y: 100 },
    ]);
    expect(kinds(file)).toEqual([
      ...['stitch', 'stitch'],
      ...['punch', 'punch'],
      ...['opening', 'opening'],
      ...['cut', 'cut'],
    ]);
    expect(file.paths.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });

  test('when a piece lies in the opening of another, it is cut before that opening, and the opening before its outline', () => {
    const frame = square('frame', 200, { cutOuts: [box(-60, -60, 60, 60)] });
    const { file } = cut([
      { shape: frame, x: 300, y: 300 },
      { shape: disc('washer', 20), x: 300, y: 300 },
    ]);
    expect(kinds(file)).toEqual(['cut', 'cut', 'cut']);
    expect(file.paths.map((path) => Math.round(widthOf(strokeOf(path))))).toEqual([40, 120, 200]);
  });

  test('when several outlines may come next, the nearest one does, from the lower left corner on', () => {
    const small = square('a', 20);
    const { file } = cut([
      { shape: small, x: 900, y: 550 },
      { shape: small, x: 500, y: 550 },
      { shape: small, x: 100, y: 550 },
      { shape: small, x: 700, y: 540 },
    ]);
    expect(owners(file)).toEqual(['a3', 'a2', 'a4', 'a1']);
  });

  test('when the same layout is cut again, the result is the same to the bit', () => {
    const laid = [1, 2, 3, 4, 5].map((i) => ({ shape: plate, x: 100 * i, y: 80 * i, rotationDeg: 31 * i }));
    const options: Partial<CutFileOptions> = {
      kerfMm: 0.2,
      leadIn: { kind: 'arc', lengthMm: 3 },
      bridges: { count: 2, widthMm: 1 },
    };
    expect(cut(laid, options)).toEqual(cut(laid, options));
  });
});

describe('the kerf', () => {
  // Laser service bureaux (S156, S161 of the facts): half the kerf goes off each side of the line.
  test('when a part of 40 mm is cut with a kerf of 0.2 mm, its line is 40.2 mm wide; left as drawn the part is 39.8 mm', () => {
    const laid = [{ shape: square('part', 40), x: 100, y: 100 }];
    const partOf = (line: Curve, kerfMm: number): number => widthOf(line) - kerfMm;
    const asDrawn = strokeOf(cut(laid).file.paths[0]);
    expect(partOf(asDrawn, 0.2)).toBeCloseTo(39.8, 9);
    const allowedFor = strokeOf(cut(laid, { kerfMm: 0.2 }).file.paths[0]);
    expect(widthOf(allowedFor)).toBeCloseTo(40.2, 9);
    expect(partOf(allowedFor, 0.2)).toBeCloseTo(40, 9);
  });

  test('when there is a kerf, openings and holes move inwards and marks stay', () => {
    const { file } = cut([{ shape: plate, x: 100, y: 100 }], { kerfMm: 0.5 });
    const widths = file.paths.map((path) => [path.kind, Math.round(widthOf(strokeOf(path)) * 1e6) / 1e6]);
    expect(widths).toEqual([
      ['stitch', 36],
      ['punch', 3.5],
      ['opening', 19.5],
      ['cut', 40.5],
    ]);
  });

  test('when arcs are moved, they stay arcs', () => {
    const { file } = cut([{ shape: disc('washer', 20), x: 100, y: 100 }], { kerfMm: 0.2 });
    expect(strokeOf(file.paths[0]).segments.map(({ kind }) => kind)).toEqual(['arc', 'arc']);
  });

  test('when the kerf is as wide as a hole, the piece is named', () => {
    expect(() => cut([{ shape: plate, x: 100, y: 100 }], { kerfMm: 4 })).toThrow(
      expect.objectContaining({
        code: 'kerf-wider-than-punch',
        message: expect.stringMatching(/4 mm wide can't make the hole of 4 mm in "plate" of bag/) as string,
      }),
    );
  });

  test('when the kerf is as wide as an opening, the piece is named', () => {
    const slit = square('slit', 40, { cutOuts: [box(-10, -0.5, 10, 0.5)] });
    expect(() => cut([{ shape: slit, x: 100, y: 100 }], { kerfMm: 1 })).toThrow(
      expect.objectContaining({ code: 'kerf-wider-than-opening' }),
    );
  });

  test('when the kerf is wider than the gap between two pieces, both are named', () => {
    const laid = [
      { shape: square('a', 40), x: 100, y: 100 },
      { shape: square('b', 40), x: 140.5, y: 100 },
    ];
    expect(() => cut(laid, { kerfMm: 0.6 })).toThrow(
      expect.objectContaining({
        code: 'kerf-wider-than-gap',
        message: expect.stringMatching(/"a" of bag and "b" of bag .*0\.5 mm apart/) as string,
      }),
    );
    expect(cut(laid, { kerfMm: 0.4 }).file.paths).toHaveLength(2);
  });

  test('when a bay of an outline is narrower than the kerf, it is left and said', () => {
    const bay = plainPiece('bay', {
      start: { x: -20, y: -20 },
      segments: [
        [20, -20],
        [20, -0.2],
        [0, -0.2],
        [0, 0.2],
        [20, 0.2],
        [20, 20],
        [-20, 20],
        [-20, -20],
      ].map(([x, y]) => ({ kind: 'line' as const, to: { x: x!, y: y! } })),
      closed: true,
    });
    const { file, diagnostics } = cut([{ shape: bay, x: 100, y: 100 }], { kerfMm: 1 });
    expect(file.paths).toHaveLength(1);
    expect(diagnostics.map(({ code }) => code)).toEqual(['kerf-closes-a-bay']);
  });
});

describe('shared lines', () => {
  const strap = drawStrap('strap', {
    widthMm: 20,
    lengthMm: 300,
    holeEnd: 'pointed',
    buckleEnd: 'square',
  });
  const laneWith = (kerfMm: number): { lane: StrapLane; laid: Laid[] } => {
    const copy = (n: number) => ({ article: 'bag', piece: 'strap', set: 1, copy: n, mirrored: false });
    const lane: StrapLane = {
      id: 'L1',
      hide: 'h',
      from: { x: 0, y: 100 },
      to: { x: 500, y: 100 },
      openAt: 'from',
      kerfMm,
      rows: [1, 2, 3].map((n) => ({ widthMm: 20, straps: [copy(n)] })),
    };
    const laid = [0, 1, 2].map((i) => ({
      shape: strap,
      x: 200 + 40 * i,
      y: 110 + i * (20 + kerfMm),
      ...copy(i + 1),
    }));
    return { lane, laid };
  };
  /** Heights of the long lines, and how long each is. */
  const longLines = (file: CutFile): [number, number][] =>
    file.paths
      .filter(({ of }) => of.kind === 'lane')
      .map((path): [number, number] => [
        Math.round(strokeOf(path).start.y * 1000) / 1000,
        Math.round(path.lengthMm * 10) / 10,
      ])
      .sort(([a], [b]) => a - b);
  const cutLane = (laid: number, kerfMm: number, more: Partial<CutFileOptions> = {}) => {
    const { lane, laid: straps } = laneWith(laid);
    return cut(straps, { kerfMm, ...more }, { lanes: [lane] });
  };

  test('when a lane has no kerf, each shared line is cut once, as long as the straps on either side reach', () => {
    const { file } = cutLane(0, 0);
    const side = longLines(file)[0]![1];
    expect(longLines(file)).toEqual([
      [100, side],
      [120, side + 40],
      [140, side + 40],
      [160, side],
    ]);
    // Two ends for each strap; no other line.
    expect(file.paths).toHaveLength(4 + 6);
  });

  test('when a lane was laid with a kerf and the machine allows for it, both lines are cut', () => {
    expect(longLines(cutLane(0.2, 0).file).map(([y]) => y)).toEqual([100, 120, 120.2, 140.2, 140.4, 160.4]);
  });

  test('when the cut is as wide as the kerf that the lane was laid for, the two lines fall into one', () => {
    expect(longLines(cutLane(0.2, 0.2).file).map(([y]) => y)).toEqual([99.9, 120.1, 140.3, 160.5]);
  });

  test('when the cut is narrower than the kerf that the lane was laid for, both lines are cut', () => {
    expect(longLines(cutLane(1, 0.2).file).map(([y]) => y)).toEqual([
      99.9, 120.1, 120.9, 141.1, 141.9, 162.1,
    ]);
  });

  test('when the cut is wider than the kerf that the lane was laid for, the line is cut once and a warning says what is lost', () => {
    const { file, diagnostics } = cutLane(0, 0.2);
    expect(longLines(file).map(([y]) => y)).toEqual([100, 120, 140, 160]);
    expect(diagnostics).toEqual([
      expect.objectContaining({
        code: 'lane-laid-for-less-kerf',
        params: { lane: 'L1', laidMm: 0, kerfMm: 0.2, lessMm: 0.2 },
      }),
    ]);
  });

  test('when a lane is cut, its long lines come after the ends of its straps', () => {
    const order = cutLane(0, 0).file.paths.map(({ of }) => of.kind);
    expect(order).toEqual([...Array<string>(6).fill('piece'), ...Array<string>(4).fill('lane')]);
  });

  test('when a lane has bridges, every strap is held on both sides', () => {
    const { file } = cutLane(0, 0, { bridges: { count: 2, widthMm: 1 } });
    const bridges = file.paths.filter(({ of }) => of.kind === 'lane').map((path) => path.bridges);
    expect(bridges).toEqual([1, 1, 1, 1]);
  });

  test('when pieces touch along a straight edge, it is cut once', () => {
    const laid = [
      { shape: square('a', 40), x: 100, y: 100 },
      { shape: square('b', 30), x: 135, y: 100 },
      { shape: square('c', 20), x: 100, y: 130 },
    ];
    const { file } = cut(laid);
    expect(file.cutMm).toBeCloseTo(160 + 120 - 30 + 80 - 20, 6);
    expect(file.paths).toHaveLength(3);
  });

  test('when pieces lie a kerf apart, the cut between them is made once', () => {
    const laid = [
      { shape: square('a', 40), x: 100, y: 100 },
      { shape: square('b', 40), x: 140.2, y: 100 },
    ];
    expect(cut(laid, { kerfMm: 0.2 }).file.cutMm).toBeCloseTo(2 * 4 * 40.2 - 40.2, 6);
  });
});

describe('lead-ins', () => {
  const leadIn = { kind: 'straight', lengthMm: 4 } as const;

  test.each(['straight', 'arc'] as const)(
    'when lead-ins are asked for (%s), outlines are entered from outside, openings and holes from within',
    (kind) => {
      const { file, diagnostics } = cut([{ shape: plate, x: 100, y: 100, rotationDeg: 20 }], {
        leadIn: { kind, lengthMm: 4 },
        marks: false,
      });
      expect(diagnostics).toEqual([]);
      const bare = cut([{ shape: plate, x: 100, y: 100, rotationDeg: 20 }], { marks: false }).file;
      for (const path of file.paths) {
        expect(path.hasLeadIn).toBe(true);
        const own = bare.paths.find((one) => one.kind === path.kind)!;
        const ring = flattenCurve(strokeOf(own), 0.01).slice(0, -1);
        const place = pointInRing(strokeOf(path).start, ring);
        expect(place).toBe(path.kind === 'cut' ? 'outside' : 'inside');
      }
    },
  );

  test('when another piece is near, the lead-in keeps off its line', () => {
    const laid = [
      { shape: square('a', 40), x: 100, y: 100 },
      { shape: square('b', 40), x: 143, y: 100 },
    ];
    const { file, diagnostics } = cut(laid, { leadIn });
    expect(diagnostics).toEqual([]);
    for (const [i, path] of file.paths.entries()) {
      const other = flattenCurve(strokeOf(cut(laid).file.paths[1 - i]), 0.01).slice(0, -1);
      expect(pointInRing(strokeOf(path).start, other)).toBe('outside');
    }
  });

  test('when no lead-in has room, the cut starts on the line and a warning says where', () => {
    // A narrow frame around a piece, too near to it for a quarter of the lead-in on either side.
    const laid = [
      { shape: square('inner', 40), x: 100, y: 100 },
      { shape: square('frame', 60, { cutOuts: [box(-20.4, -20.4, 20.4, 20.4)] }), x: 100, y: 100 },
    ];
    const { file, diagnostics } = cut(laid, { leadIn: { kind: 'straight', lengthMm: 10 } });
    expect(file.paths.map(({ hasLeadIn }) => hasLeadIn)).toEqual([false, false, true]);
    expect(diagnostics).toEqual([
      expect.objectContaining({
        code: 'lead-in-no-room',
        params: expect.objectContaining({ count: 2 }) as object,
      }),
    ]);
  });
});

describe('bridges and overcut', () => {
  test('when bridges are asked for, the path misses their width and the kerf', () => {
    const laid = [{ shape: square('part', 40), x: 100, y: 100 }];
    const { file } = cut(laid, { kerfMm: 0.2, bridges: { count: 4, widthMm: 1 } });
    expect(file.paths[0]!.strokes).toHaveLength(5);
    expect(file.paths[0]!.bridges).toBe(4);
    expect(file.cutMm).toBeCloseTo(4 * 40.2 - 4 * 1.2, 6);
  });

  test('when bridges are as long as the path, the piece is named', () => {
    expect(() =>
      cut([{ shape: square('part', 10), x: 100, y: 100 }], { bridges: { count: 4, widthMm: 10 } }),
    ).toThrow(
      expect.objectContaining({
        code: 'bridges-longer-than-path',
        message: expect.stringMatching(/"part" of bag .* 40 mm long/) as string,
      }),
    );
  });

  test('when an overcut is asked for, closed cuts run past their start and marks do not', () => {
    const { file } = cut([{ shape: plate, x: 100, y: 100 }], { overcutMm: 2 });
    const lengths = Object.fromEntries(file.paths.map(({ kind, lengthMm }) => [kind, lengthMm]));
    expect(lengths['stitch']).toBeCloseTo(144, 6);
    expect(lengths['punch']).toBeCloseTo(curveLength(circleCurve({ x: 0, y: 0 }, 2)) + 2, 6);
    expect(lengths['cut']).toBeCloseTo(162, 6);
  });
});

describe('what goes into the file', () => {
  const block = {
    id: 'dyed',
    hide: 'h',
    leather: 'body',
    outline: corners(60, 60, 140, 140),
    marginMm: 10,
    members: [{ article: 'bag', piece: 'a', set: 1, copy: 1, mirrored: false }],
  };
  const laid = [
    { shape: square('a', 40), x: 100, y: 100 },
    { shape: square('b', 40), x: 300, y: 100 },
  ];

  test('when pieces are chosen, a note names the rough cuts that are left out', () => {
    const { file, diagnostics } = cut(laid, {}, { roughCuts: [block] });
    expect(owners(file).sort()).toEqual(['a1', 'b1']);
    expect(diagnostics.map(({ code }) => code)).toEqual(['rough-cuts-left-out']);
  });

  test('when rough cuts come first, blocks are cut whole, before the pieces outside them', () => {
    const { file } = cut(laid, { choice: 'rough-cuts-first' }, { roughCuts: [block] });
    expect(owners(file)).toEqual(['dyed', 'b1']);
  });

  test('when a rough cut touches a piece that is not its own, the cut around it spares that piece', () => {
    const near = [laid[0]!, { shape: square('b', 100), x: 190, y: 100 }];
    const { file } = cut(near, { choice: 'rough-cuts-first', kerfMm: 0.5 }, { roughCuts: [block] });
    const widths = file.paths.map((path) => curveBox(strokeOf(path)));
    // The piece begins at 140; its own line runs half a kerf before it, the block's a whole one.
    expect(widths.map(({ minX, maxX }) => [minX, maxX])).toEqual([
      [60, 139.5],
      [139.75, 240.25],
    ]);
  });

  test('when both are chosen, a block is cut after its pieces', () => {
    const { file } = cut(laid, { choice: 'both' }, { roughCuts: [block] });
    expect(owners(file)).toEqual(['a1', 'b1', 'dyed']);
  });

  test('when a piece is cut or spoiled already, it is left out and said', () => {
    const { file, diagnostics } = cut([laid[0]!, { ...laid[1]!, state: 'cut' }]);
    expect(owners(file)).toEqual(['a1']);
    expect(diagnostics.map(({ code }) => code)).toEqual(['already-cut-left-out']);
  });

  test('when nothing is left to cut, that is said', () => {
    expect(() => cut([{ ...laid[0]!, state: 'spoiled' }])).toThrow(
      expect.objectContaining({ code: 'cut-nothing' }),
    );
  });

  test('when marks are left out, only cuts remain', () => {
    const { file } = cut([{ shape: plate, x: 100, y: 100 }], { marks: false });
    expect(kinds(file)).toEqual(['punch', 'opening', 'cut']);
  });

  test('when a frame is asked for, it comes first, around hide and paths on whole mm', () => {
    const { file } = cut([{ shape: square('a', 40), x: 990, y: 100.3 }], { frame: true });
    expect(file.paths[0]!.kind).toBe('frame');
    expect(file.frame).toEqual({ minX: 0, minY: 0, maxX: 1010, maxY: 600 });
  });

  test('when the flesh side lies up, everything is mirrored', () => {
    const { file } = cut([{ shape: square('a', 40), x: 100, y: 100 }], { side: 'flesh', frame: true });
    expect(file.frame).toEqual({ minX: -1000, minY: 0, maxX: 0, maxY: 600 });
    const { minX, maxX } = curveBox(strokeOf(file.paths[1]));
    expect([minX, maxX]).toEqual([-120, -80]);
  });
});
