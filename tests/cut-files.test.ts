import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { flattenCurve } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import { cutFileOf } from '@hidebound/leather';
import type { CutFile, CutFileOptions, CutPath, PiecePlacement } from '@hidebound/leather';
import { drawCutFile, writeCutSvg, writeDxf } from '@hidebound/render';
import { beforeAll, describe, expect, test } from 'vitest';
import { loadJudge } from '../packages/geometry/test-support/judge.js';
import type { Judge, JudgeShape } from '../packages/geometry/test-support/judge.js';
import { testFolder } from './cli-support.js';
import { layCutJob } from './support/cut-job.js';
import type { CutJob } from './support/cut-job.js';
import { readDxf } from './support/read-dxf.js';
import type { DxfShape } from './support/read-dxf.js';

const folder = testFolder();
const KERF_MM = 0.2;
let judge: Judge;
/** Laid with a gap and shared lines; and for a laser, straps a kerf apart. */
let knife: CutJob;
let laser: CutJob;
beforeAll(async () => {
  judge = await loadJudge();
  knife = await layCutJob(folder, 'knife', '{ method: hand knife, gap: 2, edge: 3, void: 2, kerf: 0 }');
  laser = await layCutJob(folder, 'laser', `{ method: laser, gap: 5, edge: 3, void: 2, kerf: ${KERF_MM} }`);
});

const PLAIN: CutFileOptions = {
  choice: 'pieces',
  kerfMm: 0,
  overcutMm: 0,
  marks: true,
  frame: false,
  labels: false,
  side: 'grain',
};

function cutOf({ layout, hide }: CutJob, options: Partial<CutFileOptions> = {}): CutFile {
  return cutFileOf(layout, hide, { ...PLAIN, ...options }).file;
}

/** How a placement moves a point, written once more: mirrored, turned clockwise, moved. */
function onHide({ x, y, rotationDeg, mirrored }: PiecePlacement, p: Point): Point {
  const turn = (rotationDeg * Math.PI) / 180;
  const px = mirrored ? -p.x : p.x;
  return {
    x: x + px * Math.cos(turn) - p.y * Math.sin(turn),
    y: y + px * Math.sin(turn) + p.y * Math.cos(turn),
  };
}

interface LaidLine {
  readonly kind: 'cut' | 'opening' | 'punch';
  readonly name: string;
  readonly inLane: boolean;
  /** Closed, the first corner not repeated. */
  readonly corners: readonly Point[];
}

const FINE_MM = 0.001;

/** Every outline, opening and hole of the layout on its hide, from its pieces and placements alone. */
function laidLines({ layout }: CutJob): LaidLine[] {
  return layout.placements.flatMap((placement) => {
    const { shape } = layout.pieces.find((one) => one.piece === placement.piece)!;
    const inLane = shape.name === 'long' || shape.name === 'short';
    const name = `${placement.piece} ${placement.set}/${placement.copy}${placement.mirrored ? 'm' : ''}`;
    const line = (kind: LaidLine['kind'], corners: readonly Point[]): LaidLine => ({
      kind,
      name,
      inLane,
      corners: corners.map((p) => onHide(placement, p)),
    });
    const drawn = (curve: Curve): readonly Point[] => flattenCurve(curve, FINE_MM).slice(0, -1);
    const circle = (at: Point, r: number): Point[] =>
      Array.from({ length: 720 }, (_, i) => ({
        x: at.x + r * Math.cos((i * Math.PI) / 360),
        y: at.y + r * Math.sin((i * Math.PI) / 360),
      }));
    return [
      line('cut', drawn(shape.cut)),
      ...shape.cutOuts.map((curve) => line('opening', drawn(curve))),
      ...shape.punches.map(({ at, diameterMm }) => line('punch', circle(at, diameterMm / 2))),
    ];
  });
}

