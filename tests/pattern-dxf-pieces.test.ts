import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { curveArea, curveBox } from '@hidebound/geometry';
import { readPattern } from '@hidebound/intake';
import type { PatternRead } from '@hidebound/intake';
import { cutFileOf } from '@hidebound/leather';
import type { RoleRule } from '@hidebound/leather';
import { drawCutFile, writeDxf } from '@hidebound/render';
import { loadFontBook } from '@hidebound/render/node';
import { describe, expect, test } from 'vitest';
import { ROOT, testFolder } from './cli-support.js';
import { layCutJob } from './support/cut-job.js';
import { pythonWith, testWith } from './tools/outside.js';
import { block, circle, dxfBytes, insert, line, rectangle } from '../packages/intake/src/dxf/test-dxf.js';
import type { TestPair } from '../packages/intake/src/dxf/test-dxf.js';

const ezdxf = pythonWith('ezdxf', 'python3-ezdxf');
const folder = testFolder();

const codes = (read: PatternRead) => read.diagnostics.map(({ code }) => code);
const sizeOf = (curve: Parameters<typeof curveBox>[0]) => {
  const { minX, minY, maxX, maxY } = curveBox(curve);
  return [maxX - minX, maxY - minY].map((n) => Math.round(n * 1000) / 1000);
};

// What ASTM D6673 says of layers and texts is from memory; ezdxf writes the file by a script of ours.
describe('a file of pieces as ASTM D6673 describes it', () => {
  function write(units: 'METRIC' | 'ENGLISH'): Buffer {
    const path = join(folder, `${units}.dxf`);
    ezdxf.run([join(ROOT, 'tests/tools/write-dxf-pieces.py'), path, units]);
    return readFileSync(path);
  }

  for (const units of ['METRIC', 'ENGLISH'] as const) {
    testWith(ezdxf, `when its text says ${units} units, all sizes are right`, async () => {
      const read = await readPattern(write(units), { file: 'bag.dxf' });
      expect(read.pieces.map(({ piece }) => [piece.name, ...sizeOf(piece.cut)])).toEqual([
        ['FRONT size M', 100, 80],
        ['STRAP size M', 150, 25],
        ['FRONT size L', 110, 80],
      ]);
      expect(read.scale.mmPerUnit).toBe(units === 'METRIC' ? 1 : 25.4);
    });
  }

  testWith(ezdxf, 'when a layer has a meaning, its lines are that', async () => {
    const read = await readPattern(write('METRIC'), { file: 'bag.dxf' });
    const { piece, count, mirrored, material } = read.pieces[0]!;
    expect({ count, mirrored, material }).toEqual({ count: 2, mirrored: 1, material: 'BODY' });
    // A point on the boundary cuts square to it, 5 mm deep; a short line as deep as it is long.
    expect(piece.notches.map(({ depthMm, angleDeg }) => [depthMm, angleDeg])).toEqual([
      [5, 90],
      [4, 0],
    ]);
    expect(piece.punches.map(({ diameterMm }) => diameterMm)).toEqual([2, 4]);
    expect(piece.cutOuts.map((cut) => Math.abs(curveArea(cut)))).toEqual([400]);
    // The sew line, and the closed internal line, which is no opening.
    expect(piece.stitchLines).toHaveLength(2);
    expect(piece.direction!.to.y - piece.direction!.from.y).toBe(-40);
    const left = read.ignored.map(({ reason }) => reason);
    expect(left.filter((reason) => reason === 'point of a boundary')).toHaveLength(10);
    expect(left.filter((reason) => reason === 'marked to be ignored')).toHaveLength(2);
  });

  testWith(ezdxf, 'when pieces lie one over the other, they are set apart', async () => {
    const read = await readPattern(write('METRIC'), { file: 'bag.dxf' });
    expect(codes(read)).toContain('dxf-pieces-apart');
    const boxes = read.pieces.map(({ piece }) => curveBox(piece.cut));
    boxes.forEach((a, i) =>
      boxes.slice(i + 1).forEach((b) => {
        const isApart = a.maxX < b.minX || b.maxX < a.minX || a.maxY < b.minY || b.maxY < a.minY;
        expect(isApart).toBe(true);
      }),
    );
  });

  testWith(ezdxf, "when the order has a rule for a layer, it comes before the layer's meaning", async () => {
    const roles: RoleRule[] = [{ layer: '14', role: 'fold' }];
    const read = await readPattern(write('METRIC'), { file: 'bag.dxf', reading: { file: 'bag.dxf', roles } });
    expect(read.pieces[0]!.piece.foldLines).toHaveLength(1);
  });
});

