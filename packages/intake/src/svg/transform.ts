import { IDENTITY, composeAffine, rotationDeg, scaling, translation } from '@hidebound/geometry';
import type { Affine } from '@hidebound/geometry';
import { resolveLength } from './length.js';
import type { LengthFrame } from './length.js';

/**
 * The product of a list of transform functions, of the attribute (SVG 1.1, section 7.6) or of the CSS property
 * (CSS Transforms 1, section 9). Nothing if the list can't be read: SVG then asks to leave it out.
 */
export function parseTransform(text: string, frame: LengthFrame): Affine | undefined {
  const body = text.trim();
  if (body === '' || body === 'none') return IDENTITY;
  const call = /[\s,]*([a-zA-Z]+)\s*\(([^()]*)\)/y;
  let matrix: Affine = IDENTITY;
  let at = 0;
  while (at < body.length) {
    call.lastIndex = at;
    const match = call.exec(body);
    if (match === null) return /^[\s,]*$/.test(body.slice(at)) ? matrix : undefined;
    const step = transformStep(match[1]!, splitArguments(match[2]!), frame);
    if (step === undefined) return undefined;
    matrix = composeAffine(matrix, step);
    at = call.lastIndex;
  }
  return matrix;
}

/** Arguments, also such as "10-20" without a space. */
function splitArguments(text: string): string[] {
  return text.match(/[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?(?:%|[a-z]*)|[^\s,]+/gi) ?? [];
}

function transformStep(name: string, args: readonly string[], frame: LengthFrame): Affine | undefined {
  const lengths = (axes: 'xy' | 'x' | 'y') =>
    args.map((arg, i) => resolveLength(arg, frame, axes === 'y' || i === 1 ? 'y' : 'x'));
  const numbers = () => args.map(plainNumber);
  switch (name) {
    case 'matrix':
      return args.length === 6 ? matrixOf(numbers()) : undefined;
    case 'translate':
      return pair(lengths('xy'), 0, translation);
    case 'translateX':
      return single(lengths('x'), (x) => translation(x, 0));
    case 'translateY':
      return single(lengths('y'), (y) => translation(0, y));
    case 'scale':
      return pair(numbers(), undefined, scaling);
    case 'scaleX':
      return single(numbers(), (x) => scaling(x, 1));
    case 'scaleY':
      return single(numbers(), (y) => scaling(1, y));
    case 'rotate':
      return rotation(args, frame);
    case 'skewX':
      return single(args.map(angleOf), (deg) => ({ ...IDENTITY, c: tangentDeg(deg) }));
    case 'skewY':
      return single(args.map(angleOf), (deg) => ({ ...IDENTITY, b: tangentDeg(deg) }));
    case 'skew':
      return pair(args.map(angleOf), 0, (x, y) => ({ ...IDENTITY, c: tangentDeg(x), b: tangentDeg(y) }));
    default:
      return undefined;
  }
}

type Numbers = readonly (number | undefined)[];

function single(numbers: Numbers, make: (n: number) => Affine): Affine | undefined {
  const [n] = numbers;
  return numbers.length === 1 && n !== undefined ? make(n) : undefined;
}

/** Two numbers, of which the second may be missing; `undefined` as its default means "as the first". */
function pair(
  numbers: Numbers,
  missing: number | undefined,
  make: (x: number, y: number) => Affine,
): Affine | undefined {
  const [x, y = missing ?? x] = numbers;
  if (numbers.length < 1 || numbers.length > 2 || x === undefined || y === undefined) return undefined;
  return numbers.length === 2 && numbers[1] === undefined ? undefined : make(x, y);
}

function rotation(args: readonly string[], frame: LengthFrame): Affine | undefined {
  if (args.length !== 1 && args.length !== 3) return undefined;
  const deg = angleOf(args[0]!);
  const cx = args.length === 3 ? resolveLength(args[1]!, frame, 'x') : 0;
  const cy = args.length === 3 ? resolveLength(args[2]!, frame, 'y') : 0;
  if (deg === undefined || cx === undefined || cy === undefined) return undefined;
  return aboutPoint(rotationDeg(deg), cx, cy);
}

/** The transform with (x, y) as its fixed point instead of the origin. */
export function aboutPoint(matrix: Affine, x: number, y: number): Affine {
  return composeAffine(composeAffine(translation(x, y), matrix), translation(-x, -y));
}

function matrixOf(numbers: Numbers): Affine | undefined {
  const [a, b, c, d, e, f] = numbers;
  if (numbers.some((n) => n === undefined)) return undefined;
  return { a: a!, b: b!, c: c!, d: d!, e: e!, f: f! };
}

function plainNumber(text: string): number | undefined {
  const n = text.endsWith('%') ? Number(text.slice(0, -1)) / 100 : Number(text.replace(/px$/, ''));
  return Number.isFinite(n) ? n : undefined;
}

/** Degrees of "45", "45deg", "0.5turn", "50grad", "1rad". */
function angleOf(text: string): number | undefined {
  const match = /^(.*?)(deg|turn|grad|rad)?$/.exec(text)!;
  const n = Number(match[1]);
  if (match[1] === '' || !Number.isFinite(n)) return undefined;
  switch (match[2]) {
    case 'turn':
      return n * 360;
    case 'grad':
      return n * 0.9;
    case 'rad':
      return (n * 180) / Math.PI;
    default:
      return n;
  }
}

function tangentDeg(deg: number): number {
  return Math.tan((deg * Math.PI) / 180);
}
