import { circleCurve, curveEndPoints, curveFromPolyline, ellipticalArcToSegments } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import type { XmlElement } from '../xml/node.js';
import type { Style } from '../css/style.js';
import { resolveLength, splitLength } from './length.js';
import type { LengthAxis, LengthFrame } from './length.js';
import { parsePathData } from './path-data.js';
import type { PathData } from './path-data.js';

/** A drawn element as its reader sees it. */
export interface ShapeSource {
  readonly element: XmlElement;
  readonly style: Style;
  readonly frame: LengthFrame;
  /** Every length is multiplied by this, a power of two near the scale at which it will be drawn. */
  readonly unit: number;
}

export const SHAPE_NAMES = ['path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon'] as const;
export type ShapeName = (typeof SHAPE_NAMES)[number];

export function isShapeName(name: string): name is ShapeName {
  return (SHAPE_NAMES as readonly string[]).includes(name);
}

/** The lines of a basic shape or path (SVG 2, chapters 9 and 10), in its own user units times `unit`. */
export function shapeLines(source: ShapeSource): PathData {
  const one = (curve: Curve | undefined): PathData => ({ subpaths: curve === undefined ? [] : [curve] });
  switch (source.element.name as ShapeName) {
    case 'path':
      return parsePathData(pathText(source), source.unit, statedVias(source));
    case 'rect':
      return one(rectCurve(source));
    case 'circle':
      return one(circleOf(source));
    case 'ellipse':
      return one(ellipseOf(source));
    case 'line':
      return one(lineOf(source));
    case 'polyline':
      return pointsCurve(source, false);
    case 'polygon':
      return pointsCurve(source, true);
  }
}

