import { pointInRing, ringArea } from '@hidebound/geometry';
import type { Point, Polyline, Ring } from '@hidebound/geometry';
import type { EdgeHints, UnsureEdge } from '@hidebound/leather';
import { IntakeError } from '../../error.js';
import { tell } from '../../findings.js';
import type { Findings } from '../../findings.js';
import { toFloor, toPicture } from '../straight/straight-picture.js';
import type { StraightPicture } from '../straight/straight-picture.js';
import type { Vision } from '../vision/vision.js';
import { closeSlits } from './close-slits.js';
import { oddsField } from './field.js';
import { GROUND, knownGround } from './known-ground.js';
import { judgeOpening } from './is-opening.js';
import { learnGrounds } from './learn.js';
import type { Learned } from './learn.js';
import { makeLevel, stepForPixels, toFine, toLevel } from './level.js';
import type { Level } from './level.js';
import { levelRings } from './level-rings.js';
import { pulledToPoints } from './pull-to-points.js';
import { EDGE_STATE, traceEdge } from './trace-edge.js';
import type { TracedEdge } from './trace-edge.js';
import { untangled } from './untangle.js';

export interface OutlineOptions {
  /** What lies on the floor and is no leather: reference sheets and such, in mm of the floor. */
  readonly papers: readonly Ring[];
  /** What a person says of the edge, in mm of the floor. */
  readonly hints?: EdgeHints;
  /** How many pieces of leather to look for at most. Default 1. */
  readonly most?: number;
}

/** One piece of leather as it lies on the floor; all in mm of the floor. */
export interface FoundOutline {
  readonly outline: Ring;
  readonly openings: readonly Ring[];
  readonly unsure: readonly UnsureEdge[];
  /** Stretches along which it goes on beyond what the photos show. */
  readonly leavesPicture: readonly Polyline[];
  /** How far off the outline can be where it is not unsure, in nine cases of ten. */
  readonly offByMm: number;
}

/** Pixels of the picture on which leather and floor are learned, and of the one on which edges are first drawn. */
const LEARNING_PIXELS = 130_000;
const DRAWING_PIXELS = 3_200_000;
/** Smaller pieces of leather than this are specks, and than this share of the largest one something else on the floor. */
const LEAST_PIECE_MM2 = 400;
const LEAST_PIECE_SHARE = 0.02;
/** An opening of 5 mm across has 20 mm²; specks of half of that are not looked at. */
const LEAST_OPENING_MM2 = 10;
/** From here on a stretch of the edge is told of as unsure. */
const UNSURE_FROM_MM = 2;
const UNSURE_LEAST_MM = 10;
/** Under a sheet the edge may bulge by this share of the way between the places where it goes in and comes out. */
const HIDDEN_OFF_SHARE = 0.3;
const HIDDEN_LEAST_OFF_MM = 3;
/** How far beyond the picture's edge a hide may go on; nobody can know. */
const LEAVES_OFF_BY_MM = 100;

/**
 * Finds leather on the floor: the largest piece first. The outline is as fine as the picture allows (about one point a
 * millimetre); `simplifyWithin` makes it handier. Throws `no-hide-in-photo`; tells of `hide-leaves-picture` and
 * `edge-unsure`.
 */
