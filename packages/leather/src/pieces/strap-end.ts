import type { CurveSegment, Point } from '@hidebound/geometry';
import type { StrapEnd } from '../model/order.js';

/** A cubic's handle, as a share of the radius, for a quarter ellipse: off by at most 0.03 % of the radius. */
const QUARTER_HANDLE = 0.5522847498307936;
/** An oval end is as long as wide: a half ellipse with half axes w and w/2 (common practice, no source). */
const OVAL_LENGTH = 1;
/** A pointed end is half as long as wide: a right angle at the tip (common practice, no source). */
const POINT_LENGTH = 0.5;
/** An arched point is as long as wide: two arcs that meet on the axis (common practice, no source). */
const ARCHED_LENGTH = 1;
/** Clipped corners take a quarter of the width off along both edges (common practice, no source). */
const CLIPPED_LENGTH = 0.25;

/** Where an end lies on the strap's axis: from the end of its straight sides to its tip, +1 towards greater x. */
export interface EndPlace {
  readonly base: number;
  readonly tip: number;
  readonly sign: 1 | -1;
}

/** How far an end reaches beyond the strap's straight sides, mm. */
export function bareEndLength(end: StrapEnd, widthMm: number): number {
  switch (end) {
    case 'square':
      return 0;
    case 'round':
      return widthMm / 2;
    case 'oval':
      return widthMm * OVAL_LENGTH;
    case 'pointed':
      return widthMm * POINT_LENGTH;
    case 'arched point':
      return widthMm * ARCHED_LENGTH;
    case 'clipped':
      return widthMm * CLIPPED_LENGTH;
  }
}

/** The end's outline, clockwise as seen: from one straight side to the other, across the tip. */
export function endSegments(end: StrapEnd, widthMm: number, place: EndPlace): CurveSegment[] {
  const { base, tip, sign } = place;
  // At the end of greater x the way goes from y = -w/2 to y = w/2; at the other end it comes back.
  const y = (sign * widthMm) / 2;
  const to = { x: base, y };
  const apex = { x: tip, y: 0 };
  switch (end) {
    case 'square':
      return [{ kind: 'line', to }];
    case 'round':
      return [{ kind: 'arc', via: apex, to }];
    case 'oval':
      return ovalEnd(base, tip, y);
    case 'pointed':
      return [
        { kind: 'line', to: apex },
        { kind: 'line', to },
      ];
    case 'arched point':
      return archedEnd(base, tip, y);
    case 'clipped':
      return [
        { kind: 'line', to: { x: tip, y: -y / 2 } },
        { kind: 'line', to: { x: tip, y: y / 2 } },
        { kind: 'line', to },
      ];
  }
}

function ovalEnd(base: number, tip: number, y: number): CurveSegment[] {
  const along = (tip - base) * QUARTER_HANDLE;
  return [
    {
      kind: 'cubic',
      handle1: { x: base + along, y: -y },
      handle2: { x: tip, y: -y * QUARTER_HANDLE },
      to: { x: tip, y: 0 },
    },
    {
      kind: 'cubic',
      handle1: { x: tip, y: y * QUARTER_HANDLE },
      handle2: { x: base + along, y },
      to: { x: base, y },
    },
  ];
}

/** Each arc leaves its straight side without a corner: its centre lies on the cross line through the base. */
function archedEnd(base: number, tip: number, y: number): CurveSegment[] {
  const length = Math.abs(tip - base);
  const half = Math.abs(y);
  // A circle tangent to the side at (0, -half) that passes through (length, 0) on the axis.
  const radius = (length * length + half * half) / (2 * half);
  const towards = (from: -1 | 1): Point => {
    const side = from * y;
    const centreY = side - Math.sign(side) * radius;
    const midX = length / 2;
    const midY = side / 2 - centreY;
    const scale = radius / Math.sqrt(midX * midX + midY * midY);
    return { x: base + Math.sign(tip - base) * midX * scale, y: centreY + midY * scale };
  };
  return [
    { kind: 'arc', via: towards(-1), to: { x: tip, y: 0 } },
    { kind: 'arc', via: towards(1), to: { x: base, y } },
  ];
}
