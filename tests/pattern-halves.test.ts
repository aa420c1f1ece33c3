/** Halves drawn up to a fold, unfolded: by the areas and unions that mathematics asks of a reflection. */
import {
  applyAffine,
  composeAffine,
  createRandom,
  curveArea,
  curveBox,
  curveEndPoints,
  curveLength,
  findSelfCrossing,
  flattenCurve,
  orientRing,
  rotationDeg,
  transformCurveToGrid,
  translation,
} from '@hidebound/geometry';
import type { Affine, Curve, CurveSegment, Random, Region } from '@hidebound/geometry';
import { readPatternSvg } from '@hidebound/intake';
import type { PatternReading } from '@hidebound/leather';
import { beforeAll, describe, expect, test } from 'vitest';
import { drawingToPieces } from '../packages/intake/src/drawing/to-pieces.js';
import type { DrawnLine, DrawnText } from '../packages/intake/src/drawing/drawn-line.js';
import { newFindings } from '../packages/intake/src/findings.js';
import { loadJudge } from '../packages/geometry/test-support/judge.js';
import type { Judge } from '../packages/geometry/test-support/judge.js';

let judge: Judge;
beforeAll(async () => {
  judge = await loadJudge();
}, 30_000);

const page = (body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="400mm" viewBox="0 0 400 400" fill="none" stroke="#000">${body}</svg>`;
const read = (body: string, more: Partial<PatternReading> = {}) =>
  readPatternSvg(page(body), { file: 'a.svg', reading: { file: 'a.svg', roles: [], ...more } });
type Read = ReturnType<typeof read>;
const codes = ({ diagnostics }: Pick<Read, 'diagnostics'>) => diagnostics.map(({ code }) => code);
const only = (result: Pick<Read, 'pieces'>) => {
  expect(result.pieces).toHaveLength(1);
  return result.pieces[0]!.piece;
};
const MIRROR = '<path class="mirror" d="M100 10V110"/>';
/** Half a flap, 60 x 100 mm, its fold edge at x = 100. */
const HALF = '<path id="flap" d="M100 10H160L150 110H100Z"/>';

describe('a half with a mirror line on its edge', () => {
  test('when it is read, the whole has twice its area, and edges square to the fold go straight over it', () => {
    const result = read(HALF + MIRROR);
    const { cut } = only(result);
    expect(Math.abs(curveArea(cut))).toBeCloseTo(2 * 5500, 6);
    expect(curveBox(cut)).toEqual({ minX: 40, minY: 10, maxX: 160, maxY: 110 });
    expect(cut.segments).toHaveLength(4);
    expect(result.diagnostics.find(({ code }) => code === 'unfolded')?.params).toMatchObject({
      piece: 'flap',
      width: 120,
      height: 100,
    });
    expect(codes(result)).not.toContain('lines-outside-pieces');
  });

  test('when the cut line is open and ends on the mirror line, it is unfolded just so', () => {
    const { cut } = only(read(`<path d="M100 10H160L150 110H100"/>${MIRROR}`));
    expect(Math.abs(curveArea(cut))).toBeCloseTo(11000, 6);
  });

  test('when the outline is drawn line by line, its fold edge under the mirror line too, it is unfolded just so', () => {
    const sides = ['M100 10H160', 'M160 10L150 110', 'M150 110H100', 'M100 110V10'];
    const { cut } = only(read(sides.map((d) => `<path d="${d}"/>`).join('') + MIRROR));
    expect(Math.abs(curveArea(cut))).toBeCloseTo(11000, 6);
  });

  test('when the mirror line is a short mark on the edge, all of the edge is the fold', () => {
    const { cut } = only(read(`${HALF}<path class="mirror" d="M100 50V60"/>`));
    expect(Math.abs(curveArea(cut))).toBeCloseTo(11000, 6);
  });

  test('when holes, openings and lines lie within, they are doubled, and those on the fold are not', () => {
    const piece = only(
      read(
        HALF +
          MIRROR +
          '<circle class="punch" cx="100" cy="30" r="2"/><circle class="punch" cx="140" cy="30" r="2"/>' +
          '<rect class="cut-out" x="110" y="50" width="10" height="10"/>' +
          '<path class="stitch" id="stitch-rim" d="M100 15H150"/>' +
          '<path class="stitch" id="stitch-side" d="M120 20V40"/>' +
          '<path class="fold" d="M100 80V100"/>' +
          '<path class="skive" d="M100 90H120V100H100"/>' +
          '<path class="notch" d="M155 60L150 60"/><path class="notch" d="M100 10V14"/>',
      ),
    );
    expect(piece.punches.map(({ at }) => at.x).sort()).toEqual([100, 140, 60]);
    expect(piece.cutOuts.map((curve) => curveBox(curve).minX).sort()).toEqual([110, 80]);
    expect(piece.stitchLines.map(({ name }) => name)).toEqual([
      'stitch-rim',
      'stitch-side',
      'stitch-side mirrored',
    ]);
    expect(piece.stitchLines[0]!.curve.segments).toHaveLength(1);
    expect(curveLength(piece.stitchLines[0]!.curve)).toBeCloseTo(100, 9);
    expect(piece.foldLines).toHaveLength(1);
    expect(piece.skiveLines).toHaveLength(1);
    expect(piece.skiveLines[0]!.curve.closed).toBe(true);
    expect(curveLength(piece.skiveLines[0]!.curve)).toBeCloseTo(100, 9);
    expect(piece.notches.map(({ at, angleDeg }) => [at.x, angleDeg])).toEqual([
      [155, 180],
      [45, 0],
      [100, 90],
    ]);
  });

  test('when an opening touches the fold with its straight edge, or half a hole does, each becomes one', () => {
    const piece = only(
      read(
        `${HALF}${MIRROR}<path class="cut-out" d="M100 40H115V60H100Z"/><path d="M100 80A3 3 0 0 1 100 86"/>`,
      ),
    );
    expect(piece.cutOuts).toHaveLength(1);
    expect(curveBox(piece.cutOuts[0]!)).toEqual({ minX: 85, minY: 40, maxX: 115, maxY: 60 });
    expect(piece.punches).toEqual([{ at: { x: 100, y: 83 }, diameterMm: 6 }]);
  });

  test('when the fold edge itself is bitten by an opening, the whole has the opening', () => {
    const half = '<path d="M100 10H160V110H100V80A20 20 0 0 0 100 40Z"/>';
    const piece = only(read(half + MIRROR));
    expect(Math.abs(curveArea(piece.cut))).toBeCloseTo(12000, 6);
    expect(piece.cutOuts).toHaveLength(1);
    expect(Math.abs(curveArea(piece.cutOuts[0]!))).toBeCloseTo(Math.PI * 400, 1);
  });

  test('when a quarter has two mirror lines, it is unfolded about both', () => {
    const quarter = '<path d="M100 100V40A60 60 0 0 1 160 100Z"/>';
    const { cut } = only(
      read(`${quarter}<path class="mirror" d="M100 100V40"/><path class="mirror" d="M100 100H160"/>`),
    );
    // The area of a disc; its points are rounded to 1 µm, which moves its edge by about as much.
    expect(Math.abs(Math.abs(curveArea(cut)) - Math.PI * 3600)).toBeLessThan(0.001 * curveLength(cut));
  });

  test('when more edges bear mirror lines than a quarter has, it is unfolded about the first, and told of', () => {
    const triangle = '<path d="M100 100H160L130 152Z"/>';
    const lines = ['M100 100H160', 'M160 100L130 152', 'M130 152L100 100'];
    const result = read(triangle + lines.map((d) => `<path class="mirror" d="${d}"/>`).join(''));
    expect(Math.abs(curveArea(only(result).cut))).toBeCloseTo(2 * 1560, 6);
    expect(codes(result)).toContain('several-mirrors');
  });

  test('when the order says not to unfold, the half stays, and it is said', () => {
    const result = read(HALF + MIRROR, { unfold: false });
    expect(Math.abs(curveArea(only(result).cut))).toBeCloseTo(5500, 6);
    expect(codes(result)).toContain('half-left');
    expect(only(result).foldLines).toEqual([]);
  });

  test('when the arrow lies along or across the fold it stays as drawn, else it is told of', () => {
    const along = read(`${HALF}${MIRROR}<path class="direction" d="M120 30V70"/>`);
    expect(only(along).direction).toEqual({ from: { x: 120, y: 30 }, to: { x: 120, y: 70 } });
    expect(codes(along)).not.toContain('direction-askew');
    const askew = read(`${HALF}${MIRROR}<path class="direction" d="M120 30L140 60"/>`);
    expect(codes(askew)).toContain('direction-askew');
  });
});

describe('a mirror line elsewhere', () => {
  test('when both its sides are alike, the piece is whole already', () => {
    const result = read(`<rect x="50" y="10" width="100" height="100"/>${MIRROR}`);
    expect(Math.abs(curveArea(only(result).cut))).toBeCloseTo(10000, 6);
    expect(codes(result)).toContain('already-whole');
  });

  test('when they are not, it is left out with a warning', () => {
    const result = read(`<rect x="50" y="10" width="120" height="100"/>${MIRROR}`);
    expect(Math.abs(curveArea(only(result).cut))).toBeCloseTo(12000, 6);
    expect(codes(result)).toContain('mirror-line-inside');
  });

  test('when it is bent, or lies by no piece, it is told of', () => {
    expect(codes(read(`${HALF}<path class="mirror" d="M100 10Q90 60 100 110"/>`))).toContain(
      'mirror-line-bent',
    );
    expect(codes(read(`${HALF}<path class="mirror" d="M300 10V110"/>`))).toContain('lines-outside-pieces');
  });
});

describe('words of the fold in a drawing', () => {
  const curveOf = (d: string): Curve => only(read(`<path d="${d}"/>`)).cut;
  const half = curveOf('M100 10H160L150 110H100Z');
  const source = { name: '#flap', labels: { given: [], classes: [], data: {} }, groups: [] };
  const line: DrawnLine = {
    curve: half,
    source,
    stroke: '#000000',
    widthMm: 0.2,
    isDashed: false,
    isHole: false,
  };
  const withText = (text: Partial<DrawnText>, unfold?: boolean) => {
    const findings = newFindings('a.pdf');
    const texts = [{ text: 'Place on fold', at: { x: 104, y: 80 }, source, ...text }];
    const reading = { file: 'a.pdf', roles: [], ...(unfold === undefined ? {} : { unfold }) };
    const { pieces } = drawingToPieces({ lines: [line], texts }, reading, findings);
    return { ...only({ pieces }), codes: codes(findings) };
  };

  test('when the text runs along one edge, the piece is unfolded there, with a warning', () => {
    const whole = withText({ angleDeg: 270, sizeMm: 4 });
    expect(Math.abs(curveArea(whole.cut))).toBeCloseTo(11000, 6);
    expect(whole.codes).toContain('unfolded-by-text');
  });

  test('when the text says it in other words, it is understood', () => {
    for (const text of ['Cut 1 on fold', 'ON FOLD', 'Lay this edge along the fold', 'Fold edge']) {
      expect(withText({ text, angleDeg: 90 }).codes, text).toContain('unfolded-by-text');
    }
  });

  test('when it stands much nearer to one edge than to others, that is the fold', () => {
    expect(Math.abs(curveArea(withText({}).cut))).toBeCloseTo(11000, 6);
    const beside = withText({ at: { x: 95, y: 60 } });
    expect(Math.abs(curveArea(beside.cut))).toBeCloseTo(11000, 6);
  });

  test('when it stands in the middle, nothing is unfolded, and the way to say it is told', () => {
    const unclear = withText({ at: { x: 128, y: 60 } });
    expect(Math.abs(curveArea(unclear.cut))).toBeCloseTo(5500, 6);
    expect(unclear.codes).toContain('half-unclear');
  });

  test('when the order says not to unfold, or the text speaks of something else, the piece stays as drawn', () => {
    expect(withText({}, false).codes).not.toContain('unfolded-by-text');
    for (const text of ['Fold here', 'Stitch to fold', 'Skive on fold line']) {
      const other = withText({ text });
      expect(Math.abs(curveArea(other.cut))).toBeCloseTo(5500, 6);
      expect(other.codes).not.toContain('half-unclear');
    }
  });
});

/** Half a piece to the right of x = 0, from (0, height) to (0, 0) round the outside: lines, arcs and cubics. */
function randomHalf(random: Random): Curve {
  const height = random.between(60, 160);
  const count = 3 + random.integer(5);
  const corners = Array.from({ length: count }, (_, i) => ({
    x: random.between(25, 90),
    y: (height * (i + 0.5)) / count,
  }));
  const points = [{ x: 0, y: 0 }, ...corners, { x: 0, y: height }];
  const segments = points.slice(1).map((to, i): CurveSegment => {
    const from = points[i]!;
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const bulge = random.between(-0.12, 0.12);
    const beside = (share: number, by: number) => ({
      x: from.x + share * dx - by * dy,
      y: from.y + share * dy + by * dx,
    });
    const kind = i === 0 || i === points.length - 2 ? 0 : random.integer(3);
    if (kind === 1 && Math.abs(bulge) > 0.02) return { kind: 'arc', via: beside(0.5, bulge), to };
    if (kind === 2) return { kind: 'cubic', handle1: beside(0.3, bulge), handle2: beside(0.7, -bulge), to };
    return { kind: 'line', to };
  });
  return { start: points[0]!, segments, closed: false };
}

function regionOf(curve: Curve): Region {
  return { outer: orientRing(flattenCurve(curve, 0.002).slice(0, -1), 'outer'), openings: [] };
}

function closedStraight(curve: Curve): Curve {
  return { ...curve, segments: [...curve.segments, { kind: 'line', to: curve.start }], closed: true };
}

function drawn(curve: Curve, role: string, name: string): DrawnLine {
  const source = { name, labels: { given: [role], classes: [], data: {} }, groups: [] };
  return { curve, source, stroke: '#000000', widthMm: 0.2, isDashed: false, isHole: false };
}

describe('halves at random, turned at random', () => {
  test('when they are unfolded, each is the union of the half and its mirror image, as jsts has it', () => {
    const random = createRandom(20_511);
    let judged = 0;
    for (let n = 0; n < 60; n++) {
      const half = randomHalf(random);
      const place: Affine = composeAffine(
        translation(random.between(100, 400), random.between(100, 400)),
        rotationDeg(random.between(0, 360)),
      );
      const open = transformCurveToGrid(place, half);
      const closed = closedStraight(open);
      if (findSelfCrossing(flattenCurve(closed, 0.01).slice(0, -1)) !== undefined) continue;
      const { start, end } = curveEndPoints(open);
      const mirror: Curve = { start, segments: [{ kind: 'line', to: end }], closed: false };
      const lines = [drawn(n % 2 === 0 ? closed : open, 'cut', 'half'), drawn(mirror, 'mirror', 'mirror')];
      const findings = newFindings('a.pdf');
      const { cut } = only(drawingToPieces({ lines, texts: [] }, undefined, findings));
      const area = Math.abs(curveArea(closed));
      // Each point is rounded to 1 µm, so an outline moves by less than 1 µm: area by less than its length times that.
      expect(Math.abs(Math.abs(curveArea(cut)) - 2 * area)).toBeLessThan(0.001 * curveLength(cut));
      const image = transformCurveToGrid(
        composeAffine(place, composeAffine({ a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 }, inverse(place))),
        closed,
      );
      const both = judge.unionArea(judge.shapeOf(regionOf(closed)), judge.shapeOf(regionOf(image)));
      expect(Math.abs(both - Math.abs(curveArea(cut)))).toBeLessThan(0.004 * curveLength(cut));
      judged++;
    }
    expect(judged).toBeGreaterThan(40);
  });
});

describe('lines within halves at random, turned at random', () => {
  test('when they are unfolded, all lengths double, and lines that end on the fold are one', () => {
    const random = createRandom(9_907);
    for (let n = 0; n < 40; n++) {
      const turn = rotationDeg(random.between(0, 360));
      const place = (curve: Curve) => transformCurveToGrid(turn, curve);
      const polyline = (...points: readonly (readonly [number, number])[]): Curve => ({
        start: { x: points[0]![0], y: points[0]![1] },
        segments: points.slice(1).map(([x, y]) => ({ kind: 'line', to: { x, y } })),
        closed: false,
      });
      const at = () => [random.between(5, 65), random.between(5, 95)] as const;
      const free = place(polyline(at(), at(), at()));
      const ending = place(polyline([0, random.between(10, 90)], at(), at()));
      const square = place(polyline([0, 50], [random.between(20, 60), 50]));
      const between = place(polyline([0, 20], at(), [0, 80]));
      const lines = [
        drawn(place(closedStraight(polyline([0, 0], [80, 0], [70, 100], [0, 100]))), 'cut', 'half'),
        drawn(place(polyline([0, 0], [0, 100])), 'mirror', 'mirror'),
        drawn(free, 'skive', 'free'),
        drawn(ending, 'stitch', 'ending'),
        drawn(square, 'cement', 'square'),
        drawn(between, 'fold', 'between'),
      ];
      const piece = only(drawingToPieces({ lines, texts: [] }, undefined, newFindings('a.pdf')));
      const sum = (marks: typeof piece.stitchLines) =>
        marks.reduce((mm, { curve }) => mm + curveLength(curve), 0);
      expect(piece.skiveLines).toHaveLength(2);
      expect(sum(piece.skiveLines)).toBeCloseTo(2 * curveLength(free), 1);
      expect(piece.stitchLines).toHaveLength(1);
      expect(Math.abs(sum(piece.stitchLines) - 2 * curveLength(ending))).toBeLessThan(0.01);
      expect(piece.cementLines.map(({ curve }) => curve.segments.length)).toEqual([1]);
      expect(Math.abs(sum(piece.cementLines) - 2 * curveLength(square))).toBeLessThan(0.01);
      expect(piece.foldLines.map(({ curve }) => curve.closed)).toEqual([true]);
      expect(Math.abs(sum(piece.foldLines) - 2 * curveLength(between))).toBeLessThan(0.01);
    }
  });
});

function inverse({ a, b, c, d, e, f }: Affine): Affine {
  const back = { a, b: c, c: b, d, e: 0, f: 0 };
  const { x, y } = applyAffine(back, { x: e, y: f });
  return { ...back, e: -x, f: -y };
}
