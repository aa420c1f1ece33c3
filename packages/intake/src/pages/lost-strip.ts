import { curveEndPoints, distanceBetween } from '@hidebound/geometry';
import type { Curve, CurveSegment } from '@hidebound/geometry';
import {
  AT_BORDER_MM,
  GOES_ON_COS,
  MAX_BRIDGE_MM,
  MAX_FLAT_BRIDGE_MM,
  MAX_TIP_CHORD_MM,
  MAX_TIP_MM,
  ON_TANGENT_MM,
  SNAP_MM,
} from './limits.js';
import { lineEnds } from './page-lines.js';
import type { LineEnd } from './page-lines.js';
import { dot, minus } from './vectors.js';

/**
 * Programs round pages to whole units of paper, so a strip of some tenths of a millimetre between two pages is on neither.
 * What lies in it is lost: a line that crosses it at a flat angle misses more of its length than the strip is wide, and
 * of a curve that only just reaches into it the tip.
 */

/** The sine of the turn from one direction to another, both of length 1. */
function sineBetween(a: LineEnd['out'], b: LineEnd['out']): number {
  return a.x * b.y - a.y * b.x;
}

/** Two ends on both sides of a lost strip are of one line: each lies on the other's tangent but for what the bend between explains. */
export function goesOnOverStrip(a: LineEnd, b: LineEnd): boolean {
  const between = minus(b.at, a.at);
  const across = Math.min(Math.abs(between.x), Math.abs(between.y));
  const gap = Math.sqrt(dot(between, between));
  if (across > MAX_BRIDGE_MM || gap > MAX_FLAT_BRIDGE_MM || gap === 0) return false;
  if (-dot(a.out, b.out) < GOES_ON_COS) return false;
  if (dot(between, a.out) <= 0 || dot(between, b.out) >= 0) return false;
  // A line that bends one way by an angle leaves its tangent by less than gap times the angle's sine.
  const allowed = ON_TANGENT_MM + gap * Math.abs(sineBetween(a.out, b.out));
  return Math.abs(sineBetween(a.out, between)) <= allowed && Math.abs(sineBetween(b.out, between)) <= allowed;
}

/** Tips whose two ends leave their edge more steeply are no flat curves, sine. */
const TIP_MAX_SINE = 0.5;

/** Both ends of a tip lean alike, but for this share. */
const TIP_EVEN_SHARE = 0.5;

/**
 * How far the tip between two ends on one edge of a page reaches beyond it, mm, if they turn towards each other; nothing if
 * they don't, or it reaches too far to be lost in the strip.
 */
export function tipReach(a: LineEnd, b: LineEnd): number | undefined {
  const chord = minus(b.at, a.at);
  if (Math.min(Math.abs(chord.x), Math.abs(chord.y)) > AT_BORDER_MM) return undefined;
  const gap = Math.sqrt(dot(chord, chord));
  if (gap <= SNAP_MM || gap > MAX_TIP_CHORD_MM) return undefined;
  const leaves = sineBetween(chord, a.out) / gap;
  const comes = sineBetween(chord, b.out) / gap;
  if (leaves * comes <= 0 || dot(chord, a.out) <= 0 || dot(chord, b.out) >= 0) return undefined;
  const [least, most] = [leaves, comes].map(Math.abs).sort((p, q) => p - q) as [number, number];
  if (most > TIP_MAX_SINE || least < TIP_EVEN_SHARE * most) return undefined;
  // The height of a circle's segment: half the chord times the tangent of half the angle at its ends.
  const reach = (gap / 2) * Math.tan(Math.asin((least + most) / 2) / 2);
  return reach <= MAX_TIP_MM ? reach : undefined;
}

/** A tip lower than this is a straight line: far below what a blade follows. */
const FLAT_MM = 0.005;

/** What closes the gap from the end of one curve to the start of the next: a straight line, or a tip. */
export function bridgeOf(from: Curve, to: Curve): CurveSegment {
  const a = lineEnds(from)[1];
  const b = lineEnds(to)[0];
  if ((tipReach(a, b) ?? 0) < FLAT_MM) return { kind: 'line', to: b.at };
  const gap = distanceBetween(a.at, b.at);
  const angle = Math.acos(Math.max(-1, Math.min(1, -dot(a.out, b.out)))) / 2;
  // Of a circle's arc: 4/3 · tan(quarter of the turn) · radius, where radius = half the chord / sin(half the turn).
  const handle = ((4 / 3) * Math.tan(angle / 2) * (gap / 2)) / Math.sin(angle);
  const ahead = ({ at, out }: LineEnd) => ({ x: at.x + handle * out.x, y: at.y + handle * out.y });
  return { kind: 'cubic', handle1: ahead(a), handle2: ahead(b), to: curveEndPoints(to).start };
}
