/**
 * Exact by the international yard and pound agreement of 1959: 1 in = 25.4 mm, 1 ft = 304.8 mm. Kept as fractions of
 * whole numbers, so that 1 1/2 in is 38.1 mm and not a hair beside it.
 */
export const INCH_MM = { over: 10, of: 254 } as const;
export const FOOT_MM = { over: 10, of: 3048 } as const;
/** 304.8² = 92903.04 mm². */
export const SQUARE_FOOT_MM2 = { over: 100, of: 9_290_304 } as const;
/** An ounce of leather is 1/64 in of thickness: 127/320 mm = 0.396875 mm. */
export const OUNCE_MM = { over: 320, of: 127 } as const;

export interface ExactFactor {
  readonly over: number;
  readonly of: number;
}

export function timesFactor(value: number, factor: ExactFactor): number {
  return (value * factor.of) / factor.over;
}

export function overFactor(value: number, factor: ExactFactor): number {
  return (value * factor.over) / factor.of;
}