/** `d` may stand in CSS as `path("…")`. */
function pathText({ element, style }: ShapeSource): string {
  const css = /^path\(\s*(["'])([\s\S]*)\1\s*\)$/.exec(style.get('d') ?? '');
  return css?.[2] ?? element.attributes.get('d') ?? '';
}

/** Where the path's arcs pass through, as our own patterns say beside it; as far as they are finite numbers. */
function statedVias({ element, unit }: ShapeSource): Point[] {
  const numbers = (element.attributes.get('data-via') ?? '').split(/[\s,]+/).map(parseFloat);
  const vias: Point[] = [];
  for (let i = 0; i + 1 < numbers.length; i += 2) {
    const via = { x: numbers[i]! * unit, y: numbers[i + 1]! * unit };
    if (!Number.isFinite(via.x) || !Number.isFinite(via.y)) break;
    vias.push(via);
  }
  return vias;
}

function length(source: ShapeSource, name: string, axis: LengthAxis): number | undefined {
  const text = source.style.get(name) ?? source.element.attributes.get(name);
  if (text === undefined || text.trim() === '' || text === 'auto') return undefined;
  const n = resolveLength(text, source.frame, axis);
  return n === undefined ? undefined : n * source.unit;
}

/** Names of the geometry attributes whose value is no number at all, or not a finite one. */
export function unreadableLengths({ element }: ShapeSource): string[] {
  return ['x', 'y', 'width', 'height', 'cx', 'cy', 'r', 'rx', 'ry', 'x1', 'y1', 'x2', 'y2'].filter((name) => {
    const text = element.attributes.get(name)?.trim();
    if (text === undefined || text === '' || text === 'auto') return false;
    const written = splitLength(text);
    return written === undefined || !Number.isFinite(written.value);
  });
}

function rectCurve(source: ShapeSource): Curve | undefined {
  const x = length(source, 'x', 'x') ?? 0;
  const y = length(source, 'y', 'y') ?? 0;
  const width = length(source, 'width', 'x') ?? 0;
  const height = length(source, 'height', 'y') ?? 0;
  if (!(width > 0 && height > 0)) return undefined;
  const { rx, ry } = cornerRadii(source, width, height);
  const right = x + width;
  const bottom = y + height;
  if (rx === 0 || ry === 0) {
    const corners = [
      { x, y },
      { x: right, y },
      { x: right, y: bottom },
      { x, y: bottom },
    ];
    return curveFromPolyline(corners, true);
  }
  const start = { x: x + rx, y };
  const segments: CurveSegment[] = [];
  let at: Point = start;
  const line = (to: Point) => {
    if (to.x !== at.x || to.y !== at.y) segments.push({ kind: 'line', to });
    at = to;
  };
  const corner = (to: Point) => {
    const arc = { start: at, rx, ry, xAxisRotationDeg: 0, largeArc: false, sweep: true, to };
    segments.push(...ellipticalArcToSegments(arc));
    at = to;
  };
  line({ x: right - rx, y });
  corner({ x: right, y: y + ry });
  line({ x: right, y: bottom - ry });
  corner({ x: right - rx, y: bottom });
  line({ x: x + rx, y: bottom });
  corner({ x, y: bottom - ry });
  line({ x, y: y + ry });
  corner(start);
  return { start, segments, closed: true };
}

/** SVG 2, section 10.2: a missing radius is as the other one, and neither passes half the side. */
function cornerRadii(source: ShapeSource, width: number, height: number): { rx: number; ry: number } {
  const known = (n: number | undefined) => (n === undefined || n < 0 ? undefined : n);
  const givenX = known(length(source, 'rx', 'x'));
  const givenY = known(length(source, 'ry', 'y'));
  const rx = givenX ?? givenY ?? 0;
  const ry = givenY ?? givenX ?? 0;
  return { rx: Math.min(rx, width / 2), ry: Math.min(ry, height / 2) };
}

function circleOf(source: ShapeSource): Curve | undefined {
  const center = { x: length(source, 'cx', 'x') ?? 0, y: length(source, 'cy', 'y') ?? 0 };
  const r = length(source, 'r', 'other') ?? 0;
  return r > 0 ? circleCurve(center, r) : undefined;
}

function ellipseOf(source: ShapeSource): Curve | undefined {
  const cx = length(source, 'cx', 'x') ?? 0;
  const cy = length(source, 'cy', 'y') ?? 0;
  const givenX = length(source, 'rx', 'x');
  const givenY = length(source, 'ry', 'y');
  const rx = givenX ?? givenY ?? 0;
  const ry = givenY ?? givenX ?? 0;
  if (!(rx > 0 && ry > 0)) return undefined;
  if (rx === ry) return circleCurve({ x: cx, y: cy }, rx);
  const start = { x: cx + rx, y: cy };
  const middle = { x: cx - rx, y: cy };
  const half = { rx, ry, xAxisRotationDeg: 0, largeArc: false, sweep: true };
  const segments = [
    ...ellipticalArcToSegments({ ...half, start, to: middle }),
    ...ellipticalArcToSegments({ ...half, start: middle, to: start }),
  ];
  return { start, segments, closed: true };
}

function lineOf(source: ShapeSource): Curve | undefined {
  const at = (i: 1 | 2): Point => ({
    x: length(source, `x${i}`, 'x') ?? 0,
    y: length(source, `y${i}`, 'y') ?? 0,
  });
  const from = at(1);
  const to = at(2);
  return from.x === to.x && from.y === to.y ? undefined : curveFromPolyline([from, to], false);
}

/** The points as path data: the grammar of numbers and separators is the same, and so is what a mistake means. */
function pointsCurve({ element, unit }: ShapeSource, closed: boolean): PathData {
  const text = (element.attributes.get('points') ?? '').trim();
  if (text === '') return { subpaths: [] };
  const data = parsePathData(`M${text}`, unit);
  return closed ? { ...data, subpaths: data.subpaths.map(closeCurve) } : data;
}

function closeCurve(curve: Curve): Curve {
  const { start, end } = curveEndPoints(curve);
  const meets = start.x === end.x && start.y === end.y;
  const back: CurveSegment[] = meets ? [] : [{ kind: 'line', to: start }];
  return { start, segments: [...curve.segments, ...back], closed: true };
}