function lengthOf(corners: readonly Point[]): number {
  return corners.reduce((sum, p, i) => {
    const q = corners[(i + 1) % corners.length]!;
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);
}

function areaOf(corners: readonly Point[]): number {
  const twice = corners.reduce((sum, p, i) => {
    const q = corners[(i + 1) % corners.length]!;
    return sum + p.x * q.y - q.x * p.y;
  }, 0);
  return Math.abs(twice) / 2;
}

function boxOf(corners: readonly Point[]): readonly [number, number, number, number] {
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** Points every millimetre or so along a line, never at a corner. */
function pointsAlong(corners: readonly Point[], closed: boolean, stepMm = 1): Point[] {
  const points: Point[] = [];
  const edges = closed ? corners.length : corners.length - 1;
  for (let i = 0; i < edges; i++) {
    const p = corners[i]!;
    const q = corners[(i + 1) % corners.length]!;
    const count = Math.ceil(Math.hypot(q.x - p.x, q.y - p.y) / stepMm);
    for (let k = 0; k < count; k++) {
      const share = (k + 0.5) / count;
      points.push({ x: p.x + (q.x - p.x) * share, y: p.y + (q.y - p.y) * share });
    }
  }
  return points;
}

function distanceToLine(p: Point, corners: readonly Point[]): number {
  let best = Infinity;
  for (let i = 0; i + 1 < corners.length; i++) {
    const a = corners[i]!;
    const b = corners[i + 1]!;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const lengthSq = dx * dx + dy * dy;
    const share =
      lengthSq === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / lengthSq));
    best = Math.min(best, Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy));
  }
  return best;
}

interface Line {
  readonly corners: readonly Point[];
  readonly box: readonly [number, number, number, number];
}

function linesOf(paths: readonly CutPath[]): Line[] {
  return paths.flatMap(({ strokes }) =>
    strokes.map((stroke) => {
      const corners = flattenCurve(stroke, FINE_MM);
      return { corners, box: boxOf(corners) };
    }),
  );
}

function linesAt(p: Point, lines: readonly Line[], within: number): number {
  return lines.filter(
    ({ corners, box: [minX, minY, maxX, maxY] }) =>
      p.x >= minX - within &&
      p.x <= maxX + within &&
      p.y >= minY - within &&
      p.y <= maxY + within &&
      distanceToLine(p, corners) <= within,
  ).length;
}

const isCut = ({ kind }: CutPath): boolean => ['cut', 'opening', 'punch'].includes(kind);

describe('every cut of the layout occurs once', () => {
  test.each(['knife', 'laser'])('when the %s layout is cut as drawn, each of its lines is cut', (name) => {
    const job = name === 'knife' ? knife : laser;
    const lines = linesOf(cutOf(job).paths.filter(isCut));
    for (const { name: who, kind, corners } of laidLines(job)) {
      const missed = pointsAlong(corners, true, 3).filter((p) => linesAt(p, lines, 0.006) === 0);
      expect(missed, `${kind} of ${who}`).toEqual([]);
    }
  });

  test.each([
    ['knife', 0],
    ['laser', 0],
    ['laser', KERF_MM],
  ])('when the %s layout is cut with a kerf of %s mm, no line is cut twice', (name, kerfMm) => {
    const paths = cutOf(name === 'knife' ? knife : laser, { kerfMm }).paths.filter(isCut);
    const lines = linesOf(paths);
    let twice = 0;
    let all = 0;
    for (const { corners } of lines) {
      for (const p of pointsAlong(corners, false)) {
        all++;
        if (linesAt(p, lines, 0.004) > 1) twice++;
      }
    }
    expect(all).toBeGreaterThan(8000);
    // Only where an arched end runs into a long line, for less than 2 mm at either side of it.
    expect(twice).toBeLessThan(4 * knife.layout.placements.filter(({ piece }) => piece === 'long').length);
  });

  test('when straps share lines, these are single without kerf, and with it two that fall into one if it is cut', () => {
    const longLines = (job: CutJob, kerfMm: number): number =>
      cutOf(job, { kerfMm }).paths.filter(({ of }) => of.kind === 'lane').length;
    const rows = (job: CutJob): number[] => job.layout.lanes.map((lane) => lane.rows.length);
    expect(rows(knife).length).toBeGreaterThan(0);
    const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
    expect(longLines(knife, 0)).toBe(sum(rows(knife).map((n) => n + 1)));
    expect(longLines(laser, 0)).toBe(sum(rows(laser).map((n) => 2 * n)));
    expect(longLines(laser, KERF_MM)).toBe(sum(rows(laser).map((n) => n + 1)));
  });
});

function shapeOf(corners: readonly Point[]): JudgeShape {
  return judge.shapeOf({ outer: corners, openings: [] });
}

