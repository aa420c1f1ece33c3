import { leatherError } from '../words/refuse.js';
import { quoteValue } from '../words/sentence.js';

const ANGLE = /^([-+]?\d+(?:\.\d+)?)\s*(?:deg|degree|degrees|°)$/i;

/**
 * An angle in degrees, from -360 to 360: a bare number, or a text such as "90 deg" or "90°".
 * @throws LeatherError `bad-angle`, `out-of-range`
 */
export function parseAngleDeg(value: string | number): number {
  const degrees = typeof value === 'number' ? value : Number(ANGLE.exec(value.trim())?.[1] ?? NaN);
  if (!Number.isFinite(degrees)) throw leatherError('bad-angle', { found: quoteValue(value) });
  if (Math.abs(degrees) > 360) {
    throw leatherError('out-of-range', {
      found: quoteValue(value),
      unit: 'degrees',
      from: '-360',
      to: '360',
    });
  }
  return degrees;
}
