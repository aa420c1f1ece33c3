import { composeAffine, transformCurve } from '@hidebound/geometry';
import type { Affine, Curve } from '@hidebound/geometry';
import { arcCurve, straightCurve } from './arcs.js';
import type { EntityBody, Shape } from './entity.js';
import { numberField, pointField, wholeField } from './fields.js';
import type { Fields } from './fields.js';
import { curveThrough } from './interpolate.js';
import { planeOf } from './plane.js';
import { isSound } from './spline.js';
import type { Control } from './spline.js';
import { numberAt } from './values.js';

const DEGREES_PER_RADIAN = 180 / Math.PI;

export const NO_SIZE: EntityBody = { kind: 'left out', reason: 'no size' };
export const NOT_FLAT: EntityBody = { kind: 'left out', reason: 'not flat' };

function plainBody(curve: Curve): EntityBody {
  return { kind: 'curve', shape: { kind: 'plain', curve } };
}

/** Ends stand in the frame of the drawing, whatever the extrusion direction. */
export function readLine(fields: Fields): EntityBody {
  const [from, to] = [pointField(fields, 10), pointField(fields, 11)];
  return from.x === to.x && from.y === to.y ? NO_SIZE : plainBody(straightCurve(from, to));
}

/** CIRCLE and ARC: centre, radius and angles in the entity's own frame. */
export function readRound(fields: Fields): EntityBody {
  const plane = planeOf(fields);
  if (plane === undefined) return NOT_FLAT;
  const radius = Math.abs(numberField(fields, 40));
  if (radius === 0) return NO_SIZE;
  const isWhole = fields.type === 'CIRCLE';
  const curve = arcCurve({
    center: pointField(fields, 10),
    radius,
    startDeg: isWhole ? 0 : numberField(fields, 50),
    endDeg: isWhole ? 0 : numberField(fields, 51),
  });
  return plainBody(inPlane(curve, plane));
}

function inPlane(curve: Curve, plane: Affine): Curve {
  return plane.a > 0 ? curve : transformCurve(plane, curve);
}

/**
 * Centre, end of the longer half axis from it, share of the shorter one, and from where to where in the angle of the
 * circle that it is a flattened one of; all in the frame of the drawing. Seen from below it runs the other way round.
 */
export function readEllipse(fields: Fields): EntityBody {
  const plane = planeOf(fields);
  if (plane === undefined) return NOT_FLAT;
  const center = pointField(fields, 10);
  const long = pointField(fields, 11);
  const radius = Math.sqrt(long.x * long.x + long.y * long.y);
  const ratio = Math.abs(numberField(fields, 40, 1));
  if (radius === 0 || ratio === 0) return NO_SIZE;
  const startDeg = numberField(fields, 41, 0) * DEGREES_PER_RADIAN;
  const endDeg = numberField(fields, 42, 2 * Math.PI) * DEGREES_PER_RADIAN;
  const circle = arcCurve({ center: { x: 0, y: 0 }, radius, startDeg, endDeg });
  const [ux, uy] = [long.x / radius, long.y / radius];
  const turn = plane.a * ratio;
  const frame: Affine = { a: ux, b: uy, c: -uy * turn, d: ux * turn, e: center.x, f: center.y };
  return { kind: 'curve', shape: { kind: 'ellipse', circle, frame } };
}

/** Of SPLINE's flags. */
const CLOSED = 1;

/** By control points where there are any, else by the points that it goes through. Both in the frame of the drawing. */
export function readSpline(fields: Fields): EntityBody {
  const isClosed = (wholeField(fields, 70) & CLOSED) !== 0;
  const { controls, knots, fits } = splineLists(fields);
  const spline = { degree: wholeField(fields, 71, 3), knots, controls, isClosed };
  if (isSound(spline)) return { kind: 'curve', shape: { kind: 'spline', spline } };
  const ways = isClosed ? [] : [wayField(fields, 12), wayField(fields, 13)];
  const curve = curveThrough(fits, isClosed, ways[0], ways[1]);
  if (curve === undefined)
    return { kind: 'left out', reason: controls.length > 0 ? 'kind not read' : 'no size' };
  return { kind: 'curve', shape: { kind: 'plain', curve }, isInterpolated: true };
}

/** A direction of length 1, as the speed of a curve whose steps are as long as its chords. */
function wayField(fields: Fields, code: number): { x: number; y: number } | undefined {
  const { x, y } = pointField(fields, code);
  const length = Math.sqrt(x * x + y * y);
  return length === 0 ? undefined : { x: x / length, y: y / length };
}

interface SplineLists {
  readonly controls: readonly Control[];
  readonly knots: readonly number[];
  readonly fits: readonly { readonly x: number; readonly y: number }[];
}

/** Repeated fields, in their order; weights may stand before or after the points. */
function splineLists({ pairs, from, to }: Fields): SplineLists {
  const knots: number[] = [];
  const weights: number[] = [];
  const points: [x: number, y: number][] = [];
  const fits: { x: number; y: number }[] = [];
  for (let i = from + 1; i < to; i++) {
    const code = pairs.codes[i];
    if (code === 40) knots.push(numberAt(pairs, i));
    else if (code === 41) weights.push(numberAt(pairs, i));
    else if (code === 10) points.push([numberAt(pairs, i), 0]);
    else if (code === 20 && points.length > 0) points[points.length - 1]![1] = numberAt(pairs, i);
    else if (code === 11) fits.push({ x: numberAt(pairs, i), y: 0 });
    else if (code === 21 && fits.length > 0) fits[fits.length - 1]!.y = numberAt(pairs, i);
  }
  const hasWeights = weights.length === points.length;
  return { knots, fits, controls: points.map(([x, y], i): Control => [x, y, hasWeights ? weights[i]! : 1]) };
}

/** A shape as it lies under a transform, before the transform of the shape itself. */
export function framed(shape: Shape, matrix: Affine): Affine {
  return shape.kind === 'ellipse' ? composeAffine(matrix, shape.frame) : matrix;
}
