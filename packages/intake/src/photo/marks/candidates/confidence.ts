/**
 * How sure a mark is, from how far it stands out of the leather's own texture. The middle is where half of what is found
 * was drawn in the test scenes and half is texture; the width is how fast that changes.
 */
export interface Calibration {
  readonly middle: number;
  readonly width: number;
}

export const SPOT_CALIBRATION: Calibration = { middle: 7.8, width: 1.2 };
export const LINE_CALIBRATION: Calibration = { middle: 10.5, width: 1.7 };
export const STAIN_CALIBRATION: Calibration = { middle: 6.5, width: 1 };

/**
 * Never certain: only a person confirms. Of marks this far out of the texture nine in ten were drawn ones in simulated
 * photos (133 of 150).
 */
const MOST = 0.9;

export function confidenceOf(strength: number, { middle, width }: Calibration): number {
  const share = 1 / (1 + Math.exp(-(strength - middle) / width));
  return Math.min(MOST, Math.round(100 * share) / 100);
}
