import { atan2Deg } from '@hidebound/geometry';

const HALF_TURN_DEG = 180;

/**
 * The chance that a variable of Student's distribution with `freedom` degrees of freedom (a whole number, 1 or more) is at
 * most `t`. By the finite sums of Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4: + - * / and
 * square roots alone, so that it is the same to the bit everywhere.
 */
export function studentChance(t: number, freedom: number): number {
  const cosine2 = freedom / (freedom + t * t);
  const sine = t / Math.sqrt(freedom + t * t);
  const within =
    freedom % 2 === 1 ? oddWithin(t, sine, cosine2, freedom) : evenWithin(sine, cosine2, freedom);
  return Math.min(1, Math.max(0, (1 + within) / 2));
}

/** The chance between -t and t, with the sign of t. */
function oddWithin(t: number, sine: number, cosine2: number, freedom: number): number {
  const angleShare = (2 * atan2Deg(t, Math.sqrt(freedom))) / HALF_TURN_DEG;
  if (freedom === 1) return angleShare;
  let term = Math.sqrt(cosine2);
  let sum = term;
  for (let k = 3; k <= freedom - 2; k += 2) {
    term *= (cosine2 * (k - 1)) / k;
    sum += term;
  }
  return angleShare + (sine * sum * 2) / Math.PI;
}

function evenWithin(sine: number, cosine2: number, freedom: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 2; k <= freedom - 2; k += 2) {
    term *= (cosine2 * (k - 1)) / k;
    sum += term;
  }
  return sine * sum;
}
