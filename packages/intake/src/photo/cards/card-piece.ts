import { circleCurve, curveArea, curveFromPolyline, reverseCurve, roundPoint } from '@hidebound/geometry';
import type { Curve, Point, Ring } from '@hidebound/geometry';
import type { Piece, Punch } from '@hidebound/leather';
import { tell } from '../../findings.js';
import type { Findings } from '../../findings.js';
import { PUNCH_MAX_DIAMETER_MM } from '../../limits.js';
import { edgePlaces } from './edge-places.js';
import type { EdgeScene } from './edge-places.js';
import { ringSize } from './find-cards.js';
import type { RoughCard } from './find-cards.js';
import { roundHole } from './hole-of.js';
import { NARROWEST_CUT_OUT_MM, ROUGH_EDGE_MM } from './limits.js';
import type { EdgePlace } from './runs/edge-place.js';
import { crossesItself, fitLine } from './runs/fit-line.js';

/** A card's edge and holes as clean lines. */
export type CardShape = Pick<Piece, 'cut' | 'cutOuts' | 'punches'>;

/** Nothing for what has no clear edge. */
export function cardShape(
  card: RoughCard,
  scene: EdgeScene,
  name: string,
  findings: Findings,
): CardShape | undefined {
  const outer = edgePlaces(card.outline, false, scene);
  if (outer.unclearAt !== undefined) tellUnclear(outer.unclearAt, outer.unclearMm, name, findings);
  const cut = cleanEdge(outer.places, name, findings);
  if (cut === undefined) return undefined;
  const cutOuts: Curve[] = [];
  const punches: Punch[] = [];
  for (const ring of card.holes) {
    const { places } = edgePlaces(ring, true, scene);
    const round = roundHole(places);
    if (round === undefined) {
      if (widthOf(ring) < NARROWEST_CUT_OUT_MM) continue;
      const edge = cleanEdge(places, name, findings);
      if (edge !== undefined) cutOuts.push(turnedTo(edge, -1));
    } else if (2 * round.radius <= PUNCH_MAX_DIAMETER_MM) {
      punches.push({ at: roundPoint(round.centre), diameterMm: roundTo(2 * round.radius, 1000) });
    } else cutOuts.push(turnedTo(circleCurve(roundPoint(round.centre), roundTo(round.radius, 1000)), -1));
  }
  return { cut: turnedTo(cut, 1), cutOuts, punches };
}

function tellUnclear(at: Point, lengthMm: number, name: string, findings: Findings): void {
  const params = { piece: name, length: Math.ceil(lengthMm) };
  tell(findings, 'warning', 'card-edge-unclear', params, { at: name, point: worstPlace(at) });
}

/** Of a round hole its diameter, of a slot twice its width. */
function widthOf(ring: Ring): number {
  const { area, length } = ringSize(ring);
  return (4 * area) / length;
}

/** Outlines have positive area (y down), openings negative. */
function turnedTo(curve: Curve, sign: 1 | -1): Curve {
  return Math.sign(curveArea(curve)) === sign ? curve : reverseCurve(curve);
}

function cleanEdge(places: readonly EdgePlace[], name: string, findings: Findings): Curve | undefined {
  const fit = fitLine(places, { closed: true });
  if (fit === undefined) return undefined;
  if (crossesItself(fit.curve) || Math.abs(curveArea(fit.curve)) < LEAST_AREA_MM2) {
    return edgeAsSeen(places, name, findings);
  }
  if (fit.worstOffMm > ROUGH_EDGE_MM) {
    const params = { piece: name, off: roundTo(fit.worstOffMm, 100) };
    tell(findings, 'note', 'card-edge-rough', params, { at: name, point: worstPlace(fit.worstAt) });
  }
  return fit.curve;
}

const LEAST_AREA_MM2 = 1;

/** The places themselves, thinned out: better than nothing where no clean line fits. */
function edgeAsSeen(places: readonly EdgePlace[], name: string, findings: Findings): Curve | undefined {
  const thinned = places.filter((_, i) => i % THINNED === 0).map(roundPoint);
  if (thinned.length < 3) return undefined;
  const curve = curveFromPolyline(thinned, true);
  if (crossesItself(curve)) return undefined;
  tell(findings, 'warning', 'card-edge-as-seen', { piece: name }, { at: name, point: thinned[0]! });
  return curve;
}

const THINNED = 4;

function worstPlace({ x, y }: Point): Point {
  return { x: roundTo(x, 10), y: roundTo(y, 10) };
}

function roundTo(n: number, steps: number): number {
  return Math.round(n * steps) / steps;
}
