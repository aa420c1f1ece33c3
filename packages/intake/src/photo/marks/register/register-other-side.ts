import {
  MIRROR_X,
  applyAffine,
  composeAffine,
  distanceBetween,
  regionBox,
  transformRegion,
} from '@hidebound/geometry';
import type { Affine, Point, Region } from '@hidebound/geometry';
import { tell } from '../../../findings.js';
import type { Findings } from '../../../findings.js';
import { IntakeError } from '../../../error.js';
import { alignOutlines, alignmentMisfit, openingsOff, refineAlignment } from './align-outlines.js';
import type { Alignment } from './align-outlines.js';
import { fitMotion, scaleOf } from './fit-motion.js';
import { matchPoints } from './match-points.js';

export interface OtherSideOptions {
  /** Crosses or openings seen on both sides, in any order, each in its own photo's floor mm. */
  readonly sharedMarks?: { readonly a: readonly Point[]; readonly b: readonly Point[] };
  /** The photo of the other side, for sentences. */
  readonly photo: string;
}

/** How what a photo of the other side shows is laid onto the side that the hide is kept by. */
export interface OtherSide {
  /** From the other side's floor mm to those of `outlineA`; it mirrors. */
  readonly transform: Affine;
  /** Nine tenths of the outlines agree within this; with shared marks, the farthest of those if it is more. */
  readonly misfitMm: number;
  readonly by: 'outline' | 'marks';
  /** By how much the other photo is stretched, 1 for not at all; 0.98 to 1.02. */
  readonly scale: number;
  /** Another way to lie that fits about as well: a symmetric hide tells no more. */
  readonly alsoFits?: { readonly transform: Affine; readonly misfitMm: number };
}

/** Two photos of one hide, each scaled by sheets, and leather that is a little damper: more than this is another hide. */
export const SIDES_SCALE_WITHIN = 0.02;

/** Legs lie otherwise after a hide was turned over; beyond this share of its diagonal it is taken for another one. */
const MISFIT_SHARE = 0.01;
const LEAST_MISFIT_MM = 6;

/** Another way to lie is told where its misfit is not this many times as large, or not this many mm larger. */
const CLEARLY_WORSE = 2;
const CLEARLY_WORSE_MM = 3;

/**
 * Lays the other side's photo onto this one: mirrors it, then turns and moves it, by marks that both show or else by
 * the outline. Openings of both outlines count as parts of it. Throws `sides-do-not-match`.
 */
export function registerOtherSide(
  outlineA: Region,
  outlineB: Region,
  options: OtherSideOptions,
  findings: Findings,
): OtherSide {
  const mirrored = transformRegion(MIRROR_X, outlineB);
  const found = byMarks(outlineA, mirrored, options) ?? byOutline(outlineA, mirrored);
  const mostMm = mostMisfit(outlineA);
  if (found.misfitMm > mostMm || Math.abs(found.scale - 1) > SIDES_SCALE_WITHIN) {
    throw new IntakeError('sides-do-not-match', { photo: options.photo }, { file: options.photo });
  }
  if (found.alsoFits !== undefined) {
    const params = { misfit: round1(found.misfitMm), other: round1(found.alsoFits.misfitMm) };
    tell(findings, 'warning', 'other-side-ambiguous', params, { file: options.photo });
  }
  return found;
}

function mostMisfit(outline: Region): number {
  const { minX, minY, maxX, maxY } = regionBox(outline);
  return Math.max(LEAST_MISFIT_MM, MISFIT_SHARE * Math.hypot(maxX - minX, maxY - minY));
}

/** Two marks may be taken either way round, so with two the outline decides. */
function byMarks(a: Region, mirrored: Region, { sharedMarks }: OtherSideOptions): OtherSide | undefined {
  if (sharedMarks === undefined) return undefined;
  const from = sharedMarks.b.map((point) => applyAffine(MIRROR_X, point));
  const match = matchPoints(from, sharedMarks.a);
  if (match === undefined) return undefined;
  const { pairs } = match;
  const ways = pairs.length > 2 ? [match.motion] : [match.motion, fitMotion(eitherWayRound(pairs))];
  const fits = ways.map((motion) => ({ motion, misfitMm: alignmentMisfit(mirrored, a, motion) }));
  const best = fits.reduce((one, other) => (other.misfitMm < one.misfitMm ? other : one));
  if (best.misfitMm > mostMisfit(a)) return undefined;
  // Marks near each other tell the turn badly, the outline tells it well; but never so that the marks part.
  const refined = refineAlignment(mirrored, a, best.motion);
  const marksOff = (motion: Affine): number =>
    Math.max(...pairs.map(({ from: mark }) => nearestMm(applyAffine(motion, mark), sharedMarks.a)));
  const isBetter = refined.misfitMm < best.misfitMm && marksOff(refined.motion) <= MARKS_WITHIN_MM;
  const taken = isBetter ? refined : best;
  return {
    transform: composeAffine(taken.motion, MIRROR_X),
    misfitMm: Math.max(taken.misfitMm, marksOff(taken.motion)),
    by: 'marks',
    scale: 1,
  };
}

/** A cross chalked on both sides is found within so much. */
const MARKS_WITHIN_MM = 4;

function eitherWayRound<Pair extends { readonly from: Point; readonly to: Point }>(pairs: readonly Pair[]) {
  return pairs.map(({ from }, i) => ({ from, to: pairs[pairs.length - 1 - i]!.to }));
}

function nearestMm(point: Point, among: readonly Point[]): number {
  return Math.min(...among.map((other) => distanceBetween(point, other)));
}

function byOutline(a: Region, mirrored: Region): OtherSide {
  const ways = alignOutlines(mirrored, a)
    .map((way) => ({ ...way, sumMm: way.misfitMm + openingsOff(mirrored, a, way.motion) }))
    .sort((one, other) => one.sumMm - other.sumMm);
  const best = ways[0]!;
  const scaled = refineAlignment(mirrored, a, best.motion, true);
  const taken = isWithinScale(scaled) && scaled.misfitMm < best.misfitMm ? scaled : best;
  const other = ways.slice(1).find(({ sumMm }) => !isClearlyWorse(sumMm, best.sumMm));
  return {
    transform: composeAffine(taken.motion, MIRROR_X),
    misfitMm: taken.misfitMm,
    by: 'outline',
    // The scale that would fit best is told even where it is too much to be taken.
    scale: scaleOf(scaled.motion),
    ...(other === undefined
      ? {}
      : { alsoFits: { transform: composeAffine(other.motion, MIRROR_X), misfitMm: other.misfitMm } }),
  };
}

function isClearlyWorse(misfitMm: number, bestMm: number): boolean {
  return misfitMm >= CLEARLY_WORSE * bestMm && misfitMm >= bestMm + CLEARLY_WORSE_MM;
}

function isWithinScale({ motion }: Alignment): boolean {
  return Math.abs(scaleOf(motion) - 1) <= SIDES_SCALE_WITHIN;
}

function round1(n: number): number {
  return Math.round(n * 10) / 10;
}
