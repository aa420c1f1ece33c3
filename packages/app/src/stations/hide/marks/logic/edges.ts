import { curveCorners, curveSteps, flattenSegment, polylineNearest } from '@hidebound/geometry';
import type { Curve, Point } from '@hidebound/geometry';
import type { Hide } from '@hidebound/leather';

/** An edge of the hide: its outline, or an opening by its number. */
export type EdgeName = 'outline' | number;

export interface NamedEdge {
  readonly edge: EdgeName;
  readonly curve: Curve;
}

type Edges = Pick<Hide, 'outline' | 'openings'>;

export function edgesOf({ outline, openings }: Edges): readonly NamedEdge[] {
  return [{ edge: 'outline', curve: outline }, ...openings.map((curve, edge) => ({ edge, curve }))];
}

export function edgeOf({ outline, openings }: Edges, edge: EdgeName): Curve | undefined {
  return edge === 'outline' ? outline : openings[edge];
}

export function withEdge(hide: Hide, edge: EdgeName, curve: Curve): Hide {
  if (edge === 'outline') return { ...hide, outline: curve };
  return { ...hide, openings: hide.openings.map((opening, i) => (i === edge ? curve : opening)) };
}

export interface CornerPlace {
  readonly edge: EdgeName;
  /** From 0, the curve's start. */
  readonly corner: number;
  readonly at: Point;
}

/** Of places along a line those that lie so far from the one before that they can be told apart, the first among them. */
export function toldApart(places: readonly Point[], leastMm: number): readonly Point[] {
  const told: Point[] = [];
  for (const place of places) {
    const last = told.at(-1);
    if (last === undefined || Math.hypot(place.x - last.x, place.y - last.y) >= leastMm) told.push(place);
  }
  return told;
}

/** The corners of a closed curve, its start once. */
export function cornersOf(curve: Curve): readonly Point[] {
  return curveCorners(curve).slice(0, -1);
}

/** The corner of outline and openings that is nearest to a place, within reach (mm). */
export function nearestCorner(hide: Edges, place: Point, reachMm: number): CornerPlace | undefined {
  let best: CornerPlace | undefined;
  let least = reachMm;
  for (const { edge, curve } of edgesOf(hide)) {
    cornersOf(curve).forEach((at, corner) => {
      const off = Math.hypot(at.x - place.x, at.y - place.y);
      if (off > least) return;
      least = off;
      best = { edge, corner, at };
    });
  }
  return best;
}

export interface EdgePlace {
  readonly edge: EdgeName;
  readonly segment: number;
  readonly at: Point;
  readonly offMm: number;
  /** Along the whole edge, and along its part, mm from the start. */
  readonly alongMm: number;
  readonly alongSegmentMm: number;
}

/** Chords of curved edges keep so near to them, mm: what the check of a hide takes, too. */
const CHORD_MM = 0.05;

/** The place on an edge that is nearest to a place on the hide. */
export function nearestOnCurve(curve: Curve, place: Point): Omit<EdgePlace, 'edge'> {
  let best: Omit<EdgePlace, 'edge'> | undefined;
  let passed = 0;
  curveSteps(curve).forEach(({ from, segment }, i) => {
    const chords = [from, ...flattenSegment(from, segment, CHORD_MM)];
    const { point, distance, alongMm } = polylineNearest(chords, place);
    if (best === undefined || distance < best.offMm)
      best = {
        segment: i,
        at: point,
        offMm: distance,
        alongMm: passed + alongMm,
        alongSegmentMm: alongMm,
      };
    for (let k = 1; k < chords.length; k++)
      passed += Math.hypot(chords[k]!.x - chords[k - 1]!.x, chords[k]!.y - chords[k - 1]!.y);
  });
  const none = { segment: 0, at: curve.start, offMm: Infinity, alongMm: 0, alongSegmentMm: 0 };
  return best ?? none;
}

export function nearestOnEdge(hide: Edges, place: Point, reachMm: number): EdgePlace | undefined {
  let best: EdgePlace | undefined;
  for (const { edge, curve } of edgesOf(hide)) {
    const near = nearestOnCurve(curve, place);
    if (near.offMm <= reachMm && (best === undefined || near.offMm < best.offMm)) best = { edge, ...near };
  }
  return best;
}
