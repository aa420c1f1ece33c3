/** Shapes and problems for the tests of repeats. */
import fc from 'fast-check';
import { checkAnswer } from '../check/check-answer.js';
import { sinCosDeg } from '../number/trigonometry.js';
import { roundPoint } from '../point.js';
import { transformRing, rotationDeg, translation, composeAffine } from '../shape/affine.js';
import { convexHull } from '../shape/hull.js';
import type { AngleRule, NestProblem } from '../types/problem.js';
import type { Point, Ring } from '../types/shape.js';
import { memberRotationDeg } from './repeat.js';
import type { Repeat } from './repeat.js';
import type { LaidPiece } from './trim.js';

/** A regular polygon about (0, 0) whose corners are `radius` away; not rounded. */
export function regular(corners: number, radius = 20): Point[] {
  return Array.from({ length: corners }, (_, i) => {
    const { sin, cos } = sinCosDeg((360 * i) / corners);
    return { x: radius * cos, y: radius * sin };
  });
}

/** Convex polygons of 3 to 12 corners, on the 0.001 mm grid, not too slim. */
export function convexRing(): fc.Arbitrary<Ring> {
  const coordinate = fc.integer({ min: -30_000, max: 30_000 }).map((n) => n / 1000);
  return fc
    .array(fc.record({ x: coordinate, y: coordinate }), { minLength: 3, maxLength: 14 })
    .map((cloud) => convexHull(cloud))
    .filter((hull) => hull.length > 2 && widthShare(hull) > 0.02);
}

/** Area over the square of the greatest extent. */
function widthShare(hull: Ring): number {
  let area = 0;
  let extent = 0;
  hull.forEach((p, i) => {
    const q = hull[(i + 1) % hull.length]!;
    area += (p.x * q.y - q.x * p.y) / 2;
    for (const other of hull) extent = Math.max(extent, (p.x - other.x) ** 2 + (p.y - other.y) ** 2);
  });
  return area / extent;
}

/** The pieces of so many cells each way about the origin, the whole pattern turned; rounded as stored. */
export function patch(repeat: Repeat, cells: number, patternDeg = 0): LaidPiece[] {
  const { sin, cos } = sinCosDeg(patternDeg);
  const pieces: LaidPiece[] = [];
  for (let i = -cells; i <= cells; i++) {
    for (let j = -cells; j <= cells; j++) {
      for (const member of repeat.members) {
        const x = member.x + i * repeat.u.x + j * repeat.v.x;
        const y = member.y + i * repeat.u.y + j * repeat.v.y;
        const place = roundPoint({ x: cos * x - sin * y, y: sin * x + cos * y });
        pieces.push({ ...place, rotationDeg: memberRotationDeg(member, patternDeg) });
      }
    }
  }
  return pieces;
}

/** The ring where a piece lies. */
export function laidRing(ring: Ring, piece: LaidPiece): Ring {
  return transformRing(composeAffine(translation(piece.x, piece.y), rotationDeg(piece.rotationDeg)), ring);
}

export const FREE: AngleRule = { frame: 'free', arrowDeg: 0, targetsDeg: [], toleranceDeg: 0, modulo: 360 };

/** What the exact check says of the pieces on a rectangular sheet: names of broken rules. */
export function brokenRules(
  ring: Ring,
  pieces: readonly LaidPiece[],
  options: { readonly gap: number; readonly sheet: Ring; readonly rule?: AngleRule },
): string[] {
  const problem: NestProblem = {
    items: [
      {
        id: 'piece',
        region: { outer: ring, openings: [] },
        need: { maxGrade: 0, strong: false },
        parts: [],
        angleRule: options.rule ?? FREE,
        value: 1,
        priority: 0,
        sheets: ['sheet'],
        isFace: false,
      },
    ],
    setKinds: [
      {
        id: 'all',
        sets: 1,
        members: [{ item: 'piece', count: pieces.length }],
        value: 1,
        priority: 0,
        keep: 'nothing',
        beside: [],
      },
    ],
    sheets: [
      {
        id: 'sheet',
        region: { outer: options.sheet, openings: [] },
        qualities: [],
        lot: 'lot',
        useFrom: { x: 1, y: 0 },
      },
    ],
    fixed: [],
    distances: { gap: options.gap, edge: 0, void: 0 },
    objective: { mode: 'placeAll', keepMm: [200, 100] },
    budget: { seed: 1, streams: 1 },
  };
  const placements = pieces.map((piece, i) => ({
    ...piece,
    item: 'piece',
    set: 1,
    copy: i + 1,
    sheet: 'sheet',
  }));
  const answer = { placements, lanes: [], roughCuts: [], unplaced: [], joins: 0 };
  return checkAnswer(problem, answer).map(({ rule }) => rule);
}

/** A sheet on which every patch of these tests lies. */
export const WIDE_SHEET: Ring = [
  { x: -5000, y: -5000 },
  { x: 5000, y: -5000 },
  { x: 5000, y: 5000 },
  { x: -5000, y: 5000 },
];