describe('the cut lies on the right side', () => {
  // jsts grows and shrinks the drawn pieces; none of our own offsets takes part.
  test('when there is a kerf, what is cut is the piece grown by half of it, its openings shrunk by half', () => {
    const file = cutOf(laser, { kerfMm: KERF_MM });
    const closedPaths = file.paths.filter((path) => isCut(path) && path.strokes[0]!.closed);
    const drawn = laidLines(laser).filter(({ inLane, kind }) => !inLane || kind !== 'cut');
    expect(closedPaths).toHaveLength(drawn.length);
    for (const { kind, name, corners } of drawn) {
      const wanted = judge.buffer(shapeOf(corners), kind === 'cut' ? KERF_MM / 2 : -KERF_MM / 2);
      const [minX, minY, maxX, maxY] = boxOf(corners);
      const own = closedPaths.filter((path) => {
        const box = boxOf(flattenCurve(path.strokes[0]!, FINE_MM));
        const off = [box[0] - minX, box[1] - minY, box[2] - maxX, box[3] - maxY].map(Math.abs);
        return Math.max(...off) < KERF_MM;
      });
      expect(own, name).toHaveLength(1);
      const got = shapeOf(flattenCurve(own[0]!.strokes[0]!, FINE_MM).slice(0, -1));
      const off = judge.differenceArea(got, wanted) + judge.differenceArea(wanted, got);
      expect(off, `${kind} of ${name}`).toBeLessThan(0.01 * lengthOf(corners));
    }
  });

  test('when the laser has burned its lines, every piece has the size that was drawn', () => {
    const file = cutOf(laser, { kerfMm: KERF_MM });
    const lines = linesOf(file.paths.filter(isCut));
    for (const { name, corners } of laidLines(laser).filter(({ kind }) => kind === 'cut')) {
      for (const p of pointsAlong(corners, true, 7)) {
        const nearest = Math.min(
          ...lines
            .filter(
              ({ box: [x0, y0, x1, y1] }) => p.x > x0 - 1 && p.x < x1 + 1 && p.y > y0 - 1 && p.y < y1 + 1,
            )
            .map((line) => distanceToLine(p, line.corners)),
        );
        expect(Math.abs(nearest - KERF_MM / 2), name).toBeLessThan(0.008);
      }
    }
  });
});

describe('inside before outside', () => {
  test.each([{}, { kerfMm: KERF_MM, leadIn: { kind: 'arc', lengthMm: 3 } as const }])(
    'when paths are in order, nothing lies within an outline that was cut before it (%o)',
    (options) => {
      const paths = cutOf(laser, options).paths;
      const rings = new Map<number, JudgeShape>();
      for (const line of laidLines(laser).filter(({ kind }) => kind === 'cut')) {
        const [x, y] = boxOf(line.corners);
        const done = paths.findIndex(
          (path) =>
            path.kind === 'cut' &&
            path.of.kind === 'piece' &&
            `${path.of.copy.piece} ${path.of.copy.set}/${path.of.copy.copy}${path.of.copy.mirrored ? 'm' : ''}` ===
              line.name,
        );
        expect(done, `${line.name} at ${x}, ${y}`).toBeGreaterThanOrEqual(0);
        if (!line.inLane) rings.set(done, shapeOf(line.corners));
      }
      for (const [done, ring] of rings) {
        for (const path of paths.slice(done + 1)) {
          const end = path.strokes[0]!.segments[0]!.to;
          expect(judge.covers(ring, judge.pointAt(end))).toBe(false);
        }
      }
    },
  );
});

describe('lead-ins', () => {
  test.each(['straight', 'arc'] as const)(
    'when the lead-in is %s, it lies in the waste and meets no other cut',
    (kind) => {
      const options = { kerfMm: KERF_MM, leadIn: { kind, lengthMm: 2 }, marks: false };
      const bare = linesOf(cutOf(laser, { kerfMm: KERF_MM }).paths.filter(isCut));
      const file = cutOf(laser, options);
      const pieces = laidLines(laser).filter(({ kind: is }) => is === 'cut');
      const led = file.paths.filter(({ hasLeadIn }) => hasLeadIn);
      expect(led.length).toBeGreaterThan(40);
      for (const path of led) {
        const [first] = path.strokes[0]!.segments;
        const leadIn = flattenCurve(
          { start: path.strokes[0]!.start, segments: [first!], closed: false },
          0.01,
        );
        const end = leadIn[leadIn.length - 1]!;
        // Where it runs into its own line, along it, it is near to that.
        const points = pointsAlong(leadIn, false, 0.1).filter(
          (p) => Math.hypot(p.x - end.x, p.y - end.y) > 0.4,
        );
        for (const p of points) {
          expect(linesAt(p, bare, 0.01), path.kind).toBe(0);
          if (path.kind !== 'cut') continue;
          for (const { corners } of pieces)
            expect(judge.covers(shapeOf(corners), judge.pointAt(p))).toBe(false);
        }
      }
    },
  );
});

