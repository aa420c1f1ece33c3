/**
 * Trigonometry of + - * / and square root only. Engines differ in the last bit of Math.sin and its kin;
 * these operations are exact to the bit in all of them, so results are equal everywhere.
 */

const RADIANS_PER_DEGREE = 0.017453292519943295;
const DEGREES_PER_RADIAN = 57.29577951308232;

/** Taylor terms 1/(k(k+1)) suffice for |x| <= pi/4: the first one left out is below 1e-19. */
const SIN_TERMS = 9;
const COS_TERMS = 10;
/** Odd terms of the arc tangent for |x| <= tan(pi/16): the first one left out is below 1e-19. */
const ATAN_TERMS = 13;

/**
 * Sine and cosine of an angle in degrees; error below 1e-15, exact at multiples of 90.
 * In the y-down frame (cos, sin) is the x axis turned clockwise as seen.
 */
export function sinCosDeg(deg: number): { readonly sin: number; readonly cos: number } {
  const within = deg % 360;
  const quarter = Math.round(within / 90);
  const x = (within - 90 * quarter) * RADIANS_PER_DEGREE;
  const s = sinSeries(x);
  const c = cosSeries(x);
  switch ((quarter + 4) % 4) {
    case 0:
      return { sin: s, cos: c };
    case 1:
      return { sin: c, cos: negate(s) };
    case 2:
      return { sin: negate(s), cos: negate(c) };
    default:
      return { sin: negate(c), cos: s };
  }
}

/**
 * Direction of (x, y) in degrees, in (-180, 180]; 0 for the zero vector. Error below 1e-13 degrees; exact at
 * multiples of 45. Note the order of the arguments, as in Math.atan2.
 */
export function atan2Deg(y: number, x: number): number {
  const ax = Math.abs(x);
  const ay = Math.abs(y);
  if (ax === 0 && ay === 0) return 0;
  let deg: number;
  if (ax === ay) deg = 45;
  else deg = ay < ax ? atanDegUpTo45(ay / ax) : 90 - atanDegUpTo45(ax / ay);
  if (x < 0) deg = 180 - deg;
  return y < 0 ? negate(deg) : deg;
}

/** The same direction in [0, 360). */
export function normalizeDeg(deg: number): number {
  const within = deg % 360;
  const positive = within < 0 ? within + 360 : within;
  return positive >= 360 ? 0 : positive + 0;
}

/** The turn from b to a, in (-modulo/2, modulo/2]; modulo is 360 for directions, 180 for axes. */
export function angleBetweenDeg(a: number, b: number, modulo: 180 | 360 = 360): number {
  const turn = (a - b) % modulo;
  if (turn > modulo / 2) return turn - modulo;
  return turn <= -modulo / 2 ? turn + modulo : turn + 0;
}

/** -0 would show in files and break equality by Object.is. */
function negate(n: number): number {
  return n === 0 ? 0 : -n;
}

function sinSeries(x: number): number {
  const xx = x * x;
  let sum = 1;
  for (let k = SIN_TERMS; k >= 1; k--) sum = 1 - (xx / (2 * k * (2 * k + 1))) * sum;
  return x === 0 ? 0 : x * sum;
}

function cosSeries(x: number): number {
  const xx = x * x;
  let sum = 1;
  for (let k = COS_TERMS; k >= 1; k--) sum = 1 - (xx / ((2 * k - 1) * 2 * k)) * sum;
  return sum;
}

/** Arc tangent in degrees for 0 <= t <= 1; two halvings of the angle bring it to where the series is short. */
function atanDegUpTo45(t: number): number {
  const half = t / (1 + Math.sqrt(1 + t * t));
  const quarter = half / (1 + Math.sqrt(1 + half * half));
  const qq = quarter * quarter;
  let sum = 1 / (2 * ATAN_TERMS + 1);
  for (let k = ATAN_TERMS - 1; k >= 0; k--) sum = 1 / (2 * k + 1) - qq * sum;
  return 4 * quarter * sum * DEGREES_PER_RADIAN;
}