export function findOutlines(
  picture: StraightPicture,
  options: OutlineOptions,
  vision: Vision,
  findings: Findings,
): { readonly pieces: readonly FoundOutline[] } {
  const { papers, hints, most = 1 } = options;
  const coarse = makeLevel(picture, stepForPixels(picture, LEARNING_PIXELS), vision, true);
  const learned = learnGrounds(coarse, knownGround(picture, coarse, papers, hints), vision);
  if (learned === undefined) throw noHide(findings);
  const level = makeLevel(picture, stepForPixels(picture, DRAWING_PIXELS), vision, false);
  const ground = knownGround(picture, level, papers, hints);
  const field = oddsField(level, ground, coarse, learned);
  closeSlits(level, ground, field, vision);
  const regions = leatherRegions(level, learned, levelRings(level, field), most);
  if (regions.length === 0) throw noHide(findings);
  const sideAt = sideLookUp(level, ground, field);
  const edges = regions.map(({ outer, openings }) =>
    [outer, ...openings].map((ring) => traceEdge(picture, ontoFine(level, ring), sideAt)),
  );
  const said = (hints?.edgePoints ?? []).map((place) => toPicture(picture, place));
  const { edges: drawn, strays } = pulledToPoints(edges.flat(), said, picture.pxPerMm);
  if (strays > 0) tell(findings, 'warning', 'edge-points-astray', { count: strays });
  const pieces = edges.map((own, i) => {
    const first = edges.slice(0, i).reduce((sum, { length }) => sum + length, 0);
    return pieceOf(picture, drawn.slice(first, first + own.length));
  });
  pieces.forEach((piece) => tellOf(piece, findings));
  return { pieces };
}

function noHide(findings: Findings): IntakeError {
  return new IntakeError('no-hide-in-photo', {}, { file: findings.file });
}

interface PixelRegion {
  readonly outer: Ring;
  readonly openings: readonly Ring[];
}

function leatherRegions(level: Level, learned: Learned, rings: readonly Ring[], most: number): PixelRegion[] {
  const perMm2 = level.pxPerMm * level.pxPerMm;
  const sized = rings.map((ring) => ({ ring, area: ringArea(ring) / perMm2 }));
  const outers = sized.filter(({ area }) => area > LEAST_PIECE_MM2).sort((a, b) => b.area - a.area);
  const least = LEAST_PIECE_SHARE * (outers[0]?.area ?? 0);
  const inners = sized.filter(({ area }) => area < -LEAST_OPENING_MM2);
  const islands = sized.filter(({ area }) => area > 0);
  const regions: PixelRegion[] = [];
  for (const { ring, area } of outers) {
    // Leather within other leather's ring is what chalk or a shadow has drawn a ring around.
    if (area < least || regions.length === most || regions.some(({ outer }) => isWithin(ring, outer)))
      continue;
    const openings = openingsIn(level, learned, ring, inners, islands);
    regions.push({ outer: ring, openings });
  }
  return regions;
}

/** A small hole this close to a strip is a piece of the same broken line of chalk. */
const SAME_LINE_MM = 40;
const SMALL_OPENING_MM2 = 150;

interface SizedRing {
  readonly ring: Ring;
  /** mm², below 0 for what is like floor within leather. */
  readonly area: number;
}

function openingsIn(
  level: Level,
  learned: Learned,
  outer: Ring,
  inners: readonly SizedRing[],
  islands: readonly SizedRing[],
): Ring[] {
  const judged = inners
    .filter(({ ring }) => isWithin(ring, outer))
    .map((inner) => {
      const within = islands.filter(({ ring, area }) => area < -inner.area && isWithin(ring, inner.ring));
      const kind = judgeOpening(
        level,
        learned,
        inner.ring,
        within.map(({ ring }) => ring),
      );
      return { ...inner, kind };
    });
  const strips = judged.filter(({ kind }) => kind === 'strip');
  const reach = SAME_LINE_MM * level.pxPerMm;
  const isPieceOfLine = ({ ring }: SizedRing): boolean =>
    strips.some((strip) => strip.ring.some((p) => away(p, ring[0]!) < reach));
  return judged
    .filter((one) => one.kind === 'opening' && (-one.area > SMALL_OPENING_MM2 || !isPieceOfLine(one)))
    .map(({ ring }) => ring);
}

function isWithin(inner: Ring, outer: Ring): boolean {
  return pointInRing(inner[0]!, outer) === 'inside';
}

function ontoFine(level: Level, ring: Ring): Ring {
  return ring.map(({ x, y }) => ({ x: toFine(level, x), y: toFine(level, y) }));
}

function sideLookUp(level: Level, ground: Uint8Array, field: Float32Array): (x: number, y: number) => number {
  return (x, y) => {
    const i = Math.round(toLevel(level, x));
    const j = Math.round(toLevel(level, y));
    if (i < 0 || j < 0 || i >= level.width || j >= level.height) return NaN;
    const kind = ground[j * level.width + i];
    return kind === GROUND.unseen || kind === GROUND.paper ? NaN : field[j * level.width + i]!;
  };
}

