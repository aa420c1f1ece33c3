/** Steps per mm in written drawings: 1 µm, far below what any printer or eye resolves. */
const STEPS_PER_MM = 1000;

/** A number as drawings hold it: three decimals at most, no trailing zeros, no exponent, never "-0". */
export function formatNumber(n: number): string {
  const steps = Math.round(Math.abs(n) * STEPS_PER_MM);
  if (steps === 0) return '0';
  const whole = Math.floor(steps / STEPS_PER_MM);
  const rest = steps % STEPS_PER_MM;
  const decimals = rest === 0 ? '' : `.${String(rest).padStart(3, '0').replace(/0+$/, '')}`;
  return `${n < 0 ? '-' : ''}${whole}${decimals}`;
}