describe('DXF read back by another reader', () => {
  const versions = [
    ['R12', 'AC1009'],
    ['R2000', 'AC1015'],
  ] as const;

  test.each(versions)(
    'when %s is written, version, units, layers and colours are read back',
    (name, code) => {
      const { drawing } = drawCutFile(cutOf(knife), { title: 'Ω' });
      const content = readDxf(writeDxf(drawing, name));
      expect(content.version).toBe(code);
      expect(content.units).toBe(4);
      const colours = Object.entries(content.layers).map(([layer, { colorIndex }]) => [layer, colorIndex]);
      expect(Object.fromEntries(colours)).toMatchObject({
        CUT: 7,
        OPENING: 174,
        PUNCH: 14,
        FOLD: 30,
        STITCH: 94,
      });
    },
  );

  test.each(versions)('when %s is written, areas and boxes are those of the layout to 0.01 mm', (name) => {
    const file = cutOf(knife);
    const { drawing } = drawCutFile(file, { title: 't' });
    const { shapes } = readDxf(writeDxf(drawing, name));
    const { frame } = file;
    const closedShapes = shapes.filter(({ closed, layer }) => closed && layer !== 'STITCH');
    const drawn = laidLines(knife).filter(({ inLane, kind }) => !inLane || kind !== 'cut');
    expect(closedShapes).toHaveLength(drawn.length);
    for (const { name: who, kind, corners } of drawn) {
      const [minX, minY, maxX, maxY] = boxOf(corners);
      // From the frame's lower left corner, y up.
      const want = [minX - frame.minX, frame.maxY - maxY, maxX - frame.minX, frame.maxY - minY];
      const found = closedShapes.filter((shape) => offOf(shape, want) <= 0.01);
      expect(found, `${kind} of ${who}`).toHaveLength(1);
      expect(found[0]!.layer).toBe({ cut: 'CUT', opening: 'OPENING', punch: 'PUNCH' }[kind]);
      expect(Math.abs(found[0]!.area - areaOf(corners))).toBeLessThan(0.01 * lengthOf(corners));
    }
  });

  test('when holes are round, they are circles of their diameter', () => {
    const { drawing } = drawCutFile(cutOf(knife), { title: 't' });
    const punches = readDxf(writeDxf(drawing)).shapes.filter(({ layer }) => layer === 'PUNCH');
    const diameters = new Set(
      punches.map(({ box: { minX, maxX } }) => Math.round((maxX - minX) * 1000) / 1000),
    );
    expect(new Set(punches.map(({ type }) => type))).toEqual(new Set(['CIRCLE']));
    const wanted = knife.layout.pieces.flatMap(({ shape }) =>
      shape.punches.map(({ diameterMm }) => diameterMm),
    );
    expect([...diameters].sort()).toEqual([...new Set(wanted)].sort());
  });

  test('when both versions are written, they hold the same shapes in the same order', () => {
    const options = {
      kerfMm: KERF_MM,
      leadIn: { kind: 'arc', lengthMm: 3 },
      bridges: { count: 3, widthMm: 1 },
    } as const;
    const { drawing } = drawCutFile(cutOf(laser, options), { title: 't' });
    const plain = ({ layer, points, closed }: DxfShape) => ({ layer, points, closed });
    const [old, newer] = [readDxf(writeDxf(drawing, 'R12')), readDxf(writeDxf(drawing, 'R2000'))];
    expect(old.shapes.map(plain)).toEqual(newer.shapes.map(plain));
  });
});

function offOf({ box: { minX, minY, maxX, maxY } }: DxfShape, want: readonly number[]): number {
  return Math.max(...[minX, minY, maxX, maxY].map((n, i) => Math.abs(n - want[i]!)));
}

describe('sameness', () => {
  test('when files are written again from the layout read again, they are equal byte for byte', async () => {
    const again = await layCutJob(
      folder,
      'again',
      `{ method: laser, gap: 5, edge: 3, void: 2, kerf: ${KERF_MM} }`,
    );
    expect(readFileSync(again.layoutPath, 'utf8')).toBe(
      readFileSync(join(folder, 'laser.layout.json'), 'utf8'),
    );
    const options = { kerfMm: KERF_MM, leadIn: { kind: 'arc', lengthMm: 3 }, frame: true } as const;
    const files = [laser, again].map((job) => {
      const { drawing } = drawCutFile(cutOf(job, options), { title: 't' });
      return [writeCutSvg(drawing), writeDxf(drawing, 'R12'), writeDxf(drawing, 'R2000')];
    });
    expect(files[0]).toEqual(files[1]);
  });
});
