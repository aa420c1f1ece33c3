import {
  curveEndPoints,
  curveSteps,
  flattenCurve,
  polylineNearest,
  reverseCurve,
  transformCurveToGrid,
} from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import { FLATTEN_MM, FLAT_RUN_MM, JOIN_MM, STRAIGHT_OVER_FOLD_MM } from '../limits.js';
import { alongAxis, axisThrough, footOnAxis, mirrorAbout, offAxis } from '../lines/axis.js';
import type { Axis } from '../lines/axis.js';

/** Places at which a line is held against its mirror image. */
const SYMMETRY_SAMPLES = 100;

export function mirrorCurve(axis: Axis, curve: Curve): Curve {
  return transformCurveToGrid(mirrorAbout(axis), curve);
}

/** How far the curve reaches to either side of the axis, mm: the least and the greatest of what it lies off. */
export function reachOff(axis: Axis, curve: Curve): { readonly least: number; readonly most: number } {
  let least = Infinity;
  let most = -Infinity;
  for (const p of flattenCurve(curve, FLATTEN_MM)) {
    const off = offAxis(axis, p);
    if (off < least) least = off;
    if (off > most) most = off;
  }
  return { least, most };
}

/** True if the mirror image of the curve lies on it everywhere, within 0.1 mm. */
export function isSymmetric(axis: Axis, curve: Curve): boolean {
  const points = flattenCurve(curve, FLATTEN_MM);
  const image = flattenCurve(mirrorCurve(axis, curve), FLATTEN_MM);
  const step = Math.max(1, Math.floor(points.length / SYMMETRY_SAMPLES));
  const fits = (p: Point) => polylineNearest(image, p).distance <= JOIN_MM + FLATTEN_MM;
  return points.every((p, i) => i % step !== 0 || fits(p));
}

/**
 * A closed half without its straight parts on the axis, each rest joined with its mirror image: the outline first, then
 * what the half left open within it. Nothing if no part of it lies on the axis.
 */
export function unfoldClosed(axis: Axis, curve: Curve): Curve[] | undefined {
  const chains = chainsOff(axis, curve);
  if (chains === undefined) return undefined;
  const width = (chain: Curve) => {
    const { start, end } = curveEndPoints(chain);
    return Math.abs(alongAxis(axis, end) - alongAxis(axis, start));
  };
  return chains.sort((a, b) => width(b) - width(a)).map((chain) => withMirror(axis, chain));
}

/** An open line that ends on the axis, joined with its mirror image; closed if both ends do. Nothing if none does. */
export function unfoldOpen(axis: Axis, curve: Curve): Curve | undefined {
  const { start, end } = curveEndPoints(curve);
  const starts = Math.abs(offAxis(axis, start)) <= JOIN_MM;
  const ends = Math.abs(offAxis(axis, end)) <= JOIN_MM;
  if (!starts && !ends) return undefined;
  if (ends) return withMirror(axis, snapped(axis, curve, starts));
  return withMirror(axis, snapped(axis, reverseCurve(curve), false));
}

/** Open chains between the parts on the axis, ends put onto it; nothing if no part, or all of it, lies there. */
function chainsOff(axis: Axis, curve: Curve): Curve[] | undefined {
  const steps = curveSteps(curve);
  const lies = steps.map(({ from, segment }) => liesOnAxis(axis, from, segment));
  const first = lies.findIndex((on, i) => !on && lies[(i + lies.length - 1) % lies.length]);
  if (first < 0) return undefined;
  const chains: { start: Point; segments: CurveSegment[]; closed: false }[] = [];
  for (let k = 0; k < steps.length; k++) {
    const i = (first + k) % steps.length;
    if (lies[i]) continue;
    const isNew = lies[(i + steps.length - 1) % steps.length];
    if (isNew) chains.push({ start: steps[i]!.from, segments: [], closed: false });
    chains.at(-1)!.segments.push(steps[i]!.segment);
  }
  return chains.map((chain) => snapped(axis, chain, true));
}

function liesOnAxis(axis: Axis, from: Point, segment: CurveSegment): boolean {
  const isOn = (p: Point) => Math.abs(offAxis(axis, p)) <= JOIN_MM;
  if (!isOn(from) || !isOn(segment.to)) return false;
  if (segment.kind === 'cubic') return isOn(segment.handle1) && isOn(segment.handle2);
  return segment.kind === 'line' || isOn(segment.via);
}

/** The open curve with its end, and its start if asked, put onto the axis. */
function snapped(axis: Axis, curve: Curve, alsoStart: boolean): Curve {
  const last = curve.segments.at(-1)!;
  return {
    start: alsoStart ? footOnAxis(axis, curve.start) : curve.start,
    segments: [...curve.segments.slice(0, -1), { ...last, to: footOnAxis(axis, last.to) }],
    closed: false,
  };
}

/** The chain, which ends on the axis, and back along its mirror image. */
function withMirror(axis: Axis, chain: Curve): Curve {
  const { start, end } = curveEndPoints(chain);
  const closed = Math.abs(offAxis(axis, start)) <= FLAT_RUN_MM;
  const image = reverseCurve(mirrorCurve(axis, chain));
  const home = closed ? start : curveEndPoints(image).end;
  const back = [...image.segments.slice(0, -1), { ...image.segments.at(-1)!, to: home }];
  const [joint, after] = [chain.segments.at(-1)!, back[0]!];
  const before = curveEndPoints({ ...chain, segments: chain.segments.slice(0, -1) }).end;
  const segments = isStraightOver(before, joint, end, after)
    ? [...chain.segments.slice(0, -1), ...back]
    : [...chain.segments, ...back];
  return closed ? straightOverStart({ start, segments, closed }) : { start, segments, closed };
}

/** Of a closed curve that goes straight on over its start, the start moved to the next corner. */
function straightOverStart(curve: Curve): Curve {
  const { start, segments } = curve;
  const [first, last] = [segments[0]!, segments.at(-1)!];
  const before = segments.at(-2)?.to;
  if (segments.length < 3 || before === undefined || !isStraightOver(before, last, start, first))
    return curve;
  return {
    start: first.to,
    segments: [...segments.slice(1, -1), { kind: 'line', to: first.to }],
    closed: true,
  };
}

function isStraightOver(before: Point, a: CurveSegment, corner: Point, b: CurveSegment): boolean {
  if (a.kind !== 'line' || b.kind !== 'line') return false;
  const axis = axisThrough({ from: before, to: b.to });
  return axis !== undefined && Math.abs(offAxis(axis, corner)) <= STRAIGHT_OVER_FOLD_MM;
}
