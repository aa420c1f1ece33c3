import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { arcCentre, boxUnion, curveArea, curveBox, curveLength, curveSteps } from '@hidebound/geometry';
import { readPatternDxf } from '@hidebound/intake';
import { describe, expect, test } from 'vitest';
import { numberedColour } from '../packages/intake/src/dxf/colours.js';
import { readDxfDrawing } from '../packages/intake/src/dxf/read-drawing.js';
import type { DrawnLine } from '../packages/intake/src/drawing/drawn-line.js';
import { newFindings } from '../packages/intake/src/findings.js';
import { ROOT, testFolder } from './cli-support.js';
import { pythonWith, testWith } from './tools/outside.js';

// The judge is ezdxf (Debian's python3-ezdxf, 0.18 and later): it writes the files and measures its own chords of them.
const ezdxf = pythonWith('ezdxf', 'python3-ezdxf');
const folder = testFolder();

interface Figures {
  readonly length: number;
  readonly area: number;
  readonly box: readonly [number, number, number, number];
}

let written: Readonly<Record<string, Readonly<Record<string, Figures>>>> | undefined;
function figures(): NonNullable<typeof written> {
  if (written === undefined) {
    ezdxf.run([join(ROOT, 'tests/tools/write-dxf-shapes.py'), folder]);
    const text = readFileSync(join(folder, 'figures.json'), 'utf8');
    ({ figures: written } = JSON.parse(text) as { figures: NonNullable<typeof written> });
  }
  return written;
}

/** ezdxf keeps $INSUNITS out of R12, which did not know it, so there the unit is asked for. */
const options = (release: string) => {
  const file = `shapes-${release}.dxf`;
  return release === 'R12' ? { file, reading: { file, units: 'mm' as const, roles: [] } } : { file };
};
const bytesOf = (release: string) => readFileSync(join(folder, `shapes-${release}.dxf`));

function byLayer(release: string): Map<string, DrawnLine[]> {
  const { file, reading } = { reading: undefined, ...options(release) };
  const { drawing } = readDxfDrawing(bytesOf(release), reading, newFindings(file));
  const layers = new Map<string, DrawnLine[]>();
  for (const line of drawing.lines) {
    const layer = line.source.groups[0]!.labels.given[0]!;
    layers.set(layer, [...(layers.get(layer) ?? []), line]);
  }
  return layers;
}

const WITHIN_MM = 0.01;

describe('shapes that ezdxf writes', () => {
  for (const release of ['R12', 'R2000', 'R2004', 'R2007', 'R2010', 'R2013', 'R2018']) {
    testWith(ezdxf, `when they are read from ${release}, lengths, areas and boxes are those of ezdxf`, () => {
      const wanted = figures()[release]!;
      const layers = byLayer(release);
      expect([...layers.keys()].sort()).toEqual(Object.keys(wanted).sort());
      for (const [layer, want] of Object.entries(wanted)) {
        const curves = layers.get(layer)!.map(({ curve }) => curve);
        const length = curves.reduce((sum, curve) => sum + curveLength(curve), 0);
        const closed = curves.filter((curve) => curve.closed);
        const area = closed.reduce((sum, curve) => sum + Math.abs(curveArea(curve)), 0);
        const box = curves.map(curveBox).reduce(boxUnion);
        expect(Math.abs(length - want.length), `${layer}: length`).toBeLessThan(WITHIN_MM * curves.length);
        expect(Math.abs(area - want.area), `${layer}: area`).toBeLessThan(WITHIN_MM * length);
        const got = [box.minX, -box.maxY, box.maxX, -box.minY];
        got.forEach((n, i) => expect(Math.abs(n - want.box[i]!), `${layer}: box`).toBeLessThan(WITHIN_MM));
      }
    });
  }

  testWith(ezdxf, 'when loose lines and arcs meet, they are one closed outline whose arcs stay arcs', () => {
    figures();
    const read = readPatternDxf(bytesOf('R2010'), options('R2010'));
    const chain = read.pieces.find(({ piece }) => piece.name === 'chain')!.piece.cut;
    const arcs = curveSteps(chain).flatMap(({ from, segment }) =>
      segment.kind === 'arc' ? [arcCentre(from, segment.via, segment.to)] : [],
    );
    const centres = arcs.map((arc) => (arc === 'straight' ? [] : [arc.center.x, -arc.center.y, arc.radius]));
    const sorted = centres.sort((a, b) => a[0]! - b[0]! || a[1]! - b[1]!);
    // As the file's ARC entities have them.
    const wanted = [
      [1410, 10, 10],
      [1410, 50, 10],
      [1490, 10, 10],
      [1490, 50, 10],
    ];
    expect(sorted).toHaveLength(4);
    sorted.forEach((arc, i) =>
      arc.forEach((n, k) => expect(Math.abs(n - wanted[i]![k]!)).toBeLessThan(WITHIN_MM)),
    );
    expect(chain.closed).toBe(true);
  });

  testWith(ezdxf, 'when a block is mirrored or turned, its arcs keep their radius', () => {
    figures();
    const layers = byLayer('R2018');
    for (const layer of ['mirrored', 'insert-below']) {
      const [line] = layers.get(layer)!;
      const radii = curveSteps(line!.curve).flatMap(({ from, segment }) => {
        const arc = segment.kind === 'arc' ? arcCentre(from, segment.via, segment.to) : 'straight';
        return arc === 'straight' ? [] : [arc.radius];
      });
      // A bulge of 0.5 over 20 mm has a radius of 20 (1 + 0.5²) / (4 · 0.5) = 12.5 mm; the block is drawn twice as large.
      expect(radii).toHaveLength(1);
      expect(Math.abs(radii[0]! - 25)).toBeLessThan(WITHIN_MM);
    }
  });

  /** Ink is white in its table, its dark half colours (7 and 9 at the end) are lighter from the greens on, and of the greys from 250 no two programs agree. */
  const isAgreed = (number: number) =>
    number < 7 || (number > 7 && number < 250 && ![7, 9].includes(number % 10)) || number === 9;

  testWith(ezdxf, 'when colours are numbered, they are those of its table, but for a few', () => {
    const script =
      'import json; from ezdxf.colors import DXF_DEFAULT_COLORS as c; print(json.dumps(list(c)[:256]))';
    const table = JSON.parse(ezdxf.run(['-c', script]).toString()) as number[];
    const differs = (number: number) =>
      [0, 2, 4].some((at) => {
        const channel = parseInt(numberedColour(number).slice(at + 1, at + 3), 16);
        // Roundings differ by a step or two.
        return Math.abs(channel - ((table[number]! >> (16 - 4 * at)) & 0xff)) > 2;
      });
    const numbers = Array.from({ length: 255 }, (_, i) => i + 1).filter(isAgreed);
    expect(numbers.filter(differs)).toEqual([]);
    expect(numbers.length).toBe(200);
  });
});

test('when a colour has the number of ink, it is black, as on paper', () => {
  expect(numberedColour(7)).toBe('#000000');
});
