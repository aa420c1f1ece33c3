import { curveEndPoints, ellipticalArcToSegments, flattenCurve, polylineNearest } from '@hidebound/geometry';
import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import { MAX_PATH_SEGMENTS } from '../limits.js';

/**
 * Reads path data (SVG 2, section 9.3) straight into curves. Written anew rather than taken from a library: one
 * that was measured needs 2.4 s for 100,000 points after one command letter, in the square of their number.
 */

/** Why reading stopped before the end. */
export interface PathProblem {
  readonly kind: 'broken' | 'not-finite' | 'too-long';
  /** Character of the path data, from 0. */
  readonly at: number;
}

export interface PathData {
  /** Lines that move at least somewhere; `closed` only where the data says so. */
  readonly subpaths: readonly Curve[];
  /** What was read before the problem stays, as SVG asks. */
  readonly problem?: PathProblem;
}

interface Pen {
  readonly subpaths: Curve[];
  start: Point;
  at: Point;
  /** Where the reflected handle of S or T comes from; nothing after other commands. */
  cubicHandle: Point | undefined;
  quadraticHandle: Point | undefined;
  segments: CurveSegment[];
  count: number;
  /** Stated points of the arcs to come, and how many were taken. */
  readonly vias: readonly Point[];
  arcs: number;
}

interface Scanner {
  readonly text: string;
  at: number;
}

const ARGUMENTS: Readonly<Record<string, number>> = {
  m: 2,
  l: 2,
  h: 1,
  v: 1,
  c: 6,
  s: 4,
  q: 4,
  t: 2,
  a: 7,
  z: 0,
};
const NUMBER = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const NOT_A_NUMBER = /[+-]?(?:nan|inf)/iy;
const SPACE = /[ \t\n\r\f]*/y;
const SPACE_COMMA = /[ \t\n\r\f]*,?[ \t\n\r\f]*/y;

/**
 * The path's lines, every number multiplied by `unit` (so that curves made of arcs are exact enough in mm). `vias`: a
 * point that each arc is said to pass through, in turn and so multiplied already.
 */
export function parsePathData(text: string, unit = 1, vias: readonly Point[] = []): PathData {
  const scanner: Scanner = { text, at: 0 };
  const pen: Pen = {
    subpaths: [],
    start: { x: 0, y: 0 },
    at: { x: 0, y: 0 },
    cubicHandle: undefined,
    quadraticHandle: undefined,
    segments: [],
    count: 0,
    vias,
    arcs: 0,
  };
  const problem = readCommands(scanner, pen, unit);
  finishSubpath(pen, false);
  return problem === undefined ? { subpaths: pen.subpaths } : { subpaths: pen.subpaths, problem };
}

function readCommands(scanner: Scanner, pen: Pen, unit: number): PathProblem | undefined {
  let isFirst = true;
  for (;;) {
    skip(scanner, SPACE);
    if (scanner.at >= scanner.text.length) return undefined;
    const letter = scanner.text[scanner.at]!;
    const lower = letter.toLowerCase();
    const count = ARGUMENTS[lower];
    if (count === undefined || (isFirst && lower !== 'm')) return { kind: 'broken', at: scanner.at };
    isFirst = false;
    scanner.at++;
    const problem = readRuns(scanner, pen, letter, count, unit);
    if (problem !== undefined) return problem;
  }
}

/** All groups of arguments after one letter. */
function readRuns(
  scanner: Scanner,
  pen: Pen,
  letter: string,
  count: number,
  unit: number,
): PathProblem | undefined {
  if (count === 0) {
    finishSubpath(pen, true);
    return undefined;
  }
  let command = letter;
  skip(scanner, SPACE);
  for (;;) {
    const from = scanner.at;
    const args = readArguments(scanner, command.toLowerCase() === 'a', count);
    if (args === undefined) {
      return { kind: isAt(scanner, NOT_A_NUMBER) ? 'not-finite' : 'broken', at: scanner.at };
    }
    if (!args.every((n) => Number.isFinite(n * unit))) return { kind: 'not-finite', at: from };
    if (++pen.count > MAX_PATH_SEGMENTS) return { kind: 'too-long', at: from };
    draw(pen, command, args, unit);
    // Further pairs after a move are lines.
    if (command === 'M') command = 'L';
    else if (command === 'm') command = 'l';
    const beforeComma = scanner.at;
    skip(scanner, SPACE_COMMA);
    const commaFound = scanner.text.slice(beforeComma, scanner.at).includes(',');
    if (!commaFound && !isAt(scanner, NUMBER)) {
      return isAt(scanner, NOT_A_NUMBER) ? { kind: 'not-finite', at: scanner.at } : undefined;
    }
  }
}

function readArguments(scanner: Scanner, isArc: boolean, count: number): number[] | undefined {
  const args: number[] = [];
  for (let i = 0; i < count; i++) {
    if (i > 0) skip(scanner, SPACE_COMMA);
    const isFlag = isArc && (i === 3 || i === 4);
    const n = isFlag ? readFlag(scanner) : readNumber(scanner);
    if (n === undefined) return undefined;
    args.push(n);
  }
  return args;
}

/** One character: flags may follow each other without a space. */
function readFlag(scanner: Scanner): number | undefined {
  const ch = scanner.text[scanner.at];
  if (ch !== '0' && ch !== '1') return undefined;
  scanner.at++;
  return ch === '1' ? 1 : 0;
}

