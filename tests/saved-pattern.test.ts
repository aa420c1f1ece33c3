import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import {
  curveArea,
  curveFromPolyline,
  roundCurve,
  roundPoint,
  transformCurve,
  translation,
} from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import { readPattern, readPatternSvg } from '@hidebound/intake';
import type { PatternRead } from '@hidebound/intake';
import type { MarkLine, PatternPiece, Piece } from '@hidebound/leather';
import { writePatternSvg } from '@hidebound/render';
import { describe, expect, test } from 'vitest';
import { plainPiece } from '../packages/leather/src/testing/plain.js';
import { randomPattern } from './support/random-pattern.js';
import { outsideProgram, testWith } from './tools/outside.js';

// That what was saved reads back the same is the project's own promise; resvg, which knows nothing of it, measures
// the areas that the saved file draws.

/** What a piece is, but for the file that it came from. */
function told({ piece, count, mirrored, material, size }: PatternPiece) {
  return { piece, count, mirrored, material, size };
}

function readBack(pieces: readonly PatternPiece[]): PatternRead {
  return readPatternSvg(writePatternSvg(pieces, { title: 'Saved' }), { file: 'saved.svg' });
}

/** Nothing was guessed, left out or mended; only a direction that was never drawn is told of, since it is not. */
function expectNothingSaid({ diagnostics, ignored, repairs, strays }: PatternRead): void {
  expect(diagnostics.filter(({ code }) => code !== 'direction-not-drawn')).toEqual([]);
  expect([ignored, repairs, strays]).toEqual([[], [], []]);
}

function moved({ x, y }: Point, { piece, ...said }: PatternPiece): PatternPiece {
  const curve = (each: Curve) => roundCurve(transformCurve(translation(x, y), each));
  const point = (p: Point) => roundPoint({ x: p.x + x, y: p.y + y });
  const marks = (lines: readonly MarkLine[]) => lines.map((each) => ({ ...each, curve: curve(each.curve) }));
  const there: Piece = {
    ...piece,
    cut: curve(piece.cut),
    cutOuts: piece.cutOuts.map(curve),
    punches: piece.punches.map((punch) => ({ ...punch, at: point(punch.at) })),
    notches: piece.notches.map((notch) => ({ ...notch, at: point(notch.at) })),
    stitchLines: marks(piece.stitchLines),
    foldLines: marks(piece.foldLines),
    skiveLines: marks(piece.skiveLines),
    cementLines: marks(piece.cementLines),
    face: piece.face.map(curve),
    ...(piece.direction === undefined
      ? {}
      : { direction: { from: point(piece.direction.from), to: point(piece.direction.to) } }),
  };
  return { ...said, piece: there };
}

/** By how much a piece was moved, which must be whole mm. */
function offsetOf(before: PatternPiece, after: PatternPiece): Point {
  const [a, b] = [before.piece.cut.start, after.piece.cut.start];
  const offset = { x: Math.round(b.x - a.x), y: Math.round(b.y - a.y) };
  expect(roundPoint({ x: a.x + offset.x, y: a.y + offset.y })).toEqual(b);
  return offset;
}

/** Pieces that have to move are the same but for their place. */
function expectSameApartFromPlace(before: readonly PatternPiece[], after: readonly PatternPiece[]): void {
  expect(after).toHaveLength(before.length);
  before.forEach((found, i) => {
    expect(told(after[i]!)).toEqual(told(moved(offsetOf(found, after[i]!), found)));
  });
}

describe('saved patterns', () => {
  test('when 200 invented patterns are saved, each reads back equal in every field', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const pieces = randomPattern(seed);
      const read = readBack(pieces);
      expect(read.pieces.map(told), `seed ${seed}`).toEqual(pieces.map(told));
      expectNothingSaid(read);
      expect(read.scale.source).toBe('units');
      expect(read.scale.mmPerUnit).toBeCloseTo(1, 12);
    }
  });

  test('when pieces lie one on the other, they are set apart by whole mm and are the same otherwise', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const pieces = randomPattern(seed, false);
      const read = readBack(pieces);
      expectSameApartFromPlace(pieces, read.pieces);
      expectNothingSaid(read);
    }
  });

  test('when a drawing lies left of and above its corner, it is moved as a whole onto the page', () => {
    const pieces = randomPattern(3).map((found) => moved({ x: -4000, y: -250 }, found));
    const read = readBack(pieces);
    expectSameApartFromPlace(pieces, read.pieces);
    expect(new Set(pieces.map((found, i) => JSON.stringify(offsetOf(found, read.pieces[i]!)))).size).toBe(1);
  });

  test('when a saved pattern is saved again, the file is the same', () => {
    const once = writePatternSvg(randomPattern(11, false), { title: 'Saved' });
    const read = readPatternSvg(once, { file: 'saved.svg' });
    expect(writePatternSvg(read.pieces, { title: 'Saved' })).toBe(once);
  });
});

