import { curveFromPolyline } from '@hidebound/geometry';
import { expect, test } from 'vitest';
import type { Layout, ResolvedArticle, ResolvedPiece } from '@hidebound/leather';
import { loadFontBook } from '../node.js';
import { textsOf } from '../sample/read-drawing.js';
import { sampleHide } from '../sample/sample-hide.js';
import { sampleLayout } from '../sample/sample-layout.js';
import { drawCuttingSheets } from './cutting-sheet.js';

const fonts = loadFontBook();
const side = sampleHide({ id: 'side-07', kind: 'side', seed: 3, flaws: 3 });
const shoulder = sampleHide({ id: 'shoulder-02', kind: 'shoulder', seed: 4, flaws: 3 });

function wordsOf(layout: Layout, hides = [side, shoulder]): string[] {
  const sheets = drawCuttingSheets({ layout, hides, page: 'A4', fonts });
  return sheets.flatMap((sheet) => textsOf(sheet).map(({ text }) => text));
}

const PLAIN: Omit<ResolvedPiece, 'name'> = {
  leather: 'body',
  part: 'front',
  from: { kind: 'disc', diameterMm: 60 },
  count: 1,
  mirrored: 0,
  looks: { face: 'A', rest: 'B' },
  bearsLoad: false,
  side: 'grain',
  direction: { rule: 'free', angleDeg: 0, toleranceDeg: 180, halfTurn: true },
  thickness: { minMm: 2, maxMm: 3 },
  tooThick: 'refuse',
  layers: 1,
  allowanceMm: 0,
  seams: [],
  priority: 0,
  inLane: false,
};

/** Every piece gets a stitch line, a pitch and a thickness. */
function sewn(layout: Layout): Layout {
  const stitch = {
    pitchMm: 4,
    with: 'awl' as const,
    gives: 'both ends' as const,
    adjustShare: 0.1,
    cornerDeg: 30,
    endGapMm: 0,
    gatherShare: 0.02,
    tailsMm: 300,
    leaveOut: [],
  };
  const names = [...new Set(layout.pieces.map(({ article }) => article))];
  const articles = names.map((name): ResolvedArticle => {
    const own = layout.pieces.filter(({ article }) => article === name);
    return {
      name,
      goods: name,
      sets: 1,
      value: 1,
      priority: 0,
      keepTogether: 'nothing',
      beside: [],
      hardware: [],
      threads: [],
      pieces: own.map(({ piece }) => ({ ...PLAIN, name: piece, stitch })),
    };
  });
  const threads = [{ name: 'linen 18/3', thicknessMm: 0.8, lengthMm: 250_000 }];
  const ends = [
    { x: -20, y: 0 },
    { x: 20, y: 0 },
  ];
  const stitchLines = [{ name: 'edge', curve: curveFromPolyline(ends, false) }];
  const pieces = layout.pieces.map((piece) => ({ ...piece, shape: { ...piece.shape, stitchLines } }));
  return { ...layout, pieces, order: { ...layout.order, articles, threads } };
}

test('when nobody says how pieces are sewn, sheets say nothing of stitching', () => {
  const words = wordsOf(sampleLayout({ hides: [side, shoulder], sets: 1, seed: 1 }));
  expect(words.some((word) => word.startsWith('Stitching'))).toBe(false);
  expect(words).not.toContain('Thread');
});

test.each([
  ['one hide', [side]],
  ['several hides', [side, shoulder]],
])(
  'when pieces of %s are sewn, holes, pitch and thread stand on the sheets, and thread is summed',
  (_, hides) => {
    const layout = sewn(sampleLayout({ hides, sets: 1, seed: 1 }));
    const words = wordsOf(layout, hides);
    expect(words.some((word) => word.startsWith('Stitching: '))).toBe(true);
    expect(words).toContain('Thread');
    expect(words).toContain('linen 18/3');
    expect(words).toContain('250.0 m');
    expect(words).toContain('with the awl; 40 mm; through 3.0 mm');
    // 40 mm at 4 mm: 11 holes; 2 * 40 * (1 + 3 / 4) + 300 = 440 mm.
    expect(words).toContain('11');
    expect(words).toContain('0.5 m');
  },
);
