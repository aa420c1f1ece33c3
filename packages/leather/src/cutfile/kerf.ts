import {
  boxesTouch,
  createSpatialIndex,
  curveArea,
  flattenCurve,
  growBox,
  offsetCurve,
  regionBox,
  regionDistance,
  transformRegion,
} from '@hidebound/geometry';
import type { Curve, Ring } from '@hidebound/geometry';
import type { Diagnostic } from '../model/diagnostic.js';
import { leatherError } from '../words/refuse.js';
import { RING_TOLERANCE_MM, SAME_LINE_MM } from './contour.js';
import type { Contour } from './contour.js';
import type { PieceToCut } from './gather.js';
import { copyWords } from './owner-words.js';
import { roundMm } from './round-mm.js';

/** A closed line moved so that the cut's edge runs where it was drawn, with what is to be said of it. */
export interface Compensated {
  readonly contour: Contour;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The contour moved by half the kerf into the waste. Throws `kerf-wider-than-punch` or `kerf-wider-than-opening` where
 * the cut has no room; where it can't enter a bay of an outline, the bay stays, and a warning says so.
 */
export function compensate(contour: Contour, kerfMm: number): Compensated {
  const [curve] = contour.curves as [Curve];
  if (kerfMm === 0 || contour.waste === 'none') return { contour: withRing(contour), diagnostics: [] };
  const { curves, isExact } = offsetCurve(curve, contour.waste === 'inside' ? -kerfMm / 2 : kerfMm / 2);
  if (contour.waste === 'inside' && curves.length !== 1) throw noRoom(contour, curve, kerfMm);
  const diagnostics = isExact || !losesBay(curve, curves, kerfMm) ? [] : bayWarning(contour, kerfMm);
  if (curves.length === 1) return { contour: withRing({ ...contour, curves }), diagnostics };
  return { contour: { ...contour, curves, ring: ringOf(curves[0]!) }, diagnostics };
}

/** True if the outline that is cut encloses more than the one that was drawn: the square of the kerf is a corner's worth. */
function losesBay(drawn: Curve, moved: readonly Curve[], kerfMm: number): boolean {
  if (moved.length > 1) return true;
  const back = moved.flatMap((curve) => offsetCurve(curve, -kerfMm / 2).curves);
  const cut = Math.max(...back.map((curve) => Math.abs(curveArea(curve))));
  return cut - Math.abs(curveArea(drawn)) > kerfMm * kerfMm;
}

function withRing(contour: Contour): Contour {
  const [curve] = contour.curves;
  return curve?.closed === true && contour.curves.length === 1
    ? { ...contour, ring: ringOf(curve) }
    : contour;
}

function ringOf(curve: Curve): Ring {
  return flattenCurve(curve, RING_TOLERANCE_MM).slice(0, -1);
}

function noRoom(contour: Contour, curve: Curve, kerfMm: number): Error {
  const { article, piece } = pieceOf(contour);
  if (contour.kind !== 'punch') return leatherError('kerf-wider-than-opening', { article, piece, kerfMm });
  const diameterMm = roundMm(2 * (curve.start.x - middleX(curve)));
  return leatherError('kerf-wider-than-punch', { article, piece, kerfMm, diameterMm: Math.abs(diameterMm) });
}

/** A circle is two half arcs: from one end to the opposite one. */
function middleX(curve: Curve): number {
  return (curve.start.x + curve.segments[0]!.to.x) / 2;
}

function bayWarning(contour: Contour, kerfMm: number): Diagnostic[] {
  if (contour.of.kind !== 'piece') return [];
  return [{ code: 'kerf-closes-a-bay', severity: 'warning', params: { ...pieceOf(contour), kerfMm } }];
}

function pieceOf({ of }: Contour): { readonly article: string; readonly piece: string } {
  return of.kind === 'piece'
    ? { article: of.copy.article, piece: of.copy.piece }
    : { article: of.kind, piece: of.id };
}

/**
 * Throws `kerf-wider-than-gap` if two pieces lie so near to each other that the cut around one takes leather from the
 * other. Straps of one lane are passed over: what their lines come to is judged by the lane.
 */
export function refuseNarrowGaps(
  pieces: readonly PieceToCut[],
  kerfMm: number,
  laneOf: (piece: PieceToCut) => string | undefined,
): void {
  if (kerfMm === 0) return;
  const regions = pieces.map(({ piece, place }) => transformRegion(place, piece.region));
  const boxes = regions.map((region) => regionBox(region));
  const index = createSpatialIndex(boxes);
  pieces.forEach((one, i) => {
    const near: number[] = [];
    index.query(growBox(boxes[i]!, kerfMm), (j) => void (j > i && near.push(j)));
    for (const j of near.sort((a, b) => a - b)) {
      const other = pieces[j]!;
      const lane = laneOf(one);
      if (lane !== undefined && lane === laneOf(other)) continue;
      if (!boxesTouch(boxes[i]!, boxes[j]!, kerfMm)) continue;
      const gapMm = regionDistance(regions[i]!, regions[j]!);
      if (gapMm >= kerfMm - SAME_LINE_MM) continue;
      const { article, piece } = one.placement;
      throw leatherError('kerf-wider-than-gap', {
        article,
        piece,
        other: copyWords(other.placement),
        kerfMm,
        gapMm: roundMm(gapMm),
      });
    }
  });
}