function pieceOf(picture: StraightPicture, edges: readonly TracedEdge[]): FoundOutline {
  const [outline, ...openings] = edges.map((edge) =>
    untangled(edge.rail, edge.points).map((p) => toFloor(picture, p)),
  );
  const off = edges.flatMap((edge) => [...edge.offPx].filter((_, i) => edge.state[i] === EDGE_STATE.plain));
  return {
    outline: outline!,
    openings: openings.filter((ring) => ringArea(ring) < -LEAST_OPENING_MM2),
    unsure: edges.flatMap((edge) => unsureStretches(picture, edge)),
    leavesPicture: edges.flatMap((edge) =>
      stretches(edge, (i) => edge.state[i] === EDGE_STATE.leavesPicture).map((stretch) =>
        stretch.map((i) => toFloor(picture, edge.points[i]!)),
      ),
    ),
    offByMm: Math.max(0.3 / picture.pxPerMm, usualMost(off) / picture.pxPerMm),
  };
}

function unsureStretches(picture: StraightPicture, edge: TracedEdge): UnsureEdge[] {
  const offMm = Array.from(edge.offPx, (px, i) =>
    edge.state[i] === EDGE_STATE.leavesPicture ? LEAVES_OFF_BY_MM : px / picture.pxPerMm,
  );
  for (const stretch of stretches(edge, (i) => edge.state[i] === EDGE_STATE.hidden)) {
    const [a, b] = [edge.points[stretch[0]!]!, edge.points[stretch[stretch.length - 1]!]!];
    const off = HIDDEN_OFF_SHARE * (away(a, b) / picture.pxPerMm);
    for (const i of stretch) offMm[i] = Math.max(HIDDEN_LEAST_OFF_MM, off);
  }
  return stretches(edge, (i) => offMm[i]! > UNSURE_FROM_MM)
    .map((stretch) => ({
      line: stretch.map((i) => toFloor(picture, edge.points[i]!)),
      offByMm: stretch.reduce((most, i) => Math.max(most, offMm[i]!), 0),
    }))
    .filter(({ line }) => lengthOf(line) >= UNSURE_LEAST_MM);
}

/** Runs of points for which something holds, around the end of the ring too; each has two points at least. */
function stretches({ points }: TracedEdge, holds: (i: number) => boolean): number[][] {
  const count = points.length;
  let start = 0;
  while (start < count && holds(start)) start++;
  const runs: number[][] = [];
  let run: number[] = [];
  for (let k = 0; k < count; k++) {
    const i = (start + k) % count;
    if (holds(i)) run.push(i);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length > 0) runs.push(run);
  return runs.filter((one) => one.length >= 2);
}

function lengthOf(line: Polyline): number {
  return line.reduce((sum, p, i) => (i === 0 ? 0 : sum + away(p, line[i - 1]!)), 0);
}

function away(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** What three of four do not exceed. */
function usualMost(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(0.75 * sorted.length)] ?? 0;
}

function tellOf(piece: FoundOutline, findings: Findings): void {
  const leaves = piece.leavesPicture.reduce((sum, line) => sum + lengthOf(line), 0);
  if (leaves > UNSURE_LEAST_MM)
    tell(
      findings,
      'warning',
      'hide-leaves-picture',
      { mm: Math.round(leaves) },
      { point: piece.leavesPicture[0]![0]! },
    );
  const unsure = piece.unsure.filter(({ offByMm }) => offByMm < LEAVES_OFF_BY_MM);
  if (unsure.length === 0) return;
  const mm = Math.round(unsure.reduce((sum, { line }) => sum + lengthOf(line), 0));
  const most = Math.ceil(Math.max(...unsure.map(({ offByMm }) => offByMm)));
  tell(findings, 'note', 'edge-unsure', { mm, most, count: unsure.length }, { point: unsure[0]!.line[0]! });
}
