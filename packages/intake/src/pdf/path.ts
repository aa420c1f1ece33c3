import type { Curve, CurveSegment, Point } from '@hidebound/geometry';
import { STEP } from './operators.js';

/**
 * The subpaths of one path in user space. pdf.js hands on a path as one array of numbers: a step, then its coordinates
 * (ISO 32000-1, section 8.5.2). `re` comes as four lines. A subpath is closed if it says so, or ends where it starts.
 */
export function subpathsOf(numbers: ArrayLike<number>): Curve[] {
  const subpaths: Curve[] = [];
  let start: Point | undefined;
  let segments: CurveSegment[] = [];
  const finish = (isClosed: boolean) => {
    if (start !== undefined && segments.length > 0) subpaths.push(subpath(start, segments, isClosed));
    segments = [];
  };
  for (let i = 0; i < numbers.length;) {
    const step = numbers[i]!;
    const at = (k: number): Point => ({ x: numbers[i + 1 + 2 * k]!, y: numbers[i + 2 + 2 * k]! });
    if (step === STEP.closePath) {
      finish(true);
      i += 1;
    } else if (step === STEP.moveTo) {
      finish(false);
      start = at(0);
      i += 3;
    } else {
      const from: Point = segments.at(-1)?.to ?? (start ??= at(0));
      const segment = segmentOf(step, from, at);
      segments.push(segment);
      i += LENGTHS[step]!;
    }
  }
  finish(false);
  return subpaths;
}

/** Numbers that a step takes, its own included. */
const LENGTHS: Readonly<Record<number, number>> = {
  [STEP.lineTo]: 3,
  [STEP.curveTo]: 7,
  [STEP.quadraticCurveTo]: 5,
};

function segmentOf(step: number, from: Point, at: (k: number) => Point): CurveSegment {
  if (step === STEP.lineTo) return { kind: 'line', to: at(0) };
  if (step === STEP.curveTo) return { kind: 'cubic', handle1: at(0), handle2: at(1), to: at(2) };
  if (step !== STEP.quadraticCurveTo) throw new TypeError(`Unknown step of a path: ${step}.`);
  // A quadratic curve as a cubic one: handles at two thirds of the way to its own (degree elevation).
  const [handle, to] = [at(0), at(1)];
  return { kind: 'cubic', handle1: twoThirds(from, handle), handle2: twoThirds(to, handle), to };
}

function twoThirds(from: Point, to: Point): Point {
  return { x: from.x + ((to.x - from.x) * 2) / 3, y: from.y + ((to.y - from.y) * 2) / 3 };
}

function subpath(start: Point, segments: CurveSegment[], isClosed: boolean): Curve {
  const end = segments.at(-1)!.to;
  const meets = end.x === start.x && end.y === start.y;
  if (!isClosed) return { start, segments, closed: meets && segments.length > 1 };
  if (!meets) segments.push({ kind: 'line', to: start });
  return { start, segments, closed: true };
}
