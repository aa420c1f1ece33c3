import {
  angleBetweenDeg,
  distanceBetween,
  atan2Deg,
  minimumWidthBox,
  pointToRing,
} from '@hidebound/geometry';
import type { Point } from '@hidebound/geometry';
import type { Diagnostic } from '../model/diagnostic.js';
import type { ResolvedPiece } from '../model/order.js';
import type { LayablePiece } from '../model/piece.js';
import type { StitchedLine, StitchRule } from '../model/stitch.js';
import { trimmed } from '../units/length.js';
import { stretchesOf } from './awl-spread.js';
import { placeAlong } from './line-walk.js';
import type { LineWalk } from './line-walk.js';
import { ACROSS_SHARE, STRAIGHT_SHARE } from './stitch-constants.js';

/** A stitch line with all that is known of it. */
export interface JudgedLine {
  readonly stitched: StitchedLine;
  readonly walk: LineWalk;
  readonly piece: ResolvedPiece;
  readonly layable: LayablePiece;
  readonly rule: StitchRule;
}

/** What a saddler would say of one line with its holes. */
export function lineFindings(judged: JudgedLine): readonly Diagnostic[] {
  return [...nearEdge(judged), ...acrossStrap(judged), ...beyondPitch(judged)];
}

function finding(
  code: string,
  { article, piece, line }: StitchedLine,
  params: Diagnostic['params'],
): Diagnostic {
  return { code, severity: 'warning', params: { article, piece, line, ...params }, place: { at: piece } };
}

/** A hole nearer to the edge than one layer is thick tears out (from memory). */
function nearEdge({ stitched, piece, layable }: JudgedLine): Diagnostic[] {
  const thicknessMm = piece.thickness?.maxMm;
  if (thicknessMm === undefined) return [];
  const rings = [layable.region.outer, ...layable.region.openings];
  const distances = stitched.marks.holes.map(({ at }) =>
    Math.min(...rings.map((ring) => pointToRing(at, ring))),
  );
  const nearest = Math.min(...distances);
  if (nearest >= thicknessMm) return [];
  const near = distances.filter((mm) => mm < thicknessMm).length;
  return [
    finding('stitch-near-edge', stitched, {
      count: near,
      distanceMm: trimmed(nearest, 1),
      thicknessMm: trimmed(thicknessMm, 2),
    }),
  ];
}

/** A steeper angle to the strap runs across it rather than along. */
const ACROSS_DEG = 45;

/** Saddlers' rule [S112]: never stitch straight across a strap. */
function acrossStrap({ stitched, walk, piece, layable, rule }: JudgedLine): Diagnostic[] {
  if (piece.part !== 'strap' && piece.from.kind !== 'strap' && !piece.inLane) return [];
  const { outer } = layable.region;
  const axisDeg = minimumWidthBox(outer).angleDeg;
  const runsAcross = stretchesOf(walk, { cornerDeg: rule.cornerDeg, endGapMm: 0 }).some((stretch) => {
    const a = placeAlong(walk, stretch.fromMm).at;
    const b = placeAlong(walk, stretch.fromMm + stretch.lengthMm).at;
    const chordMm = distanceBetween(a, b);
    if (chordMm < stretch.lengthMm * STRAIGHT_SHARE) return false;
    if (Math.abs(angleBetweenDeg(angleOf(a, b), axisDeg, 180)) < ACROSS_DEG) return false;
    return chordMm >= ACROSS_SHARE * (chordMm + pointToRing(a, outer) + pointToRing(b, outer));
  });
  return runsAcross ? [finding('stitch-across-strap', stitched, {})] : [];
}

function angleOf(a: Point, b: Point): number {
  return atan2Deg(b.y - a.y, b.x - a.x);
}

/** With an awl the pitch may be adjusted within its range only. */
function beyondPitch({ stitched, rule }: JudgedLine): Diagnostic[] {
  const { marks } = stitched;
  if (rule.with !== 'awl' || marks.gave.what === 'gathering') return [];
  const { min, max } = marks.usedPitchMm;
  const furthest = rule.pitchMm - min > max - rule.pitchMm ? min : max;
  if (Math.abs(furthest - rule.pitchMm) <= rule.pitchMm * rule.adjustShare + ROUNDING_MM) return [];
  return [
    finding('stitch-pitch-beyond', stitched, {
      usedMm: trimmed(furthest, 2),
      pitchMm: trimmed(rule.pitchMm, 2),
      percent: trimmed(rule.adjustShare * 100, 1),
    }),
  ];
}

const ROUNDING_MM = 1e-6;