function readNumber(scanner: Scanner): number | undefined {
  NUMBER.lastIndex = scanner.at;
  if (!NUMBER.test(scanner.text)) return undefined;
  const n = Number(scanner.text.slice(scanner.at, NUMBER.lastIndex));
  scanner.at = NUMBER.lastIndex;
  return n;
}

function skip(scanner: Scanner, pattern: RegExp): void {
  pattern.lastIndex = scanner.at;
  if (pattern.test(scanner.text)) scanner.at = pattern.lastIndex;
}

function isAt(scanner: Scanner, pattern: RegExp): boolean {
  pattern.lastIndex = scanner.at;
  return pattern.test(scanner.text);
}

function draw(pen: Pen, letter: string, args: readonly number[], unit: number): void {
  const command = letter.toUpperCase();
  const isRelative = letter !== command;
  const ox = isRelative ? pen.at.x : 0;
  const oy = isRelative ? pen.at.y : 0;
  const point = (i: number): Point => ({ x: args[i]! * unit + ox, y: args[i + 1]! * unit + oy });
  const { cubicHandle, quadraticHandle, at } = pen;
  pen.cubicHandle = undefined;
  pen.quadraticHandle = undefined;
  switch (command) {
    case 'M':
      finishSubpath(pen, false);
      pen.start = pen.at = point(0);
      break;
    case 'L':
      lineTo(pen, point(0));
      break;
    case 'H':
      lineTo(pen, { x: args[0]! * unit + ox, y: at.y });
      break;
    case 'V':
      lineTo(pen, { x: at.x, y: args[0]! * unit + oy });
      break;
    case 'C':
      cubicTo(pen, point(0), point(2), point(4));
      break;
    case 'S':
      cubicTo(pen, reflect(cubicHandle, at), point(0), point(2));
      break;
    case 'Q':
      quadraticTo(pen, point(0), point(2));
      break;
    case 'T':
      quadraticTo(pen, reflect(quadraticHandle, at), point(0));
      break;
    default:
      arcTo(pen, args, unit, point(5));
  }
}

/** SVG 2, section 9.3.6: the last handle mirrored at the current point, or the point itself. */
function reflect(handle: Point | undefined, at: Point): Point {
  return handle === undefined ? at : { x: 2 * at.x - handle.x, y: 2 * at.y - handle.y };
}

function lineTo(pen: Pen, to: Point): void {
  if (to.x !== pen.at.x || to.y !== pen.at.y) pen.segments.push({ kind: 'line', to });
  pen.at = to;
}

function cubicTo(pen: Pen, handle1: Point, handle2: Point, to: Point): void {
  const stays = [handle1, handle2, to].every((p) => p.x === pen.at.x && p.y === pen.at.y);
  if (!stays) pen.segments.push({ kind: 'cubic', handle1, handle2, to });
  pen.cubicHandle = handle2;
  pen.at = to;
}

/** A quadratic is the cubic whose handles lie two thirds of the way to its own. */
function quadraticTo(pen: Pen, handle: Point, to: Point): void {
  const twoThirds = (p: Point): Point => ({
    x: p.x + (2 / 3) * (handle.x - p.x),
    y: p.y + (2 / 3) * (handle.y - p.y),
  });
  cubicTo(pen, twoThirds(pen.at), twoThirds(to), to);
  pen.cubicHandle = undefined;
  pen.quadraticHandle = handle;
}

function arcTo(pen: Pen, args: readonly number[], unit: number, to: Point): void {
  const drawn = ellipticalArcToSegments({
    start: pen.at,
    rx: Math.abs(args[0]!) * unit,
    ry: Math.abs(args[1]!) * unit,
    xAxisRotationDeg: args[2]!,
    largeArc: args[3] === 1,
    sweep: args[4] === 1,
    to,
  });
  const via = pen.vias[pen.arcs++];
  if (via !== undefined && passesThrough(pen.at, drawn, via)) pen.segments.push({ kind: 'arc', via, to });
  else pen.segments.push(...drawn);
  pen.at = to;
}

/** A stated point farther off than this is of another arc: someone changed the path since. In units near to mm. */
const CHANGED = 0.01;

function passesThrough(start: Point, drawn: readonly CurveSegment[], via: Point): boolean {
  if (drawn.length === 0 || drawn.some(({ kind }) => kind === 'cubic')) return false;
  const chain = flattenCurve({ start, segments: drawn, closed: false }, CHANGED / 4);
  return polylineNearest(chain, via).distance <= CHANGED;
}

function finishSubpath(pen: Pen, closed: boolean): void {
  if (pen.segments.length > 0) {
    const { x, y } = pen.start;
    if (closed && (pen.at.x !== x || pen.at.y !== y)) pen.segments.push({ kind: 'line', to: pen.start });
    const curve: Curve = { start: pen.start, segments: pen.segments, closed };
    pen.subpaths.push(closed ? curve : closedIfMeeting(curve));
  }
  pen.segments = [];
  pen.at = pen.start;
  pen.cubicHandle = undefined;
  pen.quadraticHandle = undefined;
}

/** A line of several segments that ends exactly where it starts is an outline, whether or not it says so. */
function closedIfMeeting(curve: Curve): Curve {
  const { start, end } = curveEndPoints(curve);
  const meets = start.x === end.x && start.y === end.y;
  return meets && curve.segments.length > 1 ? { ...curve, closed: true } : curve;
}