const ROOT = new URL('..', import.meta.url).pathname;
const PATTERNS = ['fixtures/demo/patterns', 'fixtures/patterns'].flatMap((folder) =>
  readdirSync(join(ROOT, folder))
    .filter((name) => name.endsWith('.svg'))
    .map((name) => join(folder, name)),
);

describe('patterns of this project', () => {
  test.each(PATTERNS)('when %s is read and saved, it reads back the same', (file) => {
    const first = readPatternSvg(readFileSync(join(ROOT, file)), { file });
    const again = readBack(first.pieces);
    expectSameApartFromPlace(first.pieces, again.pieces);
    expectNothingSaid(again);
  });
});

/** Made by cairo, ezdxf and Inkscape: fixtures/patterns/programs/make.py. */
const PROGRAMS = ['bar-roll.pdf', 'bar-roll-bare.pdf', 'cage-pad.pdf', 'frame-panel.dxf'];

describe('patterns of other programs and formats', () => {
  test.each(PROGRAMS)('when %s is read and saved, it reads back the same', async (name) => {
    const bytes = new Uint8Array(readFileSync(join(ROOT, 'fixtures/patterns/programs', name)));
    const first = await readPattern(bytes, { file: name, reading: { file: name, roles: [], units: 'in' } });
    expect(first.pieces.length).toBeGreaterThan(0);
    const again = readBack(first.pieces);
    expectSameApartFromPlace(first.pieces, again.pieces);
    expectNothingSaid(again);
  });
});

const PX_PER_MM = 4;
/** Pixels at the edge are counted by how dark they are; what is left is resvg's own rounding of shades. */
const AREA_SHARE = 0.002;

/** mm² that the cut lines and openings of one saved piece cover when filled. */
function drawnArea(svg: string): number {
  const filled = svg
    .replace(/<path data-role="cut" ([^>]*?)stroke="[^"]*"/g, '<path $1fill="#000000" stroke="none"')
    .replace(/<path data-role="cut-out" ([^>]*?)stroke="[^"]*"/g, '<path $1fill="#ffffff" stroke="none"')
    .replace(/<(?:path|circle) data-role[^>]*\/>/g, '')
    .replace(/<text.*<\/text>/g, '');
  const image = new Resvg(filled, {
    fitTo: { mode: 'zoom', value: (PX_PER_MM * 25.4) / 96 },
    background: '#ffffff',
  }).render();
  expect(image.width).toBeGreaterThan(200);
  const mmPerPx = Number(/width="([\d.]+)mm"/.exec(svg)![1]) / image.width;
  let dark = 0;
  // Each look at `pixels` copies them all.
  const { pixels } = image;
  for (let i = 0; i < pixels.length; i += 4) dark += (255 - pixels[i]!) / 255;
  return dark * mmPerPx * mmPerPx;
}

describe('the saved file as another program draws it', () => {
  test.each([2, 5, 8, 14])(
    'when resvg fills cut line and openings of seed %i, the area is that of the curves',
    (seed) => {
      const [found] = randomPattern(seed) as [PatternPiece];
      const piece = { ...found.piece, cutOuts: found.piece.cutOuts.slice(0, 1) };
      const area =
        Math.abs(curveArea(piece.cut)) - piece.cutOuts.reduce((sum, c) => sum + Math.abs(curveArea(c)), 0);
      const drawn = drawnArea(writePatternSvg([{ ...found, piece }], { title: 'Saved' }));
      expect(Math.abs(drawn / area - 1)).toBeLessThan(AREA_SHARE);
    },
  );
});

/** One piece of 100 × 80 mm with a mark of our own within. */
const edited = (mark: string) =>
  readPatternSvg(
    `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200" fill="none" stroke="#000000">
    <g data-piece="tag"><path data-role="cut" data-finished="yes" d="M10 10L110 10L110 90L10 90Z"/>${mark}</g></svg>`,
    { file: 'edited.svg' },
  ).pieces[0]!.piece;

