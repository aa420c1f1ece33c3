import type { Point } from '../types/shape.js';
import type { ContactCurve } from './contact-curves.js';

/** Where two curves meet, as travels. */
export interface Meeting extends Point {
  /** Neither curve ends there, or they belong to two obstacles: a real seat, not the round of one corner. */
  readonly isSeat: boolean;
}

type SegmentCurve = Extract<ContactCurve, { kind: 'segment' }>;
type ArcCurve = Extract<ContactCurve, { kind: 'arc' }>;

/** Shares of a segment within which a meeting counts as one at its end. */
const END_SHARE = 1e-9;

/** Lines whose directions differ by less (sine of the angle) run side by side and meet nowhere of note. */
const PARALLEL = 1e-9;

/** All meetings of two curves: none, one or two. */
export function curveMeetings(one: ContactCurve, other: ContactCurve): Meeting[] {
  const apart = one.obstacle !== other.obstacle;
  if (one.kind === 'segment') {
    if (other.kind === 'segment') return segmentsMeet(one, other, apart);
    return segmentMeetsArc(one, other, apart);
  }
  if (other.kind === 'segment') return segmentMeetsArc(other, one, apart);
  return arcsMeet(one, other);
}

function segmentsMeet(one: SegmentCurve, other: SegmentCurve, apart: boolean): Meeting[] {
  const [ux, uy] = [one.x1 - one.x0, one.y1 - one.y0];
  const [vx, vy] = [other.x1 - other.x0, other.y1 - other.y0];
  const cross = ux * vy - uy * vx;
  if (cross * cross <= PARALLEL * PARALLEL * (ux * ux + uy * uy) * (vx * vx + vy * vy)) return [];
  const [wx, wy] = [other.x0 - one.x0, other.y0 - one.y0];
  const s = (wx * vy - wy * vx) / cross;
  const t = (wx * uy - wy * ux) / cross;
  if (!isOn(s) || !isOn(t)) return [];
  return [{ x: one.x0 + s * ux, y: one.y0 + s * uy, isSeat: apart || (isWithin(s) && isWithin(t)) }];
}

function segmentMeetsArc(segment: SegmentCurve, arc: ArcCurve, apart: boolean): Meeting[] {
  const [dx, dy] = [segment.x1 - segment.x0, segment.y1 - segment.y0];
  const [px, py] = [segment.x0 - arc.x, segment.y0 - arc.y];
  const a = dx * dx + dy * dy;
  if (a === 0) return [];
  const b = px * dx + py * dy;
  const rootSq = b * b - a * (px * px + py * py - arc.radius * arc.radius);
  if (!(rootSq > 0)) return [];
  const root = Math.sqrt(rootSq);
  return [(-b - root) / a, (-b + root) / a]
    .filter((t) => isOn(t))
    .map((t) => ({ x: segment.x0 + t * dx, y: segment.y0 + t * dy, isSeat: apart || isWithin(t) }))
    .filter(({ x, y }) => isOnArc(arc, x, y));
}

function arcsMeet(one: ArcCurve, other: ArcCurve): Meeting[] {
  const [dx, dy] = [other.x - one.x, other.y - one.y];
  const apartSq = dx * dx + dy * dy;
  if (apartSq === 0) return [];
  const along = (apartSq + one.radius * one.radius - other.radius * other.radius) / (2 * apartSq);
  const asideSq = (one.radius * one.radius) / apartSq - along * along;
  if (!(asideSq > 0)) return [];
  const aside = Math.sqrt(asideSq);
  return [aside, -aside]
    .map((side) => ({
      x: one.x + along * dx - side * dy,
      y: one.y + along * dy + side * dx,
      isSeat: true,
    }))
    .filter(({ x, y }) => isOnArc(one, x, y) && isOnArc(other, x, y));
}

function isOnArc(arc: ArcCurve, x: number, y: number): boolean {
  return arc.faces((x - arc.x) / arc.radius, (y - arc.y) / arc.radius);
}

function isOn(t: number): boolean {
  return t >= -END_SHARE && t <= 1 + END_SHARE;
}

function isWithin(t: number): boolean {
  return t > END_SHARE && t < 1 - END_SHARE;
}
