import {
  arcCentre,
  curveSteps,
  curveToArcs,
  distanceBetween,
  normalizeDeg,
  sinCosDeg,
} from '@hidebound/geometry';
import type { ArcCircle, Curve, Point } from '@hidebound/geometry';
import { narrowArcs } from '../cutfile/narrow-arcs.js';

/** What a curve is in DXF; y up. Angles in degrees, anticlockwise as the format has them. */
export type Entity =
  | { readonly kind: 'line'; readonly from: Point; readonly to: Point }
  | { readonly kind: 'circle'; readonly center: Point; readonly radius: number }
  | {
      readonly kind: 'arc';
      readonly center: Point;
      readonly radius: number;
      readonly startDeg: number;
      readonly endDeg: number;
    }
  | { readonly kind: 'polyline'; readonly closed: boolean; readonly vertices: readonly Vertex[] };

export interface Vertex {
  readonly at: Point;
  /** Tangent of a quarter of the turn to the next vertex; 0 for a line, positive anticlockwise. */
  readonly bulge: number;
}

/** Cubics become arcs within this of them; those of letters within this, which no eye sees. */
const DXF_ARCS_MM = 0.005;
export const DXF_TEXT_ARCS_MM = 0.03;
/** A half circle has a bulge of 1; beyond, bulges grow without end. */
const WIDEST_BULGE_DEG = 180;
/** Two arcs of one circle agree this well. */
const SAME_CIRCLE_MM = 1e-6;

/** The entity for a curve on a page so high: a line, arc or circle where it is one, else a polyline with bulges. */
export function entityOf(curve: Curve, heightMm: number, arcsMm: number = DXF_ARCS_MM): Entity {
  const arcs = narrowArcs(curveToArcs(curve, arcsMm), WIDEST_BULGE_DEG);
  const up = ({ x, y }: Point): Point => ({ x, y: heightMm - y });
  const circle = wholeCircle(arcs);
  if (circle !== undefined) return { kind: 'circle', center: up(circle.center), radius: circle.radius };
  const [only] = arcs.segments;
  if (arcs.segments.length === 1 && only !== undefined && !arcs.closed) {
    if (only.kind === 'line') return { kind: 'line', from: up(arcs.start), to: up(only.to) };
    if (only.kind === 'arc') {
      const part = arcCentre(arcs.start, only.via, only.to);
      if (part !== 'straight') return arcEntity(part, up);
    }
  }
  const steps = curveSteps(arcs);
  const vertices = steps.map(({ from, segment }): Vertex => {
    const part = segment.kind === 'arc' ? arcCentre(from, segment.via, segment.to) : 'straight';
    return { at: up(from), bulge: part === 'straight' ? 0 : bulgeOf(part) };
  });
  const last = steps[steps.length - 1]?.segment.to;
  if (!arcs.closed && last !== undefined) vertices.push({ at: up(last), bulge: 0 });
  return { kind: 'polyline', closed: arcs.closed, vertices };
}

/** Degrees here grow clockwise, in the format anticlockwise from start to end. */
function arcEntity({ center, radius, startDeg, sweepDeg }: ArcCircle, up: (p: Point) => Point): Entity {
  const [first, last] = sweepDeg > 0 ? [startDeg + sweepDeg, startDeg] : [startDeg, startDeg + sweepDeg];
  return {
    kind: 'arc',
    center: up(center),
    radius,
    startDeg: normalizeDeg(-first),
    endDeg: normalizeDeg(-last),
  };
}

function bulgeOf({ sweepDeg }: ArcCircle): number {
  const { sin, cos } = sinCosDeg(-sweepDeg / 4);
  return sin / cos;
}

function wholeCircle({ start, segments, closed }: Curve): ArcCircle | undefined {
  if (!closed) return undefined;
  let first: ArcCircle | undefined;
  let turned = 0;
  for (const { from, segment } of curveSteps({ start, segments, closed })) {
    const part = segment.kind === 'arc' ? arcCentre(from, segment.via, segment.to) : 'straight';
    if (part === 'straight') return undefined;
    first ??= part;
    turned += part.sweepDeg;
    const isSame =
      distanceBetween(part.center, first.center) <= SAME_CIRCLE_MM &&
      Math.abs(part.radius - first.radius) <= SAME_CIRCLE_MM;
    if (!isSame) return undefined;
  }
  return Math.abs(Math.abs(turned) - 360) < 1e-6 ? first : undefined;
}
