import { readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import {
  composeAffine,
  curveBox,
  flattenCurve,
  polylineNearest,
  rotationDeg,
  transformCurve,
  translation,
} from '@hidebound/geometry';
import type { Affine, Curve, CurveSegment, Point } from '@hidebound/geometry';
import { readPattern } from '@hidebound/intake';
import { describe, expect, test } from 'vitest';
import { hideboundHere, testFolder } from './cli-support.js';
import type { CurveText, LayoutText, Pair } from './templates-from-pixels/layout-text.js';
import { smallLayout } from './templates-from-pixels/small-job.js';

/** What a laid piece's outline may be off, once our own template pages are put together again; mm. */
const WITHIN_MM = 0.3;

const MIRROR: Affine = { a: -1, b: 0, c: 0, d: 1, e: 0, f: 0 };
const point = ([x, y]: Pair): Point => ({ x, y });

/** A curve as the files write it (docs/files.md). */
function curveOf({ start, segments }: CurveText): Curve {
  return {
    start: point(start),
    segments: segments.map(({ to, via, handles }): CurveSegment => {
      if (via !== undefined) return { kind: 'arc', via: point(via), to: point(to) };
      if (handles === undefined) return { kind: 'line', to: point(to) };
      return { kind: 'cubic', handle1: point(handles[0]), handle2: point(handles[1]), to: point(to) };
    }),
    closed: true,
  };
}

/** Every curve within a value, wherever it stands: cut lines, and lines of any role. */
function curvesIn(value: unknown): Curve[] {
  if (typeof value !== 'object' || value === null) return [];
  if ('segments' in value && 'start' in value) return [value as Curve];
  return Object.values(value).flatMap(curvesIn);
}

function farthest(a: readonly Point[], b: readonly Point[]): number {
  return Math.max(...a.map((p) => polylineNearest(b, p).distance));
}

describe('pages of our own templates put together again', () => {
  test('when a layout of several pages is read back, each laid piece has its outline within 0.3 mm', async () => {
    const folder = testFolder();
    const layout = await smallLayout(folder, 430, 400);
    const pdf = join(folder, 'layout.pdf');
    const run = await hideboundHere(['template', layout.file, '--hide', layout.hide, '--pdf', pdf]);
    expect(run.status, run.stderr).toBe(0);

    const read = await readPattern(readFileSync(pdf), { file: 'layout.pdf' });
    expect(read.pages!.length).toBeGreaterThanOrEqual(4);
    expect(new Set(read.pages!.map(({ joinedBy }) => joinedBy))).toEqual(new Set(['marks']));

    // What our templates print beside a pattern, arrows and marks and lines to trim along, is none of it.
    expect(read.strays).toEqual([]);
    const furniture = read.diagnostics.find(({ code }) => code === 'page-furniture');
    expect(Number(furniture?.params['signs'])).toBeGreaterThan(0);

    const text = JSON.parse(readFileSync(layout.file, 'utf8')) as LayoutText;
    const hideFile = resolve(dirname(layout.file), text.hides.find(({ id }) => id === layout.hide)!.file);
    const hide = curveOf((JSON.parse(readFileSync(hideFile, 'utf8')) as { outline: CurveText }).outline);
    const found = [
      ...curvesIn(read.pieces.map(({ piece }) => piece)),
      ...read.strays.map(({ curve }) => curve),
    ].filter(({ closed }) => closed);
    // Where the layout lies on the first page is not printed: the edge of the hide tells it.
    const widest = found.reduce((a, b) =>
      curveBox(b).maxX - curveBox(b).minX > curveBox(a).maxX - curveBox(a).minX ? b : a,
    );
    const by = {
      x: curveBox(widest).minX - curveBox(hide).minX,
      y: curveBox(widest).minY - curveBox(hide).minY,
    };
    const flat = found.map((curve) => flattenCurve(curve, 0.01));
    const placed = text.placements.filter((placement) => placement.hide === layout.hide);
    const laid = placed.map(({ article, piece, mirrored, x, y, rotationDeg: turn }) => {
      const { shape } = text.pieces.find((one) => one.article === article && one.piece === piece)!;
      const pose = composeAffine(translation(x + by.x, y + by.y), rotationDeg(turn));
      return transformCurve(mirrored ? composeAffine(pose, MIRROR) : pose, curveOf(shape.cut));
    });
    expect(laid.length).toBeGreaterThanOrEqual(2);
    for (const outline of [...laid, transformCurve(translation(by.x, by.y), hide)]) {
      const own = flattenCurve(outline, 0.01);
      const miss = Math.min(...flat.map((line) => Math.max(farthest(own, line), farthest(line, own))));
      expect(miss).toBeLessThan(WITHIN_MM);
    }
  });
});