describe('a saved pattern that was changed in a drawing program', () => {
  test('when an arc is drawn anew, the point that once stood beside it no longer counts', () => {
    const read = (d: string) =>
      edited(`<path data-role="stitch" data-finished="yes" data-via="40 44" d="${d}"/>`).stitchLines[0]!
        .curve;
    // The half circle about (40, 50) with radius 6 passes through (40, 44); with radius 10 it passes through (40, 40).
    expect(read('M34 50A6 6 0 0 1 46 50').segments).toEqual([
      { kind: 'arc', via: { x: 40, y: 44 }, to: { x: 46, y: 50 } },
    ]);
    expect(read('M30 50A10 10 0 0 1 50 50').segments).toEqual([
      { kind: 'arc', via: { x: 40, y: 40 }, to: { x: 50, y: 50 } },
    ]);
  });

  test('when a punch is made wider, it has the drawn diameter', () => {
    const read = (r: number) =>
      edited(
        `<circle data-role="punch" data-finished="yes" data-diameter="3.999" cx="40" cy="50" r="${r}"/>`,
      ).punches.map(({ diameterMm }) => diameterMm);
    expect([read(2), read(2.5)]).toEqual([[3.999], [5]]);
  });

  test('when a notch is turned, it has the drawn angle', () => {
    const read = (to: string) =>
      edited(
        `<path data-role="notch" data-finished="yes" data-angle="90.001" data-depth="4" d="M50 10L${to}"/>`,
      ).notches.map(({ angleDeg }) => angleDeg);
    expect(read('50 14')).toEqual([90.001]);
    expect(read('54 14')[0]).toBeCloseTo(45, 9);
  });

  test('when the whole drawing is turned by its group, arcs still pass through the turned points', () => {
    const { stitchLines } = edited(
      `<path data-role="stitch" data-finished="yes" transform="rotate(90 50 50)" data-via="50 44" d="M44 50A6 6 0 0 1 56 50"/>`,
    );
    expect(stitchLines[0]!.curve.segments).toEqual([
      { kind: 'arc', via: { x: 56, y: 50 }, to: { x: 50, y: 56 } },
    ]);
  });
});

describe('what was made of a drawing on reading', () => {
  const page = (body: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="400mm" viewBox="0 0 400 400" fill="none" stroke="#000000">${body}</svg>`;

  test.each([
    [
      'two sizes',
      '<g id="a"><title>size S</title><rect id="front" x="10" y="10" width="100" height="80"/></g><g id="b"><title>size M</title><rect id="front-2" x="10" y="10" width="110" height="88"/></g>',
      2,
    ],
    ['a half', '<path id="flap" d="M100 10H160L150 110H100Z"/><path class="mirror" d="M100 10V110"/>', 1],
    [
      'an allowance',
      '<rect id="pad" x="10" y="10" width="100" height="80"/><rect x="20" y="20" width="80" height="60"/>',
      1,
    ],
  ])('when %s is saved, it reads back as what it became, and nothing is done again', (_, body, count) => {
    const first = readPatternSvg(page(body), { file: 'drawn.svg' });
    expect(first.pieces).toHaveLength(count);
    const again = readBack(first.pieces);
    expectSameApartFromPlace(first.pieces, again.pieces);
    expectNothingSaid(again);
  });

  test('when a half is left as drawn and saved, it is not unfolded later either', () => {
    const body = '<path id="flap" d="M100 10H160L150 110H100Z"/><path class="mirror" d="M100 10V110"/>';
    const reading = { file: 'drawn.svg', roles: [], unfold: false };
    const first = readPatternSvg(page(body), { file: 'drawn.svg', reading });
    const again = readBack(first.pieces);
    expectSameApartFromPlace(first.pieces, again.pieces);
    expectNothingSaid(again);
  });
});

test('when a saved outline is a chain of many short chords, it stays one and becomes no arc', () => {
  const corners = Array.from({ length: 120 }, (_, i) => {
    const angle = (i * 2 * Math.PI) / 120;
    return roundPoint({ x: 100 + 50 * Math.cos(angle), y: 100 + 50 * Math.sin(angle) });
  });
  const [found] = randomPattern(1) as [PatternPiece];
  const piece = plainPiece(found.piece.name, curveFromPolyline(corners, true));
  const again = readBack([{ ...found, piece }]);
  expect(again.pieces[0]!.piece.cut).toEqual(piece.cut);
  expect(again.repairs).toEqual([]);
});

const inkscape = outsideProgram('inkscape', ['--version']);

testWith(inkscape, 'when Inkscape opens a saved pattern and saves it, all of it is still there', () => {
  const pieces = ['saddlebag-front', 'saddlebag-back', 'grip-wrap'].flatMap((name) => {
    const file = `${name}.svg`;
    return readPatternSvg(readFileSync(join(ROOT, 'fixtures/demo/patterns', file)), { file }).pieces;
  });
  const saved = writePatternSvg(pieces, { title: 'Saved' });
  const own = readPatternSvg(saved, { file: 'saved.svg' });
  const folder = mkdtempSync(join(tmpdir(), 'hidebound-saved-'));
  try {
    const [from, to] = [join(folder, 'saved.svg'), join(folder, 'again.svg')];
    writeFileSync(from, saved);
    inkscape.run([from, '--export-plain-svg', `--export-filename=${to}`]);
    const again = readPatternSvg(readFileSync(to), { file: 'again.svg' });
    expectNothingSaid(again);
    expect(again.pieces.map(told)).toEqual(own.pieces.map(told));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