describe('blocks that are pieces', () => {
  const text = (value: string): TestPair[] => [
    [0, 'TEXT'],
    [8, '1'],
    [10, 0],
    [20, 0],
    [40, 3],
    [1, value],
  ];
  const boundary = rectangle(0, 0, 60, 40, [[8, '1']]);
  const read = (entities: readonly TestPair[], blocks: readonly TestPair[]) =>
    readPattern(dxfBytes({ entities, blocks }), { file: 'a.dxf' });

  test('when nothing puts them in place, they are drawn all the same', async () => {
    const blocks = [
      ...block('A', [...boundary, ...text('Piece Name: FRONT')]),
      ...block('B', [...boundary, ...text('PIECE NAME: BACK')]),
    ];
    const { pieces } = await read([], blocks);
    expect(pieces.map(({ piece }) => piece.name)).toEqual(['FRONT', 'BACK']);
  });

  test('when a quantity can not be read, that is told', async () => {
    const blocks = block('A', [...boundary, ...text('Piece Name: FRONT'), ...text('Quantity: a few')]);
    const found = await read(insert('A', 0, 0), blocks);
    expect(found.pieces[0]!.count).toBeUndefined();
    expect(codes(found)).toContain('dxf-quantity');
  });

  test('when a notch is a point away from the boundary, that is told', async () => {
    const point: TestPair[] = [
      [0, 'POINT'],
      [8, '4'],
      [10, 30],
      [20, 20],
    ];
    const found = await read(
      insert('A', 0, 0),
      block('A', [...boundary, ...text('Piece Name: FRONT'), ...point]),
    );
    expect(found.pieces[0]!.piece.notches).toEqual([]);
    expect(codes(found)).toContain('dxf-point-off-boundary');
  });

  test('when a piece has a mirror line, it is unfolded about it', async () => {
    const mirror = line(0, 0, 0, 40, [[8, '6']]);
    const { pieces } = await read(
      insert('A', 0, 0),
      block('A', [...boundary, ...mirror, ...text('Piece Name: BACK')]),
    );
    expect(sizeOf(pieces[0]!.piece.cut)).toEqual([120, 40]);
  });

  test('when a plain drawing has layers called 1 and 14, they mean nothing', async () => {
    const inner = rectangle(10, 10, 10, 8, [[8, '14']]);
    const { pieces } = await read(insert('Flap', 0, 0), block('Flap', [...boundary, ...inner]));
    expect(pieces[0]!.piece.name).toBe('Flap');
    // By its size an opening, where a sew line of that layer would be a stitch line.
    expect(pieces[0]!.piece.cutOuts).toHaveLength(1);
    expect(pieces[0]!.piece.stitchLines).toEqual([]);
  });
});

describe('our own cut files', () => {
  test.each(['R12', 'R2000'] as const)(
    'when one is written as %s, its pieces read back the same',
    async (version) => {
      const job = await layCutJob(folder, version, '{ method: laser, gap: 5, edge: 3, void: 2 }');
      const options = {
        choice: 'pieces',
        kerfMm: 0,
        overcutMm: 0,
        marks: false,
        frame: false,
        labels: false,
        side: 'grain',
      } as const;
      const { file } = cutFileOf(job.layout, job.hide, options);
      const { drawing } = drawCutFile(file, {
        title: 'job',
        text: { fonts: loadFontBook(), numberOf: () => '7' },
      });
      const path = join(folder, `cut-${version}.dxf`);
      writeFileSync(path, writeDxf(drawing, version));
      const read = await readPattern(readFileSync(path), { file: path });
      const areas = (all: readonly number[]) => all.map(Math.abs).sort((a, b) => a - b);
      const got = areas(read.pieces.map(({ piece }) => curveArea(piece.cut)));
      // Straps are cut edge by edge there, each edge a line of its own.
      const { pieces, placements } = job.layout;
      const cutOf = (name: string) => pieces.find(({ piece }) => piece === name)!.shape.cut;
      const want = areas(placements.map(({ piece }) => curveArea(cutOf(piece))));
      expect(got).toHaveLength(want.length);
      // Curves become arcs within 0.005 mm when written (rings of some 500 mm).
      got.forEach((area, i) => expect(Math.abs(area - want[i]!)).toBeLessThan(5));
    },
  );
});

// Both sides of the same reader: kept small on purpose.
test('when a file is told by its first bytes, DXF and DWG come to this reader', async () => {
  const read = await readPattern(dxfBytes({ entities: [...line(0, 0, 1, 1), ...circle(0, 0, 30)] }), {
    file: 'a.svg',
  });
  expect(read.format).toBe('DXF');
  expect(read.pieces).toHaveLength(1);
});
