import { ROTATION_DECIMALS } from '../tolerance.js';

const STEPS_PER_DEGREE = Number(`1e${ROTATION_DECIMALS}`);

/** An angle as it is stored: in [0, 360), with six decimals. */
export function roundDeg(deg: number): number {
  const within = deg % 360;
  const steps = Math.round((within < 0 ? within + 360 : within) * STEPS_PER_DEGREE);
  return steps >= 360 * STEPS_PER_DEGREE ? 0 : steps / STEPS_PER_DEGREE;
}

/** The turn from `b` to `a`, in [-modulo / 2, modulo / 2). */
export function turnDeg(a: number, b: number, modulo: number): number {
  const half = modulo / 2;
  const turn = (a - b + half) % modulo;
  return (turn < 0 ? turn + modulo : turn) - half;
}
